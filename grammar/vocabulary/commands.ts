import { rowsBy } from './rows-by.ts';

/**
 * Spoken orders to Readback itself. Names are our own. `joins`: also understood in one breath with something else
 * ("leg one one eighteen, what next"); words as common as "right" or "full" are not. `typed`: understood, but not offered
 * to the recogniser, where they sound like the beginning of something longer ("why" and the letter Y, "right" and "white").
 */
export const COMMANDS = [
  {
    id: 'take-back',
    name: 'take that back',
    joins: true,
    say: 'take (that | it) back | scratch that | strike that | undo [that] | cancel that | never mind | nevermind | forget (that | it) [last] [one] | (delete | erase | remove) (that | it) [one] | (delete | erase) (that | the) last one | take that last one back',
  },
  { id: 'correct', name: 'correction', say: 'correction' },
  {
    id: 'say-again',
    name: 'say again',
    joins: true,
    say: 'say again | say that again | say that one more time | one more time | repeat [that] | come again | say it again | what was that | what did you say | repeat (it | the question) [please]',
  },
  {
    id: 'what-next',
    name: 'what next',
    joins: true,
    say: "what next | what's next | what is next | next step | what's the next step | what is the next step | what now | next | next one | what's the next one | what do i do next | what do you want [me to (do | check | test | measure)] next | what should i (do | check) next | what do i check next | what else",
  },
  {
    id: 'why',
    name: 'tell me why',
    joins: true,
    say: 'tell me why | why is that | why that one | what for | what is that for',
    typed: 'why | why that',
  },
  {
    id: 'pass',
    name: 'pass on this one',
    say: 'pass | skip | pass on this one | pass on that | skip it | skip this one | skip that [one]',
  },
  {
    id: 'cannot-reach',
    name: 'cannot reach it',
    say: "[i] (cannot | can't) (reach | get to | get at) (it | that [one])",
  },
  {
    id: 'status',
    name: 'where are we',
    joins: true,
    say: 'where are we [at] | where were we | where do we stand | status | what do we have [so far] | what have (we | i) got [so far] | what do we know',
  },
  {
    id: 'hold',
    name: 'hold the visit',
    say: 'hold the visit | hold on | pause [for] [a] [second | minute] | take five | hold on a (sec | second | minute) | hang on [a sec | a second | a minute] | give me a (minute | second | sec) | one (second | sec)',
  },
  {
    id: 'go-on',
    name: 'go on with the visit',
    say: 'go on [with the visit] | carry on | [okay] go ahead | continue | resume',
  },
  { id: 'short-talk', name: 'short talk', say: 'short talk | brief | talk less | keep it short' },
  { id: 'full-talk', name: 'full talk', say: 'full talk | full | talk more | give me the long version' },
  { id: 'stop', name: 'stop', joins: true, say: 'stop | wait | [be] quiet | hush | shut up | hot' },
  {
    id: 'yes',
    name: 'yes',
    say: "yes [it is] | yep | yeah | yup | correct | affirmative | (that's | that is) (right | correct) | you got it",
    typed: 'right',
  },
  {
    id: 'no',
    name: 'no',
    say: "no | nope | negative | wrong | [no] (that's | that is) (wrong | not right) | no it's not | no it is not",
  },
  { id: 'live', name: 'live', say: "live | it's live | understood live" },
  // Acknowledges a caution, and else says that the speaker has heard: it answers no question.
  {
    id: 'got-it',
    name: 'got it',
    say: "okay | ok | [okay | alright] (got it | i got it | i have it | gotcha | understood | i understand | copy [that] | roger [that] | will do | i will | i know | i hear you) | alright | all right | sure [thing] | i'm (ready | set | good) | i am (ready | set | good) | all (set | good) | good [to go] | (let's | let us) (go | do it) | [my] gloves [are] on | i have my gloves on",
  },
  // Answers to the question which place was meant.
  {
    id: 'here',
    name: 'here',
    say: 'here | right here | over here | this place | where i am [now] | where my probes are',
  },
  {
    id: 'same-place',
    name: 'the same place',
    say: 'the same [place | one | spot | again] | same (place | one | spot | again | as before) | where i was',
  },
  {
    id: 'fine',
    name: 'I am fine',
    say: "i am (fine | okay | all right) | i'm (fine | okay | all right)",
  },
  { id: 'cancel-check', name: 'cancel the check', say: 'cancel the check | end the check | no more checks' },
  { id: 'done', name: 'done', say: "done | it's done | all done | that's done | finished | ready" },
  {
    id: 'finish',
    name: 'finish the visit',
    say: 'finish [the] visit | close [the] visit | end [the] visit | wrap it up',
  },
  { id: 'help', name: 'what can I say', say: 'what can i say | help | help me out | what are my options' },
] as const;
export type CommandId = (typeof COMMANDS)[number]['id'];
export const COMMANDS_BY_ID = rowsBy('id', COMMANDS);
