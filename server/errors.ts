/** Why the server does not start, or refuses: one table, one code a row, each with what to do next. */
const SENTENCES = {
  'port-taken': 'Port {detail} is taken by another program: stop it, or choose another port with PORT=8471.',
  'port-denied':
    'This user may not listen at {detail}: choose a port above 1023 with PORT, or an address of this machine with HOST.',
  'setting-wrong': '{detail}',
  'argument-unknown': '"{detail}" is not expected here: see "npm run -s start -- --help".',
  'open-without-tls':
    'HOST={detail} opens the server to the network: give TLS_CERT and TLS_KEY, or name the proxy in front of it with PROXY_ORIGIN=https://….',
  'data-unwritable':
    'The data folder {detail} cannot be written: permit writing there, or choose another with DATA_DIR.',
  'data-unreadable': '{detail} cannot be read: permit reading it, and see that the folder for passing files has room.',
  'data-foreign': '{detail} is not a Readback record: choose another folder with DATA_DIR.',
  'data-damaged':
    'The record {detail} is damaged: keep the file, and start with a good copy of it or with another DATA_DIR.',
  'data-changed':
    'The tables of the record {detail} are not as they were made: keep the file, and start with a good copy of it.',
  'data-newer':
    'The record {detail} was written by a newer version: update Readback, or choose another folder with DATA_DIR.',
  'data-unsafe':
    'The disk under {detail} does not keep what is written to it as asked: choose a local folder with DATA_DIR.',
  'data-lost':
    'The record in {detail} Put a good copy of the folder back, or start with ACCEPT_LOSS=yes to go on without them; devices that still hold them send them again.',
  'data-copied':
    'The record {detail} was copied while it was being written, without its log (-wal): copy it with "npm run backup", or bring the log too.',
  'folder-in-use': 'Another server keeps its record in {detail}: stop it, or choose another folder with DATA_DIR.',
  'database-unreachable':
    'The database {detail} does not answer as it should: see that it runs, and that DATABASE_URL names it, its user and its password.',
  'database-old': '{detail}: update it to 14 or later.',
  'database-unsafe':
    'The database {detail}: what it commits would not outlive a power cut. Switch that on in postgresql.conf, then start again.',
  'database-foreign':
    'The database {detail} holds tables that are not ours: name one of its own for Readback in DATABASE_URL.',
  'database-newer':
    'The database {detail} was made by a newer version: update Readback, or name another in DATABASE_URL.',
  'database-changed':
    'The tables of the database {detail} are not as they were made: keep it, and start with a good copy of it.',
  'move-differs':
    'What was copied is not what the folder holds ({detail}): nothing was moved. Run it again; if it stays, keep its output.',
  'heads-damaged': '{detail} Put a good copy of heads.jsonl back, or start with ACCEPT_LOSS=yes to begin it anew.',
  'key-lost':
    'The key in {detail} is not the one that signed this record: put the right one back, or start with ACCEPT_LOSS=yes to sign with this one from now on.',
  'key-gone':
    'The key that signed the record in {detail} is gone (receipt-key.pem): put it back, or start with ACCEPT_LOSS=yes to sign with a new one from now on.',
  'tool-wrong': '{detail}',
  'key-damaged': 'The key in {detail} is damaged: put a good copy there, or move it away to have a new one made.',
  'data-full': 'The disk is full: free space on the server; devices keep their events and send them again.',
  'visit-unknown': 'There is no visit "{detail}" here: see /api/visits for those there are.',
  'visit-not-live':
    'No device writes the visit "{detail}" at this moment: nobody would hear you; speak to the trainee another way.',
  'lease-wrong': 'This server did not sign that the visit "{detail}" was carried on: take it over again.',
  'lease-moved': 'Another device carries the visit "{detail}" on by now: look at it again before you take it over.',
  'visit-erased':
    'What is personal of the visit "{detail}" was erased: its record stands, and nobody can read or hear that any more.',
  'key-differs':
    'Another key is kept for the visit "{detail}" of this device: keep the device as it is, and ask a keeper.',
  'attachment-unknown': 'No sound or photo {detail} is here: its device may not have sent it yet; try again later.',
  'attachment-wrong': 'The sound or photo does not fit ({detail}): it is sent again from its beginning.',
  'site-unknown': 'No visit at the site "{detail}" can be read here: give its name as it stands in the visits.',
  'site-erased':
    '"{detail}" is no customer: it stands wherever a name was erased, whosever it was. Give the name of a site that can still be read.',
  'page-unknown': 'There is nothing at {detail}.',
  'request-wrong': 'The request does not fit: {detail}.',
  'request-large': 'The request is larger than is taken here: send less at once.',
  'sign-in-needed': 'Sign in first: {detail}.',
  'sign-in-wrong': 'Name or password is wrong: try again, or ask a keeper for a new link.',
  'passkey-wrong': 'This passkey does not fit here: try again, or come in by your password or a new link.',
  'try-later': 'Too many tries: wait a quarter of an hour, then try again.',
  'role-refused': 'Your role may not do that: ask a keeper of your company.',
  'heads-of-all':
    'The heads name visits of every company here: whoever keeps the data folder finds them in heads.jsonl.',
  'code-wrong': 'This code was used, is too old or was never given: ask a keeper for a new one.',
  'key-wrong': 'The device did not show that it holds its key: pair it again from its own page.',
  'password-weak':
    'This password is too easy to guess: take at least {detail} letters and digits, five of them different, without the name you sign in by.',
  'login-taken': 'Somebody signs in by "{detail}" already: choose another name.',
  'device-taken': 'A device is known by the name {detail} already: pair this one under another.',
  'person-unknown': 'There is nobody "{detail}" in this company: see the list of people.',
  'device-unknown': 'There is no device "{detail}" in this company: see the list of devices.',
  'device-in-use': 'The device {detail} is in use, and sends its visits itself: revoke it before they are handed over.',
  'file-wrong': 'The file is no record of this device ({detail}): save it on the device again.',
  'first-keeper': 'The first person of a company manages the others: make them a keeper.',
  'last-keeper': 'The company would be left without a keeper: make somebody else a keeper first.',
  'keeper-missing':
    'HOST={detail} opens the server to others, and nobody is known here yet: run "npm run -s keeper" first, then start again.',
  'origin-foreign': 'Only pages of this server may connect: open {detail} and work from there.',
  'pages-unbuilt': 'The pages are not built: run "npm run build", then start again.',
  'server-failed': 'The server failed at this request: try again; if it stays, restart the server and keep its output.',
} as const;

export type ServerErrorCode = keyof typeof SENTENCES;

/** HTTP status of the codes that answer a request. */
const STATUS: Partial<Record<ServerErrorCode, number>> = {
  'visit-unknown': 404,
  'visit-not-live': 409,
  'lease-wrong': 403,
  'lease-moved': 409,
  'visit-erased': 410,
  'key-differs': 409,
  'attachment-unknown': 404,
  'attachment-wrong': 409,
  'page-unknown': 404,
  'pages-unbuilt': 404,
  'request-wrong': 400,
  'request-large': 413,
  'origin-foreign': 403,
  'sign-in-needed': 401,
  'sign-in-wrong': 401,
  'passkey-wrong': 401,
  'try-later': 429,
  'role-refused': 403,
  'heads-of-all': 403,
  'code-wrong': 403,
  'key-wrong': 403,
  'password-weak': 400,
  'login-taken': 409,
  'device-taken': 409,
  'person-unknown': 404,
  'device-unknown': 404,
  'device-in-use': 409,
  'file-wrong': 400,
  'first-keeper': 409,
  'last-keeper': 409,
  'data-full': 507,
};

/** A coded error of the server; `message` is one sentence that says what to do. */
export class ServerError extends Error {
  override readonly name = 'ServerError';
  readonly code: ServerErrorCode;
  readonly statusCode: number;

  constructor(code: ServerErrorCode, detail = '', cause?: unknown) {
    super(SENTENCES[code].replace('{detail}', detail), cause === undefined ? {} : { cause });
    this.code = code;
    this.statusCode = STATUS[code] ?? 500;
  }
}
