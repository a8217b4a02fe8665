import { expect, test } from 'vitest';
import { speak } from '../../../fixtures/speak.ts';
import { groupedByVoice, purity } from '../../bench/hearing/speakers.ts';

test('recordings of four voices fall into groups of one voice each, whatever they say', () => {
  const sentences = ['leg one to ground one eighteen', 'suction pressure sixty two', 'the contactor is pulled in'];
  const voices = ['slt', 'rms', 'awb', 'kal16'];
  const said = voices.flatMap((name) => sentences.map((words) => ({ name, sound: speak({ name }, words) })));
  const groups = groupedByVoice(
    said.map(({ sound }) => sound),
    6,
  );
  expect(
    purity(
      groups,
      said.map(({ name }) => name),
    ),
  ).toBe(1);
});
