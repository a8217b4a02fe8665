import type { Correction, Report } from '../../../grammar/phrases/meaning.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { meaningWords } from '../../words/things/meaning-words.ts';
import type { Step, VisitContext } from '../chart/context.ts';
import type { Turn } from '../chart/turn.ts';
import { cautionsFor } from '../rules/cautions-due.ts';
import { DEAD_BELOW_VOLTS } from '../rules/dead-threshold.ts';
import { mayBeInEither } from '../rules/may-be-in-either.ts';
import { zoneOf } from '../steps/plans.ts';

/** A trainee without a supervisor's word. */
export function isAlone({ role, supervisor }: VisitContext): boolean {
  return role === 'trainee' && supervisor === undefined;
}

/**
 * A trainee's live reading waits as a step that asked for it would have: it is kept, counts for nothing, and is read
 * again under a supervisor. Nothing that speaks against a proof is held back by that: `danger` is heeded at once.
 */
export function readingWaits(turn: Turn, reading: Reading, danger: () => void): boolean {
  if (!isAlone(turn.context) || !wantsSupervisor(reading)) return false;
  danger();
  keep(turn, { words: meaningWords({ kind: 'reading', reading }) ?? '', reading });
  return true;
}

/** The same of a proof of absence of voltage, whole or by its meter, and of a discharge; volts in it act at once. */
export function proofWaits(turn: Turn, report: Report): boolean {
  if (!isAlone(turn.context)) return false;
  if (report.type === 'absence-of-voltage') {
    if (report.values.some((value) => Math.abs(value) >= DEAD_BELOW_VOLTS)) return false;
  } else if (report.type !== 'meter-proof' && report.type !== 'discharged') return false;
  keep(turn, { words: meaningWords({ kind: 'report', report }) ?? '', report });
  return true;
}

/** Once a supervisor has acknowledged, what waited is asked anew: it was not read under anybody's eyes. */
export function askWaiting(turn: Turn, waiting: VisitContext['waiting']): void {
  const places = waiting.flatMap(({ reading }) => (reading === undefined ? [] : [reading.at]));
  const other = waiting.some(({ reading }) => reading === undefined);
  turn.say('answer', SAY.supervised(places, other));
}

/** Set right while it waits: the one that was wrong is withdrawn, the right one waits in its place, and what it tells of power is heeded. */
export function correctWaiting(
  turn: Turn,
  number: number,
  correction: Correction,
  danger: (reading: Reading) => void,
): void {
  const reading = turn.context.waiting.find((line) => line.number === number)?.reading;
  if (reading === undefined || (correction.value === undefined && correction.at === undefined)) {
    turn.say('question', SAY.correctWhat);
    return;
  }
  if (mayBeInEither(reading, correction, turn.context)) {
    turn.say('question', SAY.correctWithUnit);
    return;
  }
  const right: Reading = {
    ...reading,
    ...(correction.value === undefined ? {} : { value: correction.value }),
    ...(correction.unit === undefined ? {} : { unit: correction.unit }),
    ...(correction.at === undefined ? {} : { at: correction.at }),
  };
  turn.record({ type: 'waiting.withdrawn', number });
  danger(right);
  keep(turn, { words: meaningWords({ kind: 'reading', reading: right }) ?? '', reading: right });
}

export function takeBackWaiting(turn: Turn, number: number): void {
  const words = turn.context.waiting.find((line) => line.number === number)?.words ?? '';
  turn.record({ type: 'waiting.withdrawn', number });
  turn.say('readback', SAY.partBack(words));
}

function keep(
  turn: Turn,
  what: { readonly words: string; readonly reading?: Reading; readonly report?: Report },
): void {
  // A discharge of two sections is told once.
  const isKept = what.reading === undefined && turn.context.waiting.some(({ words }) => words === what.words);
  if (isKept) return;
  turn.record({ type: 'reading.waits', number: turn.context.events + 1, ...what });
  turn.say('warning', SAY.waits(what.words));
}

/** What a step that asks for this reading where power is would be cautioned of. */
function wantsSupervisor(reading: Reading): boolean {
  const { quantity, at } = reading;
  if (reading.bench === true) return false;
  const step: Step = {
    id: 'volunteered',
    source: 'planner',
    ask: { kind: 'reading', quantity, at },
    needs: { power: 'on', call: 'any', bench: false },
    hazards: [],
    zone: zoneOf(at),
  };
  return cautionsFor(step).length > 0;
}
