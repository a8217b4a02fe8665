import type { VisitLog } from '../../../client/record/visit-log.ts';
import type { Sha256, StreamId } from '../../../grammar/visit/envelope.ts';
import { verifyChain } from '../../../grammar/visit/verify-chain.ts';

/** Opens the log of a stream; opened again after a close, it holds what it held. */
export type OpenLog = (stream: StreamId, follows?: VisitLog['follows']) => Promise<VisitLog>;

interface LogCase {
  readonly name: string;
  /** Only for logs that outlive their program. */
  readonly lasting?: true;
  readonly run: (open: OpenLog, sha256: Sha256) => Promise<void>;
}

let count = 0;
/** A visit of its own for every case, so that cases may share one store. */
function freshStream(): StreamId {
  count += 1;
  return { company: 'local', visit: `contract-${count}`, device: 'tester', epoch: 1 };
}

function same(found: unknown, expected: unknown, what: string): void {
  const [a, b] = [JSON.stringify(found), JSON.stringify(expected)];
  if (a !== b) throw new Error(`${what}: found ${a}, expected ${b}`);
}

async function refused(work: Promise<unknown>, code: string): Promise<void> {
  const outcome = await work.then(
    () => 'no error at all',
    (error) => ('code' in error ? error.code : error.name),
  );
  same(outcome, code, 'the refusal');
}

const bodiesOf = async (log: VisitLog) => (await log.read(1)).map((entry) => entry.body);

/**
 * What every VisitLog must do, as plain cases without a test library, so that the same suite runs in Node and in a
 * browser's page. A case throws where the log fails it.
 */
export const LOG_CONTRACT: readonly LogCase[] = [
  {
    name: 'a new log is empty and its head is the start of its stream',
    run: async (open, sha256) => {
      const stream = freshStream();
      const log = await open(stream);
      same(log.stream, stream, 'the stream');
      same(log.acknowledged(), undefined, 'the acknowledgement');
      same(await log.read(1), [], 'the events');
      same(await verifyChain(stream, [], sha256), { intact: true, head: log.head() }, 'the chain');
    },
  },
  {
    name: 'appended events are numbered from 1, chained and kept byte for byte',
    run: async (open, sha256) => {
      const log = await open(freshStream());
      const bodies = ['{ "b":1,\n "a":2 }', '', '½ µF 冷媒 🔧', '\u0000"\\', 'x'.repeat(20_000)];
      const first = await log.append(bodies.slice(0, 2));
      const second = await log.append(bodies.slice(2));
      const entries = await log.read(1);
      same(entries, [...first, ...second], 'what append gave');
      same(
        entries.map((entry) => entry.body),
        bodies,
        'the bodies',
      );
      same(await verifyChain(log.stream, entries, sha256), { intact: true, head: log.head() }, 'the chain');
    },
  },
  {
    name: 'appends that overlap in time are written one after another',
    run: async (open, sha256) => {
      const log = await open(freshStream());
      await Promise.all(Array.from({ length: 20 }, (_, at) => log.append([`${at}a`, `${at}b`])));
      const entries = await log.read(1);
      same(entries.length, 40, 'the number of events');
      for (let at = 0; at < 40; at += 2) {
        same(entries[at + 1]?.body, entries[at]?.body.replace('a', 'b'), 'the second of a batch');
      }
      same((await verifyChain(log.stream, entries, sha256)).intact, true, 'the chain');
    },
  },
  {
    name: 'a batch is written whole or not at all',
    run: async (open) => {
      const log = await open(freshStream());
      await log.append(['before']);
      await refused(log.append(['good', 'x'.repeat(70_000)]), 'body-too-large');
      await refused(log.append(['good', 'lone \ud800 surrogate']), 'RangeError');
      same(log.head().seq, 1, 'the head');
      await log.append(['after']);
      same(await bodiesOf(log), ['before', 'after'], 'the bodies');
    },
  },
  {
    name: 'an empty batch changes nothing',
    run: async (open) => {
      const log = await open(freshStream());
      const head = log.head();
      same(await log.append([]), [], 'the entries');
      same(log.head(), head, 'the head');
    },
  },
  {
    name: 'reading takes a part from anywhere',
    run: async (open) => {
      const log = await open(freshStream());
      await log.append(['1', '2', '3', '4', '5']);
      const bodies = async (from: number, limit?: number) => (await log.read(from, limit)).map((entry) => entry.body);
      same(await bodies(2, 2), ['2', '3'], 'two from the second');
      same(await bodies(4), ['4', '5'], 'all from the fourth');
      same(await bodies(6), [], 'all behind the end');
      same(await bodies(1, 0), [], 'none');
    },
  },
  {
    name: 'the latest acknowledgement is kept, with its receipt, and an older one passed over',
    run: async (open) => {
      const log = await open(freshStream());
      const [, second] = await log.append(['1', '2']);
      const hash = second?.hash ?? '';
      const receipt = { stream: log.stream, seq: 2, hash, time: 5, key: 'k', signature: 's' };
      await log.acknowledge({ seq: 2, hash, receipt });
      await log.acknowledge({ seq: 1, hash: 'older' });
      same(log.acknowledged(), { seq: 2, hash, receipt }, 'the acknowledgement');
    },
  },
  {
    name: 'streams are kept apart by every part of their name',
    run: async (open) => {
      const stream = freshStream();
      const others = [
        { ...stream, company: 'other' },
        { ...stream, visit: `${stream.visit}-other` },
        { ...stream, device: 'other' },
        { ...stream, epoch: 2 },
      ];
      const log = await open(stream);
      await log.append(['mine']);
      for (const other of others) same((await (await open(other)).read(1)).length, 0, `events of ${other.epoch}`);
    },
  },
  {
    name: 'a closed log takes nothing more',
    run: async (open) => {
      const log = await open(freshStream());
      await log.append(['1']);
      await log.close();
      await log.close();
      await refused(log.append(['2']), 'log-closed');
    },
  },
  {
    name: 'a log opened again goes on where it was',
    lasting: true,
    run: async (open, sha256) => {
      const stream = { ...freshStream(), epoch: 2 };
      const follows = { epoch: 1, head: { seq: 7, hash: 'a'.repeat(64) }, keeps: 5 };
      const log = await open(stream, follows);
      const [one] = await log.append(['1', '2', '3']);
      await log.acknowledge({ seq: 1, hash: one?.hash ?? '' });
      const head = log.head();
      await log.close();
      const again = await open(stream);
      same(again.head(), head, 'the head');
      same(again.follows, follows, 'the link to the older epoch');
      same(again.acknowledged(), { seq: 1, hash: one?.hash }, 'the acknowledgement');
      await again.append(['4']);
      const entries = await again.read(1);
      same(
        entries.map((entry) => entry.body),
        ['1', '2', '3', '4'],
        'the bodies',
      );
      same((await verifyChain(stream, entries, sha256)).intact, true, 'the chain');
      await again.close();
    },
  },
];
