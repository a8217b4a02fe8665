import type { HazardId } from '../../../grammar/vocabulary/hazards.ts';
import type { PointId } from '../../../grammar/vocabulary/points.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import type { SpokenCaution, Step, VisitContext } from '../chart/context.ts';

/**
 * One caution: data. `words` are spoken the first time for each caution and zone and must be acknowledged; after that
 * the single word "Live" (or `again`) leads the prompt. No wording calls anything safe, suggests a value, or holds one
 * of the words that are listened for while the mouth speaks.
 */
export interface Caution {
  readonly id: string;
  readonly words: string;
  readonly again: string;
  readonly source: string;
  /** Hazards of the diagnosis that these words cover already. */
  readonly covers?: readonly HazardId[];
}

export const CAUTIONS = [
  {
    id: 'live-line',
    words:
      'Caution: live line voltage. Meter rated for it, leads in the volt jacks, gloves and glasses on, rings off, dry footing.',
    again: 'Live.',
    source: 'NFPA 70E 120.5 and Table 130.4; IEC 61010-2-030 category III; ASTM D120 gloves',
  },
  {
    id: 'live-control',
    words:
      'Caution: live control circuit. Line voltage may stand beside it. Keep both probes on the control terminals.',
    again: 'Live.',
    source: 'common practice',
  },
  {
    id: 'prove-as-live',
    words: 'Caution: treat it as live until the meter shows otherwise. A thermostat or a contactor is not isolation.',
    again: 'As live.',
    source: 'NFPA 70E 120.5; 29 CFR 1910.333(b)(2)(ii)',
  },
  {
    id: 'switch-off',
    words: 'Caution: call off first. A pull-out is not a load switch. Stand to one side.',
    again: 'Call off first.',
    source: 'common practice',
  },
  {
    id: 'capacitor-charge',
    words: 'Caution: the capacitor may hold a charge. Discharge each section through a resistor, then measure.',
    again: 'May be charged.',
    covers: ['charge-stays', 'capacitor-charge'],
    source: 'common practice (20 kilohm, 2 watt); NEC 460.6 by analogy',
  },
  {
    id: 'energise',
    words: 'Caution: covers on, tools and hands clear. The unit may start by itself.',
    again: 'Hands clear.',
    source: 'common practice',
  },
  {
    id: 'reset-once',
    words: 'Caution: before this one reset, read each winding to the shell. Compressor cover stays on.',
    again: 'One reset.',
    source: 'common practice: a grounded winding can vent the terminal',
  },
  {
    id: 'running-parts',
    words:
      'Caution: running fan and a discharge line that burns. Place the clamp while it is dead, step back, then energise.',
    again: 'Running parts.',
    source: 'common practice',
    covers: ['moving-fan', 'hot-line'],
  },
  {
    id: 'contactor-by-hand',
    words: 'Never push a contactor in by hand while it is fed.',
    again: 'Hands off the armature.',
    source: 'common practice: an arc at the contacts, and a load that starts on whoever holds it',
  },
  {
    id: 'refrigerant-pressure',
    words: 'Caution: refrigerant under pressure, it burns by frost. Glasses and gloves on, hoses clear of the fan.',
    again: 'Under pressure.',
    source: 'ASHRAE Standard 15 user notes, from memory; common practice',
    covers: ['pressurised-refrigerant'],
  },
  {
    id: 'nitrogen-test',
    words: 'Caution: dry nitrogen through a regulator, not above the nameplate test pressure. Never a torch on it.',
    again: 'Nitrogen.',
    source: 'common practice: never oxygen, never without a regulator',
  },
  {
    id: 'insulation-test',
    words: 'Caution: insulation test. Electronics lifted off first, and never on a compressor in vacuum.',
    again: 'Electronics off.',
    source: "common practice; compressor makers' instructions govern",
  },
] as const satisfies readonly Caution[];

export type CautionId = (typeof CAUTIONS)[number]['id'];

/** Spoken once in a visit, behind its first caution. */
export const GOVERNING_WORDS = "Local codes, the maker's instructions and licensed practice govern.";

/**
 * What a hazard of the diagnosis adds to a caution, for hands and eyes. Those without words here are covered by the
 * caution of the step itself. In the order of the danger: the first due ones are spoken.
 */
export const HAZARD_WORDS: readonly (readonly [HazardId, string])[] = [
  ['terminal-venting', 'A grounded winding can blow a terminal out: compressor cover stays on.'],
  ['flammable-refrigerant', 'Flammable refrigerant: ventilate, keep flame and spark away.'],
  ['capacitor-high-voltage', 'The capacitor runs above four hundred volts.'],
  ['charge-stays', 'The capacitor may not bleed down by itself.'],
  ['back-feed', 'Back-feed possible: both load lugs can be live with nothing between them.'],
  ['one-pole-leaves-leg', 'A one-pole contactor leaves a leg on the load side.'],
  ['contactor-may-not-open', 'The contactor may stay closed without a call.'],
  ['breaker-back-fed', 'An open breaker pole can be back-fed.'],
  ['line-side-stays-live', "The disconnect's line side stays live."],
  ['starts-after-reset', 'The compressor can restart by itself.'],
  ['moving-fan', 'The fan can start without warning.'],
  ['hot-line', 'The discharge line burns.'],
  ['pressurised-refrigerant', 'Refrigerant under pressure: glasses and gloves.'],
  ['control-stays-live', 'Twenty four volts stays live with the disconnect out.'],
];
const HAZARD_SOURCE = 'circuit solution of a plausible fault; common practice';
/** So many warnings at most in one prompt, the step's own first: the talk stays shorter than the work it guards. */
const WARNINGS_A_PROMPT = 3;

/** The cautions that belong to a step by what it does, in the order they are spoken. */
export function cautionsFor(step: Step): readonly CautionId[] {
  if (step.ask.kind === 'action') {
    switch (step.ask.done) {
      case 'power-off':
        return ['switch-off'];
      case 'absence-proved':
        return ['prove-as-live'];
      case 'capacitors-discharged':
        return ['capacitor-charge'];
      case 'power-on':
        return ['energise'];
      default:
        return [];
    }
  }
  if (step.ask.kind === 'reading' && step.ask.quantity === 'insulation') return ['insulation-test'];
  if (step.ask.kind === 'reading' && step.ask.quantity === 'pressure') {
    return [step.ask.at[0] === 'system' ? 'nitrogen-test' : 'refrigerant-pressure'];
  }
  if (step.ask.kind === 'look' || step.needs.power !== 'on' || step.zone === 'none') return [];
  if (step.ask.quantity === 'current') return ['running-parts'];
  if (step.ask.quantity !== 'voltage' && step.ask.quantity !== 'voltage-dc') return [];
  const atContactor = step.ask.at.some((point) => CONTACTOR_POINTS.includes(point));
  return atContactor ? [liveCaution(step.zone), 'contactor-by-hand'] : [liveCaution(step.zone)];
}

/** Where a technician is tempted to push the armature in. */
const CONTACTOR_POINTS: readonly PointId[] = ['L1', 'L2', 'T1', 'T2', 'coil-1', 'coil-2'];

/** The caution that belongs to a live voltage in a zone. */
export function liveCaution(zone: ZoneId): CautionId {
  return zone === 'control' ? 'live-control' : 'live-line';
}

/** A blown fuse or a tripped breaker may stand for a grounded winding: power goes back once, and only after a look. */
function resetCaution(step: Step, context: VisitContext): readonly CautionId[] {
  const powerOn = step.ask.kind === 'action' && step.ask.done === 'power-on';
  const overcurrent = context.parts.some(({ part }) => part === 'fuse' || part === 'breaker');
  const tripped = context.evidence.some(
    (item) => item.kind === 'observation' && item.observation === 'breaker-tripped',
  );
  return powerOn && (overcurrent || tripped) ? ['reset-once'] : [];
}

/** What is to be spoken and acknowledged before a step: each once for its zone in a visit. */
export function dueCautions(step: Step, context: VisitContext): readonly SpokenCaution[] {
  const isDue = ({ id }: { readonly id: string }) => !context.acknowledged.includes(cautionKey(id, step.zone));
  const all = [...cautionsFor(step), ...resetCaution(step, context)].map(cautionById);
  const own = all.filter(isDue);
  if (all.length === 0 || (own.length === 0 && context.cautionedFor === step.id)) return own;
  const covered = all.flatMap((one) => one.covers ?? []);
  const hazards = HAZARD_WORDS.filter(([id]) => (step.hazards as readonly string[]).includes(id))
    .map(([id, words]) => ({ id, words, source: HAZARD_SOURCE }))
    .filter((one) => isDue(one) && !covered.includes(one.id))
    .slice(0, Math.max(0, WARNINGS_A_PROMPT - own.length));
  return [...own, ...hazards];
}

export function cautionKey(id: string, zone: ZoneId | 'none'): string {
  return `${id}@${zone}`;
}

export function cautionById(id: CautionId): Caution {
  const found = CAUTIONS.find((caution) => caution.id === id);
  if (found === undefined) throw new Error(`no caution ${id}`);
  return found;
}
