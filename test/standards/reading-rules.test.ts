import { describe, expect, it } from 'vitest';
import type { TakenUnder } from '../../grammar/visit/events.ts';
import { judgeReading } from '../../grammar/visit/judge-reading.ts';
import { RULES } from '../../grammar/visit/rules.ts';
import type { Reading } from '../../grammar/vocabulary/measurement.ts';
import type { UnitProfile } from '../../grammar/vocabulary/unit-profile.ts';

const UNIT = {
  id: 'rules',
  capacitor: { herm: 45, fan: 5 },
  compressor: { rla: 15.4, lra: 77 },
  fanMotor: { fla: 1.2 },
  metering: 'thermostatic-valve',
  plateSubcooling: 10,
} as UnitProfile;
const RUNNING: TakenUnder = { power: 'on', call: 'cooling', phase: 'testing' };
const IDLE: TakenUnder = { power: 'on', call: 'none', phase: 'testing' };
const DEAD: TakenUnder = { power: 'off', call: 'none', phase: 'testing' };

type Case = readonly [
  rule: string,
  reading: Omit<Reading, 'at'> & { at: readonly string[] },
  under: TakenUnder,
  word: string,
  unit?: UnitProfile,
];
const volts = (value: number, ...at: string[]) => ({ quantity: 'voltage' as const, at, value, unit: 'V' as const });
const reads = (quantity: Reading['quantity'], unit: Reading['unit'], value: number, ...at: string[]) => ({
  quantity,
  at,
  value,
  unit,
});

/** Each rule with a value that fits, one that is marginal and one that does not fit; the source stands beside. */
const CASES: readonly Case[] = [
  // ANSI C84.1 Table 1, range A 114–126 V, utilisation minimum range B 104 V (published)
  ['leg-to-ground', volts(118, 'L1', 'ground'), RUNNING, 'fits'],
  ['leg-to-ground', volts(110, 'L1', 'ground'), RUNNING, 'marginal'],
  ['leg-to-ground', volts(96, 'L1', 'ground'), RUNNING, 'does not fit'],
  // a value within the meter's error (1 % + 3 digits) of the limit is marginal: 114 + 1.4 V
  ['leg-to-ground', volts(115, 'L2', 'ground'), RUNNING, 'marginal'],
  // ANSI C84.1 range A ±5 % and NEMA MG 1-12.44.1 ±10 % of rated (published)
  [
    'leg-to-leg-nameplate',
    volts(240, 'L1', 'L2'),
    RUNNING,
    'fits',
    { ...UNIT, supply: { nominal: 240 } } as UnitProfile,
  ],
  [
    'leg-to-leg-nameplate',
    volts(222, 'L1', 'L2'),
    RUNNING,
    'marginal',
    { ...UNIT, supply: { nominal: 240 } } as UnitProfile,
  ],
  [
    'leg-to-leg-nameplate',
    volts(208, 'L1', 'L2'),
    RUNNING,
    'does not fit',
    { ...UNIT, supply: { nominal: 240 } } as UnitProfile,
  ],
  // 208/230 V nameplate: 187 = 208 − 10 %, 197 = C84.1 range A at 208 V, 253 = 230 + 10 % (derived)
  ['leg-to-leg', volts(208, 'L1', 'L2'), RUNNING, 'fits'],
  ['leg-to-leg', volts(190, 'L1', 'L2'), RUNNING, 'marginal'],
  ['leg-to-leg', volts(180, 'L1', 'L2'), RUNNING, 'does not fit'],
  ['load-side-under-call', volts(239, 'T1', 'T2'), RUNNING, 'fits'],
  ['load-side-under-call', volts(192, 'T1', 'T2'), RUNNING, 'marginal'],
  ['load-side-under-call', volts(0, 'T1', 'T2'), RUNNING, 'does not fit'],
  // RSES "Electricity for HVACR Technicians": 3 % of 208 V = 6.24 V (published); near 0–0.2 V expected (common practice)
  ['pole-drop', volts(0.1, 'L1', 'T1'), RUNNING, 'fits'],
  ['pole-drop', volts(3, 'L1', 'T1'), RUNNING, 'marginal'],
  ['pole-drop', volts(8, 'L1', 'T1'), RUNNING, 'does not fit'],
  // IEC 60947-4-1: closes from 85 % of 24 V = 20.4 V (from memory); about 18 V real pick-up (common practice)
  ['coil-volts', volts(25, 'coil-1', 'coil-2'), RUNNING, 'fits'],
  ['coil-volts', volts(19, 'coil-1', 'coil-2'), RUNNING, 'marginal'],
  ['coil-volts', volts(12, 'coil-1', 'coil-2'), RUNNING, 'does not fit'],
  // drop-out by 20 % of rated, 4.8 V (IEC 60947-4-1, from memory)
  ['transformer-secondary-no-call', volts(0, 'coil-1', 'coil-2'), IDLE, 'fits'],
  ['transformer-secondary-no-call', volts(4, 'coil-1', 'coil-2'), IDLE, 'marginal'],
  ['transformer-secondary-no-call', volts(24, 'coil-1', 'coil-2'), IDLE, 'does not fit'],
  // loaded secondary 24–28 V (common practice), class 2 at most 30 V (UL 5085-3, published)
  ['control-secondary', volts(26, 'R@thermostat', 'C@thermostat'), RUNNING, 'fits'],
  ['control-secondary', volts(21.5, 'R@thermostat', 'C@thermostat'), RUNNING, 'marginal'],
  ['control-secondary', volts(34, 'R@thermostat', 'C@thermostat'), RUNNING, 'does not fit'],
  // ±6 % usual, ±10 % also sold (IEC 60252-1 marking; common practice)
  ['capacitor-herm', reads('capacitance', 'uF', 44.1, 'cap-C', 'cap-HERM'), DEAD, 'fits'],
  ['capacitor-herm', reads('capacitance', 'uF', 41.5, 'cap-C', 'cap-HERM'), DEAD, 'marginal'],
  ['capacitor-herm', reads('capacitance', 'uF', 33, 'cap-C', 'cap-HERM'), DEAD, 'does not fit'],
  ['capacitor-fan', reads('capacitance', 'uF', 5, 'cap-C', 'cap-FAN'), DEAD, 'fits'],
  ['capacitor-fan', reads('capacitance', 'uF', 4.6, 'cap-C', 'cap-FAN'), DEAD, 'marginal'],
  ['capacitor-fan', reads('capacitance', 'uF', 1.1, 'cap-C', 'cap-FAN'), DEAD, 'does not fit'],
  // RLA is a sizing figure (NEC 440.2, published); the 10 % margin is our choice
  ['compressor-amps', reads('current', 'A', 11.2, 'compressor'), RUNNING, 'fits'],
  ['compressor-amps', reads('current', 'A', 16, 'compressor'), RUNNING, 'marginal'],
  ['compressor-amps', reads('current', 'A', 22, 'compressor'), RUNNING, 'does not fit'],
  ['fan-amps', reads('current', 'A', 0.9, 'fan-motor'), RUNNING, 'fits'],
  ['fan-amps', reads('current', 'A', 1.25, 'fan-motor'), RUNNING, 'marginal'],
  ['fan-amps', reads('current', 'A', 2.4, 'fan-motor'), RUNNING, 'does not fit'],
  // dead threshold below 3 V d.c. (common practice)
  ['capacitor-charge', reads('voltage-dc', 'V', 0, 'cap-C', 'cap-HERM'), DEAD, 'fits'],
  ['capacitor-charge', reads('voltage-dc', 'V', 2.9, 'cap-C', 'cap-HERM'), DEAD, 'marginal'],
  ['capacitor-charge', reads('voltage-dc', 'V', 40, 'cap-C', 'cap-HERM'), DEAD, 'does not fit'],
  // 24 V coil about 9–20 ohms d.c. (common practice)
  ['coil-resistance', reads('resistance', 'Ohm', 14, 'coil-1', 'coil-2'), DEAD, 'fits'],
  ['coil-resistance', reads('resistance', 'Ohm', 30, 'coil-1', 'coil-2'), DEAD, 'marginal'],
  ['coil-resistance', reads('resistance', 'Ohm', 0.3, 'coil-1', 'coil-2'), DEAD, 'does not fit'],
  // < 0.5 MΩ condemn after retest, 0.5–2 MΩ marginal (common practice; makers differ and win)
  ['insulation-to-shell', reads('insulation', 'MOhm', 20, 'comp-C', 'shell'), DEAD, 'fits'],
  ['insulation-to-shell', reads('insulation', 'MOhm', 1, 'comp-C', 'shell'), DEAD, 'marginal'],
  ['insulation-to-shell', reads('insulation', 'MOhm', 0.1, 'comp-C', 'shell'), DEAD, 'does not fit'],
  // CEC RA3.2.2.6 (2008): 4–25 °F with a thermostatic valve (published)
  ['superheat-valve', reads('difference', '[degF]', 11, 'suction-line'), RUNNING, 'fits'],
  ['superheat-valve', reads('difference', '[degF]', 20, 'suction-line'), RUNNING, 'marginal'],
  ['superheat-valve', reads('difference', '[degF]', 34, 'suction-line'), RUNNING, 'does not fit'],
  // CEC RA3.2.2.6 (2008): plate value ±3 °F (published)
  ['subcooling-plate', reads('difference', '[degF]', 10, 'liquid-line'), RUNNING, 'fits'],
  ['subcooling-plate', reads('difference', '[degF]', 13, 'liquid-line'), RUNNING, 'marginal'],
  ['subcooling-plate', reads('difference', '[degF]', 2, 'liquid-line'), RUNNING, 'does not fit'],
  // 16–22 °F dry bulb (common practice)
  ['split', reads('difference', '[degF]', 19, 'supply-air', 'return-air'), RUNNING, 'fits'],
  ['split', reads('difference', '[degF]', 15, 'supply-air', 'return-air'), RUNNING, 'marginal'],
  ['split', reads('difference', '[degF]', 9, 'supply-air', 'return-air'), RUNNING, 'does not fit'],
];

describe('the rules that judge a reading', () => {
  it.each(CASES.map((one) => ({ one, name: `${one[0]}: ${one[1].value} ${one[1].unit} ${one[3]}` })))(
    '$name',
    ({ one }) => {
      const [rule, reading, under, word, unit = UNIT] = one;
      expect(judgeReading(reading as Reading, under, unit)).toMatchObject({ rule, word });
    },
  );

  it('are each tried with a value that fits, one that is marginal and one that does not fit', () => {
    for (const { id } of RULES) {
      const words = new Set(CASES.filter(([rule]) => rule === id).map(([, , , word]) => word));
      expect(words, id).toEqual(new Set(['fits', 'marginal', 'does not fit']));
    }
  });

  it('say where they come from', () => {
    for (const { id, source, tag } of RULES) {
      expect(source.length, id).toBeGreaterThan(15);
      if (tag === 'practice') expect(source, id).toContain('common practice');
      if (tag === 'memory') expect(source, id).toContain('from memory');
    }
  });

  it('prefer the nameplate to the default', () => {
    const plated = { ...UNIT, supply: { nominal: 240 } } as UnitProfile;
    expect(judgeReading(volts(210, 'L1', 'L2') as Reading, RUNNING, plated)?.rule).toBe('leg-to-leg-nameplate');
    expect(judgeReading(volts(210, 'L1', 'L2') as Reading, RUNNING, UNIT)?.rule).toBe('leg-to-leg');
  });
});
