/**
 * Short answers to what was just asked. Each says something only beside its question: who asks says what it means there
 * (`Expectation.answers`), and what is asked of nobody is not understood.
 */
export const ANSWERS = [
  {
    id: 'did',
    say: '[$ay] [i | we] [have] [already] (did [it | that | so] | done it | took care of (it | that) | taken care of | handled [it]) | [$it] [already] (taken care of | handled) | [$ay] i have | [$ay] already (done | did [it | that]) | [$ay] (it | they | he | she | we) (is | are | do | does | did | have) | all of (it | them) [is | are] [done]',
  },
  {
    id: 'discharged',
    say: '[$it | $ay | both] [all] discharged [it | [them] both | them] [now] | (bled | drained) (it | them | both) [down | off]',
  },
  {
    id: 'not-yet',
    say: "[no] not yet | [no] [i] (haven't | have not | didn't | did not) [yet | do it | done it] [yet] | [i am | i'm] [still] working on it | [no] (it | they) (is not | isn't | are not | aren't) yet",
  },
  {
    id: 'on',
    say: '[$it | power is] [back | turned | switched | all] on [now] | (turned | switched | put) (it | them) [back] on',
  },
  { id: 'off', say: '[$it] [shut | turned | switched | all] off [now] | (turned | switched | shut) (it | them) off' },
  {
    id: 'pulled',
    say: '[$it | i] (pulled | yanked | opened | killed) [it] [out] | [$it] (out | open | disconnected) | (pulled | took) it out',
  },
  {
    id: 'locked',
    say: '[$it | i] [(pulled | off | out | open | opened | shut off | turned off) [it]] [and] (locked [it] [out | off] [[and] tagged [it] [out]] | tagged [it] [out]) | [$it] locked | [my | the] (lock | tag | lock and tag) is on [it] | [i | i have] (put | hung) [my | a | the] (lock | tag | lock and tag) on [it]',
  },
  {
    id: 'still-off',
    say: '[$ay] [$it | everything | it all] [is | are] (still (off | open | locked [out] | dead | pulled | isolated | tagged | down) [and (locked [out] | off | dead | tagged)] | off and (locked [out] | dead | tagged) | locked (and | out and) tagged) | [$ay] (nothing | nobody | no one) [has] (changed | came back | touched it) | [$ay] no (change | power)',
  },
  {
    id: 'in',
    say: '[$it] [back | pushed | plugged] in [place] | (put | pushed | plugged) it [back] in | [$it] closed | closed it',
  },
  {
    id: 'running',
    say: '[$it] [still | now] (running | spinning | turning | going | moving | working) [now | fine | good | normal | strong | again] | [it] (runs | spins | turns) [fine | good]',
  },
  {
    id: 'not-running',
    say: "[$it] [still | just] (not | isn't | ain't) (running | spinning | turning | going | moving | coming on | doing anything | working) [at all] | [$it] [still | just] (stopped | standing still | sitting still | dead still | sitting there | doing nothing) | [it] (won't | will not | doesn't | does not) (run | spin | turn | start | move | go | come on) [up | at all] | not a thing | no movement | $it [all | dead] (quiet | silent) | (all | dead) (quiet | silent)",
  },
  { id: 'dead', say: '[$it] [completely | stone] dead' },
  {
    id: 'hums',
    say: "[$it | it] [just] (humming | hums | buzzing) [but [it] (won't | will not | not | isn't) (turn | turning | spin | spinning | start | starting)]",
  },
  {
    id: 'hums-and-trips',
    say: '[$it | it] [just] (hums | humming) [and | then | and then] (trips [out] | tripping [out] | kicks (off | out) | kicking (off | out) | cuts (out | off) | cutting (out | off)) | [$it | it] [keeps] (trying | tries) to start | [$it | it] (trips | keeps tripping) [on] [overload | thermal]',
  },
  {
    id: 'runs-then-trips',
    say: '[$it | it] (runs | starts | comes on | started | ran) [a while | for a while] (and | then | and then | but) [it] (trips [out] | stops | quits | cuts out | kicks (off | out) | shuts (off | down) | dies | stopped | quit | died | tripped)',
  },
  {
    id: 'pulled-in',
    say: '[$it] (pulled | sucked) [right] in | [it] (pulls | pulled) in | [$it] (engaged | made)',
  },
  {
    id: 'not-pulled-in',
    say: "[$it] (not | isn't | ain't) (in | pulled in | pulling in | closed | engaged | made) | [$it] (dropped | kicked) out | [it] (won't | will not | doesn't | does not | did not | didn't) (pull in | close | engage) | not pulling",
  },
  {
    id: 'calling',
    say: '[$it] [still | now] calling [for cool | for cooling] [now] | [$it] (set to | in) (cool | cooling)',
  },
  {
    id: 'not-calling',
    say: "[$it] (not | isn't | ain't) calling [for cool | for cooling] | no call | [$it] satisfied",
  },
  {
    id: 'blank',
    say: '[$it] [completely | totally] blank | [the] (screen | display) is (blank | dead | dark) | (no | nothing on the) (screen | display) | [$it] dark',
  },
  {
    id: 'good',
    say: '(looks | look | looking) (good | fine | okay | normal | great) | ($it | all of them are) [looking | all] (good | fine | okay | normal | great) | nothing wrong [with it | with them] | no problem [there | with it] | [$it] in good shape | [it looks] like new',
  },
  {
    id: 'clean',
    say: '([$it] | [the | that] [outdoor | indoor | condenser] (coil | filter) [is | looks]) [looks | look | pretty | nice and] clean',
  },
  {
    id: 'dirty',
    say: '[$it] [looks | pretty | really | all] (dirty | filthy | clogged [up] | plugged [up | solid] | nasty | packed [solid] | black with dirt)',
  },
  {
    id: 'burnt',
    say: '[$it] [looks | look | pretty | all | really | badly] (burnt [up] | burned [up] | pitted | cooked | toast | black)',
  },
  { id: 'stuck', say: '[$it] (stuck [closed | shut | in] | welded [closed | shut])' },
  {
    id: 'swollen',
    say: '[$it] [looks | pretty | really | all] (swollen [up] | bulged [out] | bulging | puffed [up] | domed | leaking | blown out)',
  },
  {
    id: 'not-swollen',
    say: "[$it] (not | isn't) (swollen | bulged | bulging) | [it looks | $it] flat | no (bulge | bulging)",
  },
  {
    id: 'iced',
    say: "[$it] (iced [up | over] | frozen [up | over | solid]) | [there's | there is] ice on it | [$it] [a] (block of ice | ice cube)",
  },
  { id: 'no-ice', say: "no ice [on it | anywhere] | [$it] clear [of ice] | [$it] (not | isn't) (iced | frozen) [up]" },
  { id: 'full', say: '[$it] (full [of water | up | to the top] | overflowing) | [there is] standing water' },
  { id: 'dry', say: '[$it] [bone | completely] (dry | empty) | no water [in it]' },
  { id: 'oily', say: "[$it] (oily | wet with oil) | [there's | there is] [some] oil [on it | on them | there]" },
  { id: 'no-oil', say: 'no oil [on it | on them | there | anywhere] | [$it] not oily' },
  {
    id: 'very-hot',
    say: '[$it] (very | really | too | pretty) hot [to touch] | [$it] burning up | [$it] hot to the touch',
  },
  {
    id: 'not-hot',
    say: "[$it] (not | isn't) [very | that] hot | [$it] (cool | cold | [just | only | a little | slightly] warm)",
  },
  { id: 'tripped', say: '[$it] (tripped | in the middle | popped)' },
  { id: 'set', say: "[$it] (set | holding | not tripped) | [it] (hasn't | has not | did not | didn't) trip [tripped]" },
  {
    id: 'free',
    say: '[$it | it] (spins | turns | spinning | turning) (free | freely | easy | easily | fine by hand) [by hand] | [$it] (free | loose | easy)',
  },
  {
    id: 'stiff',
    say: '[$it] (stiff | tight | seized [up] | locked up | rough | hard to turn) | [it] (drags | is dragging | binds)',
  },
  {
    id: 'tight',
    say: '[$it] all (tight | solid | snug | secure) | [$it] (tight | solid | snug) | none [of them] (moved | move | came (loose | off)) | nothing (moved | moves | loose | came loose) | they all hold',
  },
  {
    id: 'leak',
    say: '[i] (found (one | it) | got one) [$leak-place] | [there is | there are | got | i see] bubbles [$leak-place] | [$it] leaking [$leak-place]',
  },
  {
    id: 'none',
    say: "nothing [found | there | else | more] | none [found] | [i] found nothing | [i] (could not | couldn't | didn't | did not) find (anything | any | one | a leak)",
  },
  {
    id: 'valved-off',
    say: '[$it] (valved off | isolated | closed off) | valved it off | valve is (closed | shut) | (closed | shut) the valve',
  },
  {
    id: 'agreed',
    say: "sure go ahead | (they | he | she | the customer) (agreed | agrees | approved [it] | said (yes | okay | go ahead)) | [$it] (fine | okay) with (them | him | her | me) | [the] customer (said | says) (yes | okay | go ahead) | (they are | they're | he is | he's | she is | she's | [the] customer is) (fine | okay | good) with (it | that)",
  },
  {
    id: 'refused',
    say: "(they | he | she | the customer) (refused | declined | said no | (doesn't | does not | don't | do not) want it)",
  },
  {
    id: 'as-they-want',
    say: '[$it] [set] (where | how | like) (they | he | she) (want | wants | had) it [set] | [$it] [set] back (where | how | like) it was | same as (before | it was) | [$it] [set] as agreed | [$it] set',
  },
  {
    id: 'not-here',
    say: "[$it | customer] (not | isn't | is not) (here | home | around | available | present | there | in) | (nobody | no one) [is] (home | here) | (they | he | she) (left | (is | are) gone) | (he's | she's | they're) gone",
  },
  { id: 'two', say: 'two' },
  { id: 'three', say: 'three' },
  { id: 'four', say: 'four' },
  {
    id: 'all',
    say: "(that's | that is) (all | it | everything) [of (it | them) | there is | i have | i got | i've got | for me | it says]",
  },
  {
    id: 'all-zero',
    say: "[$it] all (zero | zeros | zeroes | dead | nothing) | (zeros | zeroes | zero | dead | nothing | no voltage) (across the board | all around | everywhere | anywhere | all the way across | on all of them | on everything) | everything [is] (dead | zero) | they're all (dead | zero | zeros)",
  },
  { id: 'blown', say: '[$it] (blown | bad | open [circuit]) | it blew' },
] as const;
export type AnswerId = (typeof ANSWERS)[number]['id'];
