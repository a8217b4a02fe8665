import { describe, expect, it } from 'vitest';
import type { KeyDoes } from '../../../client/screens/glance/touch-key.ts';
import { keysFor } from '../../../client/screens/glance/touch-keys.ts';
import { openQuestion } from '../../../grammar/visit/standing.ts';
import { ARRIVAL, TO_PROVEN_DEAD, TypedVisit } from '../visit/typed-visit.ts';

/** What brings each kind of question about. */
const ASKED = {
  'confirm-reading': [...ARRIVAL, 'leg one to ground one thirty five'],
  'which-place': [...ARRIVAL, 'eighty two'],
  'which-switch': ['it is off'],
  'confirm-meaning': [...ARRIVAL, 'compressor is nut running'],
  'a reason wanted': [...TO_PROVEN_DEAD, 'fitted a ninety amp breaker'],
} as const;

async function press(visit: TypedVisit, does: KeyDoes): Promise<void> {
  if (does.do === 'command') visit.run.touch(does.command);
  else if (does.do === 'enter') {
    visit.run.take({
      type: 'heard.utterance',
      utterance: {
        id: 'key',
        ear: 'typed',
        accepted: true,
        confidence: 1,
        understanding: { heard: does.words, verdict: 'logged', meaning: does.meaning, confidence: 1 },
      },
    });
  } else throw new Error(`a key of a question opens ${does.do}`);
  await visit.run.settled();
}

const cases = Object.entries(ASKED);

describe('the keys of a question', () => {
  it.each(cases)('%s: each of them ends it', async (_, lines) => {
    const first = await TypedVisit.open();
    await first.type(...lines);
    const question = openQuestion(first.run.context);
    expect(question).toBeDefined();
    const keys = keysFor(first.run.context);
    expect(keys.length).toBeGreaterThan(0);
    for (const index of keys.keys()) {
      const visit = await TypedVisit.open();
      await visit.type(...lines);
      await press(visit, keysFor(visit.run.context)[index]!.does);
      expect(openQuestion(visit.run.context), keys[index]!.label).not.toEqual(question);
      // A reading that is not common at the place of the key may be asked of once more: by another question.
      expect(visit.of('question.ended').length, keys[index]!.label).toBeGreaterThan(0);
    }
  });
});

describe('the keys beside a caution', () => {
  it('answer the step that was asked in its breath, and nothing else does', async () => {
    const visit = await TypedVisit.open();
    await visit.type('customer agrees', 'the plate is unreadable');
    expect(visit.run.context.caution?.withStep).toBe(true);
    const labels = keysFor(visit.run.context).map(({ label }) => label);
    expect(labels).toEqual([
      'Live – I have it',
      ...[2, 3, 4].map((n) => `meter is category ${['', '', 'two', 'three', 'four'][n]}`),
    ]);
  });
});
