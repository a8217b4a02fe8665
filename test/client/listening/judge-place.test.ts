import { describe, expect, test } from 'vitest';
import { judgePlace, type PlaceMeasured } from '../../../client/listening/sound/judge-place.ts';
import { PLACE_ADVICE } from '../../../client/words/pages/sound-words.ts';

const FINE: PlaceMeasured = { floorDb: -60, othersTalk: false, echoDb: -55, speechDb: -25, number: 'right' };

describe('a place', () => {
  test('where nothing hinders hearing is not found fault with', () => {
    expect(judgePlace(FINE)).toEqual([]);
    expect(judgePlace({ ...FINE, echoDb: undefined })).toEqual([]);
  });

  test.each<[string, Partial<PlaceMeasured>, string]>([
    ['a loud floor', { floorDb: -30, echoDb: undefined }, 'loud'],
    ['a voice hardly above it', { floorDb: -45, speechDb: -36, echoDb: undefined }, 'loud'],
    ['others who talk', { othersTalk: true }, 'others-talk'],
    ['a far voice', { floorDb: -80, speechDb: -50, echoDb: undefined }, 'far'],
    ['a voice that is cut off', { speechDb: -1 }, 'clipped'],
    ['the own voice in the microphone', { echoDb: -40 }, 'echo'],
    ['another number', { number: 'other' }, 'misheard'],
  ])('with %s is told', (_, measured, fault) => {
    expect(judgePlace({ ...FINE, ...measured })).toEqual([fault]);
    expect(PLACE_ADVICE[judgePlace({ ...FINE, ...measured })[0] ?? 'loud']).toMatch(/\.$/);
  });

  test('where no number was heard is told so first', () => {
    expect(judgePlace({ ...FINE, floorDb: -20, speechDb: undefined, number: 'unheard' })[0]).toBe('unheard');
  });
});
