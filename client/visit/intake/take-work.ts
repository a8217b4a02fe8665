import type { Meaning } from '../../../grammar/phrases/meaning.ts';
import type { WireMove } from '../../../grammar/visit/events.ts';
import { REPAIR } from '../../../grammar/visit/evolve.ts';
import { isRefrigerantOpened } from '../../../grammar/visit/refrigerant-work.ts';
import { wireMoves } from '../../../grammar/visit/standing.ts';
import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import type { FittedPartId } from '../../../grammar/vocabulary/parts.ts';
import { isPoint } from '../../../grammar/vocabulary/points.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { BECAUSE } from '../../words/talk/reasons.ts';
import { askedPlateWords, nameplateWords } from '../../words/things/nameplate-words.ts';
import { partWords } from '../../words/things/part-words.ts';
import { UNNAMED_TERMINAL, wireWords } from '../../words/things/wire-words.ts';
import type { VisitContext } from '../chart/context.ts';
import type { Turn } from '../chart/turn.ts';
import { checkPart } from '../rules/check-part.ts';
import { handsAtPart, handsAtWire } from '../rules/hands-at.ts';
import { doubtLanding, landingRows, looseWires, spansSwitch } from '../rules/landings.ts';
import { CHARGE, repairedBy, repairOf } from '../rules/repairs.ts';
import { unitLacks } from '../rules/unit-lacks.ts';
import { paceOf } from '../steps/ask-step.ts';
import { PROVE_PLAN } from '../steps/plans.ts';
import { PLATE_PLAN } from '../steps/plate-steps.ts';
import { gateUnit } from './gate-unit.ts';
import { unfitting } from './take-answer.ts';
import { warnByHand } from './take-deed.ts';
import { notProvenDead, tellUnproven } from './tell-unproven.ts';

/** A part or a charge, with what was said of it. */
interface FittedPart {
  readonly part: FittedPartId;
  readonly ratings: Readonly<Record<string, number | string>>;
}
type Of<K extends Meaning['kind']> = Extract<Meaning, { kind: K }>;

/** A nameplate value beats every default from then on, and the diagnosis is asked again for the unit it describes. */
export function takeNameplate(turn: Turn, plate: Of<'nameplate'>): void {
  turn.record({
    type: 'nameplate.logged',
    field: plate.field,
    value: plate.value,
    ...(plate.unit === undefined ? {} : { unit: plate.unit }),
  });
  const { step, passedBy } = turn.context;
  const passed = PLATE_PLAN.filter(({ plate: [field] = [], id }) => field === plate.field && passedBy.includes(id));
  if (passed.length > 0) turn.record({ type: 'steps.settled', steps: passed.map(({ id }) => id) });
  const isAsked = step?.plate?.some((field) => field === plate.field) === true;
  const words = isAsked && paceOf(turn.context) === 'brief' ? askedPlateWords : nameplateWords;
  turn.say('readback', words(plate.field, plate.value, plate.unit));
  doubtFitted(turn);
  gateUnit(turn);
}

/** A plate that is read when the fuse or breaker stands already: one that is too large is doubted then. */
function doubtFitted(turn: Turn): void {
  const { parts, unit, plate } = turn.context;
  for (const { part, ratings, number, words, doubts } of parts) {
    if (!isOvercurrent(part) || doubts.length > 0) continue;
    const refused = checkPart(part, ratings, unit, plate).filter(({ weight }) => weight === 'refuse');
    for (const doubt of refused) turn.record({ type: 'part.doubted', part, ...doubt, number });
    if (refused.length > 0)
      turn.say(
        'warning',
        SAY.fittedBefore(
          words,
          refused.map(({ why }) => why),
        ),
      );
  }
}

/**
 * A part fitted: its ratings are held against the nameplate; a part that is refused stays in only at a yes, as an open
 * item. What it cures restarts the diagnosis from the readings that still hold, and the proof begins.
 */
export function takePart(turn: Turn, part: Of<'part'>, confirmed: boolean): void {
  const { context } = turn;
  const doubts = checkPart(part.part, part.ratings, context.unit, context.plate);
  const told = isOvercurrent(part.part) && !confirmed ? { words: partWords(part.part, part.ratings) } : {};
  for (const doubt of doubts) {
    turn.record({ type: 'part.doubted', part: part.part, ...doubt, ...(doubt.weight === 'refuse' ? told : {}) });
  }
  const refused = doubts.filter((doubt) => doubt.weight === 'refuse').map((doubt) => doubt.why);
  if (refused.length > 0 && !confirmed) {
    tellUnproven(turn, partWords(part.part, part.ratings), handsAtPart(part.part, [], context), 'alone');
    if (isOvercurrent(part.part)) {
      // Behind another question it is said at once all the same.
      if (turn.context.questions.length > 0) turn.say('warning', SAY.overcurrentRefused(refused));
      turn.ask({ kind: 'confirm-meaning', meaning: part, wants: 'reason' }, SAY.overcurrentRefused(refused));
    } else turn.ask({ kind: 'confirm-meaning', meaning: part, confirmed: true }, SAY.partDoubted(refused));
    return;
  }
  // Of a part that was asked back it was told then.
  const hands = refused.length > 0 ? 'told before' : 'just now';
  fitPart(turn, part, refused, warningsOf(doubts), hands);
}

/** A part that was refused is kept for a reason that was spoken: it stands beside what was held against it. */
export function keepPart(turn: Turn, part: Of<'part'>, reason: string): void {
  const { unit, plate } = turn.context;
  const doubts = checkPart(part.part, part.ratings, unit, plate);
  const refused = doubts.filter(({ weight }) => weight === 'refuse').map(({ why }) => why);
  turn.record({ type: 'note.taken', text: reason });
  fitPart(turn, part, [...refused, BECAUSE.keptAllTheSame(reason)], warningsOf(doubts), 'told before');
}

const warningsOf = (doubts: ReturnType<typeof checkPart>): readonly string[] =>
  doubts.filter(({ weight }) => weight === 'warn').map(({ why }) => why);

/** More amps than the unit allows let a fault burn on: a yes does not fit one, a reason does. */
function isOvercurrent(part: string): part is 'fuse' | 'breaker' {
  return part === 'fuse' || part === 'breaker';
}

function fitPart(
  turn: Turn,
  part: FittedPart,
  refused: readonly string[],
  warnings: readonly string[],
  hands: 'just now' | 'told before' = 'just now',
): void {
  const { context } = turn;
  const suspects = context.assessment?.suspects.map((suspect) => suspect.fault) ?? [];
  const repairs = repairedBy(
    part.part,
    context.finding === undefined ? suspects : [context.finding.fault, ...suspects],
  );
  const words = partWords(part.part, part.ratings);
  const isUpkeep = isChangedAnyway(part.part, repairs, context);
  if (!isUpkeep) stateUnprovedFinding(turn, repairs);
  const number = context.readingCount + 1;
  const open = notProvenDead(turn, handsAtPart(part.part, repairs, context));
  turn.record({ type: 'part.fitted', part: part.part, ratings: part.ratings, repairs, number, words, doubts: refused });
  if (hands === 'just now') tellUnproven(turn, words, open);
  // A weight was read back as a reading already.
  if (part.part !== CHARGE) turn.say('readback', SAY.fitted(words));
  if (warnings.length > 0) turn.say('warning', warnings.join(' '));
  // A part in the refrigerant circuit is half the repair of a charge: what is weighed in completes it. Where that was
  // opened, its own steps lead there.
  const chargeIsDue = context.finding !== undefined && repairOf(context.finding.fault) === 'charge';
  if (isUpkeep) return;
  if (!chargeIsDue || part.part === CHARGE || isRefrigerantOpened(turn.context)) {
    beginProof(turn, [...PROOF_STEPS, TUG]);
  }
}

/** A filter is changed on any visit: where something else leads it is upkeep and ends no search. */
function isChangedAnyway(
  part: string,
  repairs: readonly FaultId[],
  { finding, phase, assessment }: VisitContext,
): boolean {
  const leading = finding?.fault ?? assessment?.suspects[0]?.fault;
  const isSought = finding === undefined && phase === 'repair';
  return part === 'filter' && !isSought && (leading === undefined || !repairs.includes(leading));
}

const TUG = 'repair.tug-tested';
/** What is proved anew after each repair. */
export const PROOF_STEPS: readonly string[] = [...PROVE_PLAN.map(({ id }) => id), 'energy.covers-on'];

/** The repair stands: its proof begins, whatever of it was read before. */
export function beginProof(turn: Turn, steps: readonly string[]): void {
  const again = steps.filter((id) => turn.context.settled.includes(id));
  if (again.length > 0) turn.record({ type: 'steps.reopened', steps: again });
  turn.record({ type: 'steps.settled', steps: [REPAIR] });
}

/**
 * Refrigerant weighed in, in the unit of the scale: a repair where the finding, or a suspect more likely than not, is
 * one that it cures; otherwise a reading like any other.
 */
export function takeCharge(turn: Turn, reading: Reading): void {
  if (reading.quantity !== 'mass' || typeof reading.value !== 'number' || reading.value <= 0) return;
  // What went into an opened circuit out of its order is to come out again.
  const { opened, charged } = turn.context.refrigerantWork;
  if (opened && charged === undefined) return;
  const { assessment, finding } = turn.context;
  const leading = assessment?.suspects[0];
  const suspected =
    finding?.fault ?? (leading !== undefined && leading.probability >= SUSPECTED ? leading.fault : undefined);
  if (suspected === undefined || repairedBy(CHARGE, [suspected]).length === 0) return;
  fitPart(turn, { part: CHARGE, ratings: { [reading.unit]: reading.value } }, [], []);
}

const SUSPECTED = 0.5;

/** A part fitted before the diagnosis was done: the leading suspect it cures is stated with the doubt that is left. */
export function stateUnprovedFinding(turn: Turn, repairs: readonly FaultId[]): void {
  const { finding, assessment } = turn.context;
  const cured = assessment?.suspects.find((suspect) => repairs.includes(suspect.fault));
  if (finding !== undefined || cured === undefined) return;
  turn.record({
    type: 'finding.stated',
    fault: cured.fault,
    probability: cured.probability,
    evidence: unfitting(turn.context),
  });
}

/** A wire or a jumper moved: recorded before it moves, checked and read back when it lands. */
export function takeWire(turn: Turn, meaning: Of<'wire'>, confirmed: boolean): void {
  const { wire } = meaning;
  const doubt = confirmed ? undefined : doubtWire(turn, wire);
  if (doubt !== undefined) {
    turn.record({ type: 'landing.doubted', wire, why: doubt });
    tellUnproven(turn, wireWords(wire), handsAtWire(whereMoved(turn, wire), turn.context), 'alone');
    turn.ask({ kind: 'confirm-meaning', meaning, confirmed: true }, SAY.wireDoubted(wire, doubt));
    return;
  }
  const hands = handsAtWire(whereMoved(turn, wire), turn.context);
  turn.record({ type: 'wire.moved', wire });
  // Of what was asked back it was told then.
  if (!confirmed) tellUnproven(turn, wireWords(wire), hands);
  if (spansSwitch(wire)) warnByHand(turn, SAY.bypassed, false);
  if (turn.context.settled.includes(TUG)) turn.record({ type: 'steps.reopened', steps: [TUG] });
  turn.say('readback', SAY.wireMoved(wire));
}

/** A wire that lands, or a jumper that comes off, without a place: where it was told of before. */
function whereMoved({ context }: Turn, wire: WireMove): Pick<WireMove, 'from' | 'to'> {
  if (wire.from !== undefined || wire.to !== undefined) return wire;
  const moves = wireMoves(context);
  if (wire.action === 'landed') return { from: looseWires(moves).at(-1)?.from ?? UNNAMED_TERMINAL };
  if (wire.action !== 'jumper-off') return wire;
  return landingRows(moves).findLast(({ state }) => state === 'jumper') ?? wire;
}

/** A terminal that the unit is listed without, or a landing where the wire does not belong. */
function doubtWire(turn: Turn, wire: WireMove): string | undefined {
  const { unit } = turn.context;
  const lacks = unitLacks(
    unit,
    [wire.from, wire.to].filter((end) => isPoint(end)),
  );
  if (lacks !== undefined) return SAY.lacks(lacks);
  return wire.action === 'landed' ? doubtLanding(wireMoves(turn.context), wire) : undefined;
}
