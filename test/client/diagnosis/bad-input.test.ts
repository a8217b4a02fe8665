import { describe, expect, it } from 'vitest';
import type { Evidence } from '../../../client/diagnosis/diagnosis.ts';
import { DIAGNOSIS_ERRORS, DiagnosisError } from '../../../client/diagnosis/errors.ts';
import { diagnosisFrom } from '../../../client/diagnosis/make-diagnosis.ts';
import { buildTable } from '../../../client/diagnosis/table/build-table.ts';
import { checkProfile } from '../../../client/diagnosis/unit/check-profile.ts';
import type { UnitCode } from '../../../grammar/vocabulary/quantities.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';

function codeOf(action: () => unknown): string {
  try {
    action();
  } catch (error) {
    if (error instanceof DiagnosisError) return error.code;
    throw error;
  }
  return 'none';
}

describe('unit profiles that cannot be right', () => {
  const bad: readonly (readonly [string, object, string])[] = [
    ['a 480 volt supply', { supply: { nominal: 480 } }, 'bad-profile'],
    ['three poles', { contactorPoles: 3 }, 'bad-profile'],
    ['a negative capacitor', { capacitor: { herm: -45, fan: 5 } }, 'bad-profile'],
    ['NaN for RLA', { compressor: { rla: Number.NaN, lra: 77 } }, 'bad-profile'],
    ['LRA below RLA', { compressor: { rla: 15, lra: 12 } }, 'bad-profile'],
    ['a number for the metering device', { metering: 3 }, 'bad-profile'],
    ['a fluid without data', { refrigerant: 'R-11' }, 'unknown-refrigerant'],
    ['an inverter-driven unit', { inverterDriven: true }, 'unit-not-covered'],
    ['a misspelt field', { contactorPole: 2 }, 'bad-profile'],
    ['a misspelt field inside another', { capacitor: { herm: 45, fann: 5 } }, 'bad-profile'],
    ['half of a capacitor', { capacitor: { herm: 45 } }, 'bad-profile'],
    ['a bare number for the supply', { supply: 240 }, 'bad-profile'],
    ['null for the compressor', { compressor: null }, 'bad-profile'],
    ['a count for a second stage', { twoStage: 2 }, 'bad-profile'],
    ['words for an inverter', { inverterDriven: 'yes' }, 'bad-profile'],
    ['no id', { id: '' }, 'bad-profile'],
    ['a number for the model', { model: 5 }, 'bad-profile'],
    ['thirty tons', { tons: 30 }, 'bad-profile'],
  ];
  for (const [what, profile, code] of bad) {
    it(`${what}: ${code}`, () => {
      expect(codeOf(() => checkProfile({ id: 'x', ...profile } as UnitProfile))).toBe(code);
    });
  }

  for (const [what, profile] of [
    ['a list', []],
    ['nothing in it', {}],
    ['null', null],
    ['a word', 'library'],
  ] as const) {
    it(`${what} is no profile`, () => {
      expect(codeOf(() => checkProfile(profile as never))).toBe('bad-profile');
    });
  }

  it('an empty plate is fine: everything is drawn', () => {
    expect(codeOf(() => checkProfile({ id: 'x' }))).toBe('none');
  });

  it('names the value and says what to do', () => {
    expect(() => checkProfile({ id: 'x', supply: { nominal: 480 } } as never)).toThrow(/^Supply volts is 480.*Correct/);
    for (const words of Object.values(DIAGNOSIS_ERRORS)) expect(words.length).toBeGreaterThan(20);
  });
});

describe('readings that cannot be right', () => {
  const diagnosis = diagnosisFrom(buildTable({ id: 'x', heatPump: false, refrigerant: 'R-22' }, { fineness: 0.5 }));
  const reading = (more: object): Evidence => ({
    seq: 7,
    kind: 'reading',
    quantity: 'voltage',
    at: ['L1', 'L2'],
    value: 240,
    unit: 'V',
    power: 'on',
    call: 'cooling',
    bench: false,
    ...more,
  });
  const assess = (more: object) => codeOf(() => diagnosis.assess([reading(more)], []));

  it('NaN, negative and absurd numbers', () => {
    expect(assess({ value: Number.NaN })).toBe('bad-reading');
    expect(assess({ value: -1 })).toBe('bad-reading');
    expect(assess({ value: 34_000 })).toBe('bad-reading');
    expect(assess({ quantity: 'voltage', at: ['L1', 'L2'], value: 'open', unit: 'V' })).toBe('bad-reading');
  });

  it('but no open capacitor: it stores nothing', () => {
    const section = { quantity: 'capacitance', at: ['cap-C', 'cap-FAN'], unit: 'uF', power: 'off' };
    expect(assess({ ...section, value: 'open' })).toBe('none');
  });

  it('a unit of another quantity', () => {
    expect(assess({ unit: 'Ohm' satisfies UnitCode })).toBe('wrong-unit');
    expect(assess({ quantity: 'temperature', at: ['outdoor-air'], value: 30, unit: 'V' })).toBe('wrong-unit');
  });

  it('kilohms, millivolts and degrees Celsius are the same readings in other units', () => {
    const same = (a: object, b: object) =>
      expect(diagnosis.assess([reading(a)], []).suspects).toEqual(diagnosis.assess([reading(b)], []).suspects);
    const ohms = { quantity: 'resistance', at: ['comp-C', 'shell'], power: 'off', call: 'none', bench: true };
    same({ ...ohms, value: 250_000, unit: 'Ohm' }, { ...ohms, value: 250, unit: 'kOhm' });
    same({ value: 240, unit: 'V' }, { value: 240_000, unit: 'mV' });
  });

  it('a pressure outside the saturation data', () => {
    const gauge = { quantity: 'pressure', at: ['liquid-port'], unit: '[psi]' };
    expect(assess({ ...gauge, value: 880 })).toBe('saturation-out-of-range');
    expect(assess({ ...gauge, value: 220 })).toBe('none');
  });

  it('a point that the unit lacks answers no test and changes nothing', () => {
    const o = reading({ at: ['O@condenser', 'C@condenser'], value: 25 });
    expect(
      diagnosis.testFor({ ...o, quantity: 'voltage', at: ['O@condenser', 'C@condenser'] } as never),
    ).toBeUndefined();
    expect(diagnosis.assess([o], []).suspects).toEqual(diagnosis.assess([], []).suspects);
  });

  it('a proof reading with power off is no evidence', () => {
    const proof = reading({ value: 0.2, power: 'off', call: 'none' });
    expect(diagnosis.assess([proof], []).suspects).toEqual(diagnosis.assess([], []).suspects);
  });

  it('readings that contradict each other are named by their seq', () => {
    const answer = diagnosis.assess(
      [
        reading({ seq: 1 }),
        reading({ seq: 2, at: ['T1', 'T2'] }),
        reading({ seq: 3, at: ['coil-1', 'coil-2'], value: 26 }),
        reading({
          seq: 4,
          quantity: 'capacitance',
          at: ['cap-C', 'cap-FAN'],
          value: 900,
          unit: 'uF',
          power: 'off',
          bench: true,
        }),
      ],
      [],
    );
    expect(answer.contradiction).toEqual([4]);
  });

  it('the same reading twice stands firmer than once', () => {
    const dead = { at: ['L1', 'L2'], value: 0.2 };
    const once = diagnosis.assess([reading({ seq: 1, ...dead })], []);
    const twice = diagnosis.assess([reading({ seq: 1, ...dead }), reading({ seq: 2, ...dead })], []);
    const fed = (a: typeof once) => a.suspects.find((s) => s.fault === 'fan-capacitor-weak')!.probability;
    expect(fed(twice)).toBeLessThan(fed(once));
  });
});
