import type { ReadingLine } from '../../../grammar/visit/facts.ts';
import type { FoldedVisit } from '../../../grammar/visit/fold-visit.ts';
import { samePlaces } from '../../../grammar/visit/judge-reading.ts';
import { openQuestion } from '../../../grammar/visit/standing.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import type { PointId } from '../../../grammar/vocabulary/points.ts';
import type { UnitCode, Value } from '../../../grammar/vocabulary/quantities.ts';
import { bareUnit } from '../../../grammar/vocabulary/unit-choice.ts';
import type { Step, VisitContext } from '../../visit/chart/context.ts';
import { unreadSections } from '../../visit/rules/charged-sections.ts';
import { pairsOf } from '../../visit/rules/proof-plan.ts';

/** A number of the proof that stands: the meter where `at` is missing, and no value where it is still to be read. */
export interface ProofNumber {
  readonly at: readonly PointId[] | undefined;
  readonly value: number | undefined;
  /** It is what is measured now. */
  readonly isNow: boolean;
}

/** What stands large on the page: what is measured now, never what an earlier step measured. */
export type Live =
  | { readonly kind: 'questioned'; readonly reading: Reading; readonly options?: readonly [number, number] }
  | { readonly kind: 'taken'; readonly line: ReadingLine }
  /** A value whose place is asked for. */
  | { readonly kind: 'unplaced'; readonly value: Value; readonly unit?: UnitCode }
  /** Asked for, and not read yet. */
  | { readonly kind: 'awaited'; readonly at: readonly PointId[]; readonly unit: UnitCode }
  | { readonly kind: 'proof'; readonly numbers: readonly ProofNumber[] }
  | { readonly kind: 'nothing' };

export interface LiveValues {
  readonly live: Live;
  /** The latest reading, where it does not stand large: small beside it. */
  readonly last: ReadingLine | undefined;
}

/** The value of the moment: of the open question, else of the proof, else of the step. */
export function liveValues(folded: FoldedVisit, context: VisitContext): LiveValues {
  const latest = folded.readings.findLast((line) => !line.withdrawn);
  const live = liveOf(folded, context, latest);
  const isShown =
    live.kind === 'taken' || live.kind === 'questioned' || live.kind === 'proof' || context.phase === 'closed';
  return { live, last: isShown ? undefined : latest };
}

function liveOf(folded: FoldedVisit, context: VisitContext, latest: ReadingLine | undefined): Live {
  const question = openQuestion(context);
  if (question !== undefined && 'reading' in question) {
    const { reading } = question;
    return question.kind === 'teen-or-ty'
      ? { kind: 'questioned', reading, options: question.options }
      : { kind: 'questioned', reading };
  }
  if (question?.kind === 'which-place') return { ...question, kind: 'unplaced' };
  if (question?.kind === 'what-value') {
    const [{ quantity, at }] = question.of;
    return { kind: 'awaited', at, unit: bareUnit(quantity, context.units) };
  }
  const { step } = context;
  if (context.phase === 'closed') return { kind: 'nothing' };
  const proof = step === undefined ? undefined : proofNumbers(step, context);
  if (proof !== undefined) return { kind: 'proof', numbers: proof };
  // Said since the step was asked, or with nothing asked: it is what is measured now.
  if (latest !== undefined && (step === undefined || latest.seq > askedAt(step, folded)))
    return { kind: 'taken', line: latest };
  return step === undefined ? { kind: 'nothing' } : awaitedOf(step, context);
}

/**
 * The number of the event that asked for a step, or that put it again behind something else; what is only cautioned of
 * yet is after all that was said.
 */
function askedAt(step: Step, { steps, said }: FoldedVisit): number {
  const last = steps.at(-1);
  if (last?.step !== step.id) return Number.POSITIVE_INFINITY;
  return Math.max(last.seq, said.findLast(({ kind }) => kind === 'step')?.seq ?? 0);
}

function awaitedOf(step: Step, context: VisitContext): Live {
  const { ask, zone } = step;
  if (ask.kind === 'reading') return { kind: 'awaited', at: ask.at, unit: bareUnit(ask.quantity, context.units) };
  const isCharge = ask.kind === 'action' && ask.done === 'capacitors-discharged';
  const [section] = isCharge && zone !== 'none' ? unreadSections(zone, context) : [];
  return section === undefined
    ? { kind: 'nothing' }
    : { kind: 'awaited', at: section.at, unit: bareUnit('voltage-dc') };
}

/** Meter, each pair, meter again: those that are read with their volts, and the one that is measured now. */
function proofNumbers(step: Step, { proof }: VisitContext): readonly ProofNumber[] | undefined {
  const isMeter = step.ask.kind === 'action' && (step.ask.done === 'absence-proved' || step.ask.done === 'meter-again');
  if (step.zone === 'none' || !(isMeter || step.id.startsWith(PAIR_STEP))) return undefined;
  const begun = proof?.zone === step.zone ? proof : undefined;
  const asked = step.ask.kind === 'reading' ? step.ask.at : undefined;
  const pairs = pairsOf(step.zone).map((at): ProofNumber => {
    const value = begun?.pairs.find((pair) => samePlaces(pair.at, at))?.value;
    return { at, value, isNow: asked !== undefined && samePlaces(asked, at) };
  });
  return [
    { at: undefined, value: begun?.before, isNow: begun === undefined },
    ...pairs,
    { at: undefined, value: undefined, isNow: begun !== undefined && asked === undefined },
  ];
}

const PAIR_STEP = 'energy.pair@';
