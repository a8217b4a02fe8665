import { expect, test } from 'vitest';
import type { Mouth, Prompt } from '../../client/speaking/mouth.ts';

export interface MouthUnderTest {
  readonly mouth: Mouth;
  /** Lets so much time pass, where the test holds the clock. */
  readonly pass: (ms: number) => Promise<void>;
  /** Whether an ordinary prompt takes time, so that it can be cut. */
  readonly sounds: boolean;
  /** Whether a caution takes time. */
  readonly holdsCautions: boolean;
}

const readback: Prompt = { id: 'p1', kind: 'readback', text: 'one eighteen, leg one' };
const next: Prompt = { id: 'p2', kind: 'step', text: 'leg two to ground' };
const caution: Prompt = { id: 'c1', kind: 'caution', text: 'live parts: one hand, gloves, eyes on the probes' };

/** What every mouth keeps to. */
export function mouthContract(make: () => Promise<MouthUnderTest>): void {
  /** What only stands on the screen or on paper was never spoken. */
  const whole = ({ sounds }: MouthUnderTest) => (sounds ? 'spoken' : 'shown');
  /** How it ended; undefined while it is not over after so long. */
  const within = async ({ pass }: MouthUnderTest, outcome: ReturnType<Mouth['speak']>, ms: number) => {
    let ended: string | undefined;
    void outcome.then((how) => {
      ended = how;
    });
    for (let passed = 0; passed < ms && ended === undefined; passed += 100) await pass(100);
    return ended;
  };

  test('speaks each prompt whole, one after another', async () => {
    const under = await make();
    expect(await within(under, under.mouth.speak(readback), 15_000)).toBe(whole(under));
    expect(await within(under, under.mouth.speak(next), 15_000)).toBe(whole(under));
  });

  test('is cut short by a hush, and can go on with the next', async () => {
    const under = await make();
    const outcome = under.mouth.speak(readback);
    await under.pass(300);
    under.mouth.hush(false);
    expect(await within(under, outcome, 1_000)).toBe(under.sounds ? 'cut' : 'shown');
    expect(await within(under, under.mouth.speak(next), 15_000)).toBe(whole(under));
  });

  test('holds a caution against a hush, except one that means it; the caution then starts again whole', async () => {
    const under = await make();
    const outcome = under.mouth.speak(caution);
    await under.pass(300);
    under.mouth.hush(false);
    await under.pass(200);
    under.mouth.hush(true);
    expect(await within(under, outcome, 1_000)).toBe(under.holdsCautions ? 'cut' : 'shown');
    expect(await within(under, under.mouth.speak(caution), 20_000)).toBe(whole(under));
  });

  test('is not upset by a hush while it says nothing', async () => {
    const under = await make();
    under.mouth.hush(false);
    under.mouth.hush(true);
    expect(await within(under, under.mouth.speak(readback), 15_000)).toBe(whole(under));
  });
}
