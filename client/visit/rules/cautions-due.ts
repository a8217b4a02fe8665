import { cautionKey } from '../../../grammar/visit/facts.ts';
import { wasSeen } from '../../../grammar/visit/standing.ts';
import type { HazardId } from '../../../grammar/vocabulary/hazards.ts';
import type { PointId } from '../../../grammar/vocabulary/points.ts';
import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import {
  type CautionId,
  cautionById,
  HAZARD_SOURCE,
  HAZARD_WORDS,
  type SpokenCaution,
} from '../../words/talk/caution-words.ts';
import type { ActionDone, Step, VisitContext } from '../chart/context.ts';
import { flammableCautions } from './flammable.ts';

/** The cautions that belong to what is to be done. */
const CAUTIONS_OF_ACTION: Readonly<Record<ActionDone, readonly CautionId[]>> = {
  'call-on': [],
  'call-off': [],
  'power-off': ['switch-off'],
  'breaker-off': ['switch-off'],
  'clamps-placed': [],
  'disconnect-locked': ['switch-off'],
  'absence-proved': ['prove-as-live'],
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
  'leak-searched': [],
  'vacuum-isolated': [],
  'thermostat-agreed': [],
  recommended: [],
  'technician-signed': [],
  'customer-signed': [],
  'visit-finished': [],
};

/** The cautions that belong to a step by what it does, in the order they are spoken. */
export function cautionsFor(step: Step): readonly CautionId[] {
  if (step.ask.kind === 'action') return CAUTIONS_OF_ACTION[step.ask.done];
  if (step.ask.kind === 'reading' && step.ask.quantity === 'insulation') return ['insulation-test'];
  if (step.ask.kind === 'reading' && step.ask.quantity === 'pressure') {
    return [step.ask.at[0] === 'system' ? 'nitrogen-test' : 'refrigerant-pressure'];
  }
  if (step.ask.kind === 'look') return CAUTIONS_OF_LOOK[step.id] ?? [];
  const isLive = step.needs.power === 'on' || step.live === true;
  if (!isLive || step.zone === 'none') return [];
  if (step.ask.quantity === 'current') return ['running-parts'];
  if (step.ask.quantity !== 'voltage' && step.ask.quantity !== 'voltage-dc') return [];
  const atContactor = step.ask.at.some((point) => CONTACTOR_POINTS.includes(point));
  return atContactor ? [liveCaution(step.zone), 'contactor-by-hand'] : [liveCaution(step.zone)];
}

/** Looks that want a hand. */
const CAUTIONS_OF_LOOK: Readonly<Record<string, readonly CautionId[]>> = {
  'look-fan-by-hand': ['fan-by-hand'],
  'look-blower-by-hand': ['fan-by-hand'],
  'look-compressor-heat': ['shell-heat'],
} satisfies Partial<Record<TestId, readonly CautionId[]>>;

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
  const tripped = wasSeen(context, 'breaker-tripped');
  return powerOn && (overcurrent || tripped) ? ['reset-once'] : [];
}

/** So many warnings at most in one prompt, the step's own first: the talk stays shorter than the work it guards. */
const WARNINGS_A_PROMPT = 3;

/** What is to be spoken and acknowledged before a step: each once for its zone in a visit. */
export function dueCautions(step: Step, context: VisitContext): readonly SpokenCaution[] {
  const isDue = ({ id }: { readonly id: string }) => !context.acknowledged.includes(cautionKey(id, step.zone));
  const all = [...cautionsFor(step), ...resetCaution(step, context), ...flammableCautions(step, context)].map(
    cautionById,
  );
  const own = all.filter(isDue);
  if (all.length === 0 || (own.length === 0 && context.cautionedFor === step.id)) return own;
  const covered = all.flatMap((one) => one.covers ?? []);
  const hazards = Object.entries(HAZARD_WORDS)
    .filter(([id, words]) => words !== 'nothing' && (step.hazards as readonly string[]).includes(id))
    .map(([id, words]) => ({ id: id as HazardId, words, source: HAZARD_SOURCE }))
    .filter((one) => isDue(one) && !covered.includes(one.id))
    .slice(0, Math.max(0, WARNINGS_A_PROMPT - own.length));
  return [...own, ...hazards];
}
