import { expect, test } from 'vitest';
import { Endpointer, type Turn } from '../../../client/listening/sound/endpointer.ts';

const turns = (likelihoods: readonly number[]): Turn[] => {
  const endpointer = new Endpointer();
  return likelihoods.map((speech) => endpointer.step(speech, 300));
};
const frames = (count: number, speech: number): number[] => Array.from({ length: count }, () => speech);

test('a monologue of five minutes is closed every fifteen seconds', () => {
  const ends = turns(frames(30_000, 0.95)).flatMap((turn, at) => (turn === 'ended' ? [at] : []));
  expect(ends.length).toBeGreaterThanOrEqual(19);
  const lengths = ends.map((at, index) => at - (ends[index - 1] ?? 0));
  expect(Math.max(...lengths)).toBeLessThanOrEqual(1_520);
});

test('five minutes of silence open nothing', () => {
  expect(new Set(turns(frames(30_000, 0.05)))).toEqual(new Set(['quiet']));
});

test('a knock of 50 ms opens nothing', () => {
  expect(turns([...frames(20, 0), ...frames(5, 1), ...frames(50, 0)])).not.toContain('began');
});

test('a short pause does not end an utterance, a long one does', () => {
  const speech = [...frames(30, 0.9), ...frames(20, 0.1), ...frames(30, 0.9), ...frames(40, 0.1)];
  const heard = turns(speech);
  expect(heard.filter((turn) => turn === 'began')).toHaveLength(1);
  expect(heard.indexOf('ended')).toBe(30 + 20 + 30 + 29);
});
