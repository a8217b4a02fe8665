import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import { foldVisit } from '../../../grammar/visit/fold-visit.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import { NEVER_SAID } from './never-said.ts';
import { TypedVisit } from './typed-visit.ts';

/**
 * The four recorded visits door to door, through the real grammar, machine and diagnosis. What each must come to is
 * written here by hand. Their events stand in fixtures/visits/NAME/events.jsonl (`vitest -u` writes them anew).
 */
const FIXTURES = new URL('../../../fixtures/', import.meta.url);

const TO_PROVEN_DEAD = [
  'outdoor-load reported-off',
  'outdoor-load proving',
  'outdoor-load reads-dead',
  'capacitor-herm reported-off',
  'capacitor-fan reported-off',
  'capacitor-herm proven-dead',
  'capacitor-fan proven-dead',
  'outdoor-load proven-dead',
];
const OUTDOOR_LIVE = ['outdoor-load live', 'capacitor-herm live', 'capacitor-fan live'];

const EXPECTED = {
  library: {
    finding: 'fan-capacitor-weak',
    cautions: [
      'standing-rules',
      'standing-hazards',
      'live-line',
      'live-line',
      'live-line',
      'switch-off',
      'capacitor-charge',
      'energise',
      'running-parts',
    ],
    energy: [...OUTDOOR_LIVE, ...TO_PROVEN_DEAD, ...OUTDOOR_LIVE],
    charge: [],
  },
  fuse: {
    finding: 'line-fuse-1-open',
    cautions: [
      'standing-rules',
      'standing-hazards',
      'live-line',
      'back-feed',
      'breaker-back-fed',
      'switch-off',
      'capacitor-charge',
      'energise',
      'reset-once',
      'running-parts',
    ],
    energy: [...OUTDOOR_LIVE, 'disconnect-line live', ...TO_PROVEN_DEAD, ...OUTDOOR_LIVE],
    charge: [],
  },
  'low-charge': {
    finding: 'low-charge',
    cautions: [
      'standing-rules',
      'standing-hazards',
      // Gauges are asked for before anything live.
      'refrigerant-pressure',
      'live-line',
      'switch-off',
      'live-line',
      'capacitor-charge',
      'nitrogen-test',
      'energise',
      'running-parts',
    ],
    energy: [...OUTDOOR_LIVE, 'disconnect-line live', ...TO_PROVEN_DEAD, ...OUTDOOR_LIVE],
    charge: [
      'superheat 31.5 running-too-short',
      'condensing-over-ambient 5.7 running-too-short',
      'subcooling 4.7 running-too-short',
      // Both line temperatures carry the finding and are read twice.
      'subcooling 4.7 running-too-short',
      'superheat 31.5 running-too-short',
      'superheat 14.9 fits',
      'condensing-over-ambient 17 fits',
      'subcooling 11 no-target',
    ],
  },
  'one-pole': {
    finding: 'contactor-pole-1-stuck-closed',
    cautions: [
      'standing-rules',
      'standing-hazards',
      'live-line',
      'terminal-venting',
      'breaker-throw',
      'capacitor-charge',
      'energise',
      'running-parts',
    ],
    energy: [...OUTDOOR_LIVE, 'disconnect-line live', ...TO_PROVEN_DEAD, ...OUTDOOR_LIVE],
    charge: [],
  },
} as const;
type Name = keyof typeof EXPECTED;

describe.each(Object.keys(EXPECTED) as Name[])('the recorded visit "%s"', (name) => {
  let played: readonly VisitEvent[];
  beforeAll(async () => {
    played = await play(name);
  });

  it('comes to its finding, proves the repair and closes with nothing open', () => {
    const view = foldVisit(played);
    expect(view.finding?.fault).toBe(EXPECTED[name].finding);
    expect(view.finding?.probability).toBeGreaterThan(0.95);
    expect(view.phases.map(({ phase }) => phase)).toEqual(['arrive', 'testing', 'repair', 'prove', 'close', 'closed']);
    expect(view.parts.length).toBeGreaterThan(0);
    expect(view.split?.word).toBe('fits');
    expect(view.summary?.openItems).toEqual([]);
    expect(view.unknown).toEqual([]);
  });

  it('gives its cautions in order, each before or with what it guards', () => {
    const view = foldVisit(played);
    expect(view.cautions.map(({ caution, late }) => `${late ? 'late ' : ''}${caution}`)).toEqual(
      EXPECTED[name].cautions,
    );
  });

  it('holds the energy of each zone as it was reported and measured', () => {
    const view = foldVisit(played);
    expect(view.energyChanges.map(({ zone, to }) => `${zone} ${to}`)).toEqual(EXPECTED[name].energy);
  });

  it('says nothing that is listened for while the mouth speaks, and never calls anything safe', () => {
    for (const { text } of foldVisit(played).said) expect(text).not.toMatch(NEVER_SAID);
  });

  it('names who governs before its first caution is acknowledged, and not after', () => {
    const { said, cautions } = foldVisit(played);
    const governs = said.filter(({ text }) => text.includes('licensed practice govern')).map(({ seq }) => seq);
    const acknowledged = cautions.flatMap(({ acknowledgedAt }) => acknowledgedAt?.seq ?? []);
    expect(governs.length).toBeGreaterThan(0);
    expect(Math.max(...governs)).toBeLessThan(Math.min(...acknowledged));
  });

  it('judges the charge only inside its validity', () => {
    const view = foldVisit(played);
    expect(
      view.charge.map(({ figure, value, judged, noVerdict }) => `${figure} ${value} ${judged?.word ?? noVerdict}`),
    ).toEqual(EXPECTED[name].charge);
  });

  it('writes the same events as are kept of it', async () => {
    const lines = played.map((event) => JSON.stringify(event, rounded)).join('\n');
    await expect(`${lines}\n`).toMatchFileSnapshot(fileURLToPath(new URL(`visits/${name}/events.jsonl`, FIXTURES)));
  });
});

/** Six figures of a number are the same on every processor. */
function rounded(_: string, value: unknown): unknown {
  return typeof value === 'number' && !Number.isInteger(value) ? Number(value.toPrecision(6)) : value;
}

async function play(name: Name): Promise<readonly VisitEvent[]> {
  const about = JSON.parse(read(`visits/${name}/visit.json`)) as { readonly unit: string };
  const unit = JSON.parse(read(`units/${about.unit}.json`)) as UnitProfile;
  const visit = await TypedVisit.open(unit);
  const lines = read(`visits/${name}/spoken.txt`)
    .split('\n')
    .filter((line) => line !== '' && !line.startsWith('#'));
  for (const line of lines) {
    if (line.startsWith('@later')) await visit.later(Number(line.split(' ')[1]));
    else await visit.type(line.split('|')[2]?.trim() ?? '');
  }
  return visit.events();
}

function read(path: string): string {
  return readFileSync(new URL(path, FIXTURES), 'utf8');
}
