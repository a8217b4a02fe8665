import { describe, expect, it } from 'vitest';
import { SAY } from '../../../client/words/talk/prompts.ts';
import { openQuestion } from '../../../grammar/visit/standing.ts';
import { TO_PROVEN_DEAD, TypedVisit } from './typed-visit.ts';

/** Words that mean nothing here: what they told of power, if anything, is not known (7-conduct f, "half understood"). */
const NOT_UNDERSTOOD = ['zorb the flim', 'he did that thing again by the garage'];

async function beside(...lines: readonly string[]): Promise<TypedVisit> {
  const visit = await TypedVisit.open();
  await visit.type(...TO_PROVEN_DEAD, ...lines);
  return visit;
}
const outdoors = ({ run }: TypedVisit) => run.context.energy['outdoor-load'];

describe('words beside a proof that nobody understood', () => {
  it.each(NOT_UNDERSTOOD)('leave it in doubt until somebody says that it is still off: "%s"', async (line) => {
    const visit = await beside(line);
    expect(outdoors(visit)).toBe('in-doubt');
    expect(openQuestion(visit.run.context)?.kind).toBe('still-off');
    expect(visit.mouth.last()).toBe('Not understood. Still off and locked?');
    // Nothing is asked of hands meanwhile.
    expect(visit.run.context.step?.needs.power === 'off').toBe(false);
    await visit.type('yes');
    expect(outdoors(visit)).toBe('proven-dead');
  });

  it.each(['still off', 'it is still locked', 'off and locked', 'nothing changed', 'it is', 'disconnect is locked'])(
    'are settled by "%s"',
    async (answer) => {
      const visit = await beside(NOT_UNDERSTOOD[0]!, answer);
      expect(outdoors(visit)).toBe('proven-dead');
      expect(openQuestion(visit.run.context)).toBeUndefined();
    },
  );

  it.each([
    ['no', 'live'],
    ["I don't know", 'reported-off'],
    ['the disconnect is back in', 'live'],
  ] as const)('end it by "%s"', async (answer, state) => {
    const visit = await beside(NOT_UNDERSTOOD[0]!, answer);
    expect(outdoors(visit)).toBe(state);
    expect(visit.of('prompt.said').filter(({ kind }) => kind === 'warning').length).toBeGreaterThan(0);
  });

  it.each(['what next', 'go back', 'skip to gauges'])(
    'are asked about again by "%s", before any other step',
    async (order) => {
      const visit = await beside(NOT_UNDERSTOOD[0]!, order);
      expect(outdoors(visit)).toBe('in-doubt');
      expect(visit.mouth.last()).toBe('Not understood. Still off and locked?');
      await visit.type('yes');
      expect(outdoors(visit)).toBe('proven-dead');
    },
  );

  it.each(['zero and zero', 'okay zero and zero volts'])('are no zeros: "%s"', async (zeros) => {
    expect(outdoors(await beside(zeros))).toBe('proven-dead');
  });

  it.each([
    'two forty and two forty',
    'one eighteen one nineteen',
    'two forty and zero',
    'one twenty now leg two to ground',
  ])('may be numbers of volts: "%s"', async (numbers) =>
    expect(outdoors(await beside(numbers))).not.toBe('proven-dead'),
  );

  it('end it where hands go on without an answer, and the work is told unproven', async () => {
    const visit = await beside(NOT_UNDERSTOOD[0]!, 'lifted the brown wire from fan');
    expect(outdoors(visit)).toBe('reported-off');
    expect(visit.of('work.unproven')).toHaveLength(1);
  });

  it('end it where nobody answers within a minute', async () => {
    const visit = await beside(NOT_UNDERSTOOD[0]!);
    await visit.later(1);
    expect(outdoors(visit)).toBe('reported-off');
    expect(visit.of('question.ended').at(-1)?.how).toBe('expired');
  });

  it('are asked about once, however often they come', async () => {
    const visit = await beside(...NOT_UNDERSTOOD, ...NOT_UNDERSTOOD);
    expect(visit.of('question.asked')).toHaveLength(1);
    await visit.type('yes');
    expect(outdoors(visit)).toBe('proven-dead');
  });

  it('wait behind a question that stands, and leave the proof in doubt at once', async () => {
    const visit = await beside('leg one to ground one thirty five', NOT_UNDERSTOOD[0]!);
    expect(outdoors(visit)).not.toBe('proven-dead');
  });

  it('are asked about while the charge is still to be read', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_PROVEN_DEAD.slice(0, -2), NOT_UNDERSTOOD[0]!);
    expect(openQuestion(visit.run.context)?.kind).toBe('still-off');
    await visit.type('no');
    expect(outdoors(visit)).toBe('live');
  });

  it('are none of a guess that is denied: then it is not known either', async () => {
    const visit = await beside('compressor is nut running', 'no');
    expect(outdoors(visit)).not.toBe('proven-dead');
  });

  it('ask nothing where nothing is proven', async () => {
    const visit = await TypedVisit.open();
    await visit.type(NOT_UNDERSTOOD[0]!);
    expect(visit.of('question.asked')).toHaveLength(0);
  });

  it.each(['still locked out', 'lock is still on', 'it is still off', "yeah it's still dead"])(
    'are none that say so themselves: "%s"',
    async (line) => {
      const visit = await beside(line);
      expect(outdoors(visit)).toBe('proven-dead');
      expect(visit.of('question.asked')).toHaveLength(0);
      expect(visit.mouth.said.map(({ text }) => text).join(' ')).toContain('The proof stands as measured');
    },
  );

  it('are no word of a proof where none stands: "it is still off"', async () => {
    const visit = await TypedVisit.open();
    await visit.type('it is still off');
    expect(visit.mouth.said.map(({ text }) => text).join(' ')).not.toMatch(/proof stands|Still off\./);
  });

  it('are taken back, and the question stands: words taken back tell of no switch', async () => {
    const visit = await beside(NOT_UNDERSTOOD[0]!, 'take that back');
    expect(openQuestion(visit.run.context)?.kind).toBe('still-off');
    expect(visit.mouth.last()).toBe(SAY.stillOff);
    await visit.type('yes');
    expect(outdoors(visit)).toBe('proven-dead');
  });

  it('are asked about no more once the proof has ended otherwise', async () => {
    const visit = await beside(NOT_UNDERSTOOD[0]!, 'leg one to ground one twenty');
    expect(outdoors(visit)).toBe('live');
    expect(visit.run.context.questions.filter(({ question }) => question.kind === 'still-off')).toHaveLength(0);
  });

  it('are no yes when something looks good', async () => {
    const visit = await beside(NOT_UNDERSTOOD[0]!, 'looks good');
    expect(outdoors(visit)).not.toBe('proven-dead');
  });

  it.each([
    'disconnect is still in',
    'it is still on',
    'power is still there',
    'lock is still off',
    'my tag is still off',
  ])('are no such word: "%s"', async (line) => {
    expect(outdoors(await beside(line))).not.toBe('proven-dead');
  });
});
