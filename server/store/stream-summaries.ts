import type { Database } from 'better-sqlite3';
import type { StreamSummary } from './event-store.ts';
import { awaited, type BriefSummary, byDevice, type SaidRow, type StreamRow, toSummary } from './summary-rows.ts';

/** Reads what there is to know of the streams of one visit, by device and epoch. */
export function streamsReader(database: Database) {
  // The first and the last event of a stream are one look-up in the index each.
  const streams = database.prepare<[string, string], StreamRow>(`
    SELECT stream.id, device, epoch, last.seq AS headSeq, last.hash AS headHash,
      first.received_at AS firstReceivedAt, last.received_at AS lastReceivedAt,
      (SELECT count(*) FROM fork WHERE fork.stream = stream.id) AS forks,
      EXISTS (SELECT 1 FROM stream AS later WHERE later.company = stream.company AND later.visit = stream.visit
        AND later.device = stream.device AND later.follows_epoch = stream.epoch) AS sealed,
      last.clock_offset AS clockOffset,
      (SELECT max(said.seq) FROM said WHERE said.company = stream.company AND said.visit = stream.visit
        AND said.device = stream.device AND said.epoch = stream.epoch) AS said,
      follows_epoch AS followsEpoch, follows_seq AS followsSeq, follows_hash AS followsHash
    FROM stream
    JOIN event AS first ON first.stream = stream.id AND first.seq = 1
    JOIN event AS last ON last.stream = stream.id AND last.seq = (SELECT max(seq) FROM event WHERE stream = stream.id)
    WHERE company = ? AND visit = ?`);
  const onlySaid = database.prepare<[string, string], SaidRow>(`
    SELECT device, epoch, max(seq) AS said, min(said_at) AS firstSaidAt, max(said_at) AS lastSaidAt FROM said
    WHERE company = ? AND visit = ? AND NOT EXISTS (SELECT 1 FROM stream JOIN event ON event.stream = stream.id
      WHERE stream.company = said.company AND stream.visit = said.visit AND stream.device = said.device
        AND stream.epoch = said.epoch)
    GROUP BY device, epoch`);
  const receivedBackwards = backwardsReader(database);

  const read = (company: string, visit: string) => [
    ...streams.all(company, visit).map((row) => ({ id: row.id, summary: toSummary(row) })),
    ...onlySaid.all(company, visit).map((row) => ({ id: 0, summary: awaited(company, visit, row) })),
  ];
  return {
    brief: (company: string, visit: string): readonly BriefSummary[] =>
      read(company, visit).map(({ summary }) => summary),
    whole: async (company: string, visit: string): Promise<readonly StreamSummary[]> => {
      const streams: StreamSummary[] = [];
      for (const { id, summary } of read(company, visit)) {
        streams.push({ ...summary, receivedBackwards: await receivedBackwards(id, summary.head.seq) });
      }
      return streams.sort(byDevice);
    },
  };
}

/** Between so many events others are served. */
const EVENTS_A_TURN = 500;
/** Of so many streams it is held in memory how far they were read. */
const MOST_READ = 10_000;

/** Whether the times of receipt of a stream go back anywhere: reads on from where it last ended, in pieces. */
function backwardsReader(database: Database) {
  const goesBack = database
    .prepare<[number, number, number], 0 | 1>(`
    SELECT EXISTS (SELECT 1 FROM event AS later
      JOIN event AS before ON before.stream = later.stream AND before.seq = later.seq - 1
      WHERE later.stream = ? AND later.seq > ? AND later.seq <= ? AND later.received_at < before.received_at)`)
    .pluck();
  const read = new Map<number, { readonly upTo: number; readonly back: boolean }>();
  return async (id: number, head: number): Promise<boolean> => {
    let { upTo, back } = read.get(id) ?? { upTo: 0, back: false };
    while (!back && upTo < head) {
      const next = Math.min(head, upTo + EVENTS_A_TURN);
      back = goesBack.get(id, upTo, next) === 1;
      upTo = next;
      if (upTo < head) await new Promise((resolve) => setImmediate(resolve));
    }
    if (read.size >= MOST_READ) read.clear();
    if (id > 0) read.set(id, { upTo, back });
    return back;
  };
}
