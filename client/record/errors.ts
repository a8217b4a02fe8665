/** What can go wrong with a record on this side, each with what to do about it. One table, one code a row. */
const SENTENCES = {
  'body-too-large': 'This event is too large to be sent ({detail}): split it, or leave the sound or picture out of it.',
  'log-closed': 'The record is closed: open it again before writing to it.',
  'log-damaged': 'The record {detail} has been altered or damaged: keep it as it is and read the copy on the server.',
  'log-other-visit': 'The record {detail} belongs to another visit: choose another file.',
  'log-newer': 'The record {detail} was written by a newer version: update this program and open it again.',
  'log-unwritable': 'The record cannot be written ({detail}): free space or permit writing, then go on.',
  'log-full': 'There is no room left here: what came last is NOT saved. Free space on this device, then say it again.',
  'log-busy': 'The record {detail} is open in another program or tab: close it there, or go on there.',
  'server-missing': 'The server program did not start ({detail}): build the project first, then try again.',
} as const;

export type RecordErrorCode = keyof typeof SENTENCES;

/** A coded error of the record; `message` is one sentence that says what to do. */
export class RecordError extends Error {
  override readonly name = 'RecordError';
  readonly code: RecordErrorCode;

  constructor(code: RecordErrorCode, detail = '', cause?: unknown) {
    super(SENTENCES[code].replace('{detail}', detail), cause === undefined ? {} : { cause });
    this.code = code;
  }
}
