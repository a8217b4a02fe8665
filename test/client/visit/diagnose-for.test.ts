import { expect, it } from 'vitest';
import { diagnoseFor } from '../../../client/visit/steps/diagnose-for.ts';

it('tells how far the table of a unit is, once for each unit', async () => {
  const told: number[] = [];
  const diagnose = diagnoseFor((share) => told.push(share));
  await diagnose({ id: 'one' }, [], []);
  expect(told).toEqual([0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1]);
  await diagnose({ id: 'one' }, [], []);
  expect(told).toHaveLength(11);
  await diagnose({ id: 'another' }, [], []);
  expect(told).toHaveLength(22);
});
