import { describe, expect, it } from 'vitest';
import { ARRIVAL, TO_PROVEN_DEAD, TypedVisit } from './typed-visit.ts';

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
