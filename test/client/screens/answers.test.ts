import { describe, expect, test } from 'vitest';
import { answersOf } from '../../../client/words/shown/answer-lines.ts';
import { foldVisit } from '../../../grammar/visit/fold-visit.ts';
import { readBodies } from '../../../grammar/visit/read-bodies.ts';
import { RECORDED, recordedBodies } from '../../browser/put-visit.ts';

const answersTo = (bodies: readonly string[]) =>
  new Map(answersOf(foldVisit(readBodies(bodies))).map((one) => [one.id, one]));

describe('the five answers of the first screen', () => {
  test('to the library visit are what stands in its record', () => {
    const answers = answersTo(recordedBodies('library'));
    expect(answers.get('wrong')?.answer).toBe('Capacitor fan section weak');
    expect(answers.get('sure')?.answer).toMatch(/^(More than )?9\d %$/);
    expect(answers.get('done')?.answer).toBe('Fitted dual capacitor, herm 45 µF, fan 5 µF, 440 V');
    // Return 76, supply 58.
    expect(answers.get('cools')?.answer).toBe('It cools: 18 °F colder');
    expect(answers.get('rightly')?.danger).toBe(false);
  });

  test('to a visit that broke off say what is not known, and claim nothing', () => {
    const answers = answersTo(recordedBodies('library').slice(0, 60));
    expect(answers.get('wrong')?.answer).toBe('No fault was stated');
    expect(answers.get('sure')?.answer).toBe('–');
    expect(answers.get('done')?.answer).toBe('Nothing was fitted or mended');
    expect(answers.get('cools')?.answer).toBe('Not shown by readings');
    expect(answers.get('rightly')?.answer).toMatch(/so far|not acknowledged/);
  });

  test('put hands in a zone that was not proven dead before all else', () => {
    const time = { at: '2026-06-15T15:00:00.000Z', mono: 4e6 };
    const unproven = { type: 'work.unproven', what: 'hands', zone: 'outdoor-load', state: 'live', cause: 1, time };
    const { answer, danger } = answersTo([...recordedBodies('fuse'), JSON.stringify(unproven)]).get('rightly') ?? {};
    expect([answer, danger]).toEqual(['1 time in a zone not proven dead', true]);
  });

  test.each(RECORDED)('never call anything safe: %s', (name) => {
    const said = answersOf(foldVisit(readBodies(recordedBodies(name))));
    expect(said.map(({ answer, details }) => [answer, ...details].join(' ')).join(' ')).not.toMatch(/\bsafe/i);
  });
});
