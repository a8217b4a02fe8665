import type { TakenUnder } from '../../../grammar/visit/events.ts';
import type { VisitFacts } from '../../../grammar/visit/facts.ts';
import { samePlaces } from '../../../grammar/visit/judge-reading.ts';
import { standingReadings } from '../../../grammar/visit/standing.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import type { ObservationId } from '../../../grammar/vocabulary/observations.ts';

/** Seen with the call off, these say that the contactor has not dropped out. */
const STILL_ON: readonly ObservationId[] = ['compressor-running', 'fan-turning', 'contactor-pulled-in'];
/** And these that it has. */
const DROPPED: readonly ObservationId[] = ['compressor-not-running', 'fan-not-turning', 'contactor-not-pulled-in'];
/** More than a pole that is open leaves across the load: volts; our choice. */
const CLOSED_ABOVE_VOLTS = 60;

/** The load stays fed without a call, by what was seen or measured of it last. */
export function holdsWithoutCall(facts: VisitFacts): boolean {
  const told = [
    ...facts.observations.map((line) => ({ ...line, says: seen(line.observation, line.under) })),
    ...standingReadings(facts).map((line) => ({ ...line, says: measured(line.reading, line.under) })),
  ].filter(({ says }) => says !== 'nothing');
  return told.toSorted((a, b) => a.number - b.number).at(-1)?.says === 'holds';
}

type Says = 'holds' | 'dropped' | 'nothing';

function seen(observation: ObservationId, { call, power }: TakenUnder): Says {
  if (observation === 'contacts-stuck') return 'holds';
  if (call !== 'none') return 'nothing';
  if (STILL_ON.includes(observation)) return 'holds';
  return power !== 'off' && DROPPED.includes(observation) ? 'dropped' : 'nothing';
}

/** Volts across the load: both of its poles carry. One pole alone feeds no load. */
function measured({ quantity, at, value }: Reading, { call, power }: TakenUnder): Says {
  if (call !== 'none' || power === 'off' || quantity !== 'voltage' || !samePlaces(at, ['T1', 'T2'])) return 'nothing';
  return typeof value === 'number' && value > CLOSED_ABOVE_VOLTS ? 'holds' : 'dropped';
}
