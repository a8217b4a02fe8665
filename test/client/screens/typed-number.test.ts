import { expect, test } from 'vitest';
import { withKey } from '../../../client/screens/technician/typed-number.ts';

const typed = (...keys: readonly string[]): string => keys.reduce(withKey, '');

test.each([
  [['1', '1', '8'], '118'],
  [['1', '.', '1'], '1.1'],
  [['1', '.', '.', '1'], '1.1'],
  [['5', '-'], '-5'],
  [['-', '5'], '-5'],
  [['5', '-', '-'], '5'],
  [['-', '5', '-', '-'], '-5'],
  [['1', '2', 'Backspace', '3'], '13'],
  [['Backspace'], ''],
  [[...'123456789'], '1234567'],
])('the keys %j make %s', (keys, text) => {
  expect(typed(...keys)).toBe(text);
});
