import type { ObservationId } from '../../grammar/vocabulary/observations.ts';
import { LOOK_TESTS, type LookId } from '../diagnosis/measuring/look-tests.ts';

/** What is looked at where nothing calls. */
const WITHOUT_CALL: Readonly<Partial<Record<LookId, LookId>>> = {
  'look-compressor': 'look-no-call',
  'look-contactor': 'look-contactor-no-call',
};

/** The look that is meant by a name, with a call or without one. */
export function lookNow(named: LookId, call: 'cooling' | 'none'): LookId {
  return (call === 'none' ? WITHOUT_CALL[named] : undefined) ?? named;
}

/** The look that tells of something seen; undefined where none does, or where it is done and not seen. */
export function lookFor(observation: ObservationId): LookId | undefined {
  if (observation === 'thermostat-calling' || observation === 'thermostat-not-calling') return undefined;
  const ids = Object.keys(LOOK_TESTS) as LookId[];
  return ids.find((id) => (LOOK_TESTS[id].measure.answers as readonly ObservationId[]).includes(observation));
}
