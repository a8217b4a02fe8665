import { expect, test } from 'vitest';
import type { Ear, EarFault, Utterance } from '../../client/listening/ear.ts';

export interface EarUnderTest {
  readonly ear: Ear;
  /** Makes the ear hear these sentences, in order, after `start`; resolves when all of them were delivered. */
  readonly hear: (sentences: readonly string[]) => Promise<void>;
}

interface Delivered {
  readonly utterances: Utterance[];
  readonly faults: [EarFault, string][];
}

/** What an ear under test must be able to hear. */
const said = ['leg one to ground one eighteen', 'tell me why'];

async function listen({ ear, hear }: EarUnderTest, sentences = said): Promise<Delivered> {
  const delivered: Delivered = { utterances: [], faults: [] };
  await ear.start({
    onUtterance: (utterance) => delivered.utterances.push(utterance),
    onFault: (fault, detail) => delivered.faults.push([fault, detail]),
  });
  await hear(sentences);
  return delivered;
}

/** The first thing that every ear keeps to, by itself: the short run's share where an ear hears in real time. */
export function earDelivers(make: () => Promise<EarUnderTest>): void {
  test('delivers what was said, in order, each once', async () => {
    const under = await make();
    const { utterances, faults } = await listen(under);
    expect(utterances.map(({ text }) => text)).toEqual(said);
    expect(utterances.every(({ accepted }) => accepted)).toBe(true);
    expect(new Set(utterances.map(({ id }) => id)).size).toBe(utterances.length);
    expect(utterances.every(({ ear }) => ear === under.ear.kind)).toBe(true);
    expect(faults).toEqual([]);
    await under.ear.stop();
  });
}

/** What every ear keeps to. `make` gives a fresh one. */
export function earContract(make: () => Promise<EarUnderTest>): void {
  earDelivers(make);

  test('says when it was said, how sure it is and how long it took, in sound numbers', async () => {
    const under = await make();
    const { utterances } = await listen(under);
    let before = 0;
    for (const { startedMs, endedMs, verdictMs, realTimeFactor, confidence } of utterances) {
      expect(startedMs).toBeGreaterThanOrEqual(before);
      expect(endedMs).toBeGreaterThanOrEqual(startedMs);
      expect(verdictMs).toBeGreaterThanOrEqual(0);
      expect(realTimeFactor).toBeGreaterThanOrEqual(0);
      expect(confidence).toBeGreaterThan(0.5);
      expect(confidence).toBeLessThanOrEqual(1);
      before = endedMs;
    }
    await under.ear.stop();
  });

  test('takes an expectation before and between utterances', async () => {
    const under = await make();
    under.ear.expect({ readings: [{ quantity: 'voltage', at: ['L1', 'ground'] }] });
    const first = await listen(under, [said[0]!]);
    under.ear.expect({ readings: [] });
    await under.hear([said[1]!]);
    expect(first.utterances.map(({ text }) => text)).toEqual(said);
    await under.ear.stop();
  });

  test('delivers nothing once it was stopped', async () => {
    const under = await make();
    const { utterances } = await listen(under, [said[0]!]);
    await under.ear.stop();
    await under.hear([said[1]!]).catch(() => undefined);
    expect(utterances).toHaveLength(1);
  });
}
