import type { ReadingLine } from '../../../grammar/visit/facts.ts';
import { standingReadings } from '../../../grammar/visit/standing.ts';
import type { PointId } from '../../../grammar/vocabulary/points.ts';
import type { VisitContext } from '../chart/context.ts';

type Winding = readonly [PointId, PointId];

/** Each winding to its shell; any terminal of the fan motor reads its frame. */
const WINDINGS: readonly { readonly ask: Winding; readonly any: readonly PointId[]; readonly part: string }[] = [
  { ask: ['comp-C', 'shell'], any: ['comp-C'], part: 'compressor' },
  { ask: ['comp-R', 'shell'], any: ['comp-R'], part: 'compressor' },
  { ask: ['comp-S', 'shell'], any: ['comp-S'], part: 'compressor' },
  { ask: ['fan-C', 'fan-frame'], any: ['fan-C', 'fan-R', 'fan-S'], part: 'fan-motor' },
];

/**
 * Below this, in ohms for each volt of the supply, a winding counts as grounded: 1000 ohms a volt is the trade's old
 * least for insulation (common practice, from memory; the maker's limit wins). Near zero is far below it.
 */
const LEAST_OHMS_A_VOLT = 1000;
const USUAL_VOLTS = 240;
const OHMS_OF: Readonly<Record<string, number>> = { Ohm: 1, kOhm: 1e3, MOhm: 1e6 };

/**
 * The number of the event since which the windings must have been read; undefined: nothing tripped or blew. A fuse or
 * breaker that was fitted stands for one that had opened, whenever that was.
 */
export function trippedAt(context: VisitContext): number | undefined {
  const tripped = context.observations.filter(({ observation }) => observation === 'breaker-tripped');
  const blown = standingReadings(context).filter(isBlownFuse);
  const seen = [...tripped, ...blown].map(({ seq }) => seq);
  if (seen.length > 0) return Math.max(...seen);
  return context.parts.some(({ part }) => part === 'fuse' || part === 'breaker') ? 0 : undefined;
}

function isBlownFuse({ reading: { quantity, at, value } }: ReadingLine): boolean {
  return quantity === 'resistance' && value === 'open' && at.length === 2 && at.every((one) => one.startsWith('fuse-'));
}

/** The windings that are to be read to their shell before power returns, in the order in which they are asked. */
export function windingsDue(context: VisitContext): readonly Winding[] {
  const since = trippedAt(context);
  if (since === undefined) return [];
  return WINDINGS.filter((one) => readingsOf(one, context).every(({ seq }) => seq < since)).map(({ ask }) => ask);
}

/** Whether the latest reading of a winding to its shell shows a path, of a part that has not been replaced since. */
export function isGrounded(context: VisitContext): boolean {
  return WINDINGS.some((one) => {
    const latest = readingsOf(one, context).at(-1);
    return latest !== undefined && showsGround(latest.reading, context);
  });
}

function readingsOf({ ask, any, part }: (typeof WINDINGS)[number], context: VisitContext): readonly ReadingLine[] {
  const fitted = context.parts.findLast((line) => line.part === part)?.seq ?? 0;
  return standingReadings(context).filter(
    ({ seq, reading: { at, quantity } }) =>
      seq > fitted &&
      (quantity === 'resistance' || quantity === 'insulation') &&
      at.includes(ask[1]) &&
      any.some((point) => at.includes(point)),
  );
}

/** A number of ohms from a winding to its shell that no sound winding shows. */
export function showsGround(
  { quantity, at, value, unit }: ReadingLine['reading'],
  { unit: of }: VisitContext,
): boolean {
  if ((quantity !== 'resistance' && quantity !== 'insulation') || typeof value !== 'number') return false;
  if (!WINDINGS.some(({ ask, any }) => at.includes(ask[1]) && any.some((point) => at.includes(point)))) return false;
  return value * (OHMS_OF[unit] ?? 1) < LEAST_OHMS_A_VOLT * (of.supply?.nominal ?? USUAL_VOLTS);
}

/** How often the breaker was closed again since it was first seen tripped. */
export function resetsSinceTrip({ observations, breakerClosed }: VisitContext): number {
  const first = observations.find(({ observation }) => observation === 'breaker-tripped')?.seq;
  return first === undefined ? 0 : breakerClosed.filter((seq) => seq > first).length;
}
