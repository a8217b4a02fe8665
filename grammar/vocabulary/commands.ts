/**
 * Spoken orders to Readback itself. Names are our own. `joins`: also understood in one breath with something else
 * ("leg one one eighteen, what next"); words as common as "right" or "full" are not.
 */
export const COMMANDS = [
  {
    id: 'take-back',
    name: 'take that back',
    joins: true,
    say: 'take (that | it) back | scratch that | strike that | undo [that]',
  },
  { id: 'correct', name: 'correction', say: 'correction' },
  {
    id: 'say-again',
    name: 'say again',
    joins: true,
    say: 'say again | say that again | repeat [that] | come again | what was that',
  },
  {
    id: 'what-next',
    name: 'what next',
    joins: true,
    say: "what next | what's next | what is next | next step | what now | next | what do i do next",
  },
  { id: 'why', name: 'why', joins: true, say: 'why | why that | why is that | tell me why' },
  {
    id: 'pass',
    name: 'pass on this one',
    say: 'pass | pass on this one | pass on that | skip it | skip this one | skip that',
  },
  {
    id: 'cannot-reach',
    name: 'cannot reach it',
    say: "cannot reach it | can't reach it | can't get to it | cannot get to it | can't get at it | can't reach that",
  },
  {
    id: 'status',
    name: 'where are we',
    joins: true,
    say: 'where are we | status | what do we have | what have we got | what do we know',
  },
  { id: 'hold', name: 'hold the visit', say: 'hold the visit | hold on | pause | take five | hang on' },
  { id: 'go-on', name: 'go on with the visit', say: 'go on [with the visit] | carry on | continue | resume' },
  { id: 'short-talk', name: 'short talk', say: 'short talk | brief | talk less | keep it short' },
  { id: 'full-talk', name: 'full talk', say: 'full talk | full | talk more | give me the long version' },
  { id: 'stop', name: 'stop', joins: true, say: 'stop | wait | quiet | hush' },
  {
    id: 'yes',
    name: 'yes',
    say: "yes | yep | yeah | yup | correct | affirmative | that's right | that is right | you got it | right",
  },
  { id: 'no', name: 'no', say: "no | nope | negative | wrong | that's wrong | that is wrong" },
  { id: 'live', name: 'live', say: "live | it's live | hot | understood live" },
  { id: 'done', name: 'done', say: "done | it's done | all done | that's done | finished | ready" },
  {
    id: 'finish',
    name: 'finish the visit',
    say: 'finish [the] visit | close [the] visit | end [the] visit | wrap it up',
  },
  { id: 'help', name: 'what can I say', say: 'what can i say | help | help me out | what are my options' },
] as const;
export type CommandId = (typeof COMMANDS)[number]['id'];
