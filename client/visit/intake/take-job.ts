import type { AnsweredFrom } from '../../../grammar/visit/inputs.ts';
import { isDeclined } from '../../../grammar/visit/standing.ts';
import type { JobItemId } from '../../../grammar/vocabulary/job-items.ts';
import { SAY } from '../../words/talk/prompts.ts';
import type { Turn } from '../chart/turn.ts';
import { PLATE, PLATE_STEPS } from '../steps/plate-steps.ts';
import { passPlateLine } from './take-plate.ts';
import { followRefrigerantItem } from './take-refrigerant.ts';
import { askWaiting } from './wait-for-supervisor.ts';

/** Which plan step an item answers; those of the refrigerant circuit follow its own plan. */
const SETTLED_BY_ITEM: Readonly<Record<JobItemId, string>> = {
  'consent-given': 'arrive.consent',
  'consent-refused': 'arrive.consent',
  'sound-kept': 'arrive.sound',
  'sound-not-kept': 'arrive.sound',
  'meter-category-two': 'arrive.meter',
  'meter-category-three': 'arrive.meter',
  'meter-category-four': 'arrive.meter',
  'nameplate-unreadable': PLATE,
  'plate-line-unreadable': 'none',
  'circuit-opened': 'none',
  'leak-found': 'none',
  'no-leak-found': 'none',
  'vacuum-isolated': 'none',
  'thermostat-as-agreed': 'close.thermostat',
  'nothing-to-recommend': 'close.recommend',
  'customer-not-present': 'close.customer',
};

/** The plan steps that an item answers: of a plate that cannot be read all. */
export function settledByItem(item: JobItemId): readonly string[] {
  const step = SETTLED_BY_ITEM[item];
  if (step === PLATE) return PLATE_STEPS;
  return step === 'none' ? [] : [step];
}

/** Something of the job, in a word: recorded and read back, never evidence for the diagnosis. */
export function takeItem(turn: Turn, item: JobItemId): void {
  if (item === 'plate-line-unreadable') return passPlateLine(turn);
  const steps = settledByItem(item);
  const wasDeclined = isDeclined(turn.context);
  const said = item === 'leak-found' ? (turn.heard?.understanding ?? turn.context.heard)?.heard : undefined;
  turn.record({ type: 'item.reported', item, ...(said === undefined ? {} : { said }) });
  if (steps.length > 0) turn.record({ type: 'steps.settled', steps });
  turn.say('readback', SAY.item(item));
  followRefrigerantItem(turn, item);
  if (item === 'consent-refused') turn.say('answer', SAY.declined);
  if (item === 'consent-given' && wasDeclined) turn.say('answer', SAY.takenUp);
  if (item === 'meter-category-two') {
    turn.warn(SAY.meterTooLow, 'outdoor-load');
  }
}

/** A supervisor's word counts for a trainee alone; what waited for it is asked. */
export function takeSupervisor(turn: Turn, supervisor: string, from: AnsweredFrom | undefined): void {
  if (turn.context.role !== 'trainee') return void turn.say('answer', SAY.supervisorNotNeeded);
  const { waiting } = turn.context;
  turn.record({ type: 'supervisor.acknowledged', supervisor, ...(from === undefined ? {} : { from }) });
  if (waiting.length > 0) askWaiting(turn, waiting);
  else if (from === 'this-device') turn.say('readback', SAY.supervised([], false));
}
