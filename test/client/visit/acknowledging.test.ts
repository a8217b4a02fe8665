import { describe, expect, it } from 'vitest';
import { TO_LIVE_STEP, TypedVisit } from './typed-visit.ts';

/** Natural words for "I have heard it", of several kinds. Common practice. */
const WORDS = [
  'live',
  'okay',
  'got it',
  'okay got it',
  'I have it',
  'ready',
  'yes',
  'yep',
  'go ahead',
  'okay go ahead',
  'done',
  'alright',
  'understood',
  'copy that',
  'roger',
  "let's go",
];

/** A visit whose live caution was spoken, and whose step was not in its breath. */
async function cautioned(): Promise<TypedVisit> {
  const visit = await TypedVisit.open();
  await visit.type(...TO_LIVE_STEP);
  expect(visit.run.value).toEqual({ open: { cautioning: 'awaiting' } });
  return visit;
}

describe('a caution', () => {
  it.each(WORDS)('is acknowledged by "%s"', async (word) => {
    const visit = await cautioned();
    const before = visit.of('caution.acknowledged').length;
    await visit.type(word);
    expect(visit.of('caution.acknowledged').length).toBeGreaterThan(before);
    expect(visit.mouth.said.filter(({ text }) => text === 'Visit goes on.')).toEqual([]);
  });

  it.each(['no', 'what next', 'why', 'one moment that is not it', 'take that back'])(
    'is not acknowledged by "%s"',
    async (word) => {
      const visit = await cautioned();
      const before = visit.of('caution.acknowledged').length;
      await visit.type(word);
      expect(visit.of('caution.acknowledged')).toHaveLength(before);
    },
  );

  it.each(WORDS)('that was cut is not acknowledged by "%s", but spoken again', async (word) => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_LIVE_STEP.slice(0, -1));
    visit.mouth.cutNext = 2;
    await visit.type(TO_LIVE_STEP.at(-1)!);
    expect(visit.run.value).toEqual({ open: { cautioning: 'silenced' } });
    await visit.type(word);
    expect(visit.of('caution.acknowledged')).toEqual([]);
  });
});

describe('words that acknowledge', () => {
  it('take no value that is asked back: only a yes does', async () => {
    const visit = await TypedVisit.open();
    await visit.type('leg one to ground one thirty five', 'okay', 'got it', 'done', 'copy that');
    expect(visit.of('reading.logged')).toEqual([]);
  });

  it('change nothing where no caution waits', async () => {
    const visit = await TypedVisit.open();
    const step = visit.run.context.step?.id;
    await visit.type('okay', 'understood', "let's go");
    expect(visit.run.context.step?.id).toBe(step);
    expect(visit.of('item.reported')).toEqual([]);
    expect(visit.of('caution.acknowledged')).toEqual([]);
  });
});
