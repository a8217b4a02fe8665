import type { PointId } from '../../vocabulary/points.ts';
import { PROOF_ENDS, type ProofEndId } from '../../vocabulary/proof-pairs.ts';
import { rowsBy } from '../../vocabulary/rows-by.ts';
import type { ZoneId } from '../../vocabulary/zones.ts';
import type { Meaning, UnclearReason } from '../meaning.ts';
import type { Draft } from './draft.ts';
import { inOrder } from './rows-said.ts';
import { numbersOf, type SaidNumber, type Segment, unbroken } from './segment.ts';

/** Lowest voltage of a source on which a meter is proved: a 24 V transformer. */
const LOWEST_SOURCE = 22;
/** Six pairs are read at an open contactor, three elsewhere; more than these are asked. */
const MOST_VALUES = 8;
const USUAL_COUNTS = [3, 6] as const;

/** "meter two forty, zero, zero, zero, meter two forty"; each value with or without its place. */
export function composeAbsence(segment: Segment): Draft[] {
  const numbers = numbersOf(segment.items);
  const { volts, ends } = saidIn(segment);
  const before = volts[0];
  const after = volts.at(-1);
  if (before === undefined || after === undefined || volts.length < 3) return [];
  const zone = segment.items.find((item) => item.tag === 'zones')?.zones[0] ?? 'outdoor-load';
  const values = volts.slice(1, -1);
  const pairs = ends.slice(1, -1);
  const at = pairs.map((pair) => placesOf(pair, zone));
  const placed = pairs.some((pair) => pair.length > 0);
  const meaning: Meaning = {
    kind: 'report',
    report: { type: 'absence-of-voltage', zone, before, values, ...(placed && { at }), after },
  };
  const proofs = [before, after].filter((source) => source < LOWEST_SOURCE || source > 600).length;
  // A meter that reads nothing on its source once is a proof that failed: it is taken, and judged elsewhere.
  const wild = proofs === 2 || volts.some((one) => one < 0 || one > 600) || values.length > MOST_VALUES;
  const foreign = pairs.some((pair, index) => pair.length > 0 && at[index]!.length === 0);
  const joined = joinedIn(segment);
  const doubt: UnclearReason | undefined = !unbroken(numbers)
    ? 'needed-repair'
    : wild
      ? 'implausible'
      : joined
        ? 'several-values-fit'
        : foreign
          ? 'several-places-fit'
          : undefined;
  // Two legs make three readings: each to ground and one to the other; an open contactor has them twice. Other counts
  // are taken, but are dearer where their places do not tell where each begins.
  const astray = Math.min(...USUAL_COUNTS.map((usual) => Math.abs(values.length - usual)));
  const count = pairs.every((pair) => pair.length > 0) ? 0 : 0.3 * astray;
  return [{ meaning, cost: 2 * proofs + count + (joined ? 0.5 : 0), ...(doubt && { doubt }) }];
}

/** The values in their order, those of the meter too, each with the ends of its pair as far as they were named. */
function saidIn(segment: Segment): { volts: number[]; ends: (readonly ProofEndId[])[] } {
  const volts: number[] = [];
  const ends: (readonly ProofEndId[])[] = [];
  let named: ProofEndId[] = [];
  let waiting: readonly ProofEndId[] = [];
  for (const item of segment.items) {
    if (item.tag === 'proof-end') named.push(item.end);
    else if (item.tag === 'proof-pair') {
      if (item.of === 'next') waiting = named;
      else ends[ends.length - 1] = named;
      named = [];
    } else if (item.tag === 'said' || item.tag === 'value') {
      volts.push(item.tag === 'said' ? item.number.value : 0);
      ends.push(waiting);
      waiting = [];
    }
  }
  return { volts, ends };
}

const ENDS_BY_ID: Readonly<
  Record<Exclude<ProofEndId, 'ground'>, { readonly at: Readonly<Partial<Record<ZoneId, PointId>>> }>
> = rowsBy('id', PROOF_ENDS);

/** The points of a named pair, a leg alone to ground; fewer where the zone has no such end. */
function placesOf(pair: readonly ProofEndId[], zone: ZoneId): readonly PointId[] {
  const whole: readonly ProofEndId[] = pair.length === 1 ? [...pair, 'ground'] : pair;
  const points = whole.flatMap((end): PointId | readonly PointId[] =>
    end === 'ground' ? end : (ENDS_BY_ID[end].at[zone] ?? []),
  );
  return points.length === whole.length ? inOrder(points) : [];
}

/** Whether two numbers stand with nothing between them, and the first might as well go on. */
function joinedIn(segment: Segment): boolean {
  return segment.items.some((item, index) => {
    const one = segment.items[index - 1];
    return item.tag === 'said' && one?.tag === 'said' && runsOn(one, item);
  });
}

/** "two forty | one", "five | oh". */
function runsOn(one: SaidNumber, next: SaidNumber): boolean {
  if (next.follows === undefined || next.follows !== one.words.at(-1)) return false;
  const joined = next.spokenIn.read([...one.words, ...next.words])?.value;
  return joined !== undefined && joined !== 0 && joined <= 600;
}
