import type { RefrigerantCheck } from '../../../grammar/visit/events.ts';
import { MS_A_MINUTE } from '../../../grammar/visit/inputs.ts';
import { judgeRefrigerant, pressureAt, REFRIGERANT_RULES } from '../../../grammar/visit/refrigerant-rules.ts';
import type { JobItemId } from '../../../grammar/vocabulary/job-items.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import { SAY_OF_REFRIGERANT } from '../../words/talk/refrigerant-words.ts';
import type { RefrigerantWork } from '../chart/context.ts';
import type { Turn } from '../chart/turn.ts';
import { inFahrenheit } from '../rules/in-fahrenheit.ts';
import {
  doneOfRefrigerant,
  isRefrigerantOpened,
  minutesLeft,
  type RefrigerantStep,
} from '../rules/refrigerant-work.ts';

const OUNCES_A_POUND = 16;

/** What a logged reading at the system says of an opened refrigerant circuit. Refrigerant taken out counts even before it is opened. */
export function followRefrigerant(turn: Turn, { quantity, at, value, unit }: Reading): void {
  if (at[0] !== 'system' || typeof value !== 'number') return;
  setRefrigerantWork(turn, turn.context.refrigerantWork);
  const opened = isRefrigerantOpened(turn.context);
  switch (quantity) {
    case 'mass': {
      const ounces = unit === '[lb_av]' ? value * OUNCES_A_POUND : value;
      if (ounces < 0) return change(turn, { recovered: -ounces });
      if (opened) change(turn, { charged: ounces });
      return;
    }
    case 'pressure':
      if (opened) takePressure(turn, value);
      return;
    case 'vacuum':
      if (opened) takeVacuum(turn, value);
  }
}

/** What was reported of an opened refrigerant circuit. Opened once more, or a leak found, all tests begin anew. */
export function followRefrigerantItem(turn: Turn, item: JobItemId): void {
  switch (item) {
    case 'circuit-opened':
    case 'leak-found':
      restart(turn);
      if (item === 'leak-found') turn.say('answer', SAY_OF_REFRIGERANT.leakFirst);
      return;
    case 'no-leak-found':
      return change(turn, { searched: true });
    case 'vacuum-isolated':
      if (!isRefrigerantOpened(turn.context)) return;
      change(turn, { isolatedAt: turn.context.now.mono });
      return stand(turn, 'decay');
    case 'consent-given':
    case 'consent-refused':
    case 'meter-category-two':
    case 'meter-category-three':
    case 'meter-category-four':
    case 'nameplate-unreadable':
    case 'thermostat-as-agreed':
    case 'nothing-to-recommend':
    case 'customer-not-present':
      return;
    default:
      item satisfies never;
  }
}

/** A reading at the system that was set right or taken back: what it had shown is shown anew. */
export function doubtRefrigerant(turn: Turn, { at }: Reading): void {
  if (at[0] === 'system' && isRefrigerantOpened(turn.context)) restart(turn);
}

/** The timer of a standing test: whoever has moved on or begun again is not asked. */
export function endStanding(turn: Turn): void {
  const { refrigerantWork: work } = turn.context;
  const name: RefrigerantStep = work.isolatedAt === undefined ? 'testEnd' : 'decay';
  const standing = name === 'decay' ? work.stood === undefined : work.test !== undefined && !work.held;
  if (!standing || minutesLeft(name, turn.context) > 0) return;
  turn.say('answer', SAY_OF_REFRIGERANT.readAgain);
}

function takePressure(turn: Turn, psi: number): void {
  const { refrigerantWork: work, now } = turn.context;
  if (work.held === true) return;
  const { test } = work;
  if (test === undefined) {
    change(turn, { test: { psi, fahrenheit: outdoorFahrenheit(turn), mono: now.mono } });
    return stand(turn, 'pressure-test');
  }
  if (minutesLeft('testEnd', turn.context) > 0) return;
  const then = test.fahrenheit;
  const here = outdoorFahrenheit(turn);
  const expected = then === undefined || here === undefined ? test.psi : pressureAt(test.psi, then, here);
  const word = judge(turn, 'pressure-test', Math.round((expected - psi) * 10) / 10, now.mono - test.mono);
  if (word !== 'does not fit') return change(turn, { held: true });
  restart(turn);
}

function takeVacuum(turn: Turn, microns: number): void {
  const { refrigerantWork: work, now } = turn.context;
  if (work.isolatedAt === undefined) {
    if (judge(turn, 'evacuation', microns, 0) !== 'does not fit') change(turn, { microns });
    return;
  }
  if (work.stood === true || minutesLeft('decay', turn.context) > 0) return;
  const word = judge(turn, 'decay', microns, now.mono - work.isolatedAt);
  if (word !== 'does not fit') return change(turn, { stood: true });
  const { microns: _was, isolatedAt: _when, ...rest } = work;
  setRefrigerantWork(turn, rest);
}

function judge(turn: Turn, check: RefrigerantCheck, value: number, ms: number) {
  const judged = judgeRefrigerant(check, value);
  turn.record({ type: 'refrigerant.judged', check, value, minutes: Math.round(ms / MS_A_MINUTE), judged });
  turn.say('answer', SAY_OF_REFRIGERANT.judged(check, value, judged.word));
  return judged.word;
}

function stand(turn: Turn, check: 'pressure-test' | 'decay'): void {
  const { minutes } = REFRIGERANT_RULES[check];
  turn.startTimer('refrigerant', minutes);
  turn.say('answer', SAY_OF_REFRIGERANT.standing(minutes));
}

function change(turn: Turn, patch: Partial<RefrigerantWork>): void {
  setRefrigerantWork(turn, { ...turn.context.refrigerantWork, ...patch });
}

/** All tests begin anew; what was recovered stays recovered. */
function restart(turn: Turn): void {
  const { recovered } = turn.context.refrigerantWork;
  setRefrigerantWork(turn, recovered === undefined ? {} : { recovered });
}

/** The state of that work alone says which of its steps are settled. */
function setRefrigerantWork(turn: Turn, work: RefrigerantWork): void {
  const others = turn.context.settled.filter((id) => !id.startsWith('refrigerant.'));
  turn.set({ refrigerantWork: work, settled: [...others, ...doneOfRefrigerant(work)] });
}

/** The outdoor air as it was read last, in degrees Fahrenheit. */
function outdoorFahrenheit(turn: Turn): number | undefined {
  const line = turn.context.readings.findLast(
    ({ reading }) => reading.quantity === 'temperature' && reading.at[0] === 'outdoor-air',
  );
  return line === undefined ? undefined : inFahrenheit(line.reading);
}
