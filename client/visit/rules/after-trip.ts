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
const OHMS_OF: Readonly<Record<string, number>> = { mOhm: 1e-3, Ohm: 1, kOhm: 1e3, MOhm: 1e6, GOhm: 1e9 };

/**
 * The number of the event since which the windings must have been read; undefined: nothing tripped or blew. A fuse or
 * breaker that was fitted, and a breaker that was reset, stand for one that had opened, whenever that was.
 */
export function trippedAt(context: VisitContext): number | undefined {
  const tripped = context.observations.filter(({ observation }) => observation === 'breaker-tripped');
  const blown = standingReadings(context).filter(isBlownFuse);
  const told = context.dangersTold.filter(({ danger }) => danger !== 'grounded-winding');
  const seen = [...tripped, ...blown, ...told].map(({ seq }) => seq);
  if (seen.length > 0) return Math.max(...seen);
  return wasRenewed(context) ? 0 : undefined;
}

/** A fuse or breaker was fitted, or a breaker reset: what had opened feeds again. */
export function wasRenewed(context: VisitContext): boolean {
  return context.parts.some(({ part }) => part === 'fuse' || part === 'breaker') || resetsTold(context).length > 0;
}

function resetsTold({ works }: VisitContext): VisitContext['works'] {
  return works.filter(({ work }) => work === 'breaker-reset');
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
  return (
    WINDINGS.some((one) => {
      const told = [...readingsOf(one, context), ...refusedOf(one, context)].toSorted((a, b) => a.seq - b.seq);
      const latest = told.at(-1);
      return latest !== undefined && showsGround(latest.reading, context);
    }) || isToldGrounded(context)
  );
}

/** Told in words, and neither read whole since nor replaced. */
function isToldGrounded(context: VisitContext): boolean {
  const told = context.dangersTold.findLast(({ danger }) => danger === 'grounded-winding')?.seq;
  if (told === undefined) return false;
  const isSince = ({ seq }: { readonly seq: number }) => seq > told;
  const replaced = context.parts.some((line) => isSince(line) && WINDINGS.some(({ part }) => part === line.part));
  return !replaced && WINDINGS.some((one) => !readingsOf(one, context).some(isSince));
}

/** Read before it was proven dead: no evidence, and enough to be warned of. */
function refusedOf(winding: (typeof WINDINGS)[number], context: VisitContext): readonly Told[] {
  return context.refusedReadings.filter((line) => isOfWinding(line, winding, context));
}

function readingsOf(winding: (typeof WINDINGS)[number], context: VisitContext): readonly ReadingLine[] {
  return standingReadings(context).filter((line) => isOfWinding(line, winding, context));
}

type Told = Pick<ReadingLine, 'seq' | 'reading'>;

function isOfWinding(
  { seq, reading: { at, quantity } }: Told,
  { ask, any, part }: (typeof WINDINGS)[number],
  context: VisitContext,
): boolean {
  const fitted = context.parts.findLast((line) => line.part === part)?.seq ?? 0;
  return (
    seq > fitted &&
    (quantity === 'resistance' || quantity === 'insulation') &&
    at.includes(ask[1]) &&
    any.some((point) => at.includes(point))
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

/** How often the breaker was closed again since it was first seen tripped, or told reset: what is reset had tripped. */
export function resetsSinceTrip(context: VisitContext): number {
  const { observations, breakerClosed, dangersTold } = context;
  const tripped = observations.filter(({ observation }) => observation === 'breaker-tripped');
  const told = dangersTold.filter(({ danger }) => danger === 'tripped-breaker');
  const [seen] = [...tripped, ...told].map(({ seq }) => seq).toSorted((a, b) => a - b);
  const [reset] = resetsTold(context);
  const since = (first: number | undefined, before: number) =>
    first === undefined ? 0 : breakerClosed.filter((seq) => seq > first).length + before;
  return Math.max(since(seen, 0), since(reset?.seq, 1));
}
