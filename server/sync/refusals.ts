/** Why a connection is closed: the close code (RFC 6455 and its registry) and the sentence sent before it. */
const REFUSALS = {
  'hello-late': [1013, 'No hello came within five seconds: connect again and say hello first.'],
  'not-json': [1007, 'The message is not JSON: update this program.'],
  'message-wrong': [1008, 'The message does not fit the protocol ({detail}): update this program.'],
  'message-binary': [1003, 'Binary messages are not taken: send text.'],
  'protocol-other': [
    1008,
    'This server speaks version {detail} of the protocol: load the page again, or update this program.',
  ],
  'company-foreign': [1008, 'This connection may not touch that company: sign in there.'],
  'sign-in-needed': [1008, 'Sign in, or pair this device: what is written here is kept, and sent then.'],
  'ticket-wrong': [1008, 'This ticket was used, or never given: load the page again.'],
  'ticket-late': [1013, 'This ticket is too old: this device asks for another.'],
  'device-unpaired': [1008, 'Visits are written by paired devices: have a keeper pair this one.'],
  'device-revoked': [
    1008,
    'This device was taken out of the company: what is written here is kept; a keeper can hand it over.',
  ],
  'signature-wrong': [1008, 'The device did not show that it holds its key: have a keeper pair it again.'],
  'stream-foreign': [1008, 'This stream belongs to another device: only that one writes in it.'],
  'visit-foreign': [1008, 'This visit is not open to you: ask who wrote it, or a supervisor.'],
  'role-refused': [1008, 'Your role may not do that: ask a keeper of your company.'],
  'out-of-turn': [1008, 'The message came out of turn: say hello or watch once, then wait for the welcome.'],
  'chain-broken': [1008, 'Event {detail} does not follow from the one before it: check the record on this device.'],
  'stream-sealed': [1008, 'This stream was ended and carried on in a later epoch: open the newest one.'],
  'link-wrong': [1008, 'The older stream does not end where this epoch begins: connect its older epoch again first.'],
  'too-fast': [1013, 'Too many events are waiting: wait for acknowledgements, then send again.'],
  'too-many-connections': [1013, 'The server has all the connections it takes: this device tries again later.'],
  'too-many-of-device': [1013, 'This device writes over {detail} connections already: close other pages of it.'],
  'too-many-readers': [1013, 'The visit, or the server, has all the readers it takes: try again later.'],
  'data-full': [
    1011,
    'The server cannot keep more: free space there. This device keeps its events and sends them again.',
  ],
  'server-failed': [1011, 'The server could not keep the events: nothing is lost on this device, it will try again.'],
  'server-closing': [1012, 'The server is closing: this device keeps its events and connects again.'],
  fork: [1008, ''],
} as const;

export type RefusalCode = keyof typeof REFUSALS;

export interface CloseReason {
  readonly closeCode: number;
  readonly code: RefusalCode;
  readonly sentence: string;
}

export function closeReason(code: RefusalCode, detail = ''): CloseReason {
  const [closeCode, sentence] = REFUSALS[code];
  return { closeCode, code, sentence: sentence.replace('{detail}', detail) };
}
