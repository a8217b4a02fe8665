import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { Hearing } from '../../../client/listening/hearing.ts';
import { loadHearing, loadHearingParts } from '../../../client/listening/node/load-hearing.ts';
import type { Gate } from '../../../client/listening/recogniser/gate.ts';
import { GATES } from '../../../client/listening/recogniser/gates.ts';
import { visitGrammar } from '../../../client/listening/visit-hearing.ts';
import { PRONUNCIATIONS } from '../../../grammar/export/pronunciations.ts';
import { condenserNoise } from '../../bench/hearing/noise.ts';
import { acceptedTalk, asRecorded, type Change, FOUR, SENTENCES, score, soundOf, under } from './few-sentences.ts';

/** An ear whose gate lets everything through. */
async function openEar(): Promise<Hearing> {
  const open = (gate: Gate): Gate => ({ ...gate, reject: -1_000, short: 0 });
  return await Hearing.open({
    ...(await loadHearingParts({})),
    pronunciations: PRONUNCIATIONS,
    gates: { bundled: open(GATES.bundled), wideband: open(GATES.wideband) },
    standsFor: () => undefined,
    grammarFor: visitGrammar,
    endingOf: () => 'whole',
    goesOnWith: () => false,
    urgentMargin: () => undefined,
  });
}

describe('what is heard of eight sentences', { timeout: 480_000 }, () => {
  let hearing: Hearing;
  beforeAll(async () => {
    hearing = await loadHearing();
  }, 120_000);
  afterAll(() => hearing.close());

  // At most so many not taken or asked, at most so many taken and wrong: what is reached. 5 dB is a known weakness; at
  // 10 dB one of eight was missed before short answers were listened for, two since: a loss that stands open.
  const CONDITIONS = [
    ['as recorded', asRecorded, 1, 0],
    ['10 dB over a condenser', under(10), 2, 0],
    ['5 dB over a condenser', under(5), 5, 2],
  ] as const;
  test.each(CONDITIONS)('%s', (_, change, missed, most) => {
    const { right, wrong } = score(hearing, change, SENTENCES);
    expect(right).toBeGreaterThanOrEqual(SENTENCES.length - missed);
    expect(wrong).toBeLessThanOrEqual(most);
  });

  test('with a tenth of the sound missing in gaps, nothing wrong', () => {
    const gaps: Change = (sound) => sound.map((sample, at) => (at % 3_200 < 320 ? 0 : sample));
    expect(score(hearing, gaps, FOUR).wrong).toBe(0);
  });

  test('twenty minutes of a condenser in one piece: nothing is taken of it, nor of the sentence behind it but what it says', () => {
    hearing.expect({ readings: [{ quantity: 'voltage', at: ['L1', 'ground'] }] });
    const taken: string[] = [];
    const listen = (sound: Float32Array): void => {
      for (let at = 0; at < sound.length; at += 320)
        for (const { accepted, text } of hearing.push(sound.subarray(at, at + 320))) if (accepted) taken.push(text);
    };
    for (let minute = 0; minute < 20; minute += 1) listen(condenserNoise(60, minute + 1));
    expect(taken).toEqual([]);
    const [id, words] = SENTENCES[0];
    listen(soundOf(id));
    listen(new Float32Array(16_000));
    expect(taken).toEqual([words]);
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
