import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { Hearing } from '../../../client/listening/hearing.ts';
import { loadHearing, loadHearingParts } from '../../../client/listening/node/load-hearing.ts';
import type { Gate } from '../../../client/listening/recogniser/gate.ts';
import { GATES } from '../../../client/listening/recogniser/gates.ts';
import { visitGrammar } from '../../../client/listening/visit-hearing.ts';
import { readWav } from '../../../client/listening/wav.ts';
import { speak } from '../../../fixtures/speak.ts';
import { PRONUNCIATIONS } from '../../../grammar/export/pronunciations.ts';
import { understand } from '../../../grammar/phrases/understand.ts';
import { hear } from '../../bench/hearing/hear-sound.ts';
import { condenserNoise, mixed } from '../../bench/hearing/noise.ts';
import { FOREIGN } from '../../bench/hearing/sentences.ts';
import { judged } from '../../bench/hearing/spoken-set.ts';
import { LONG } from '../../how-much.ts';

/** Two voices, eight sentences: a few seconds of what `npm run hear:bench` measures at length. */
const SENTENCES = [
  ['09-leg-one', 'leg one to ground one eighteen'],
  ['12-legs', 'leg one to leg two reads two forty one'],
  ['20-herm-charge', 'herm section zero volts d c'],
  ['24-herm', 'herm section forty four point one microfarads'],
  ['31-power-on', 'outdoor disconnect is back in'],
  ['35-compressor-amps', 'compressor amps fourteen'],
  ['38-return-air', 'return air seventy six degrees'],
  ['25-why', 'tell me why'],
] as const;
/** Enough where only breakage is to be noticed, and for a short run. */
const FOUR = SENTENCES.slice(0, 4);
const SAID = LONG ? SENTENCES : FOUR;

const AUDIO = new URL('../../../fixtures/audio/library/', import.meta.url);
const soundOf = (id: string): Float32Array => readWav(readFileSync(new URL(`${id}.wav`, AUDIO)), id);
const talk = FOREIGN.slice(0, 4).map((words) => speak({ name: 'rms' }, words));

type Change = (sound: Float32Array) => Float32Array;
const asRecorded: Change = (sound) => sound;
const under =
  (decibels: number): Change =>
  (sound) =>
    mixed(sound, condenserNoise(sound.length / 16_000, 3), decibels);

/** How many sentences were taken and right, and taken and wrong. */
function score(
  hearing: Hearing,
  change: Change,
  sentences: readonly (typeof SENTENCES)[number][] = SAID,
): { readonly right: number; readonly wrong: number } {
  const outcomes = sentences.map(([id, words]) => {
    const wanted = understand(words).meaning;
    const expectation =
      wanted.kind === 'reading'
        ? { readings: [{ quantity: wanted.reading.quantity, at: wanted.reading.at }] }
        : { readings: [] };
    hearing.expect(expectation);
    return judged(words, hear(hearing, change(soundOf(id))), expectation).outcome;
  });
  const count = (outcome: string): number => outcomes.filter((one) => one === outcome).length;
  return { right: count('right'), wrong: count('wrong') };
}

function acceptedTalk(hearing: Hearing): number {
  hearing.expect({ readings: [] });
  return talk.flatMap((sound) => hear(hearing, sound)).filter(({ accepted }) => accepted).length;
}

/** An ear whose gate lets everything through. */
async function openEar(): Promise<Hearing> {
  const open = (gate: Gate): Gate => ({ ...gate, reject: -1_000, short: 0 });
  return await Hearing.open({
    ...(await loadHearingParts({})),
    pronunciations: PRONUNCIATIONS,
    gates: { bundled: open(GATES.bundled), wideband: open(GATES.wideband) },
    grammarFor: visitGrammar,
    isWhole: () => true,
  });
}

describe('what is heard of a few sentences', { timeout: 480_000 }, () => {
  let hearing: Hearing;
  beforeAll(async () => {
    hearing = await loadHearing();
  }, 120_000);
  afterAll(() => hearing.close());

  // At most so many not taken or asked, at most so many taken and wrong: what is reached. 5 dB is a known weakness.
  const CONDITIONS = [
    ['as recorded', asRecorded, 1, 0],
    ['10 dB over a condenser', under(10), 1, 0],
    ...(LONG ? [['5 dB over a condenser', under(5), 5, 2] as const] : []),
  ] as const;
  test.each(CONDITIONS)('%s', (_, change, missed, most) => {
    const { right, wrong } = score(hearing, change);
    expect(right).toBeGreaterThanOrEqual(SAID.length - missed);
    expect(wrong).toBeLessThanOrEqual(most);
  });

  test('with a tenth of the sound missing in gaps, nothing wrong', () => {
    const gaps: Change = (sound) => sound.map((sample, at) => (at % 3_200 < 320 ? 0 : sample));
    expect(score(hearing, gaps, FOUR).wrong).toBe(0);
  });

  test('nothing of other talk', () => {
    expect(acceptedTalk(hearing)).toBe(0);
  });

  test('an ear that hears everything backwards does not reach the lowest floor', () => {
    expect(score(hearing, (sound) => sound.toReversed(), FOUR).right).toBe(0);
  });

  test('an ear without a gate takes other talk for sentences', async () => {
    const broken = await openEar();
    expect(acceptedTalk(broken)).toBeGreaterThanOrEqual(3);
    broken.close();
  });
});
