import { describe, expect, test } from 'vitest';
import { type Heard, heardAsRest, type Said } from '../../../client/listening/continuation.ts';

const heard = (text: string, accepted: boolean): Heard => ({
  text,
  accepted,
  doubtful: false,
  confidence: 0.8,
  margin: 0,
  pass: 'expected',
  looks: 1,
  alternatives: [],
  rivals: [],
});

const first: Said = {
  text: 'two ton',
  accepted: false,
  startedMs: 0,
  endedMs: 600,
  sound: [],
  speechFrames: 40,
  ending: 'open',
  grammar: undefined,
  expectation: { readings: [{ quantity: 'voltage', at: ['L1', 'L2'] }] },
  loudestDb: -20,
};

describe('what follows something that nobody understood', () => {
  const rest = { alone: heard('nine', true), speechFrames: 30, loudestDb: -22 };
  const never = (): Heard => heard('', false);

  test('is asked where that was as loud: the first half of a number may be lost', () => {
    expect(heardAsRest(first, rest, () => true, never)).toEqual({
      heard: { ...rest.alone, doubtful: true },
      ofBoth: false,
    });
  });

  test('is taken as it is behind a voice well below it, or a knock', () => {
    const asItIs = { heard: rest.alone, ofBoth: false };
    expect(heardAsRest({ ...first, loudestDb: -40 }, rest, () => true, never)).toEqual(asItIs);
    expect(heardAsRest({ ...first, speechFrames: 8 }, rest, () => true, never)).toEqual(asItIs);
  });

  test('is nothing of a talk that went on for seconds, and not heard together with it', () => {
    const once = (): Heard => {
      throw new Error('heard once more');
    };
    const talk = { ...first, speechFrames: 700 };
    expect(heardAsRest(talk, rest, () => true, once)).toEqual({ heard: rest.alone, ofBoth: false });
  });

  test('is one number with it where both together are understood', () => {
    const both = heard('two nine', true);
    expect(
      heardAsRest(
        first,
        rest,
        () => true,
        () => both,
      ),
    ).toEqual({
      heard: { ...both, doubtful: true },
      ofBoth: true,
    });
  });
});
