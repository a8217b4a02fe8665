import type { VisitFacts } from '../../../grammar/visit/facts.ts';
import type { ObservationId } from '../../../grammar/vocabulary/observations.ts';

/** Seen with the call off, these say that the contactor has not dropped out. */
const STILL_ON: readonly ObservationId[] = ['compressor-running', 'fan-turning', 'contactor-pulled-in'];
/** And these that it has. */
const DROPPED: readonly ObservationId[] = ['compressor-not-running', 'fan-not-turning', 'contactor-not-pulled-in'];

/** The contactor stays in without a call, by what was seen of it last. */
export function holdsWithoutCall({ observations }: VisitFacts): boolean {
  const seen = observations.findLast(
    ({ observation, under }) =>
      observation === 'contacts-stuck' || (under.call === 'none' && [...STILL_ON, ...DROPPED].includes(observation)),
  );
  return seen !== undefined && !DROPPED.includes(seen.observation);
}
