import { transition } from 'xstate';
import type { Expectation } from '../../grammar/phrases/meaning.ts';
import type { VisitEvent } from '../../grammar/visit/events.ts';
import { factsOf } from '../../grammar/visit/facts-of.ts';
import type { InputTime } from '../../grammar/visit/inputs.ts';
import { visitMachine, visitOf } from '../visit/chart/machine.ts';
import { expectationOf } from '../visit/steps/expectation.ts';

/**
 * What the visit expects behind these events, as if it were taken up again there: what stood open is put again. Of the talk
 * itself a record keeps no state, so where a series of readings was in hand it may expect less than it did then.
 */
export function expectedThen(events: readonly VisitEvent[], time: InputTime): Expectation {
  const [snapshot] = transition(visitMachine, visitOf(factsOf(events)), { type: 'restored.visit', time });
  return expectationOf(snapshot.context);
}
