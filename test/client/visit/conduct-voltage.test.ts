import { describe, expect, it } from 'vitest';
import { ARRIVAL, TO_PROVEN_DEAD, TypedVisit } from './typed-visit.ts';

const BREATH = 'meter two forty zero zero zero zero zero zero meter two forty';
const ROAD = {
  'reported off': TO_PROVEN_DEAD.slice(0, 4),
  proving: [...TO_PROVEN_DEAD.slice(0, 4), 'meter proves two forty'],
  'reads dead': TO_PROVEN_DEAD.slice(0, -2),
  'proven dead': TO_PROVEN_DEAD,
} as const;

const PRESENT = [
  'leg one to ground one eighteen',
  'l1 118 volts',
  'load side 118 volts',
  'l1 to l2 24 volts',
  'load side two forty',
  't one to ground three volts',
  'leg two to ground 150 volts',
  'leg one to ground three forty',
  'load side minus one twenty volts',
] as const;

describe.each(Object.entries(ROAD))('where it is %s', (_, road) => {
  it.each(PRESENT)('a voltage present is warned of at once: %s', async (text) => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL, 'compressor runs then trips', ...road);
    const count = visit.mouth.said.length;
    visit.run.hear({ id: 'v', ear: 'wav', text, alternatives: [], confidence: 0.9, accepted: true });
    await visit.run.settled();
    const said = visit.mouth.said.slice(count).map((prompt) => prompt.text);
    expect(said[0]).toMatch(/^Hands off: voltage present at /);
    expect(said.join(' ')).not.toMatch(/fits|fit\b|marginal/);
    expect(visit.run.context.energy['outdoor-load']).toBe('live');
    expect(visit.of('hazard.warned').length).toBeGreaterThan(0);
  });

  it.each(['load side zero volts', 'leg one to ground two volts'])(
    'a voltage below the threshold is not: %s',
    async (text) => {
      const visit = await TypedVisit.open();
      await visit.type(...ARRIVAL, 'compressor runs then trips', ...road, text);
      expect(visit.mouth.said.some((prompt) => prompt.text.startsWith('Hands off'))).toBe(false);
    },
  );
});

describe('where it is live', () => {
  it('a voltage is read back as any other', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL, 'leg one to ground one eighteen', 'leg two to ground one nineteen');
    expect(visit.mouth.said.some((prompt) => prompt.text.startsWith('Hands off'))).toBe(false);
  });
});

const VOLTS_IN_BREATH = [
  'meter two forty zero one eighteen zero zero zero zero meter two forty',
  'meter two forty zero zero one eighteen meter two forty',
  'meter two forty one eighteen meter zero',
  'meter zero zero three meter zero',
] as const;

/** Voltage counts whatever else the proof lacks, and where it was not allowed to begin. */
describe.each<[string, readonly string[]]>([
  ['not locked', ['outdoor disconnect is pulled']],
  ['without the call off', ['outdoor disconnect is pulled and locked']],
  ['in order', TO_PROVEN_DEAD.slice(0, 3)],
  ['once proven dead', TO_PROVEN_DEAD],
])('a number in a proof said in one breath, %s', (_, road) => {
  it.each(VOLTS_IN_BREATH)('is voltage present: %s', async (breath) => {
    const visit = await TypedVisit.open();
    await visit.type(...road);
    const count = visit.mouth.said.length;
    await visit.type(breath);
    expect(visit.mouth.said[count]?.text).toMatch(/^Hands off: voltage present at /);
    expect(visit.run.context.energy['outdoor-load']).toBe('live');
    expect(visit.of('hazard.warned')).not.toEqual([]);
  });
});

describe('a correction to a voltage', () => {
  it.each(['correction one eighteen', 'correction three'])('is warned of before it is read back: %s', async (words) => {
    const visit = await TypedVisit.open();
    await visit.type(...ROAD.proving, 'leg one to ground zero volts');
    const count = visit.mouth.said.length;
    await visit.type(words);
    expect(visit.mouth.said[count]?.text).toMatch(/^Hands off: voltage present at leg one to ground/);
    expect(visit.run.context.proof).toBeUndefined();
  });
});

describe('every proof that a voltage can touch', () => {
  const PANEL = [
    'line side one to ground one eighteen',
    'thermostat is not calling',
    'breaker at the panel is off and locked',
    'line side meter two forty zero zero zero meter two forty',
  ];
  const HANDLER = [
    'air handler leg one to ground one eighteen',
    'thermostat is not calling',
    'air handler switch is off and locked',
    'control circuit meter twenty five zero meter twenty five',
  ];
  it.each<[string, readonly string[], string, string, string]>([
    ['the line side by the unit behind it', PANEL, 'T one to ground one eighteen', 'disconnect-line', 'live'],
    ['the unit by its line side', [...PANEL, BREATH], 'line side one to ground one eighteen', 'outdoor-load', 'live'],
    ['the control circuit by what feeds it', HANDLER, 'air handler leg one to ground one eighteen', 'control', 'live'],
    ['what feeds the transformer by 24 volts', HANDLER, 'R to C twenty six', 'air-handler', 'live'],
    ['not the unit by 24 volts', TO_PROVEN_DEAD, 'R to C twenty six', 'outdoor-load', 'proven-dead'],
    [
      'not the unit by the line side of a locked disconnect',
      TO_PROVEN_DEAD,
      'line side one to ground one eighteen',
      'outdoor-load',
      'proven-dead',
    ],
  ])('ends: %s', async (_, road, words, zone, state) => {
    const visit = await TypedVisit.open();
    await visit.type(...road, words);
    expect(visit.run.context.energy).toMatchObject({ [zone]: state });
  });
});

describe('the talk turns to the source', () => {
  const FOUND = [...ROAD.proving, 'leg one to ground one eighteen'];
  const asked = (visit: TypedVisit): readonly string[] =>
    visit.of('step.asked').flatMap(({ step }) => (step.startsWith('energy.source') ? [step.replace(/#.*/, '')] : []));

  it('and names what to read next, until what feeds it is opened', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL, 'compressor runs then trips', ...FOUND);
    for (let step = 0; step < 4; step += 1)
      await visit.type('live', ['two forty', 'one twenty', 'one twenty', 'what next'][step]!);
    expect([...new Set(asked(visit))]).toEqual([
      'energy.source@disconnect-line-1+disconnect-line-2',
      'energy.source@disconnect-load-1+ground',
      'energy.source@disconnect-load-2+ground',
      'energy.source-opened',
    ]);
    expect(visit.mouth.said.map(({ text }) => text).join(' ')).not.toMatch(/fits|fit\b|marginal/);
    await visit.type('breaker at the panel is off and locked');
    expect(visit.run.context.search).toBeUndefined();
    expect(visit.run.context.energy['outdoor-load']).toBe('reported-off');
  });

  it('before any tour goes on', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...FOUND, 'live', 'live', 'live', 'outdoor air ninety four degrees', 'what next');
    expect(visit.mouth.last()).toContain('Disconnect line side');
  });

  it.each(['take that back', 'scratch that'])('no more, once the voltage is taken back: %s', async (words) => {
    const visit = await TypedVisit.open();
    await visit.type(...FOUND, words);
    expect(visit.run.context.search).toBeUndefined();
    expect(visit.run.context.energy['outdoor-load']).toBe('live');
  });

  it('and what was reported of the switches there is not believed any more', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...FOUND, 'pass', 'pass', 'pass', 'pass', 'meter proves two forty');
    expect(visit.run.context.isolation.outdoor).toBe('unknown');
    expect(visit.run.context.proof).toBeUndefined();
  });
});
