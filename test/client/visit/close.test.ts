import { describe, expect, it } from 'vitest';
import { summarise } from '../../../client/visit/intake/summarise.ts';
import { PLAIN_WORDS } from '../../../client/words/talk/plain-words.ts';
import { foldVisit } from '../../../grammar/visit/fold-visit.ts';
import { FAULTS } from '../../../grammar/vocabulary/faults.ts';
import { LIBRARY_VISIT, TO_PROVEN_DEAD, TypedVisit } from './typed-visit.ts';

const PROVED = ['return air seventy six degrees', 'supply air fifty eight degrees'] as const;

async function proved(): Promise<TypedVisit> {
  const visit = await TypedVisit.open();
  await visit.type(...LIBRARY_VISIT);
  await visit.later(16);
  await visit.type(...PROVED);
  return visit;
}

describe('when nothing is left to prove', () => {
  it('asks for thermostat, recommendations and signatures one by one, then for the end', async () => {
    const visit = await proved();
    const asked = () => visit.of('step.asked').at(-1)?.step;
    expect(visit.run.context.phase).toBe('close');
    expect(asked()).toBe('close.thermostat');
    await visit.type('thermostat is set as agreed');
    expect(asked()).toBe('close.recommend');
    await visit.type('recommend a new filter');
    expect(asked()).toBe('close.customer');
    await visit.type('customer not present');
    expect(asked()).toBe('close.technician');
    await visit.type('technician signs robin vale');
    expect(visit.run.context.phase).toBe('closed');
    const view = foldVisit(visit.events());
    expect(view.summary?.openItems).toEqual([]);
    expect(view.recommendations.map((line) => line.text)).toEqual(['a new filter']);
    expect(view.signatures).toMatchObject([{ who: 'technician', name: 'robin vale' }]);
    expect(view.items.map((line) => line.item)).toEqual(['thermostat-as-agreed', 'customer-not-present']);
  });

  it('takes the same things in any order and earlier in the visit', async () => {
    const visit = await TypedVisit.open();
    await visit.type('recommend cleaning the outdoor coil', 'customer signs sam hill');
    await visit.type(...LIBRARY_VISIT);
    await visit.later(16);
    await visit.type(...PROVED, 'thermostat left as found');
    expect(visit.of('step.asked').at(-1)?.step).toBe('close.technician');
  });

  it('names what stands open instead of passing it over', async () => {
    const visit = await proved();
    await visit.type('finish the visit');
    expect(foldVisit(visit.events()).summary?.openItems).toEqual([
      'the thermostat was not reported as agreed',
      'the technician has not signed',
      'the customer has not signed',
    ]);
    expect(visit.mouth.last()).toMatch(/^Visit closed, open items: three\. The thermostat .*signed\.$/);
  });

  it('takes back what was reported, and asks it again', async () => {
    const visit = await proved();
    await visit.type('thermostat is set as agreed', 'take that back');
    expect(visit.of('step.asked').at(-1)?.step).toBe('close.thermostat');
    await visit.type('recommend a new filter', 'take that back');
    const view = foldVisit(visit.events());
    expect(view.items).toEqual([]);
    expect(view.recommendations).toEqual([]);
  });

  it('asks for the words behind a heading that came alone', async () => {
    const visit = await proved();
    await visit.type('customer signs');
    expect(visit.mouth.said.at(-1)?.kind).toBe('question');
    expect(visit.of('visit.signed')).toEqual([]);
    await visit.type('Robin Vale');
    expect(foldVisit(visit.events()).signatures).toMatchObject([{ who: 'customer', name: 'Robin Vale' }]);
  });

  it("takes the technician's word alone as a signature by voice, and a name later in its place", async () => {
    const visit = await proved();
    await visit.type('technician signs', 'technician signs robin vale');
    expect(visit.of('visit.signed').map((event) => event.name)).toEqual(['by voice', 'robin vale']);
    expect(foldVisit(visit.events()).signatures.map((line) => line.name)).toEqual(['robin vale']);
  });
});

describe('a close with a switch still locked', () => {
  it('is refused and says which, and goes through with a spoken reason that stays an open item', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_PROVEN_DEAD, 'finish the visit');
    expect(visit.of('close.refused')[0]?.why).toEqual(['The outdoor disconnect is still locked. Report it back on.']);
    expect(visit.run.context.phase).not.toBe('closed');
    await visit.type('note left off for the night');
    expect(visit.run.context.phase).toBe('closed');
    expect(visit.of('close.overridden')[0]?.reason).toBe('left off for the night');
    expect(foldVisit(visit.events()).summary?.openItems.join(' ')).toContain('still locked');
  });

  it('goes through once power was reported back', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_PROVEN_DEAD, 'finish the visit', 'outdoor disconnect is back in', 'finish the visit');
    expect(visit.run.context.phase).toBe('closed');
  });
});

describe('the summaries', () => {
  it('give the next technician the finding with the numbers of its readings', async () => {
    const visit = await proved();
    await visit.type('recommend a new filter', 'finish the visit');
    const technical = foldVisit(visit.events()).summary?.technical ?? [];
    expect(technical.find((line) => line.startsWith('Finding:'))).toMatch(
      /^Finding: capacitor fan section weak, \d+ percent; readings [\d, ]+ out of their bands\.$/,
    );
    expect(technical.some((line) => line.startsWith('Fitted: dual capacitor'))).toBe(true);
    expect(technical).toContain('Recommended: a new filter.');
  });

  it('give the customer plain words with no part, number or certainty that was not measured', async () => {
    const visit = await proved();
    await visit.type('recommend a new filter', 'finish the visit');
    const plain = foldVisit(visit.events()).summary?.plain ?? '';
    expect(plain).toContain('the part that helps the outdoor fan start and run has lost strength');
    expect(plain).toContain('It was measured again after that');
    expect(plain).toContain('Recommended: a new filter.');
    expect(plain).not.toMatch(/\b(microfarads?|percent|safe|certain|definitely|guarantee)\b/i);
  });

  it('say that nothing was proved where nothing was', async () => {
    const visit = await TypedVisit.open();
    await visit.type('finish the visit');
    expect(foldVisit(visit.events()).summary?.plain).toBe('A fault was not proved on this visit. Nothing was fitted.');
  });

  it('name no cause to the customer that did not stand out, and leave others open where it was not proved', async () => {
    const visit = await TypedVisit.open();
    await visit.type('outdoor fan is not turning', 'fitted a forty five over five dual capacitor four forty volt');
    await visit.type('finish the visit', 'note it was fitted before the log began');
    const view = foldVisit(visit.events());
    expect(view.finding?.probability ?? 1).toBeLessThan(0.5);
    expect(view.summary?.plain).toMatch(/^No fault stood out in what was measured: its cause is not known\. Fitted:/);
    expect(view.summary?.plain).not.toContain('points to');
    expect(view.summary?.plain).toContain('It was not measured again after that.');
    const plainAt = (probability: number) => {
      const finding = { fault: 'fan-capacitor-weak', probability, evidence: [] } as const;
      return summarise({ ...visit.run.context, finding }, []).plain;
    };
    expect(plainAt(0.49)).not.toContain('points to');
    expect(plainAt(0.5)).toContain('points to this');
    expect(plainAt(0.5)).toContain('Other causes are not ruled out.');
    expect(plainAt(0.95)).not.toContain('Other causes');
  });

  it.each(FAULTS.map((fault) => [fault.id] as const))('have everyday words for %s', (id) => {
    expect(PLAIN_WORDS[id]).not.toMatch(/\b(herm|contactor|lug|microfarads?|safe|[LTCRSYG]\d?)\b/);
  });
});

describe('a customer who declines', () => {
  it('ends the search: nothing is done to the unit, and the summary says so', async () => {
    const visit = await TypedVisit.open();
    await visit.type('customer declined the work');
    expect(visit.run.context.phase).toBe('close');
    await visit.type('finish the visit');
    expect(foldVisit(visit.events()).summary?.plain).toContain('Work was declined.');
  });
});
