import type { EarlyStart, VisitOutcome } from '../../../grammar/visit/events.ts';
import { lackingToRun } from '../../../grammar/visit/refrigerant-work.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import type { ObservationId } from '../../../grammar/vocabulary/observations.ts';
import { SAY_OF_REFRIGERANT } from '../../words/talk/refrigerant-words.ts';
import type { Turn } from '../chart/turn.ts';
import { TAKEN_OFF } from '../rules/isolation.ts';
import { SHOWN_BY_LOOK } from '../rules/shown-by-look.ts';
import { tellFlammable } from './tell-flammable.ts';

/**
 * What a turn has brought about, held against the refrigerant circuit: whichever way power, a call or a run was told,
 * one that comes before the circuit is closed again is warned of at once, and stays an open item.
 */
export function heedCircuit(turn: Turn): void {
  const recorded = turn.effects.flatMap((effect) => (effect.type === 'record' ? [effect.params.event] : []));
  tellFlammable(turn, recorded);
  const starts = recorded.flatMap((event) => startIn(event) ?? []);
  const start = (['run', 'call', 'power'] as const)
    .map((how) => starts.find((one) => one.how === how))
    .find((one) => one !== undefined);
  if (start !== undefined && !recorded.some(({ type }) => type === 'circuit.early')) tellEarly(turn, start);
}

/** A start of a circuit that is not tight, dry and charged; nothing where it lacks nothing. */
export function tellEarly(turn: Turn, start: { readonly how: EarlyStart; readonly number?: number }): void {
  const lacks = turn.context.refrigerantWork.inVacuum ? 'vacuum' : lackingToRun(turn.context);
  if (lacks === undefined) return;
  const words = SAY_OF_REFRIGERANT.early(start.how, lacks);
  turn.record({ type: 'circuit.early', ...start, lacks, words });
  turn.warn(words, 'outdoor-load');
}

/** Which start an event tells of, and the number of the reading or look that may be taken back. */
export function startIn(event: VisitOutcome): { readonly how: EarlyStart; readonly number?: number } | undefined {
  switch (event.type) {
    case 'switch.reported':
      return event.state === 'closed' && event.place !== 'air-handler' ? { how: 'power' } : undefined;
    case 'energy.changed':
      return event.zone === 'outdoor-load' && event.to === 'live' && TAKEN_OFF.includes(event.from)
        ? { how: 'power' }
        : undefined;
    case 'observation.logged': {
      const how = startSeen(event.observation);
      return how === undefined ? undefined : { how, number: event.number };
    }
    case 'reading.logged':
      return isAmps(event.reading) ? { how: 'run', number: event.number } : undefined;
    case 'reading.corrected':
      return isAmps(event.to) ? { how: 'run', number: event.number } : undefined;
    case 'reading.waits':
      return event.reading !== undefined && isAmps(event.reading) ? { how: 'run' } : undefined;
    default:
      return undefined;
  }
}

/** A contactor that is in, and what hums or trips, has power as what runs has. */
function startSeen(observation: ObservationId): EarlyStart | undefined {
  const { power, call } = SHOWN_BY_LOOK[observation];
  if (power !== 'nothing' || observation === 'contactor-pulled-in') return 'run';
  if (observation === 'breaker-on' || observation === 'disconnect-in') return 'power';
  return call === 'cooling' ? 'call' : undefined;
}

function isAmps({ quantity, at, value }: Reading): boolean {
  return quantity === 'current' && at.includes('compressor') && typeof value === 'number' && value > 0;
}
