import type { StreamSummary, VisitSummary } from './event-store.ts';
import { startHead } from './judge-event.ts';

export interface FollowsRow {
  readonly followsEpoch: number | null;
  readonly followsSeq: number | null;
  readonly followsHash: string | null;
}

export interface StreamRow extends FollowsRow {
  readonly id: number;
  readonly device: string;
  readonly epoch: number;
  readonly headSeq: number;
  readonly headHash: string;
  readonly firstReceivedAt: number;
  readonly lastReceivedAt: number;
  readonly forks: number;
  readonly sealed: 0 | 1 | boolean;
  readonly clockOffset: number | null;
  readonly said: number | null;
}

export interface SaidRow {
  readonly device: string;
  readonly epoch: number;
  readonly said: number;
  readonly firstSaidAt: number;
  readonly lastSaidAt: number;
}

/** What is told of a stream without reading all its events. */
export type BriefSummary = Omit<StreamSummary, 'receivedBackwards'>;

/** What a list says of a visit: the sum over its streams. */
export function sumOf(streams: readonly BriefSummary[]): Omit<VisitSummary, 'visit'> {
  const sum = (count: (stream: BriefSummary) => number) => streams.reduce((total, one) => total + count(one), 0);
  const events = sum(({ head }) => head.seq);
  const said = sum(({ head, said = head.seq }) => said);
  return {
    streams: streams.length,
    events,
    firstReceivedAt: Math.min(...streams.map(({ firstReceivedAt }) => firstReceivedAt)),
    lastReceivedAt: Math.max(...streams.map(({ lastReceivedAt }) => lastReceivedAt)),
    forks: sum(({ forks }) => forks),
    ...(said > events ? { said } : {}),
  };
}

export function followsOf({ followsEpoch, followsSeq, followsHash }: FollowsRow): Pick<StreamSummary, 'follows'> {
  if (followsEpoch === null || followsSeq === null || followsHash === null) return {};
  return { follows: { epoch: followsEpoch, head: { seq: followsSeq, hash: followsHash } } };
}

/** A stream of which nothing came yet, and its device said that there is something. */
export function awaited(company: string, visit: string, row: SaidRow): BriefSummary {
  const { device, epoch, said } = row;
  return {
    device,
    epoch,
    head: startHead({ company, visit, device, epoch }),
    firstReceivedAt: row.firstSaidAt,
    lastReceivedAt: row.lastSaidAt,
    forks: 0,
    sealed: false,
    said,
  };
}

/** A sealed stream lacks nothing: what its device had beyond the seal stands in the epoch that carries on. */
export function toSummary(row: StreamRow): BriefSummary {
  const missing = !row.sealed && row.said !== null && row.said > row.headSeq;
  return {
    device: row.device,
    epoch: row.epoch,
    head: { seq: row.headSeq, hash: row.headHash },
    firstReceivedAt: row.firstReceivedAt,
    lastReceivedAt: row.lastReceivedAt,
    forks: row.forks,
    sealed: Boolean(row.sealed),
    ...(row.clockOffset === null ? {} : { clockOffsetMs: row.clockOffset }),
    ...(missing && row.said !== null ? { said: row.said } : {}),
    ...followsOf(row),
  };
}

/** By device, then by epoch. */
export function byDevice(a: StreamSummary, b: StreamSummary): number {
  if (a.device === b.device) return a.epoch - b.epoch;
  return a.device < b.device ? -1 : 1;
}
