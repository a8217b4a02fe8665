import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { Diagnosis, Evidence, Suspect } from '../diagnosis.ts';

/** What one reading does for the leading suspect: how likely it would be without, and whom it takes out. */
export interface Bearing {
  /** Of the last one, where it was read more than once. */
  readonly seq: number;
  readonly leaderWithout: number;
  /** Suspects that would stand without it, the likeliest first. */
  readonly excludes: readonly FaultId[];
}

/** A suspect before the last reading and after it. */
export interface Moved {
  readonly fault: FaultId;
  readonly was: number;
  readonly is: number;
}

/** A suspect that would be talked of, and one that no longer is: our choices. */
const STANDS = 0.02;
const FALLS_TO = 0.2;
/** A reading bears on the leader when it would stand so much lower without. */
const BEARS = 0.01;
/** A suspect moved when its probability changed by so much. */
const MOVED = 0.03;

type Assess = Diagnosis['assess'];

const probabilityOf = (suspects: readonly Suspect[], fault: FaultId): number =>
  suspects.find((s) => s.fault === fault)?.probability ?? 0;

/** Readings at the same points in the same circumstances, and the same thing seen, are one: they go out together. */
const sameOf = (item: Evidence): string =>
  item.kind === 'reading'
    ? [item.quantity, ...[...item.at].sort(), item.power, item.call, item.bench].join(':')
    : item.kind === 'observation'
      ? item.observation
      : `${item.kind}:${item.seq}`;

/**
 * The readings on which the leading suspect stands, the heaviest first: each is left out in turn, and what the others
 * say alone is held against what all say.
 */
export function bearings(assess: Assess, evidence: readonly Evidence[]): readonly Bearing[] {
  const { suspects } = assess(evidence, []);
  const leader = suspects[0]!;
  const last = new Map(evidence.filter((item) => item.kind !== 'repair').map((item) => [sameOf(item), item]));
  return [...last]
    .map(([same, item]) => {
      const without = assess(
        evidence.filter((other) => sameOf(other) !== same),
        [],
      ).suspects;
      const excludes = without
        .filter(({ fault, probability }) => probability >= STANDS && fault !== leader.fault)
        .filter(({ fault, probability }) => probabilityOf(suspects, fault) <= FALLS_TO * probability)
        .map(({ fault }) => fault);
      return { seq: item.seq, leaderWithout: probabilityOf(without, leader.fault), excludes };
    })
    .filter(({ leaderWithout, excludes }) => excludes.length > 0 || leader.probability - leaderWithout >= BEARS)
    .sort((a, b) => a.leaderWithout - b.leaderWithout);
}

/** What the last piece of evidence has moved, the furthest first; nothing where nothing was said yet. */
export function movedByLast(assess: Assess, evidence: readonly Evidence[]): readonly Moved[] {
  if (evidence.length === 0) return [];
  const before = assess(evidence.slice(0, -1), []).suspects;
  return assess(evidence, [])
    .suspects.map(({ fault, probability }) => ({ fault, was: probabilityOf(before, fault), is: probability }))
    .filter(({ was, is }) => Math.abs(is - was) >= MOVED)
    .sort((a, b) => Math.abs(b.is - b.was) - Math.abs(a.is - a.was));
}
