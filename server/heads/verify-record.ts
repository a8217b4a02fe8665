import type { Sha256 } from '../../grammar/visit/envelope.ts';
import { isInTheOpen } from '../../grammar/visit/personal.ts';
import { type SignedHead, standBy } from '../../grammar/visit/signed-head.ts';
import { openWords } from '../personal/in-the-open.ts';
import type { KeptHeads } from './heads-file.ts';
import {
  eventsWords,
  type Finding,
  type HeldStream,
  receivedBackwards,
  sha256,
  verifyStream,
} from './verify-stream.ts';

/** What a verification comes to. */
export interface Verification {
  readonly streams: number;
  readonly events: number;
  /** The first is the first that is wrong, by visit and number. */
  readonly findings: readonly Finding[];
  /** Worth knowing, and no proof of a change. */
  readonly notes: readonly string[];
  /** What no check of what was given can tell. */
  readonly unknown: readonly string[];
}

/**
 * Holds a whole record against its chains and against the heads that a server signed and somebody kept.
 *
 * @param hash SHA-256; a server that has others to serve gives them their turn in it
 */
export async function verifyRecord(
  held: readonly HeldStream[],
  { heads, sentence }: KeptHeads,
  hash: Sha256 = sha256,
): Promise<Verification> {
  const stood = standBy(heads);
  const findings: Finding[] = sentence === undefined ? [] : [{ stream: '', sentence }];
  const notes: string[] = [];
  for (const one of held) {
    findings.push(...(await verifyStream(one, stood.get(one.stream), hash)));
    const back = receivedBackwards(one);
    if (back !== undefined) notes.push(`${one.stream}: the time of receipt goes back at event ${back}.`);
  }
  notes.push(...(await openNotes(held)));
  const names = new Set(held.map(({ stream }) => stream));
  for (const { stream, seq } of stood.values()) {
    if (!names.has(stream)) findings.push({ stream, sentence: `Signed for with ${eventsWords(seq)}, and not here.` });
  }
  return {
    streams: held.length,
    events: held.reduce((sum, { events }) => sum + events.length, 0),
    findings,
    notes,
    unknown: unknowable(held, heads),
  };
}

/** So many visits are named; of the others it is told how many there are. */
const MOST_NAMED = 5;
/** Between so many events others are served. */
const EVENTS_A_TURN = 100;

/** What was written in the open, by visit: erasing would not reach it. */
async function openNotes(held: readonly HeldStream[]): Promise<readonly string[]> {
  const open = new Map<string, number>();
  for (const { stream, events } of held) {
    const [company = '', visit = ''] = stream.split('/');
    const name = `${company}, visit ${visit}`;
    for (const [at, { body }] of events.entries()) {
      if (at % EVENTS_A_TURN === 0) await new Promise((resolve) => setImmediate(resolve));
      if (isInTheOpen(body)) open.set(name, (open.get(name) ?? 0) + 1);
    }
  }
  const named = [...open].slice(0, MOST_NAMED).map(([name, count]) => `${name}: ${openWords(count)}`);
  const others = open.size - named.length;
  const more = others === 1 ? '1 other visit has' : `${others} other visits have`;
  return others === 0 ? named : [...named, `${more} entries that were written in the open.`];
}

function unknowable(held: readonly HeldStream[], heads: readonly SignedHead[]): readonly string[] {
  const latest = heads.at(-1);
  if (latest === undefined) {
    return [
      'No head was kept: a record cut at its end, one written anew as a whole, and a visit that is gone cannot be told.',
    ];
  }
  const stood = standBy(heads);
  // By their numbers, each stream for itself: what one lacks is not made up by another.
  const since = held
    .map(({ stream, events }) => events.filter(({ seq }) => seq > (stood.get(stream)?.seq ?? 0)).length)
    .reduce((sum, count) => sum + count, 0);
  if (since <= 0) return ['Whoever holds the folder and its key could have signed anew: keep heads elsewhere too.'];
  return [
    `${eventsWords(since)} came after the last head: their chain speaks for them, and nothing tells a cut at their end.`,
    'Whoever holds the folder and its key could have signed anew: keep heads elsewhere too.',
  ];
}
