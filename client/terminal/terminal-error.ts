/** What can go wrong on the terminal, each with what to do about it. One table, one code a row. */
const SENTENCES = {
  'script-missing': 'There is no recorded visit called {detail}: see fixtures/visits for those there are.',
  'script-broken': 'The recorded visit holds a line that cannot be read ({detail}): write it as "id | voice | words".',
  'folder-unwritable':
    'The folder {detail} cannot be written: permit writing there, or set DATA_DIR to another folder.',
  'record-missing': 'The file {detail} cannot be read: name a record under the data folder.',
  'record-broken': 'No record of a visit ({detail}): give a device file, or one event a line.',
  'record-no-visit': 'The file {detail} opens no visit: name the record of the technician’s device first.',
  'heads-missing':
    'No signed heads at {detail}: name a data folder, its heads.jsonl, or the address of a server that runs.',
  'record-not-one':
    'The file {detail} is no record of a visit that could go on: name a new file, or the record of a device.',
  'file-missing': 'The file {detail} cannot be read: check the path.',
  'profile-broken': 'The file {detail} is no unit profile: give one JSON object, such as those under fixtures/units.',
  usage: '{detail}',
} as const;

export type TerminalErrorCode = keyof typeof SENTENCES;

/** A coded error of the terminal tools; `message` is one sentence that says what to do. */
export class TerminalError extends Error {
  override readonly name = 'TerminalError';
  readonly code: TerminalErrorCode;

  constructor(code: TerminalErrorCode, detail: string, cause?: unknown) {
    super(SENTENCES[code].replace('{detail}', detail), cause === undefined ? {} : { cause });
    this.code = code;
  }
}
