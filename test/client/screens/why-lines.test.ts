import { describe, expect, it } from 'vitest';
import { whyLines } from '../../../client/screens/glance/why-lines.ts';
import { WHY_PANEL } from '../../../client/words/pages/visit-words.ts';
import { foldVisit } from '../../../grammar/visit/fold-visit.ts';
import { USUAL_CHOICE } from '../../../grammar/vocabulary/unit-choice.ts';
import { LIBRARY_VISIT, TO_LIVE_STEP, TypedVisit } from '../visit/typed-visit.ts';

const partsOf = (visit: TypedVisit) => whyLines(foldVisit(visit.events()), visit.run.context.assessment);

/** What the page says under "Why": held against the assessment that the visit keeps. */
describe('why, on the page', () => {
  it('says nothing before anything is known', () => {
    expect(whyLines({ readings: [], observations: [], suspects: [], units: USUAL_CHOICE }, undefined)).toEqual([]);
  });

  it('tells for the next test what each leading suspect would show, and what the last answer moved', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_LIVE_STEP);
    const { next, suspects } = visit.run.context.assessment!;
    const [first] = partsOf(visit);
    expect(next.length).toBeGreaterThan(0);
    expect(first!.title).toMatch(/^Next, .+, would show$/);
    const leading = suspects.filter(({ fault }) => fault !== 'something-else').slice(0, 3);
    expect(first!.lines.length).toBeGreaterThanOrEqual(leading.length);
    for (const { figure } of first!.lines) expect(figure).not.toBe('');
    const moved = partsOf(visit).find(({ title }) => title === WHY_PANEL.moved);
    expect(moved?.lines.length).toBeGreaterThan(0);
    for (const { figure } of moved!.lines) expect(figure).toMatch(/^\d+ % → \d+ %$/);
  });

  it('names for a finding the readings that show it and the suspects that they took out', async () => {
    const visit = await TypedVisit.open();
    // Up to the second reading of the section, before the part is fitted.
    const found = LIBRARY_VISIT.findIndex((line) => /fitted|new capacitor/.test(line));
    await visit.type(...LIBRARY_VISIT.slice(0, found));
    expect(visit.run.context.assessment?.suspects[0]?.fault).toBe('fan-capacitor-weak');
    const parts = partsOf(visit);
    const shown = parts.find(({ title }) => title.endsWith(WHY_PANEL.proved));
    expect(shown?.title).toContain('fan section weak');
    expect(shown?.lines.map(({ figure }) => figure)).toContainEqual(expect.stringMatching(/^1\.2 µF$/));
    expect(parts.find(({ title }) => title === WHY_PANEL.excluded)?.lines.length).toBeGreaterThan(0);
  });
});
