import { describe, expect, it } from 'vitest';
import { foldVisit } from '../../../grammar/visit/fold-visit.ts';
import { ARRIVAL, TypedVisit } from './typed-visit.ts';

describe('on arrival', () => {
  it('asks for consent, nameplate and meter, then for the conditions and the call', async () => {
    const visit = await TypedVisit.open();
    const asked = () => visit.run.context.step?.id;
    expect(asked()).toBe('arrive.consent');
    await visit.type('customer agrees to the work');
    expect(asked()).toBe('arrive.nameplate');
    await visit.type('nameplate herm capacitor forty five microfarads');
    expect(asked()).toBe('arrive.nameplate');
    await visit.type("can't read it");
    expect(asked()).toBe('arrive.meter');
    // The standing rules are told with the question for the meter, which answers both.
    expect(visit.mouth.last()).toMatch(/practice govern\. Which meter category\?$/);
    await visit.type('nameplate fan capacitor five microfarads', 'meter is cat three');
    expect(asked()).toBe('arrive.outdoor-air');
    await visit.type(ARRIVAL[0]);
    expect(asked()).toBe('arrive.return-air');
    expect(visit.run.context.passedBy).toEqual(['arrive.nameplate', 'arrive.plate-serial']);
  });

  it('takes them in any order, and asks what is left', async () => {
    const visit = await TypedVisit.open();
    await visit.type('meter is category four', 'customer agrees');
    expect(visit.of('step.asked').at(-1)?.step).toBe('arrive.nameplate');
    await visit.type('pass');
    expect(visit.of('step.asked').at(-1)?.step).toBe('arrive.outdoor-air');
  });

  it('lets work begin at once: what was not answered holds nothing up and is named in the technical summary', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL);
    expect(visit.run.context.phase).toBe('testing');
    expect(visit.of('step.asked').filter((event) => event.step === 'arrive.nameplate')).toEqual([]);
    await visit.type('meter is cat three', 'finish the visit');
    expect(foldVisit(visit.events()).summary?.technical).toContain(
      'Not recorded on arrival: consent to the work, nameplate.',
    );
  });

  it('warns of a meter of category two at equipment wired to the building', async () => {
    // IEC 61010-2-030: category III for equipment wired to the building (reference values, section Safety).
    const visit = await TypedVisit.open();
    await visit.type('meter is cat two');
    expect(visit.of('hazard.warned')[0]?.words).toContain('Category three or better');
    const good = await TypedVisit.open();
    await good.type('meter is cat three');
    expect(good.of('hazard.warned')).toEqual([]);
  });
});
