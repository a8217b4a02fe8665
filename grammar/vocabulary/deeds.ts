import { rowsBy } from './rows-by.ts';

/** A switch that protects, as said of bypassing it. */
const CUTOUT =
  '((high | low) [pressure | head] (switch | switches | cutout | control | limit) | pressure (switch | switches) | float [switch] | [blower] door switch | (limit | rollout) switch | switch)';
const THE_CUTOUT = `[a | the | both] ${CUTOUT}`;
const TOOL = 'by hand | with [a | my | the] (screwdriver | stick | tool | pencil | finger)';
const ARMATURE = '(contactor [armature | plunger | button] | armature | plunger)';
const JOINT =
  '(joint | joints | line | lines | drier | fitting | fittings | stub | stubs | coupling | valve | compressor)';
const SHELL = '[the] (compressor [shell | body | dome | top | housing] | shell)';

/** Before what is seen to be so. */
export const SEEN_BEFORE = 'all [the] | with [the] | the | a | both | my';

const LEADS = '(leads | wires | wiring | plug | harness)';
const PUT_OFF = '(took | taken | pulled | removed | lifted | popped)';

/** A part whose leads are taken off it as a whole, and put back: wires of one terminal are named by it. */
function leadsOf<P extends string>(part: P, name: string, called: string) {
  return [
    {
      id: `${part}-leads-off` as `${P}-leads-off`,
      name: `${name} leads are off`,
      say: `(${PUT_OFF} | disconnected | unplugged) [off | out] [all] [the] ${called} ${LEADS} [off | out | loose] | ${PUT_OFF} [all] [the] ${LEADS} off [of] [the] ${called} | (disconnected | unhooked | unplugged | unwired) [the] ${called}`,
      seen: `${called} ${LEADS} (are | is) (off | out | loose | disconnected | unplugged | lifted) | ${LEADS} (are | is) off [of] [the] ${called} | ${called} is (disconnected | unplugged | unhooked)`,
    },
    {
      id: `${part}-leads-on` as `${P}-leads-on`,
      name: `${name} leads are back on`,
      say: `put [all] [the] ${called} ${LEADS} back [on | in] | put [all] [the] ${LEADS} back on [the] ${called} | (reconnected | landed | hooked [back] up | plugged [back] in) [all] [the] ${called} [${LEADS}]`,
      seen: `${called} ${LEADS} (are | is) ([back] on | back | landed | [back] in place | hooked [back] up | reconnected) | ${called} is (reconnected | hooked back up | plugged back in)`,
    },
  ] as const;
}

/**
 * What was done at the unit, or is being done, and is neither a part, a wire, a switch of the supply nor a look. `say`
 * may follow who did it, `seen` is said of how things stand. "brazed the joint" stands with the works: it mends a leak, and lights a
 * flame.
 */
export const DEEDS = [
  {
    id: 'contactor-pressed',
    name: 'contactor is pressed by hand',
    say: `(pressed | pressing | pushed | pushing | held | holding | forced | bumped) [in | down] [the] ${ARMATURE} [in | down | closed] [${TOOL}] | manually (pressed | pushed | engaged | closed) [the] ${ARMATURE} [in]`,
    seen: `${ARMATURE} [is | was | has been] (pressed [in | down] | pushed (in | down)) [${TOOL}] | ${ARMATURE} (is | was) held [in | down | closed] (${TOOL})`,
  },
  {
    id: 'switch-bypassed',
    name: 'switch is bypassed',
    say: `(bypassed | bypassing | defeated | (jumped | jumping | jumpered) [out | around] | shorted across) ${THE_CUTOUT} [out] | (put | placed | added | clipped) (a | the) (jumper [wire] | jump) (across | around | on | over) ${THE_CUTOUT}`,
    seen: `${CUTOUT} (is | was | has been | are) (bypassed | jumped [out] | jumpered [out] | defeated) | jumper is (across | around | over) ${THE_CUTOUT}`,
  },
  {
    id: 'bypass-off',
    name: 'bypass is out',
    say: `(took | pulled | removed | taken) [out] [the | my] bypass [out | off] | put ${THE_CUTOUT} back [in [circuit]] | unbypassed ${THE_CUTOUT}`,
    seen: `bypass is (out | off | gone | removed) | ${CUTOUT} is (no longer bypassed | back in [circuit])`,
  },
  {
    id: 'flame-lit',
    name: 'torch is lit',
    say: `(lit | lighting) [up] [the | a | my] torch | (started | doing [the | some] | still) brazing | (brazing | sweating | soldering) [in | on] [[the | a | both] ${JOINT} [in | on | up] | the leak | it [in]] | brazed [in] ([the] (line | lines | drier | fitting | fittings | stub | stubs | coupling | valve | compressor) [in | on] | it [in]) | (sweated | soldered) [in | on] ([the | a | both] ${JOINT} [in | on | up] | it [in])`,
    seen: 'torch is (lit | on | going | burning) | flame is (lit | on)',
  },
  {
    id: 'vacuum-on',
    name: 'system is in a vacuum',
    say: '((pulling | pulled | drawing | drew) [down] [a | the] [deep] vacuum [on [the] (system | lines | line set)] | (in | under) a [deep] vacuum | (started | turned on | switched on) [the] vacuum [pump])',
    seen: '(system | lines | line set) (is | are) (in | under | on) [a | the] [deep] vacuum | vacuum pump ((is | is now) (on | running | going | pulling | started) | runs | running) | vacuum is (pulling | pulling down)',
  },
  {
    id: 'vacuum-off',
    name: 'vacuum is broken',
    say: '(broke | broken | breaking) [the | a] vacuum [with (refrigerant | gas)]',
    seen: 'vacuum (is | was | has been) (broken | broke) [with (refrigerant | gas)] | system is out of [the | a] vacuum',
  },
  {
    id: 'vacuum-off-nitrogen',
    name: 'vacuum is broken with nitrogen',
    say: '(broke | broken | breaking) [the | a] vacuum with [dry] nitrogen',
    seen: 'vacuum (is | was | has been) (broken | broke) with [dry] nitrogen',
  },
  {
    id: 'shell-touched',
    name: 'hand on the compressor shell',
    say: `(touched | touching | felt) ${SHELL} [by hand | with my hand] | [put | got | have | laid] [my | a] (hand | hands) on ${SHELL}`,
    seen: `(hand is | hands are) on ${SHELL}`,
  },
  ...leadsOf('compressor', 'compressor', 'compressor'),
  ...leadsOf('fan', 'fan motor', '([outdoor | condenser] fan [motor])'),
  ...leadsOf('capacitor', 'capacitor', '([run | dual | start] (capacitor | cap))'),
  ...leadsOf('blower', 'blower motor', '(blower [motor])'),
] as const;
export type DeedId = (typeof DEEDS)[number]['id'];
export const DEEDS_BY_ID = rowsBy('id', DEEDS);

export const LEADS_OF = ['compressor', 'fan', 'capacitor', 'blower'] as const;
/** A part whose leads come off as a whole. */
export type LeadsOf = (typeof LEADS_OF)[number];
