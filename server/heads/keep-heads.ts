import type { SignedHead } from '../../grammar/visit/signed-head.ts';
import { ServerError } from '../errors.ts';
import { reportFault } from '../report-fault.ts';
import type { EventStore } from '../store/event-store.ts';
import type { ReceiptSigner } from '../sync/receipt-signer.ts';
import { wasGivenUp } from './given-up.ts';
import type { KeptHeads } from './heads-file.ts';
import type { HeadsPlace } from './heads-place.ts';
import { lossesSince, takeHead } from './take-head.ts';
import { type Finding, streamWords } from './verify-stream.ts';

const DAY_MS = 86_400_000;
/** So many losses are named; the rest is counted. */
const NAMED = 5;

/** The server's own memory of what it held: a signed head at each start, each day and at the end. */
export interface HeadKeeper {
  readonly heads: () => readonly SignedHead[];
  /** With what loss it went on, a sentence each. */
  readonly givenUp: readonly string[];
  /** Called once events are on the disk, before they are acknowledged. */
  readonly stored: () => Promise<void>;
  /** Signs where all streams stand now, if anything moved. */
  readonly take: () => Promise<void>;
  readonly close: () => Promise<void>;
}

/** A store, and where it is known, whether it was closed as it should be. */
type KeptStore = EventStore & { readonly leftInOrder?: boolean; readonly older?: boolean };

export interface KeepOptions {
  readonly place: HeadsPlace;
  readonly store: KeptStore;
  readonly signer: ReceiptSigner;
  readonly clock: () => number;
  /** Goes on where something was lost, and begins the heads anew. */
  readonly acceptLoss: boolean;
  /** What was found in the record itself. */
  readonly findings?: readonly Finding[];
}

/**
 * Holds the store against what was signed and acknowledged before, then signs anew each day.
 * @throws {ServerError} data-lost, heads-damaged, key-lost, unless a loss is accepted; data-unwritable.
 */
export async function keepHeads({
  place,
  store,
  signer,
  clock,
  acceptLoss,
  findings = [],
}: KeepOptions): Promise<HeadKeeper> {
  const kept = await place.read(signer);
  const before = await place.givenUp();
  const damaged = findings.filter((one) => !wasGivenUp(before, one));
  const lost = await whatIsLost(kept, damaged, place, store, signer);
  const [first] = lost;
  if (first !== undefined && !acceptLoss) throw first.error;
  const givenUp = lost.flatMap(({ findings: given }) => given);
  if (givenUp.length > 0) await place.giveUp(givenUp, clock());
  // What is not as it was signed is kept apart, and begun anew.
  if (kept.sentence !== undefined) await place.setAside(clock());
  let heads = kept.sentence === undefined ? kept.heads : [];
  const water = place.openWater(await store.lastArrival());
  const take = async (anew?: true): Promise<void> => {
    heads = await place.add(heads, (known) => takeHead(store, known, signer, clock(), anew));
  };
  await take(first === undefined ? undefined : true);
  const daily = setInterval(() => take().catch(reportFault), DAY_MS);
  daily.unref();
  return {
    heads: () => heads,
    givenUp: givenUp.map(({ stream, sentence }) => (stream === '' ? sentence : `${streamWords(stream)}: ${sentence}`)),
    stored: async () => water?.reached(await store.lastArrival()),
    take: () => take(),
    close: async () => {
      clearInterval(daily);
      await take();
      water?.reached(await store.lastArrival());
      water?.close();
    },
  };
}

/** A reason not to start, and what is given up by starting all the same. */
interface Lost {
  readonly error: ServerError;
  readonly findings: readonly Finding[];
}

/** All of them, the worst first. */
async function whatIsLost(
  kept: KeptHeads,
  damaged: readonly Finding[],
  place: HeadsPlace,
  store: KeptStore,
  signer: ReceiptSigner,
): Promise<readonly Lost[]> {
  const lost: Lost[] = [];
  const losing = (error: ServerError, findings: readonly Finding[]) => lost.push({ error, findings });
  const ofFolder = (sentence: string): readonly Finding[] => [{ stream: '', sentence }];
  if (kept.sentence !== undefined) losing(new ServerError('heads-damaged', kept.sentence), ofFolder(kept.sentence));
  const latest = kept.heads.at(-1);
  if (latest !== undefined && latest.key !== signer.keyName) {
    losing(
      new ServerError('key-lost', place.name),
      ofFolder('The key that signed before is not the one that signs now.'),
    );
  }
  const losses = await lossesSince(store, kept.heads);
  if (losses.length > 0) {
    losing(
      new ServerError('data-lost', `${place.name} lost what was signed for. ${namedLosses(losses)}`),
      losses.flatMap(({ sentence: lostOf }) => ofFolder(lostOf)),
    );
  }
  const held = await store.lastArrival();
  const sentence =
    store.older === true && latest === undefined ? undefined : place.waterSentence(held, store.leftInOrder === true);
  if (sentence !== undefined) {
    losing(new ServerError('data-lost', `${place.name} is not as it was left. ${sentence}`), ofFolder(sentence));
  }
  // At its first start a server signs before anything is kept.
  if (latest === undefined && kept.sentence === undefined && held > 0 && store.older !== true) {
    const gone = 'The signed heads (heads.jsonl) are gone: what is missing cannot be told.';
    losing(new ServerError('data-lost', `${place.name} is not as it was left. ${gone}`), ofFolder(gone));
  }
  if (damaged.length > 0) {
    const words = damaged.map((one) => ({ ...one, sentence: `${streamWords(one.stream)}: ${one.sentence}` }));
    losing(new ServerError('data-lost', `${place.name} is not as it was written. ${namedLosses(words)}`), damaged);
  }
  return lost;
}

/** The first few in words, and how many more there are. */
export function namedLosses(losses: readonly { readonly sentence: string }[]): string {
  const more = losses.length > NAMED ? ` And ${losses.length - NAMED} more.` : '';
  return `${losses
    .slice(0, NAMED)
    .map(({ sentence }) => sentence)
    .join(' ')}${more}`;
}
