import { expect, test } from 'vitest';
import { stepName } from '../../../client/words/things/step-name.ts';
import { POINTS } from '../../../grammar/vocabulary/points.ts';
import { TESTS } from '../../../grammar/vocabulary/tests.ts';
import { RECORDED, recordedBodies } from '../../browser/put-visit.ts';

test('a step is named in plain words, with none of the signs of its id', () => {
  const asked = RECORDED.flatMap(recordedBodies)
    .map((body) => JSON.parse(body))
    .filter(({ type }) => type === 'step.asked')
    .map(({ step }) => step as string);
  expect(asked.length).toBeGreaterThan(50);
  const [one, other] = [POINTS[0]!.id, POINTS[1]!.id];
  const made = [
    `energy.source@${one}+${other}#77`,
    'energy.section@capacitor-fan',
    'energy.source-opened@control#9',
    'energy.winding-T1-3',
  ];
  for (const step of [...asked, ...TESTS.map(({ id }) => id), ...made])
    expect([step, stepName(step)]).toEqual([step, expect.stringMatching(/^[\p{L}\p{N}][^@#+]*$/u)]);
  for (const step of asked) expect(stepName(step)).not.toMatch(/[a-z][.:][a-z]/);
  expect(stepName('energy.source@disconnect-line-1+disconnect-line-2#77')).toMatch(
    /^power, search for what feeds it, [^@#+]+$/,
  );
  expect(stepName('arrive.outdoor-air')).toBe('on arrival, outdoor air');
  expect(stepName('a-step.of-another_program')).toBe('a step, of another_program');
});
