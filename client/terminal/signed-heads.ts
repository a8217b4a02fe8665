import { readFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { streamText } from '../../grammar/visit/envelope.ts';
import { type SignedHead, standBy } from '../../grammar/visit/signed-head.ts';
import { VOUCHED } from '../words/printed/vouched-words.ts';
import type { ReadChain } from './read-events.ts';
import { TerminalError } from './terminal-error.ts';

/** What a server calls its signed heads in its data folder. */
const HEADS_FILE = 'heads.jsonl';

/**
 * The heads that a server signed: of the server at an address, in a data folder or a file of heads; where nothing is
 * named, those beside the record, and undefined where there are none.
 *
 * @throws {TerminalError} heads-missing, for what was named and cannot be read
 */
export async function headsAtHand(
  named: string | undefined,
  record: string,
): Promise<readonly SignedHead[] | undefined> {
  if (named === undefined) {
    const beside = await readFile(join(dirname(record), HEADS_FILE), 'utf8').catch(() => undefined);
    return beside === undefined ? undefined : headsIn(beside);
  }
  try {
    if (/^https?:/.test(named)) return await headsOf(named);
    const path = basename(named).endsWith('.jsonl') ? named : join(named, HEADS_FILE);
    return headsIn(await readFile(path, 'utf8'));
  } catch (error) {
    throw new TerminalError('heads-missing', named, error);
  }
}

function headsIn(text: string): readonly SignedHead[] {
  return text
    .split('\n')
    .slice(0, -1)
    .map((line) => JSON.parse(line) as SignedHead);
}

async function headsOf(server: string): Promise<readonly SignedHead[]> {
  const response = await fetch(new URL('/api/heads', server));
  if (!response.ok) throw new Error(`${response.status}`);
  return ((await response.json()) as { readonly heads: readonly SignedHead[] }).heads;
}

/** Where the chain ends, what the server receipted of it and signed, and whether that is what stands here. */
export function vouchedLines(
  chain: ReadChain | undefined,
  heads: readonly SignedHead[] | undefined,
  day: (at: string) => string,
): readonly string[] {
  const head = chain?.entries.at(-1);
  if (chain === undefined || head === undefined) return [VOUCHED.noChain];
  const receipt = chain.acknowledged?.receipt;
  const signed = (time: number) => day(new Date(time).toISOString());
  return [
    VOUCHED.chain(head),
    receipt === undefined ? VOUCHED.noReceipt : VOUCHED.receipt(receipt.seq, signed(receipt.time), receipt.signature),
    ...headLines(chain, heads, signed),
  ];
}

function headLines(
  { stream, entries }: ReadChain,
  heads: readonly SignedHead[] | undefined,
  signed: (time: number) => string,
): readonly string[] {
  if (heads === undefined) return [VOUCHED.noHeads];
  const text = streamText(stream);
  const stood = standBy(heads).get(text);
  const latest = heads.findLast(({ streams }) => streams.some((one) => one.stream === text));
  if (stood === undefined || latest === undefined) return [VOUCHED.notNamed];
  const here = entries[stood.seq - 1]?.hash;
  return [
    VOUCHED.signed(latest.number, signed(latest.time), latest.signature),
    here === undefined
      ? VOUCHED.signedPast(stood.seq, entries.length)
      : here === stood.hash
        ? VOUCHED.signedTo(stood.seq)
        : VOUCHED.signedOther(stood.seq),
  ];
}
