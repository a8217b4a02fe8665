import { cautionKey } from '../../../grammar/visit/facts.ts';
import { wasSeen } from '../../../grammar/visit/standing.ts';
import type { HazardId } from '../../../grammar/vocabulary/hazards.ts';
import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import {
  type CautionId,
  cautionById,
  HAZARD_SOURCE,
  HAZARD_WORDS,
  type SpokenCaution,
  STANDING_RULES,
} from '../../words/talk/caution-words.ts';
import type { ActionDone, Step, VisitContext } from '../chart/context.ts';
import { flammableCautions } from './flammable.ts';

/** The cautions that belong to what is to be done. */
const CAUTIONS_OF_ACTION: Readonly<Record<ActionDone, readonly CautionId[]>> = {
  'call-on': [],
  'call-off': [],
  'power-off': ['switch-off'],
  'breaker-off': ['breaker-throw'],
  'clamps-placed': [],
  'disconnect-locked': ['switch-off'],
  'absence-proved': ['live-line'],
  'meter-again': [],
  'source-opened': [],
  'capacitors-discharged': ['capacitor-charge'],
  'charge-left': [],
  'part-fitted': [],
  'wires-landed': [],
  'tug-tested': [],
  'covers-on': [],
  'power-on': ['energise'],
  'consent-asked': [],
  'meter-named': [],
  'nameplate-read': [],
  'sound-agreed': [],
  'leak-searched': [],
  'vacuum-isolated': [],
  'thermostat-agreed': [],
  recommended: [],
  'technician-signed': [],
  'customer-signed': [],
  'visit-finished': [],
};

/** Where what is to be done is done at another kind of switch or circuit. */
const CAUTIONS_ELSEWHERE: Readonly<
  Partial<Record<string, Readonly<Partial<Record<ActionDone, readonly CautionId[]>>>>>
> = {
  control: { 'absence-proved': ['live-control'], 'power-off': ['breaker-throw'] },
  'air-handler': { 'power-off': ['breaker-throw'] },
  'disconnect-line': { 'power-off': ['breaker-throw'] },
};

/** The cautions that belong to a step by what it does, in the order they are spoken. */
export function cautionsFor(step: Step): readonly CautionId[] {
  if (step.ask.kind === 'action') {
    return CAUTIONS_ELSEWHERE[step.zone]?.[step.ask.done] ?? CAUTIONS_OF_ACTION[step.ask.done];
  }
  if (step.ask.kind === 'reading' && step.ask.quantity === 'insulation') return ['insulation-test'];
  if (step.ask.kind === 'reading' && step.ask.quantity === 'pressure') {
    return [step.ask.at[0] === 'system' ? 'nitrogen-test' : 'refrigerant-pressure'];
  }
  if (step.ask.kind === 'look') return CAUTIONS_OF_LOOK[step.id] ?? [];
  const isLive = step.needs.power === 'on' || step.live === true;
  if (!isLive || step.zone === 'none') return [];
  if (step.ask.quantity === 'current') return ['running-parts'];
  if (step.ask.quantity !== 'voltage' && step.ask.quantity !== 'voltage-dc') return [];
  return [liveCaution(step.zone)];
}

/** Looks that want a hand, or a clamp. */
const CAUTIONS_OF_LOOK: Readonly<Record<string, readonly CautionId[]>> = {
  'look-fan-by-hand': ['fan-by-hand'],
  'look-blower-by-hand': ['fan-by-hand'],
  'look-compressor-heat': ['shell-heat'],
  // A clamp and a lifted 24 V lead in an open panel that runs.
  'look-second-stage': ['running-parts'],
} satisfies Partial<Record<TestId, readonly CautionId[]>>;

/** The caution that belongs to a live voltage in a zone. */
export function liveCaution(zone: ZoneId): CautionId {
  return zone === 'control' ? 'live-control' : 'live-line';
}

/** A blown fuse or a tripped breaker may stand for a grounded winding: power goes back once, and only after a look. */
function resetCaution(step: Step, context: VisitContext): readonly CautionId[] {
  const powerOn = step.ask.kind === 'action' && step.ask.done === 'power-on';
  const overcurrent = context.parts.some(({ part }) => part === 'fuse' || part === 'breaker');
  const tripped = wasSeen(context, 'breaker-tripped');
  return powerOn && (overcurrent || tripped) ? ['reset-once'] : [];
}

/** What is to be spoken and acknowledged before a step: its own cautions, then what its surroundings add. */
export function dueCautions(step: Step, context: VisitContext): readonly SpokenCaution[] {
  return [...standingRules(step, context), ...ownCautions(step, context), ...hazardCautions(step, context)];
}

/** The standing rules before the first step that has a caution, or with the question for the meter. */
export function standingRules(step: Step, context: VisitContext): readonly SpokenCaution[] {
  const isBefore = cautionsOf(step, context).length > 0 || isOfMeter(step);
  return isBefore && !isStandingTold(context) ? STANDING_RULES.map(cautionById) : [];
}

/** What is told of a step belongs to its zone; the standing rules to none. */
export function cautionZone(id: string, zone: Step['zone']): Step['zone'] {
  return (STANDING_RULES as readonly string[]).includes(id) ? 'none' : zone;
}

/** What belongs to the step, once in a cabinet. */
export function ownCautions(step: Step, context: VisitContext): readonly SpokenCaution[] {
  return cautionsOf(step, context)
    .filter((id) => isDue(id, step, context))
    .map(cautionById);
}

/** What the standing rules tell is told once in a visit, whatever is done later: heard whole, it is not said again. */
export function isStandingTold({ acknowledged, saidLate }: VisitContext): boolean {
  const told = [...acknowledged, ...saidLate];
  return STANDING_RULES.every((id) => told.includes(cautionKey(id, 'none')));
}

/** Before anything is measured: the meter is named together with the rules for it. */
export function isOfMeter({ ask }: Step): boolean {
  return ask.kind === 'action' && ask.done === 'meter-named';
}

function cautionsOf(step: Step, context: VisitContext): readonly CautionId[] {
  return [...cautionsFor(step), ...resetCaution(step, context), ...flammableCautions(step, context)];
}

function isDue(id: CautionId | HazardId, step: Step, context: VisitContext): boolean {
  return !context.acknowledged.includes(cautionKey(id, step.zone));
}

/**
 * What plausible faults add to a step, the gravest first. What the standing rules cover rides along where the step has
 * a caution due, and holds nothing up by itself; nor is a step held up twice.
 */
export function hazardCautions(step: Step, context: VisitContext): readonly SpokenCaution[] {
  const all = cautionsOf(step, context);
  const own = ownCautions(step, context);
  if (all.length === 0) return [];
  if (own.length === 0 && context.cautionedFor === step.id) return [];
  const covered: readonly HazardId[] = all.flatMap((id) => cautionById(id).covers ?? []);
  const standing: readonly HazardId[] = STANDING_RULES.flatMap((id) => cautionById(id).covers ?? []);
  return (Object.entries(HAZARD_WORDS) as [HazardId, string][])
    .filter(([id, words]) => words !== 'nothing' && step.hazards.includes(id) && !covered.includes(id))
    .filter(([id]) => isDue(id, step, context) && (own.length > 0 || !standing.includes(id)))
    .map(([id, words]) => ({ id, words, source: HAZARD_SOURCE }));
}
