import { rowsBy } from './rows-by.ts';

/**
 * Spoken orders to Readback itself. Names are our own. `joins`: also understood in one breath with something else
 * ("leg one one eighteen, what next"); words as common as "right" or "full" are not. `typed`: understood, but not offered
 * to the recogniser, where they sound like the beginning of something longer ("why" and the letter Y, "right" and "white").
 * `joined`: in those words alone, there. `moment`: the same for a moment only, until something else is said.
 */
export const COMMANDS = [
  {
    id: 'take-back',
    name: 'take that back',
    joins: true,
    say: 'take (that | it) back | scratch that | strike that | i messed (that | it) [one] up | i messed up [that one] | undo [that] | cancel that | (never mind | nevermind) [that [one]] | forget (that | it) [last] [one] | (delete | erase | remove) (that | it) [one] | (scratch | strike | undo) that last one | (delete | erase) (that | the) last one | take that last one back',
  },
  { id: 'correct', name: 'correction', say: 'correction' },
  {
    id: 'say-again',
    name: 'say again',
    joins: true,
    say: 'say again | say that again | say that one more time | one more time | repeat [that] | come again | say it again | what was that | what did you (say | ask [me | for]) | what was the question | repeat (it | the question) [please] | (which | what) place',
  },
  {
    id: 'what-next',
    name: 'what next',
    joins: true,
    say: "what next | what's next | what is next | next step | what's the next step | what is the next step | what now | next | next one | what's the next one | which [one] (is | comes) next | what do i do next | what do you want [me to (do | check | test | measure)] next | what should i (do | check) next | what do i do now | what should i do now | what do i check next | what else",
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
    say: 'pass | skip | pass on this one | pass on that | skip it | skip this one | skip that [one] | leave it [out]',
  },
  {
    id: 'unsure',
    name: 'I do not know',
    say: "[i] (don't | do not) know | [i'm | i am] not sure | i can't (tell | say) | i cannot (tell | say) | [i have | i've got] no (idea | clue) | couldn't tell you | beats me",
  },
  {
    id: 'cannot-reach',
    name: 'cannot reach it',
    say: "[i] (cannot | can't | couldn't) (reach | get to | get at | access | get near) (it | that [one] | this [one] | them | there) | [i] (cannot | can't) get [in] there | [there's | there is] no access [to (it | that)] | [it's | it is] not accessible | [there's | there is] no way to (reach | get to) (it | that)",
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
    say: 'hold the visit | pause [the visit] [for] [a] [second | minute] | take five',
    moment:
      'hold (on | up) [a (sec | second | minute | moment)] | hang on [a (sec | second | minute | moment)] | give me (a | one) (minute | second | sec | moment) | [hold on] one (second | sec | moment) | [hold on] just a (second | sec | minute | moment) | bear with me | wait a (sec | second | minute | moment)',
  },
  {
    id: 'go-on',
    name: 'go on with the visit',
    say: 'go on [with the visit] | carry on | [okay] go ahead | continue | resume',
  },
  { id: 'short-talk', name: 'short talk', say: 'short talk | brief | talk less | keep it short' },
  { id: 'full-talk', name: 'full talk', say: 'full talk | full | talk more | give me the long version' },
  // What is asked of Readback about the talk and the work.
  {
    id: 'what-heard',
    name: 'what did you hear',
    joins: true,
    say: 'what did you (hear | get | catch | understand | take) [me say] | what did you (write | put | take) down | what did you (log | note | record) | what did i (just | last) say | [can you] read (it | that) back [to me]',
  },
  {
    id: 'recall',
    name: 'what was the last one',
    say: 'what was (the | my) last (one | reading | number | value) | [the] last reading | what did (i | we) (get | read) [last | before]',
  },
  {
    id: 'where-probes',
    name: 'where do I put the probes',
    say: 'where (do | should) (i | we) (put | place | clip | hook | stick) [the | my] (probes | leads | clamp | meter | gauges | hoses | probe | it | them | these) [on | now] | where (do | should | does) [the | my] (probes | leads | clamp | meter | gauges | hoses | probe | it | they) go | where (do | should) i (measure | test | check | read | clamp) [it | that | this | on] | which terminals | between what [and what] | how (do | should) i (measure | test | check | read) (it | that | this) | what (setting | function | range) [is it | do i use | on the meter] | which (setting | function) | what do i set (it | the meter) to',
  },
  {
    id: 'what-expected',
    name: 'what should it do',
    say: "what should (it | that | this) (do | be | read | say | show) | what (should | would) i (see | get | expect | be seeing | be getting | be looking for) | what (am i | are we) looking for | what's (normal | good) | what is (normal | good) [here]",
  },
  {
    id: 'what-means',
    name: 'what does that mean',
    say: 'what does (that | it | this) (mean | tell (me | us | you) | say to you) | (is that | was that) (good | bad | good or bad | normal | right) | so what',
  },
  {
    id: 'suspects',
    name: 'what could it be',
    say: "what (could | can) it be | what else (could | can) it be | what do you (think | suspect | figure) [it is] | what (are the suspects | is it likely to be) | what's your [best] guess | what's (wrong | the matter) [with it]",
  },
  {
    id: 'what-left',
    name: "what's left",
    say: "what's left [to (do | check | read | test)] | what is left [to (do | check | read | test)] | how (many | much) (more | longer) [to go | is (there | left)] | how many (readings | steps | tests) [do (i | we) have] (left | to go | are left) | how (many | much) (is | are) left | how long [(do | should | must) (i | we) [have to | need to] wait | to wait | to go | is left | yet | till then] | are we [almost | nearly] (done | finished | there) [yet] | how far [along] are we",
  },
  {
    id: 'is-it-dead',
    name: 'is it dead',
    say: 'is it [proven] (dead | off | live | proven | safe) [to (touch | work on) [it]] [yet | now | here] | is the (power | unit) off [yet] | can i (touch | grab) (it | that | this | anything) [now] | can i (reach in | put my hands in) [there | now] | am i (clear | okay) to (touch it | reach in)',
  },
  {
    id: 'go-back',
    name: 'go back',
    say: "[let's | can we | can i] go back [one | a step | to (that | the last | the previous) (one | step)] | [the] previous (one | step) | back up [one] | one back | back one",
  },
  { id: 'skip-to', name: 'gauges next', say: 'gauges next | put the gauges on next' },
  {
    id: 'stop',
    name: 'stop',
    joins: true,
    joined: 'stop',
    say: 'stop [talking] | wait | hands off | [be] quiet | hush | shut up | hot',
  },
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
  { id: 'live', name: 'live', say: "live [i have it] | it's live | understood live" },
  // Acknowledges a caution, and else says that the speaker has heard: it answers no question.
  {
    id: 'got-it',
    name: 'got it',
    say: "okay | ok | [okay | alright] (got it | i got it | i have it | gotcha | understood | i understand | copy [that] | roger [that] | will do | i will | i know [i know] | i hear you) | alright | all right | sure [thing] | ready | i'm (ready | set | good) | i am (ready | set | good) | all (set | good) | good [to go] | (let's | let us) (go | do it) | [my] gloves [are] on | i have my gloves on",
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
    say: '[the] same [place | one | spot | again] | same (place | one | spot | again | as before) | where i was',
  },
  {
    id: 'fine',
    name: 'I am fine',
    say: "i am (fine | okay | all right) | i'm (fine | okay | all right)",
  },
  { id: 'cancel-check', name: 'cancel the check', say: 'cancel the check | end the check | no more checks' },
  { id: 'done', name: 'done', say: "done | it's done | all done | that's done | finished" },
  {
    id: 'finish',
    name: 'finish the visit',
    say: 'finish [the] visit | close [the] visit | end [the] visit | wrap it up',
  },
  { id: 'help', name: 'what can I say', say: 'what can i say | help | help me out | what are my options' },
] as const;

/** Around a place whose reading is asked after. */
export const RECALL = {
  before:
    "what (was | were) [the] | what's [the] | what is [the] | what did (i | we | you) (get | read | have | see | log | write down) (on | for | at | across | from) [the] | what do (i | we) have (on | for | at) [the] | what (did | does) [the]",
  after: 'again | read | say | show | before | reading | come in at | at',
} as const;

/** Around a place of which it is asked what it should show. */
export const EXPECTED = { before: 'what should [the]', after: 'be | read | say | show | do' } as const;

export type CommandId = (typeof COMMANDS)[number]['id'];
export const COMMANDS_BY_ID = rowsBy('id', COMMANDS);
