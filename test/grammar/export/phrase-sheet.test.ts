import { describe, expect, it } from 'vitest';
import { toPhraseSheet } from '../../../grammar/export/phrase-sheet.ts';
import { COMMANDS } from '../../../grammar/vocabulary/commands.ts';
import { OBSERVATIONS } from '../../../grammar/vocabulary/observations.ts';
import { PARTS } from '../../../grammar/vocabulary/parts.ts';

describe('the phrase sheet', () => {
  it('names every order, observation and part, and shows how readings are said', () => {
    const sheet = toPhraseSheet();
    for (const row of [...COMMANDS, ...OBSERVATIONS, ...PARTS]) expect(sheet, row.name).toContain(`${row.name}: `);
    expect(sheet).toContain('leg one to ground');
    expect(sheet).toContain('118: one eighteen, one hundred eighteen, one hundred and eighteen');
  });

  it('fits on paper: no line longer than 100 signs, no sign of the notation but brackets and bars', () => {
    const lines = toPhraseSheet().split('\n');
    expect(lines.length).toBeGreaterThan(200);
    for (const line of lines) {
      expect(line.length, line).toBeLessThanOrEqual(104);
      expect(line).not.toMatch(/\$/);
    }
  });

  it('for one step holds that step and the orders, and nothing else', () => {
    const sheet = toPhraseSheet({ readings: [{ quantity: 'capacitance', at: ['cap-C', 'cap-FAN'] }] });
    expect(sheet).toContain('capacitance, µF: capacitor common to capacitor fan');
    expect(sheet).toContain('what next');
    expect(sheet).not.toContain('leg one');
    expect(sheet).not.toContain('Nameplate');
  });
});
