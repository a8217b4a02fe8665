import { describe, expect, it } from 'vitest';
import { TAKEN_OFF } from '../../../client/visit/rules/isolation.ts';
import { understand } from '../../../grammar/phrases/understand.ts';
import { deniedOfSwitch } from '../../../grammar/vocabulary/denial-signs.ts';
import { ARRIVAL, TO_PROVEN_DEAD, TypedVisit } from './typed-visit.ts';

/** That nothing was done at a switch, said in the ways that English has. Common practice. */
const WHO = [
  "I didn't BASE",
  'I did not BASE',
  "I haven't DONE",
  'I have not DONE',
  "I still haven't DONE",
  'I never DONE',
  'nobody DONE',
  'no one DONE',
  'no one has DONE',
  "we couldn't BASE",
  "I ain't DONE",
  'I forgot to BASE',
  "he didn't BASE",
] as const;
const ACTS = [
  ['pull', 'pulled', 'pulled'],
  ['lock', 'locked', 'locked'],
  ['tag', 'tagged', 'locked'],
  ['open', 'opened', 'off'],
  ['shut off', 'shut off', 'off'],
] as const;
const WHAT = ['the disconnect', 'it', 'the breaker', 'the outdoor disconnect', 'the panel breaker'] as const;
const IS_NOT = ["isn't", 'is not', "wasn't", "hasn't been", 'was never', "ain't", 'is still not'] as const;
const STATES = [
  ['pulled', 'pulled'],
  ['locked', 'locked'],
  ['locked out', 'locked'],
  ['off', 'off'],
] as const;

const DENIALS = [
  ...WHO.flatMap((who) =>
    ACTS.flatMap(([base, done, not]) =>
      WHAT.map((what) => ({ text: `${who.replace('BASE', base).replace('DONE', done)} ${what}`, not })),
    ),
  ),
  ...IS_NOT.flatMap((isNot) =>
    STATES.flatMap(([state, not]) =>
      ['the disconnect', 'disconnect', 'the panel breaker'].map((what) => ({ text: `${what} ${isNot} ${state}`, not })),
    ),
  ),
];

const NO_DENIALS = [
  'I pulled the disconnect',
  "don't pull the disconnect",
  'did you pull the disconnect',
  "why haven't you pulled the disconnect",
  "haven't you locked it",
  'is the disconnect not pulled',
  "if it isn't locked don't touch it",
  'fan is not turning',
  'thermostat is not calling',
  "I haven't pulled the brown wire",
  'float switch is not open',
  'high pressure switch is not open',
  'the contactor is not pulled in',
  'no one eighteen',
] as const;

describe('a switch that was not opened or not locked', () => {
  it('is known by its words', () => {
    expect(DENIALS.filter(({ text, not }) => deniedOfSwitch(text) !== not)).toEqual([]);
    expect(NO_DENIALS.filter((text) => deniedOfSwitch(text) !== undefined)).toEqual([]);
  });

  it('is never understood as opened, locked, or as anything else', () => {
    for (const { text } of DENIALS)
      expect(understand(text, { readings: [], typed: true }).verdict, text).toBe('rejected');
  });

  it('is told back at once, and the step is asked again', async () => {
    const visit = await TypedVisit.open();
    await visit.type(
      ...ARRIVAL,
      'compressor runs then trips',
      'leg one to ground one nineteen',
      'thermostat is not calling',
    );
    for (const { text, not } of DENIALS.filter((_, index) => index % 29 === 0)) {
      const told = visit.mouth.said.length;
      await visit.type(text);
      expect(visit.mouth.said[told]?.text, text).toBe(`Not ${not}, then: power counts as on.`);
      expect(TAKEN_OFF, text).not.toContain(visit.run.context.energy['outdoor-load']);
    }
    expect(visit.run.context.step?.id).toBe('energy.power-off');
  });

  it('ends what was proved by it', async () => {
    for (const text of [
      'nobody locked it',
      "I didn't pull the disconnect",
      'the outdoor disconnect was never locked',
    ]) {
      const visit = await TypedVisit.open();
      await visit.type(...ARRIVAL, 'compressor runs then trips', ...TO_PROVEN_DEAD);
      expect(visit.run.context.energy['outdoor-load']).toBe('proven-dead');
      await visit.type(text);
      expect(TAKEN_OFF, text).not.toContain(visit.run.context.energy['outdoor-load']);
      expect(visit.mouth.said.some((one) => /^Not (pulled|locked), then: /.test(one.text))).toBe(true);
    }
  });

  it('answers the question which switch was opened', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL, 'I pulled the disconnect');
    expect(visit.run.context.questions).toHaveLength(1);
    await visit.type("no I didn't pull it");
    expect(visit.run.context.questions).toEqual([]);
  });
});
