/** Spoken orders to Readback itself. Names are our own. */
export const COMMANDS = [
  { id: 'take-back', name: 'take that back' },
  { id: 'correct', name: 'correction' },
  { id: 'say-again', name: 'say again' },
  { id: 'what-next', name: 'what next' },
  { id: 'why', name: 'why' },
  { id: 'pass', name: 'pass on this one' },
  { id: 'cannot-reach', name: 'cannot reach it' },
  { id: 'status', name: 'where are we' },
  { id: 'hold', name: 'hold the visit' },
  { id: 'go-on', name: 'go on with the visit' },
  { id: 'short-talk', name: 'short talk' },
  { id: 'full-talk', name: 'full talk' },
  { id: 'stop', name: 'stop' },
  { id: 'yes', name: 'yes' },
  { id: 'no', name: 'no' },
  { id: 'live', name: 'live' },
  { id: 'done', name: 'done' },
  { id: 'finish', name: 'finish the visit' },
  { id: 'help', name: 'what can I say' },
] as const;
export type CommandId = (typeof COMMANDS)[number]['id'];
