import { afterEach, describe, expect, it, vi } from 'vitest';
import type { Step } from '../../../client/visit/chart/context.ts';
import { foldVisit } from '../../../grammar/visit/fold-visit.ts';
import { ARRIVAL, TO_PROVEN_DEAD, TypedVisit, WEAK_FAN } from './typed-visit.ts';

const FITTED = [...ARRIVAL, ...TO_PROVEN_DEAD, 'fitted a filter drier'] as const;

async function opened(): Promise<TypedVisit> {
  const visit = await TypedVisit.open();
  await visit.type(...FITTED);
  return visit;
}

const asked = (visit: TypedVisit) => visit.of('step.asked').at(-1)?.step;

/** From the opened circuit to the pressure test's end. */
async function tested(visit: TypedVisit, psi = 'three hundred'): Promise<void> {
  await visit.type('recovered six pounds four ounces', 'live', 'nitrogen pressure three hundred psi');
  await visit.type('leak search found nothing');
  await visit.later(15.1);
  await visit.type(`nitrogen pressure ${psi} psi`);
}

describe('an opened refrigerant circuit', () => {
  it.each(['compressor', 'filter drier', 'expansion valve', 'reversing valve'])(
    'is opened by a new %s, whether that was said or not',
    async (part) => {
      const visit = await TypedVisit.open();
      await visit.type(...ARRIVAL, ...TO_PROVEN_DEAD, `fitted a ${part}`);
      expect(asked(visit)).toBe('refrigerant.recovered');
    },
  );

  it('is taken through in order: out by weight, tight, dry, standing, in by weight; power only after it', async () => {
    const visit = await opened();
    expect(asked(visit)).toBe('refrigerant.recovered');
    await visit.type('recovered six pounds four ounces');
    expect(visit.mouth.last()).toContain('Dry nitrogen only, by regulator');
    await visit.type('live');
    expect(asked(visit)).toBe('refrigerant.test-start');
    await visit.type('nitrogen pressure three hundred psi');
    expect(asked(visit)).toBe('refrigerant.searched');
    await visit.type('leak search found nothing', 'what next');
    expect(visit.mouth.last()).toMatch(/It has to stand (fourteen|fifteen) minutes more/);
    await visit.later(15.1);
    expect(visit.mouth.said.some((prompt) => prompt.text === 'Time: read it again.')).toBe(true);
    expect(asked(visit)).toBe('refrigerant.test-end');
    await visit.type('nitrogen pressure two ninety nine psi');
    expect(asked(visit)).toBe('refrigerant.evacuated');
    await visit.type('vacuum two thousand microns');
    expect(asked(visit)).toBe('refrigerant.evacuated');
    await visit.type('vacuum four hundred microns');
    expect(asked(visit)).toBe('refrigerant.isolated');
    await visit.type('pump is valved off');
    await visit.later(10.1);
    expect(asked(visit)).toBe('refrigerant.decay');
    await visit.type('vacuum six hundred microns');
    expect(asked(visit)).toBe('refrigerant.charged');
    expect(visit.of('step.asked').map((event) => event.step)).not.toContain('energy.power-on');
    await visit.type('added six pounds four ounces');
    expect(asked(visit)).toBe('energy.clamps-placed');
    await visit.type('done');
    expect(visit.run.context.settled).toEqual(expect.arrayContaining(['repair.clamps-placed', 'energy.covers-on']));
    const view = foldVisit(visit.events());
    expect(view.refrigerant.map(({ check, value, judged }) => `${check} ${value} ${judged.word}`)).toEqual([
      'pressure-test 1 fits',
      'evacuation 2000 does not fit',
      'evacuation 400 fits',
      'decay 600 fits',
    ]);
    expect(view.refrigerant.every(({ judged }) => /practice|memory/.test(judged.source))).toBe(true);
  });

  it('is asked to be recovered before the part where it is reported opened', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL, 'compressor runs then trips', ...TO_PROVEN_DEAD, 'I opened the system');
    await visit.type(...WEAK_FAN);
    expect(visit.run.context.phase).toBe('repair');
    expect(asked(visit)).toBe('refrigerant.recovered');
  });

  it('that is opened while the part is asked is recovered first, and the part is asked again after it', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL, 'compressor runs then trips', ...TO_PROVEN_DEAD);
    await visit.type(...WEAK_FAN);
    expect(asked(visit)).toBe('repair.part-fitted');
    await visit.type('I opened the system');
    expect(asked(visit)).toBe('refrigerant.recovered');
    await visit.type('recovered six pounds');
    expect(asked(visit)).toBe('repair.part-fitted');
  });

  it('that lost pressure beyond temperature is tested anew', async () => {
    const visit = await opened();
    await tested(visit, 'two seventy five');
    expect(foldVisit(visit.events()).refrigerant.at(-1)?.judged.word).toBe('does not fit');
    expect(visit.mouth.said.some((prompt) => prompt.text.includes('It leaks'))).toBe(true);
    expect(asked(visit)).toBe('refrigerant.test-start');
  });

  it('is not blamed for a pressure that followed the temperature', async () => {
    // Gas law at constant volume: 314.7 psia × 539.67 °R ÷ 553.67 °R = 306.7 psia, 292.0 psig.
    const visit = await opened();
    await visit.type('recovered six pounds', 'live', 'nitrogen pressure three hundred psi', 'no leaks found');
    await visit.later(15.1);
    await visit.type('outdoor air eighty degrees', 'nitrogen pressure two ninety two psi');
    expect(foldVisit(visit.events()).refrigerant.at(-1)).toMatchObject({
      check: 'pressure-test',
      judged: { word: 'fits' },
    });
  });

  it('whose vacuum rose too far is evacuated again', async () => {
    const visit = await opened();
    await tested(visit);
    await visit.type('vacuum four hundred microns', 'pump is valved off');
    await visit.later(10.1);
    await visit.type('vacuum two thousand microns');
    expect(foldVisit(visit.events()).refrigerant.at(-1)?.judged.word).toBe('does not fit');
    expect(asked(visit)).toBe('refrigerant.evacuated');
  });

  it('in which a leak was found is tested anew from the start', async () => {
    const visit = await opened();
    await visit.type('recovered six pounds', 'live', 'nitrogen pressure three hundred psi', 'found a leak');
    expect(asked(visit)).toBe('refrigerant.test-start');
  });

  it('whose reading is taken back is where it was before it', async () => {
    const visit = await opened();
    await tested(visit);
    expect(asked(visit)).toBe('refrigerant.evacuated');
    await visit.type('take that back');
    expect(asked(visit)).toBe('refrigerant.test-end');
    await visit.type('take that back', 'take that back');
    expect(asked(visit)).toBe('refrigerant.test-start');
  });

  it('whose reading is set right is judged by the right one', async () => {
    const visit = await opened();
    await tested(visit, 'two ninety nine');
    await visit.type('correction two seventy');
    expect(asked(visit)).toBe('refrigerant.test-start');
    expect(foldVisit(visit.events()).refrigerant.map(({ judged }) => judged.word)).toEqual(['fits', 'does not fit']);
  });

  it('whose recovery was passed by the technician is tested without it', async () => {
    const visit = await opened();
    await visit.type('pass', 'live', 'nitrogen pressure three hundred psi');
    expect(visit.run.context.refrigerantWork).toMatchObject({ test: { psi: 300 } });
    expect(visit.run.context.refrigerantWork.recovered).toBeUndefined();
  });

  it('names what is missing when the visit closes', async () => {
    const visit = await opened();
    await visit.type('recovered six pounds', 'outdoor disconnect is back in', 'finish the visit');
    const open = foldVisit(visit.events()).summary?.openItems ?? [];
    for (const words of ['not pressure tested', 'not evacuated', 'put in was not weighed'])
      expect(open.some((item) => item.includes(words))).toBe(true);
    expect(open.some((item) => item.includes('recovered was not weighed'))).toBe(false);
  });

  it('is none where nothing was opened: no such step is asked', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL, ...TO_PROVEN_DEAD, 'fitted a forty five over five dual capacitor four forty volt');
    expect(visit.of('step.asked').filter((event) => event.step.startsWith('refrigerant.'))).toEqual([]);
  });
});

describe('without the order of the opened circuit', () => {
  afterEach(() => {
    vi.resetModules();
    vi.doUnmock('../../../client/visit/rules/refrigerant-plan.ts');
  });

  it('no step of it is asked, and power is not asked back on a circuit that lacks them either', async () => {
    vi.resetModules();
    vi.doMock('../../../client/visit/rules/refrigerant-plan.ts', async (original) => ({
      ...(await original<Record<string, unknown>>()),
      refrigerantStep: (): Step | undefined => undefined,
    }));
    const mutated = await import('./typed-visit.ts');
    const visit = await mutated.TypedVisit.open();
    await visit.type(...FITTED, 'covers are on', 'live');
    const asked = visit.of('step.asked').map(({ step }) => step);
    expect(asked.filter((step) => step.startsWith('refrigerant.') || step === 'energy.power-on')).toEqual([]);
  });
});
