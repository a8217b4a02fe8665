import { expect, test } from 'vitest';
import { keysFor } from '../../../client/screens/glance/touch-keys.ts';
import { type CautionId, cautionById } from '../../../client/words/talk/caution-words.ts';
import { TO_LIVE_STEP, TypedVisit } from '../visit/typed-visit.ts';

test.each<[CautionId, string, string]>([
  ['live-line', 'Live – I have it', 'live'],
  ['live-control', 'Live – I have it', 'live'],
  ['shell-heat', 'I have it', 'got-it'],
  ['energise', 'I have it', 'got-it'],
])('the key of the caution %s fits it', async (id, label, command) => {
  const visit = await TypedVisit.open();
  await visit.type(...TO_LIVE_STEP);
  const { context } = visit.run;
  if (context.caution === undefined) throw new Error('no caution stands');
  const caution = { ...context.caution, spoken: [cautionById(id)] };
  expect(keysFor({ ...context, caution })[0]).toMatchObject({ label, does: { do: 'command', command } });
});
