import type { Report } from '../../../grammar/phrases/meaning.ts';
import { MS_A_MINUTE } from '../../../grammar/visit/inputs.ts';
import { OPENS_REFRIGERANT } from '../../../grammar/visit/opens-refrigerant.ts';
import type { RefrigerantCheck, RefrigerantStage, RefrigerantWork } from '../../../grammar/visit/refrigerant-facts.ts';
import {
  judgeRefrigerant,
  pressureAt,
  REFRIGERANT_RULES,
  testLimits,
} from '../../../grammar/visit/refrigerant-rules.ts';
import {
  chargeOfLine,
  isRefrigerantOpened,
  lackingBefore,
  outdoorFahrenheit,
} from '../../../grammar/visit/refrigerant-work.ts';
import { inBaseUnit } from '../../../grammar/vocabulary/in-base-unit.ts';
import type { JobItemId } from '../../../grammar/vocabulary/job-items.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import { SAY_OF_REFRIGERANT } from '../../words/talk/refrigerant-words.ts';
import { deedWords } from '../../words/things/deed-words.ts';
import type { Turn } from '../chart/turn.ts';
import { minutesLeft, type RefrigerantStep } from '../rules/refrigerant-plan.ts';

/** What a reading at the system comes to, logged or set right; `before`: what was known of the circuit without it. */
export function followRefrigerant(turn: Turn, reading: Reading, number: number, before: RefrigerantWork): void {
  const { quantity, at } = reading;
  const value = inBaseUnit(reading);
  if (at[0] !== 'system' || value === undefined) return;
  if (quantity === 'pressure') heedTestLimit(turn, value);
  if (!isRefrigerantOpened(turn.context)) return;
  if (quantity === 'pressure') takePressure(turn, value, number);
  if (quantity === 'vacuum') takeVacuum(turn, value, number);
  if (quantity === 'mass' && value > 0 && turn.context.refrigerantWork.charged === undefined) {
    sayLacking(turn, lacking(turn, 'charged', before));
  }
}

/** What was reported of an opened refrigerant circuit. */
export function followRefrigerantItem(turn: Turn, item: JobItemId): void {
  if (item === 'leak-found') turn.say('answer', SAY_OF_REFRIGERANT.leakFirst);
  if (item !== 'vacuum-isolated' || !isRefrigerantOpened(turn.context)) return;
  if (turn.context.refrigerantWork.isolatedAt !== undefined) stand(turn, 'decay');
  else sayLacking(turn, lacking(turn, 'stood'));
}

const CIRCUIT_DEEDS = ['vacuum-on', 'vacuum-off', 'vacuum-off-nitrogen', 'flame-lit'] as const;
type CircuitDeed = 'opened' | (typeof CIRCUIT_DEEDS)[number];

/** Done to the circuit by hand; undefined where it does nothing to it. */
export function circuitDeed(report: Report): CircuitDeed | undefined {
  if (report.type === 'part-moved') return report.to === 'out' && OPENS_REFRIGERANT[report.part] ? 'opened' : undefined;
  if (report.type !== 'deed') return undefined;
  const { deed } = report;
  return CIRCUIT_DEEDS.find((one) => one === deed);
}

/** A part of the circuit out, a vacuum, a flame: recorded, and what it wants or what it endangers is said. */
export function followCircuitDeed(turn: Turn, report: Report): void {
  const what = circuitDeed(report);
  if (what === undefined || (report.type !== 'part-moved' && report.type !== 'deed')) return;
  turn.record({ type: 'refrigerant.told', what, number: turn.context.events + 1, words: deedWords(report) });
  if (what === 'flame-lit') warnOfFlame(turn);
  if (what === 'vacuum-on' && isRefrigerantOpened(turn.context)) sayLacking(turn, lacking(turn, 'evacuated'));
}

/** Whatever is in the line, under pressure it burns, bursts, or breaks down to what poisons. */
export function warnOfFlame(turn: Turn): void {
  const charge = chargeOfLine(turn.context);
  if (charge === 'none') return;
  const words = SAY_OF_REFRIGERANT.flameOn[charge];
  turn.warn(words, 'outdoor-load');
}

/** An insulation test puts its volts across a compressor that a vacuum no longer insulates: refused, and never evidence. */
export function refusedInVacuum(turn: Turn, reading: Reading): boolean {
  if (!turn.context.refrigerantWork.inVacuum || !isInsulationTest(reading)) return false;
  turn.record({ type: 'reading.refused', reading, reason: 'in-vacuum' });
  turn.warn(SAY_OF_REFRIGERANT.insulationInVacuum, 'outdoor-load');
  return true;
}

/** Megohms between a winding of the compressor and its shell, whatever they were called. */
export function isInsulationTest({
  quantity,
  unit,
  at,
}: Pick<Reading, 'quantity' | 'at'> & { unit?: string }): boolean {
  return (
    quantity === 'insulation' ||
    (quantity === 'resistance' && (unit === 'MOhm' || unit === 'GOhm') && at.includes('shell'))
  );
}

/** The timer of a standing test: whoever has moved on or begun again is not asked. */
export function endStanding(turn: Turn): void {
  const { refrigerantWork: work } = turn.context;
  const name: RefrigerantStep = work.isolatedAt === undefined ? 'testEnd' : 'decay';
  const standing = name === 'decay' ? work.stood === undefined : work.test !== undefined && !work.held;
  if (!standing || minutesLeft(name, turn.context) > 0) return;
  turn.say('answer', SAY_OF_REFRIGERANT.readAgain);
}

function lacking(
  turn: Turn,
  stage: RefrigerantStage,
  work = turn.context.refrigerantWork,
): RefrigerantStage | undefined {
  return lackingBefore(
    stage,
    work,
    turn.context.parked.map(({ step }) => step),
  );
}

/** Out of its order: it stands in the record, and does not count. */
function sayLacking(turn: Turn, stage: RefrigerantStage | undefined): void {
  if (stage !== undefined) turn.say('warning', SAY_OF_REFRIGERANT.outOfOrder(stage));
}

/** Too much pressure is said wherever it stands, opened or not, test or none. */
export function heedTestLimit(turn: Turn, psi: number): void {
  const { high, plated } = testLimits(turn.context);
  if (psi <= high) return;
  const words = SAY_OF_REFRIGERANT.overLimit(high, plated, turn.context.units);
  turn.warn(words, 'outdoor-load');
}

function takePressure(turn: Turn, psi: number, number: number): void {
  const { refrigerantWork: work, now } = turn.context;
  if (work.held === true) return;
  const { low, high } = testLimits(turn.context);
  if (work.test === undefined) {
    const first = lacking(turn, 'held');
    if (first !== undefined) return sayLacking(turn, first);
    if (psi < low && psi <= high) turn.say('warning', SAY_OF_REFRIGERANT.underFloor(low, turn.context.units));
    return;
  }
  if (work.test.from === `reading ${number}`) return stand(turn, 'pressure-test');
  const left = minutesLeft('testEnd', turn.context);
  if (left > 0) return void turn.say('answer', SAY_OF_REFRIGERANT.standsStill(Math.ceil(left)));
  const then = work.test.fahrenheit;
  const here = outdoorFahrenheit(turn.context);
  const expected = then === undefined || here === undefined ? work.test.psi : pressureAt(work.test.psi, then, here);
  judge(turn, 'pressure-test', Math.round((expected - psi) * 10) / 10, now.mono - work.test.mono, number);
}

function takeVacuum(turn: Turn, microns: number, number: number): void {
  const { refrigerantWork: work, now } = turn.context;
  if (work.stood === true) return;
  const first = lacking(turn, 'evacuated');
  if (first !== undefined) return sayLacking(turn, first);
  if (work.isolatedAt === undefined) return judge(turn, 'evacuation', microns, 0, number);
  const left = minutesLeft('decay', turn.context);
  if (left > 0) return void turn.say('answer', SAY_OF_REFRIGERANT.standsStill(Math.ceil(left)));
  judge(turn, 'decay', microns, now.mono - work.isolatedAt, number);
}

function judge(turn: Turn, check: RefrigerantCheck, value: number, ms: number, reading: number): void {
  const judged = judgeRefrigerant(check, value);
  const minutes = Math.round(ms / MS_A_MINUTE);
  turn.record({ type: 'refrigerant.judged', check, value, minutes, judged, reading });
  turn.say('answer', SAY_OF_REFRIGERANT.judged(check, value, judged.word, turn.context.units));
}

function stand(turn: Turn, check: 'pressure-test' | 'decay'): void {
  const { minutes } = REFRIGERANT_RULES[check];
  turn.startTimer('refrigerant', minutes);
  turn.say('answer', SAY_OF_REFRIGERANT.standing(minutes));
}
