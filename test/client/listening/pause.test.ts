import { expect, test } from 'vitest';
import { pauseAfter } from '../../../client/listening/pause.ts';
import { endingOf } from '../../../client/listening/visit-hearing.ts';

const READING = { pauses: 1, isWaited: true };

test('what is whole ends soon, what a fraction may follow later, what may go on last', () => {
  const [whole, fraction, open] = (['whole', 'fraction', 'open'] as const).map((ending) =>
    pauseAfter({ text: 'leg one to ground one eighteen volts', sure: true, fits: true }, ending, READING),
  );
  expect(whole).toBeLessThan(fraction!);
  expect(fraction).toBeLessThan(open!);
});

test('a fraction is waited for as long as anything where somebody pauses often', () => {
  const soFar = { text: 'one one nine', sure: true, fits: true };
  const open = pauseAfter(soFar, 'open', READING);
  expect(pauseAfter(soFar, 'fraction', { ...READING, pauses: 2 })).toBe(open);
  expect(pauseAfter(soFar, 'fraction', READING)).toBeLessThan(open);
});

test('a few words that fit badly while a number is waited for may be half of it', () => {
  const soFar = { text: 'one volt', sure: false, fits: true };
  const open = pauseAfter({ text: '', sure: false, fits: true }, 'open', READING);
  expect(pauseAfter(soFar, 'whole', READING)).toBe(open);
  expect(pauseAfter({ ...soFar, sure: true }, 'whole', READING)).toBeLessThan(open);
  expect(pauseAfter(soFar, 'whole', { ...READING, isWaited: false })).toBeLessThan(open);
  expect(pauseAfter({ ...soFar, text: 'leg one to ground one volt' }, 'whole', READING)).toBeLessThan(open);
});

test('what does not fit at all is waited for, however whole it looks: it is another sentence', () => {
  const soFar = { text: "can't get there", sure: false, fits: false };
  const nothingWaited = { ...READING, isWaited: false };
  expect(pauseAfter(soFar, 'whole', nothingWaited)).toBe(pauseAfter({ ...soFar, text: '' }, 'open', nothingWaited));
  expect(pauseAfter({ ...soFar, fits: true }, 'whole', nothingWaited)).toBeLessThan(
    pauseAfter(soFar, 'whole', nothingWaited),
  );
});

test('one digit and a unit may be two digits while a number is waited for', () => {
  const waiting = { readings: [{ quantity: 'voltage', at: ['L1', 'L2'] }] } as const;
  expect(endingOf('one volt', waiting)).toBe('open');
  expect(endingOf('two thirty volts', waiting)).toBe('whole');
  expect(endingOf('leg one to ground one eighteen volts', { readings: [] })).toBe('whole');
});
