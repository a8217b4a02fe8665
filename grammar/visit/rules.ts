import type { PointId } from '../vocabulary/points.ts';
import type { QuantityId, UnitCode } from '../vocabulary/quantities.ts';
import type { UnitProfile } from '../vocabulary/unit-profile.ts';

export interface Band {
  readonly low?: number;
  readonly high?: number;
}

/** A number from the nameplate on which a band can stand. */
export type NameplateFigure =
  | 'supply-nominal'
  | 'capacitor-herm'
  | 'capacitor-fan'
  | 'compressor-rla'
  | 'fan-fla'
  | 'plate-subcooling';

/** Where a rule's figures come from. */
export type SourceTag = 'published' | 'memory' | 'practice' | 'derived' | 'nameplate';

/**
 * One rule that judges a reading: plain data. Inside `fit` it fits; between `fit` and `limit` it is marginal; beyond
 * `limit` it does not fit. With `of`, both bands are factors on a nameplate figure, and the rule is silent where the
 * nameplate does not say it.
 */
export interface ReadingRule {
  readonly id: string;
  readonly quantity: QuantityId;
  readonly unit: UnitCode;
  /** Probe pairs or single places it speaks of. */
  readonly at: readonly (readonly PointId[])[];
  readonly power?: 'on' | 'off';
  readonly call?: 'cooling' | 'none';
  /** Speaks only of units with this metering device. */
  readonly metering?: 'fixed-orifice' | 'thermostatic-valve';
  readonly of?: NameplateFigure;
  /** With `of`: the bands are added to the nameplate figure instead of multiplied with it. */
  readonly shift?: true;
  readonly fit: Band;
  readonly limit: Band;
  readonly source: string;
  readonly tag: SourceTag;
}

export const RULES: readonly ReadingRule[] = [
  {
    id: 'leg-to-ground',
    quantity: 'voltage',
    unit: 'V',
    at: [
      ['L1', 'ground'],
      ['L2', 'ground'],
      ['disconnect-line-1', 'ground'],
      ['disconnect-line-2', 'ground'],
      ['disconnect-load-1', 'ground'],
      ['disconnect-load-2', 'ground'],
    ],
    power: 'on',
    fit: { low: 114, high: 126 },
    limit: { low: 104, high: 127 },
    source: 'ANSI C84.1 Table 1: service range A 114–126 V, utilisation minimum range B 104 V, range B high 127 V',
    tag: 'published',
  },
  {
    id: 'leg-to-leg-nameplate',
    quantity: 'voltage',
    unit: 'V',
    at: [
      ['L1', 'L2'],
      ['disconnect-line-1', 'disconnect-line-2'],
      ['disconnect-load-1', 'disconnect-load-2'],
    ],
    power: 'on',
    of: 'supply-nominal',
    fit: { low: 0.95, high: 1.05 },
    limit: { low: 0.9, high: 1.1 },
    source: 'ANSI C84.1 range A ±5 % of nominal; NEMA MG 1-12.44.1 motor tolerance ±10 % of rated',
    tag: 'published',
  },
  {
    id: 'leg-to-leg',
    quantity: 'voltage',
    unit: 'V',
    at: [
      ['L1', 'L2'],
      ['disconnect-line-1', 'disconnect-line-2'],
      ['disconnect-load-1', 'disconnect-load-2'],
    ],
    power: 'on',
    fit: { low: 197, high: 253 },
    limit: { low: 187, high: 253 },
    source: 'unit rated 208/230 V, range unknown: 187 = 208 − 10 %, 253 = 230 + 10 %, 197 = C84.1 range A at 208 V',
    tag: 'derived',
  },
  {
    id: 'load-side-under-call',
    quantity: 'voltage',
    unit: 'V',
    at: [['T1', 'T2']],
    power: 'on',
    call: 'cooling',
    fit: { low: 197, high: 253 },
    limit: { low: 187, high: 253 },
    source: 'as leg to leg: a closed contactor passes the line voltage (common practice)',
    tag: 'derived',
  },
  {
    id: 'pole-drop',
    quantity: 'voltage',
    unit: 'V',
    at: [
      ['L1', 'T1'],
      ['L2', 'T2'],
    ],
    power: 'on',
    call: 'cooling',
    fit: { high: 0.5 },
    limit: { high: 6.2 },
    source:
      'RSES "Electricity for HVACR Technicians": over 3 % of line voltage (6.24 V at 208 V) replace; 0–0.5 V usual',
    tag: 'published',
  },
  {
    id: 'coil-volts',
    quantity: 'voltage',
    unit: 'V',
    at: [['coil-1', 'coil-2']],
    power: 'on',
    call: 'cooling',
    fit: { low: 20.4, high: 28 },
    limit: { low: 18, high: 30 },
    source:
      'IEC 60947-4-1 closing range from 85 % of 24 V (from memory); 28 V loaded secondary, 18 V pick-up: common practice',
    tag: 'memory',
  },
  {
    id: 'control-secondary',
    quantity: 'voltage',
    unit: 'V',
    at: [
      ['R@thermostat', 'C@thermostat'],
      ['R@air-handler', 'C@air-handler'],
      ['R@condenser', 'C@condenser'],
      ['transformer-secondary-1', 'transformer-secondary-2'],
    ],
    power: 'on',
    fit: { low: 24, high: 28 },
    limit: { low: 20.4, high: 30 },
    source: 'loaded secondary 24–28 V: common practice; class 2 at most 30 V: UL 5085-3',
    tag: 'practice',
  },
  {
    id: 'capacitor-herm',
    quantity: 'capacitance',
    unit: 'uF',
    at: [['cap-C', 'cap-HERM']],
    of: 'capacitor-herm',
    fit: { low: 0.94, high: 1.06 },
    limit: { low: 0.9, high: 1.1 },
    source: 'tolerance marked on the part; ±6 % usual, ±10 % also sold: common practice',
    tag: 'practice',
  },
  {
    id: 'capacitor-fan',
    quantity: 'capacitance',
    unit: 'uF',
    at: [['cap-C', 'cap-FAN']],
    of: 'capacitor-fan',
    fit: { low: 0.94, high: 1.06 },
    limit: { low: 0.9, high: 1.1 },
    source: 'tolerance marked on the part; ±6 % usual, ±10 % also sold: common practice',
    tag: 'practice',
  },
  {
    id: 'compressor-amps',
    quantity: 'current',
    unit: 'A',
    at: [['compressor']],
    power: 'on',
    of: 'compressor-rla',
    fit: { high: 1 },
    limit: { high: 1.1 },
    source: 'nameplate RLA, a sizing figure (NEC 440.2); the 10 % margin is our choice',
    tag: 'nameplate',
  },
  {
    id: 'fan-amps',
    quantity: 'current',
    unit: 'A',
    at: [['fan-motor']],
    power: 'on',
    of: 'fan-fla',
    fit: { high: 1 },
    limit: { high: 1.1 },
    source: 'nameplate FLA; the 10 % margin is our choice',
    tag: 'nameplate',
  },
  {
    id: 'capacitor-charge',
    quantity: 'voltage-dc',
    unit: 'V',
    at: [
      ['cap-C', 'cap-HERM'],
      ['cap-C', 'cap-FAN'],
      ['start-cap-1', 'start-cap-2'],
      ['blower-cap-1', 'blower-cap-2'],
    ],
    fit: { high: 3 },
    limit: { high: 3 },
    source: 'dead threshold below 3 V d.c.: common practice',
    tag: 'practice',
  },
  {
    id: 'transformer-secondary-no-call',
    quantity: 'voltage',
    unit: 'V',
    at: [['coil-1', 'coil-2']],
    power: 'on',
    call: 'none',
    fit: { high: 3 },
    limit: { high: 4.8 },
    source: 'no call, no coil volts: common practice; drop-out at 20 % of rated, 4.8 V: IEC 60947-4-1, from memory',
    tag: 'memory',
  },
  {
    id: 'coil-resistance',
    quantity: 'resistance',
    unit: 'Ohm',
    at: [['coil-1', 'coil-2']],
    fit: { low: 9, high: 20 },
    limit: { low: 5, high: 40 },
    source: '24 V contactor coil about 9–20 ohms d.c.: common practice; the outer limits are our choice',
    tag: 'practice',
  },
  {
    id: 'insulation-to-shell',
    quantity: 'insulation',
    unit: 'MOhm',
    at: [
      ['comp-C', 'shell'],
      ['comp-R', 'shell'],
      ['comp-S', 'shell'],
    ],
    fit: { low: 2 },
    limit: { low: 0.5 },
    source: "under 0.5 megohm condemn after a retest, 0.5–2 marginal: common practice; makers' limits differ and win",
    tag: 'practice',
  },
  {
    id: 'superheat-valve',
    quantity: 'difference',
    unit: '[degF]',
    at: [['suction-line']],
    metering: 'thermostatic-valve',
    power: 'on',
    fit: { low: 8, high: 16 },
    limit: { low: 4, high: 25 },
    source: 'thermostatic valve 4–25 °F acceptable: CEC RA3.2.2.6 (2008); 8 °F and up usual: common practice',
    tag: 'published',
  },
  {
    id: 'subcooling-plate',
    quantity: 'difference',
    unit: '[degF]',
    at: [['liquid-line']],
    metering: 'thermostatic-valve',
    power: 'on',
    of: 'plate-subcooling',
    shift: true,
    fit: { low: -3, high: 3 },
    limit: { low: -4, high: 4 },
    source: 'plate subcooling ±3 °F: CEC RA3.2.2.6 (2008); ±4 °F field tolerance is our choice',
    tag: 'published',
  },
  {
    id: 'split',
    quantity: 'difference',
    unit: '[degF]',
    at: [['supply-air', 'return-air']],
    power: 'on',
    fit: { low: 16, high: 22 },
    limit: { low: 14, high: 24 },
    source:
      'temperature split 16–22 °F dry bulb, less when humid, more when dry: common practice; outer limits our choice',
    tag: 'practice',
  },
];

/** The nameplate figure a rule stands on, or undefined where the nameplate does not say it. */
export function nameplateFigure(unit: UnitProfile, figure: NameplateFigure): number | undefined {
  switch (figure) {
    case 'supply-nominal':
      return unit.supply?.nominal;
    case 'capacitor-herm':
      return unit.capacitor?.herm;
    case 'capacitor-fan':
      return unit.capacitor?.fan;
    case 'compressor-rla':
      return unit.compressor?.rla;
    case 'fan-fla':
      return unit.fanMotor?.fla;
    case 'plate-subcooling':
      return unit.plateSubcooling;
  }
}
