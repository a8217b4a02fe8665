import { expect, test } from 'vitest';
import { showPercent, showShare } from '../../../client/words/shown/show-likely.ts';

test('a share of what was counted may be all of it; a chance of the model is never certain', () => {
  expect([11 / 11, 0, 5 / 11, 0.996, 1 / 400].map(showShare)).toEqual(['100 %', '0 %', '45 %', '99 %', 'under 1 %']);
  expect([1, 0.999, 0.45].map(showPercent)).toEqual(['99 %', '99 %', '45 %']);
});
