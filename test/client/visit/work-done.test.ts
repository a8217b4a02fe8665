import { describe, expect, it } from 'vitest';
import { foldVisit } from '../../../grammar/visit/fold-visit.ts';
import { ARRIVAL, TypedVisit } from './typed-visit.ts';

const TO_THE_FLOAT_SWITCH = [
  ...ARRIVAL,
  'compressor is not running',
  'contactor is not pulled in',
  'drain pan is full',
  'coil zero volts',
  'float switch twenty six volts',
] as const;

const probability = (visit: TypedVisit, fault: string) =>
  visit.run.context.assessment?.suspects.find((suspect) => suspect.fault === fault)?.probability ?? 0;

describe('work without a part', () => {
  it('that mends the finding is the repair: the diagnosis goes on without it and the proof begins', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_THE_FLOAT_SWITCH);
    expect(visit.run.context.finding?.fault).toBe('float-switch-open');
    expect(visit.run.context.phase).toBe('repair');
    await visit.type('cleared the drain');
    expect(visit.of('work.done')).toMatchObject([{ work: 'drain-cleared', repairs: ['float-switch-open'] }]);
    expect(visit.run.context.phase).toBe('prove');
    expect(probability(visit, 'float-switch-open')).toBe(0);
    expect(visit.mouth.said.map(({ text }) => text)).toContain('Cleared the drain.');
  });

  it('is named in both summaries and in the folded visit', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_THE_FLOAT_SWITCH, 'cleared the drain', 'covers are on', 'finish the visit');
    const folded = foldVisit(visit.events());
    expect(folded.works).toMatchObject([{ work: 'drain-cleared' }]);
    expect(folded.unknown).toEqual([]);
    expect(folded.summary?.plain).toContain('Nothing was fitted. Done: cleared the drain.');
  });

  it('taken back counts again as a suspect, and the repair stands open', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_THE_FLOAT_SWITCH, 'cleared the drain', 'take that back');
    expect(visit.run.context.phase).toBe('repair');
    expect(probability(visit, 'float-switch-open')).toBeGreaterThan(0.9);
    expect(foldVisit(visit.events()).works).toEqual([]);
  });

  it('done on the way, which no suspect waits for, leaves the search where it is', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL, 'compressor is not running', 'cleaned the filter');
    expect(visit.of('work.done')).toMatchObject([{ work: 'filter-cleaned', repairs: [] }]);
    expect(visit.run.context.phase).toBe('testing');
    expect(visit.of('finding.stated')).toEqual([]);
  });

  it('of an unproved leading suspect states it with the doubt that is left', async () => {
    const visit = await TypedVisit.open();
    await visit.type(
      ...['outdoor air ninety four degrees', 'return air eighty degrees', 'thermostat is calling'],
      ...['outdoor fan is turning', 'compressor is running', 'outdoor coil is dirty', 'washed the condenser coil'],
    );
    const [finding] = visit.of('finding.stated');
    expect(finding?.fault).toBe('condenser-dirty');
    expect(finding?.probability).toBeLessThan(0.95);
    expect(visit.run.context.phase).toBe('prove');
  });
});

describe('the repair step', () => {
  it('asks for work where work mends, at the zone where hands go, and for a part where one is fitted', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_THE_FLOAT_SWITCH, 'thermostat is not calling');
    await visit.type('live');
    expect(visit.mouth.last()).toBe("Stand aside. Open and lock the air handler's switch.");
  });

  it('puts the air handler back on before the proof is read', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_THE_FLOAT_SWITCH, 'thermostat is not calling', 'air handler switch is off and locked');
    await visit.type('cleared the drain', 'covers are on');
    await visit.type('live');
    expect(visit.of('step.asked').at(-1)).toMatchObject({ step: 'energy.power-on@air-handler' });
  });

  it('of a breaker that tripped is its reset; where nothing tripped it is power back alone', async () => {
    const tripped = await TypedVisit.open();
    await tripped.type(...ARRIVAL, 'compressor is not running', 'breaker was tripped', 'leg one to leg two zero volts');
    await tripped.type('breaker is reset');
    expect(tripped.of('work.done')).toMatchObject([{ work: 'breaker-reset', repairs: ['breaker-tripped'] }]);
    expect(tripped.run.context.finding?.fault).toBe('breaker-tripped');
    expect(tripped.run.context.phase).toBe('prove');
    const sound = await TypedVisit.open();
    await sound.type(...TO_THE_FLOAT_SWITCH, 'breaker is reset');
    expect(sound.of('work.done')).toMatchObject([{ repairs: [] }]);
    expect(sound.run.context.phase).toBe('repair');
    expect(sound.mouth.said.map(({ text }) => text)).not.toContain('Reset the breaker.');
  });
});
