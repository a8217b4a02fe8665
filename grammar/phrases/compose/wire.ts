import { POINTS_BY_ID, type PointId } from '../../vocabulary/points.ts';
import type { Draft } from './draft.ts';
import { standsAt } from './rows-said.ts';
import type { Segment } from './segment.ts';

type End = 'from' | 'to';

/** A wire that is lifted or landed, a jumper that is put on or taken off. A terminal that may be several is asked. */
export function composeWire(segment: Segment): Draft[] {
  const action = segment.items.find((item) => item.tag === 'wire')?.action;
  if (action === undefined) return [];
  const { colour, size, ends, misplaced } = partsOf(segment);
  const jumper = action.startsWith('jumper');
  const chosen = choose(ends, jumper);
  if (chosen === undefined) return [];
  const { from, to, doubtful } = chosen;
  const wire = { ...(colour && { colour }), ...(size && { size }), ...(from && { from }), ...(to && { to }), action };
  return [
    {
      meaning: { kind: 'wire', wire },
      cost: 0,
      ...((doubtful || misplaced) && { doubt: 'several-places-fit' as const }),
    },
  ];
}

interface WireParts {
  colour?: string;
  size?: string;
  ends: Partial<Record<End, PointId[]>>;
  /** A place was said at which no such terminal stands. */
  misplaced: boolean;
}

function partsOf(segment: Segment): WireParts {
  const parts: WireParts = { ends: {}, misplaced: false };
  let points: readonly PointId[] = [];
  for (const item of segment.items) {
    if (item.tag === 'colour') parts.colour = item.colour;
    else if (item.tag === 'size') parts.size = item.size;
    else if (item.tag === 'tip') points = item.points;
    else if (item.tag === 'place') {
      const there = points.filter((point) => standsAt(point, item.place));
      parts.misplaced ||= there.length === 0;
      if (there.length > 0) points = there;
    } else if (item.tag === 'end') parts.ends[item.end] = [...points];
  }
  return parts;
}

/** The two ends at one place; for a jumper in the control circuit before anywhere else. */
function choose(
  ends: Partial<Record<End, PointId[]>>,
  jumper: boolean,
): { from?: PointId; to?: PointId; doubtful: boolean } | undefined {
  const { from, to } = ends;
  if (from === undefined && to === undefined) return jumper ? { doubtful: false } : undefined;
  if (from?.length === 0 || to?.length === 0) return undefined;
  if (from !== undefined && to !== undefined) {
    const pairs = from.flatMap((one) => to.map((other) => [one, other] as const));
    const together = pairs.filter(([one, other]) => placeOf(one) === placeOf(other));
    const control = together.filter(([one]) => POINTS_BY_ID[one].zone === 'control');
    const [best] = jumper && control.length > 0 ? control : together.length > 0 ? together : pairs;
    const places = new Set(together.map(([one]) => placeOf(one)));
    return { from: best![0], to: best![1], doubtful: !jumper && places.size > 1 };
  }
  const [only, ...others] = from ?? to ?? [];
  if (only === undefined) return undefined;
  // "L1" is the contactor's; the air handler's own legs are said with its name.
  const doubtful = others.some((point) => !point.startsWith('handler-'));
  return { [from === undefined ? 'to' : 'from']: only, doubtful };
}

const placeOf = (point: PointId): string | undefined => POINTS_BY_ID[point].place;
