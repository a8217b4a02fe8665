import { rowsBy } from './rows-by.ts';

/**
 * What is seen, heard or felt, and bears on the diagnosis. `aloud`: how a name is said that holds a word which is
 * listened for while the mouth speaks; it is understood as well. `saidAs`: what counts as the same, and is read back in
 * its own words; `unsure`: words that may say another thing as well, and are asked.
 */
export const OBSERVATIONS = [
  {
    id: 'fan-not-turning',
    name: 'outdoor fan is not turning',
    say: "$fan ((is not | isn't | ain't | not) (turning | running | spinning | going | moving) [at all] | (stands | is standing | is [just] sitting | [just] sits | sitting) (still | there) | (will not | won't) (turn | run | spin [up] | start [up] | move | budge | come on) | (is | has) stopped | is dead (stopped | still | in the water) | (does not | doesn't) (turn | run | spin | start | move) | is dead)",
  },
  {
    id: 'fan-turning',
    name: 'outdoor fan is turning',
    say: '$fan ((is | is now) (turning | running | spinning | going | moving) [fine | just fine | okay] | runs | turns | came on)',
  },
  {
    id: 'fan-spins-freely',
    name: 'outdoor fan spins freely by hand',
    say: '$fan (spins | turns | is) (free | freely | easy | easily | fine by hand) [by hand] | i can (spin | turn) $fan [blade] (by hand | easily | freely) [no problem]',
  },
  {
    id: 'fan-stiff',
    name: 'outdoor fan is stiff by hand',
    say: '[the] $fan [blade] (is | feels | turns) (stiff | tight | hard [to turn] | seized [up] | locked up | frozen up | rough) [by hand]',
  },
  {
    id: 'fan-hums',
    name: 'outdoor fan hums',
    say: "$fan ([just] hums | is [just] humming | [just] humming | (hums | is humming) but (will not | won't) (turn | spin | start | run))",
  },
  {
    id: 'compressor-running',
    name: 'compressor is running',
    say: '[the] compressor ((is | is now) [still] (running | on | going) [fine | just fine | okay] | [still | keeps] (runs | running) | is up | started | came on)',
    saidAs: [
      {
        words: 'compressor runs without a call',
        say: "[the] compressor ((is [still] (running | on | going)) | [still | keeps] (runs | running)) (with no call | without a call | with the (call | $stat) off) | [the] compressor (won't | will not | doesn't | does not) (shut off | shut down | stop | turn off)",
      },
    ],
  },
  {
    id: 'compressor-not-running',
    name: 'compressor is not running',
    say: "[the] compressor ((is not | isn't | ain't | not) [even] (running [at all] | on | going | starting | coming on | doing (anything | a thing) | trying [to start]) | (will not | won't) (run | start | come on | do anything) | (does not | doesn't) (run | start | come on | do anything) | (is | has) stopped | is off | is down | is [all | dead] (quiet | silent) | (never | did not | didn't) (starts | start | comes on | come on))",
  },
  {
    id: 'compressor-hums-and-trips',
    name: 'compressor hums and trips',
    say: '[the] compressor ([just] hums | is [just] humming | [just] humming | tries to start) [and | then | and then] (trips [out] | tripping [out] | kicks (off | out) | kicking (off | out) | cuts (out | off) | cutting (out | off) | shuts off | goes off) [on [the] (overload | thermal)] | hums and (trips | kicks off)',
    saidAs: [
      {
        words: 'compressor hums',
        say: "[the] compressor ([just] hums | is [just] humming | [just] humming) | [the] compressor hums but (will not | won't) (start | run | turn)",
      },
      {
        words: 'compressor trips on overload',
        say: '[the] compressor (trips [out] [on] [the] [overload] | kicks off | cut out | (is off | went off | is out) on (overload | thermal) | runs and (trips | kicks off | cuts out) | (is | keeps [on]) tripping) [on [the] (overload | thermal)]',
      },
      {
        words: 'compressor tries to start',
        say: "[the] compressor (tries | is trying) to start [but (can't | won't | doesn't)]",
      },
    ],
  },
  {
    id: 'compressor-very-hot',
    name: 'compressor is very hot',
    aloud: 'compressor is burning to the touch',
    say: '[the] compressor (is | feels) ([very | really | too | burning] hot [as hell | as a pistol | to [the] touch] | hot as (hell | a pistol) | burning up | too hot to touch | burning [to the touch]) | [the] top of the compressor is ([very | really | too | burning] hot | burning up)',
  },
  {
    id: 'contactor-pulled-in',
    name: 'contactor is pulled in',
    say: '[the] contactor (is (pulled | sucked) in | pulled in | is engaged | pulls in | pulled right in)',
    // May also tell of one that was fitted, or that hangs.
    saidAs: [{ words: 'contactor is closed', say: '[the] contactor is (in | closed)', unsure: true }],
  },
  {
    id: 'contactor-not-pulled-in',
    name: 'contactor is not pulled in',
    say: "[the] contactor ([is] (buzzing | humming | buzzes | hums) but [is] not (pulling in | pulled in | closing) | (is not | isn't | ain't | not) (in | pulled in | pulling in | closed | engaged) | is [dropped] out | is open | (will not | won't) (pull in | close | engage) | (does not | doesn't | did not | didn't) (pull in | close | engage))",
  },
  {
    id: 'contacts-burnt',
    name: 'contacts are burnt',
    say: '[the] ([contactor] (contacts | points) | (contacts | points) on the contactor) (are | look) [all | really | pretty | badly] ((burnt | burned) [up] | black | [pretty] burnt up | cooked) [[real | pretty] bad | badly]',
    saidAs: [
      {
        words: 'contacts are pitted',
        say: '[the] ([contactor] (contacts | points) | (contacts | points) on the contactor) (are | look) [all | really | pretty | badly] pitted [[real | pretty] bad | badly]',
      },
    ],
  },
  {
    id: 'contacts-stuck',
    name: 'contacts are stuck closed',
    say: "[the] [contactor] (contacts | points) are (stuck [closed] | welded [shut | closed]) | [the] contactor (is (stuck [closed | in] | welded [shut | closed] | hung up | holding in) | stays (in | closed) | holds in | (won't | will not | doesn't | does not) (drop out | let go | open [up] | release))",
  },
  {
    id: 'capacitor-swollen',
    name: 'capacitor is swollen',
    say: '[the] (capacitor | cap) (is | looks) (swollen [up] | bulged [out] | bulging | domed | puffed up) [on [the] top | at the top | [real | pretty] bad | badly] | [the] top of the (capacitor | cap) (is | looks) (swollen | bulged | bulging | domed)',
    saidAs: [{ words: 'capacitor is leaking', say: '[the] (capacitor | cap) (is leaking | leaks) [oil]' }],
  },
  {
    id: 'blower-running',
    name: 'blower is running',
    say: '[the] (blower | indoor fan | blower motor) ((is | is now) (running | on | going | turning) | runs)',
  },
  {
    id: 'blower-not-running',
    name: 'blower is not running',
    say: "[the] (blower | indoor fan | blower motor) ((is not | isn't | ain't | not) [even] (running | on | going | turning | coming on) | (won't | will not) (run | start | come on) | (does not | doesn't) (run | start) | (is | has) stopped | is off)",
  },
  {
    id: 'blower-spins-freely',
    name: 'blower spins freely by hand',
    say: '[the] (blower | blower wheel) (spins | turns | is) (free | freely | easy | easily) [by hand]',
  },
  {
    id: 'blower-stiff',
    name: 'blower is stiff by hand',
    say: '[the] (blower | blower wheel) (is | feels | turns) (stiff | tight | hard | seized | rough) [by hand]',
  },
  {
    id: 'filter-dirty',
    name: 'filter is dirty',
    say: '[the] [air] filter (is | looks) ([really | very | pretty] (dirty | nasty) | filthy | black)',
    saidAs: [
      {
        words: 'filter is clogged',
        say: '[the] [air] filter (is | looks) ([really | completely | all] (plugged | clogged) [up | solid] | packed [solid] | loaded [up]) [with (dirt | lint | dust | hair | dog hair)]',
      },
    ],
  },
  {
    id: 'filter-clean',
    name: 'filter is clean',
    say: '[the] [air] filter (is | looks) ([pretty | real] clean | [brand] new | fine | good | okay)',
  },
  {
    id: 'coil-iced',
    name: 'indoor coil is iced',
    say: "[the] ([indoor | evaporator | evap] coil | evaporator) (is | looks) ([all] iced [over | up] [solid] | [all] frozen [up | over | solid] | [[a] solid | a block of | a solid block of] ice) | [there is | there's] ice [all over | on] the [indoor | evaporator | evap] coil",
  },
  {
    id: 'outdoor-coil-dirty',
    name: 'outdoor coil is dirty',
    say: '[the] (outdoor | condenser | outside) coil (is | looks) ([really | very | pretty] dirty | filthy)',
    saidAs: [
      {
        words: 'outdoor coil is clogged',
        say: '[the] ((outdoor | condenser | outside) coil | condenser) (is | looks) [really | completely | all] (plugged | clogged | matted | packed) [solid | [over | up] [with (cottonwood | dirt | lint | grass [clippings] | leaves | hair | dog hair | fuzz)]]',
      },
    ],
  },
  {
    id: 'outdoor-coil-clean',
    name: 'outdoor coil is clean',
    say: '[the] (outdoor | condenser | outside) coil (is | looks) (clean | fine | good)',
  },
  {
    id: 'drain-pan-full',
    name: 'drain pan is full',
    say: '[the] [drain | condensate] pan is ([all the way] full [of water] | backed up | overflowing | filled up) | water in the [drain] pan',
    saidAs: [
      {
        words: 'drain is clogged',
        say: '[the] [condensate] drain [line] is (plugged [up] | backed up | clogged [up])',
      },
    ],
  },
  {
    id: 'oil-stain',
    name: 'oil stain at a joint',
    say: "[there is | there's | got | i've got | i have | i see | i can see] (oil [stain | residue] | [an] (oily | oil) (spot | stain)) (at | on | around) (a | the) (joint | fitting | braze joint | flare [nut] | [service | suction | liquid] valve | coil | line set | (suction | liquid) line | valve core | schrader)",
  },
  {
    id: 'thermostat-blank',
    name: 'thermostat is blank',
    say: '[the] $stat (is | screen is | display is | went) (blank | dead | dark) | [the] $stat has (no (display | screen) | nothing on (it | the screen)) | no display on the $stat',
  },
  {
    id: 'thermostat-calling',
    name: 'thermostat is calling for cooling',
    say: '[the] $stat (is calling | calls) [for (cool | cooling)] | (calling for | there is a call for) (cool | cooling) | call on',
  },
  {
    id: 'thermostat-not-calling',
    name: 'thermostat is not calling',
    say: "[the] $stat ((is not | isn't | ain't | not) calling | is satisfied) [for (cool | cooling)] | no call [for (cool | cooling)] | call off",
  },
  {
    id: 'breaker-tripped',
    name: 'breaker is tripped',
    say: '[the] (breaker | g f c i | ground fault breaker) (is tripped | tripped | has tripped | trips | was tripped | is in the middle) [when i got here | when i showed up]',
  },
  {
    id: 'covers-on',
    name: 'covers are on',
    say: '[all] [the] (covers | panels) are [back] (on | in place) | (covers | panels) [back] on | [the] (cover | panel) is back on',
  },
  {
    id: 'compressor-runs-then-trips',
    name: 'compressor runs, then trips',
    say: '[the] compressor (runs (then | and then | a while then | for a while then) (trips | cuts out | stops | kicks off) | ran then tripped)',
  },
  {
    id: 'compressor-not-hot',
    name: 'compressor is not hot',
    aloud: 'compressor is cool',
    say: "[the] compressor ((is not | isn't | ain't | not) hot | is cool | is cold)",
  },
  {
    id: 'second-stage-loads',
    name: 'amps rise with second stage',
    say: '[the] [compressor] amps (rise | rose | go up | went up | climb | jump | jumped) with (y two | [the] second stage) [on | back on] | [the] second stage (loads | loads up | comes in | kicks in | makes a difference)',
  },
  {
    id: 'second-stage-no-change',
    name: 'amps do not rise with second stage',
    say: "[the] [compressor] amps ((do not | don't | did not | didn't) (rise | change | go up | move) | (stay | stayed) [the same | put]) with (y two | [the] second stage) [on | back on] | [the] second stage ((does not | doesn't | did not | didn't | won't | will not) (load [up] | come in | kick in) | makes no difference)",
  },
  {
    id: 'contacts-clean',
    name: 'contacts are clean',
    say: '[the] [contactor] (contacts | points) (are | look) (clean | good | fine)',
  },
  {
    id: 'capacitor-not-swollen',
    name: 'capacitor is not swollen',
    say: "[the] (capacitor | cap) ((is not | isn't | ain't | not) (swollen | bulged | bulging) | is flat | looks (fine | good))",
  },
  {
    id: 'coil-clear',
    name: 'indoor coil is clear of ice',
    say: 'no ice on the [indoor | evaporator | evap] coil | [the] (indoor | evaporator | evap) coil is (clear | clear of ice | free of ice)',
  },
  { id: 'drain-pan-dry', name: 'drain pan is dry', say: '[the] [drain | condensate] pan is (dry | empty)' },
  {
    id: 'no-oil-stain',
    name: 'no oil stain',
    aloud: 'joints are clean',
    say: 'no oil [stain | spot] [(at | on) the (joints | joint | fittings)] | [the] joints are (clean | dry)',
  },
  {
    id: 'breaker-on',
    name: 'breaker is set',
    // "breaker is on" is a report of energy, not a look.
    say: "[the] breaker (is set | is holding | (is not | isn't | ain't | not) tripped | was [found] on) | found the breaker on",
  },
  {
    id: 'disconnect-in',
    name: 'disconnect was found in',
    // "disconnect is in" is a report of energy, not a look.
    say: 'found the disconnect (in | on | closed) | [the] disconnect was [found] (in | on | closed)',
  },
  {
    id: 'disconnect-out',
    name: 'disconnect was found out',
    say: 'found the disconnect (out | off | open | pulled) | [the] disconnect was [found] (out | off | open)',
  },
] as const;
export type ObservationId = (typeof OBSERVATIONS)[number]['id'];
export const OBSERVATIONS_BY_ID = rowsBy('id', OBSERVATIONS);

/** Said in these words, it runs though nothing calls for it. */
export const RUNS_WITHOUT_CALL = 'compressor runs without a call';
