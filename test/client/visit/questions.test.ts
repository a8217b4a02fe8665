import { describe, expect, it } from 'vitest';
import { VisitRun } from '../../../client/visit/run/visit-run.ts';
import { SAY } from '../../../client/words/talk/prompts.ts';
import { openQuestion } from '../../../grammar/visit/standing.ts';
import { ARRIVAL, LIBRARY_UNIT, TypedVisit } from './typed-visit.ts';

/** Two readings that are asked back, in one breath. */
const TWO_DOUBTS = 'leg one to ground one thirty one, leg two to ground one thirty two';

const put = (visit: TypedVisit) => visit.mouth.said.filter(({ kind }) => kind === 'question').map(({ text }) => text);

describe('a question', () => {
  it('waits while another stands, and is put when that is answered', async () => {
    const visit = await TypedVisit.open();
    await visit.type(TWO_DOUBTS);
    expect(visit.run.context.questions).toHaveLength(2);
    expect(put(visit)).toHaveLength(1);
    await visit.type('yes');
    expect(put(visit)).toHaveLength(2);
    await visit.type('no');
    expect(visit.run.context.questions).toEqual([]);
    expect(visit.of('reading.logged').map(({ reading }) => reading.value)).toEqual([131]);
    expect(visit.of('reading.refused')).toMatchObject([{ reason: 'withdrawn-by-technician', reading: { value: 132 } }]);
    expect(visit.of('question.ended').map(({ number, how }) => [number, how])).toEqual([
      [1, 'answered'],
      [2, 'answered'],
    ]);
  });

  it('holds the next step back, which is asked once none is left', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL);
    const steps = visit.of('step.asked').length;
    await visit.type('no', 'leg one to ground one thirty five');
    expect(visit.of('step.asked')).toHaveLength(steps);
    await visit.type('no');
    expect(visit.run.context.questions).toEqual([]);
  });

  it('that nobody answers is let go after a minute, and what it asked of does not count', async () => {
    const visit = await TypedVisit.open();
    await visit.type('leg one to ground one thirty five');
    await visit.later(0.5);
    expect(visit.run.context.questions).toHaveLength(1);
    await visit.later(1);
    expect(visit.run.context.questions).toEqual([]);
    expect(visit.of('question.ended')).toMatchObject([{ how: 'expired' }]);
    expect(visit.of('reading.refused')).toMatchObject([{ reason: 'not-answered', reading: { value: 135 } }]);
    expect(visit.mouth.said.filter(({ text }) => /left out/i.test(text))).toHaveLength(1);
    expect(visit.mouth.said.at(-1)).toMatchObject({ kind: 'step' });
  });

  it('is given a minute of its own, however long the one before it stood', async () => {
    const visit = await TypedVisit.open();
    await visit.type(TWO_DOUBTS);
    await visit.later(0.8);
    await visit.type('yes');
    await visit.later(0.5);
    expect(openQuestion(visit.run.context)).toMatchObject({ reading: { value: 132 } });
    await visit.later(1);
    expect(visit.run.context.questions).toEqual([]);
  });

  it('is withdrawn by taking back what it asks of', async () => {
    const visit = await TypedVisit.open();
    await visit.type('leg two to ground one nineteen', 'leg one to ground one thirty five', 'take that back');
    expect(visit.run.context.questions).toEqual([]);
    expect(visit.of('question.ended')).toMatchObject([{ how: 'withdrawn' }]);
    expect(visit.of('reading.withdrawn')).toEqual([]);
    await visit.type('take that back');
    expect(visit.of('reading.withdrawn')).toHaveLength(1);
  });

  it('is withdrawn when the visit closes over it', async () => {
    const visit = await TypedVisit.open();
    await visit.type(TWO_DOUBTS, 'finish the visit', 'note the meter is broken');
    expect(visit.run.context.phase).toBe('closed');
    expect(visit.of('question.ended').map(({ how }) => how)).toEqual(['withdrawn', 'withdrawn']);
  });

  it('is put again when the visit is taken up from its record', async () => {
    const visit = await TypedVisit.open();
    await visit.type(TWO_DOUBTS);
    const again = new TypedVisit();
    again.bodies.push(...visit.bodies);
    again.clock.step(visit.run.context.now.mono / 60_000);
    again.run = await VisitRun.restore(again.edges(), visit.bodies);
    await again.run.settled();
    expect(put(again)).toEqual(put(visit));
    await again.type('yes', 'yes');
    expect(again.of('reading.logged').map(({ reading }) => reading.value)).toEqual([131, 132]);
  });
});

/** Where a value is asked for its place: no reading is expected, and the latest is of the return air. */
async function withoutPlace(value = 'eighty two'): Promise<TypedVisit> {
  const visit = await TypedVisit.open();
  await visit.type(...ARRIVAL, value);
  expect(openQuestion(visit.run.context)).toMatchObject({ kind: 'which-place' });
  return visit;
}

describe('an open question', () => {
  it.each([
    ['leg two to ground one eighteen', 'reading.logged'],
    ['outdoor fan hums', 'observation.logged'],
    ['customer agrees', 'item.reported'],
    ['outdoor disconnect is pulled and locked', 'energy.changed'],
  ] as const)('is left behind by "%s", which makes sense without it', async (line, brings) => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL, 'no', 'leg one to ground one thirty five');
    const before = visit.of(brings).length;
    await visit.type(line);
    expect(visit.of('question.ended').at(-1)).toMatchObject({ how: 'expired' });
    expect(visit.of('reading.refused')).toMatchObject([{ reason: 'not-answered', reading: { value: 135 } }]);
    expect(visit.mouth.said.filter(({ text }) => /left out/i.test(text))).toHaveLength(1);
    expect(visit.of(brings).length).toBeGreaterThan(before);
    expect(visit.run.context.questions).toEqual([]);
  });

  it('is left behind by another reading that is doubtful itself: a yes means the later one', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL, 'leg one to ground one thirty five', 'leg two to ground one thirty six', 'yes');
    expect(visit.of('reading.logged').at(-1)).toMatchObject({ reading: { at: ['L2', 'ground'], value: 136 } });
    expect(visit.of('reading.logged').filter(({ reading }) => reading.value === 135)).toEqual([]);
  });

  it.each(['say again', 'why', 'where are we', 'okay', 'what can I say', 'short talk', 'stop'])(
    'stands while "%s" is said',
    async (line) => {
      const visit = await TypedVisit.open();
      await visit.type('leg one to ground one thirty five', line);
      expect(visit.run.context.questions).toHaveLength(1);
    },
  );

  it.each(['the outdoor one', 'outside', 'the same'])(
    'of a switch takes "%s"; it is locked behind any caution',
    async (place) => {
      const visit = await TypedVisit.open();
      if (place === 'the same') await visit.type('outdoor disconnect is pulled');
      await visit.type(...ARRIVAL, 'compressor hums and trips', 'I pulled the disconnect', place);
      expect(visit.of('energy.changed').at(-1)).toMatchObject({ to: 'reported-off' });
      await visit.type('locked');
      expect(visit.of('switch.reported').at(-1)).toMatchObject({ state: 'locked' });
    },
  );

  it('of a place gives way to the answer of the look that is asked', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL.slice(0, 3), 'twenty six volts', 'not turning');
    expect(visit.of('question.ended')).toMatchObject([{ how: 'expired' }]);
    expect(visit.of('observation.logged').at(-1)).toMatchObject({ observation: 'fan-not-turning' });
  });

  it('of a place gives way to the number of the reading that is asked', async () => {
    const visit = await TypedVisit.open();
    await visit.type('customer agrees', 'pass', 'category three', ARRIVAL[0], 'twenty six volts', 'seventy eight');
    expect(visit.of('question.ended')).toMatchObject([{ how: 'expired' }]);
    expect(visit.of('reading.logged').at(-1)).toMatchObject({ reading: { at: ['return-air'], value: 78 } });
  });

  it('is none of a number behind a caution: its step is to come, and then its number has its place', async () => {
    const visit = await TypedVisit.open(LIBRARY_UNIT, 'trainee');
    visit.run.take({ type: 'supervisor.acknowledged', supervisor: 'M. Ortega', from: 'own-device' });
    await visit.type(...ARRIVAL, 'compressor is not running', 'live');
    const { step } = visit.run.context;
    await visit.type('two forty four');
    expect(visit.run.context.caution).toBeDefined();
    await visit.type('thirty one');
    expect(visit.run.context.questions).toEqual([]);
    expect(visit.mouth.last()).toBe(SAY.cautionFirst);
    await visit.type('live');
    expect(visit.run.context.step).toMatchObject({ ask: { kind: 'reading' } });
    expect(visit.run.context.step?.id).not.toBe(step?.id);
    await visit.type('twenty seven');
    expect(visit.of('reading.logged').at(-1)).toMatchObject({ reading: { value: 27 } });
  });

  it('leaves the step to be asked again', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL);
    const { step, parked } = visit.run.context;
    await visit.type('leg one to ground one thirty five', 'skip it');
    expect(visit.run.context.step).toEqual(step);
    expect(visit.mouth.said.at(-1)).toMatchObject({ kind: 'step', text: visit.of('step.asked').at(-1)?.words });
    expect(visit.run.context.parked).toEqual(parked);
  });

  it('between two values takes a third that was read instead', async () => {
    const visit = await TypedVisit.open();
    const twin = { quantity: 'voltage', at: ['L1', 'ground'], unit: 'V' } as const;
    await visit.type(...ARRIVAL, 'no');
    visit.run.take({
      type: 'heard.utterance',
      utterance: {
        id: 'twin',
        ear: 'offline',
        accepted: true,
        confidence: 0.9,
        understanding: {
          heard: 'leg one one fifteen',
          verdict: 'asked',
          reason: 'teen-or-ty',
          twin: 150,
          confidence: 0.5,
          meaning: { kind: 'reading', reading: { ...twin, value: 115 } },
        },
      },
    });
    await visit.run.settled();
    expect(openQuestion(visit.run.context)).toMatchObject({ kind: 'teen-or-ty' });
    await visit.type('leg one to ground one eighteen');
    expect(visit.run.context.questions).toEqual([]);
    expect(visit.of('reading.logged').at(-1)).toMatchObject({ reading: { ...twin, value: 118 } });
  });
});

describe('the question of a place', () => {
  it.each([
    ['outdoor', ['outdoor-air']],
    ['return air', ['return-air']],
    ['supply air', ['supply-air']],
    ['the same', ['return-air']],
    ['here', ['return-air']],
    ['outdoor air eighty two degrees', ['outdoor-air']],
  ] as const)('takes "%s"', async (answer, at) => {
    const visit = await withoutPlace();
    await visit.type(answer);
    expect(visit.run.context.questions).toEqual([]);
    expect(visit.of('reading.logged').at(-1)).toMatchObject({ reading: { at, value: 82, unit: '[degF]' } });
  });

  it.each(['done', 'forget it', 'never mind', 'skip', 'no'])(
    'is left with "%s", and nothing is logged',
    async (word) => {
      const visit = await withoutPlace();
      const logged = visit.of('reading.logged').length;
      await visit.type(word);
      expect(visit.run.context.questions).toEqual([]);
      expect(visit.of('reading.logged')).toHaveLength(logged);
      expect(visit.of('reading.withdrawn')).toEqual([]);
    },
  );

  it('asks again where the value is not commonly read at the place pointed at', async () => {
    const visit = await withoutPlace('one eighteen');
    const logged = visit.of('reading.logged').length;
    await visit.type('the same');
    expect(visit.of('reading.logged')).toHaveLength(logged);
    expect(openQuestion(visit.run.context)).toMatchObject({ kind: 'confirm-reading' });
  });

  it.each([
    ['it is off', 'outdoor', 'outdoor', 'open'],
    ['locked it out', 'at the panel', 'panel', 'locked'],
    ['disconnect is pulled', 'outdoor', 'outdoor', 'open'],
    ['the power is off', 'here', 'outdoor', 'open'],
  ] as const)('of a switch: "%s", "%s"', async (told, answer, place, state) => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL, 'thermostat is not calling', told);
    expect(openQuestion(visit.run.context)).toMatchObject({ kind: 'which-switch', state });
    expect(visit.run.context.isolation[place]).toBe('unknown');
    await visit.type(answer);
    expect(visit.run.context.isolation[place]).toBe(state);
    expect(Object.values(visit.run.context.energy)).not.toContain('proven-dead');
  });

  it('is not put where it is said to be dead: what was measured is told', async () => {
    const visit = await TypedVisit.open();
    const said = await (async () => {
      await visit.type(...ARRIVAL);
      return visit.type('it is dead');
    })();
    expect(visit.run.context.questions).toEqual([]);
    expect(said).toMatch(/counts as live|live|not proven/);
    expect(Object.values(visit.run.context.energy)).not.toContain('reported-off');
  });
});
