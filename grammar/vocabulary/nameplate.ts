import type { QuantityId, UnitCode } from './quantities.ts';
import { rowsBy } from './rows-by.ts';
import { bareUnit, type UnitChoice, USUAL_CHOICE } from './unit-choice.ts';
import { UNITS_BY_CODE } from './units.ts';

/** One line of a nameplate or of what is known of the unit. */
export interface NameplateField {
  readonly id: string;
  readonly name: string;
  readonly say: string;
  /**
   * A number with its unit, two numbers said in one breath ("two oh eight two thirty"), one word of a list, or a mark of
   * letters and digits.
   */
  readonly value: 'number' | 'number-or-pair' | 'choice' | 'mark';
  readonly unit?: UnitCode;
  readonly choices?: readonly { readonly value: string; readonly say: string }[];
  /** What the number can be at all, in `unit`. */
  readonly low?: number;
  readonly high?: number;
  /** Also understood without the word "nameplate" before it; or by these names alone. */
  readonly alone?: true;
  readonly aloneAs?: string;
}

export const NAMEPLATE_FIELDS = [
  { id: 'model', name: 'model', say: 'model [number] [is]', value: 'mark', alone: true },
  { id: 'serial', name: 'serial', say: 'serial [number] [is]', value: 'mark', alone: true },
  {
    id: 'supply-volts',
    name: 'supply volts',
    say: 'supply volts | supply voltage | rated volts | rated voltage | volts | voltage',
    value: 'number-or-pair',
    unit: 'V',
    low: 90,
    high: 600,
  },
  {
    id: 'rla',
    name: 'rated load amps',
    say: 'r l a | rated load amps | compressor r l a | rated load',
    value: 'number',
    low: 2,
    high: 150,
    unit: 'A',
    alone: true,
  },
  {
    id: 'lra',
    name: 'locked rotor amps',
    say: 'l r a | locked rotor amps | compressor l r a | locked rotor',
    value: 'number',
    low: 5,
    high: 500,
    unit: 'A',
    alone: true,
  },
  {
    id: 'fan-fla',
    name: 'fan full load amps',
    say: '[fan [motor]] f l a | [fan [motor]] full load [amps]',
    value: 'number',
    low: 0.1,
    high: 10,
    unit: 'A',
    alone: true,
  },
  {
    id: 'fan-horsepower',
    name: 'fan motor horsepower',
    say: 'fan motor (horsepower | h p)',
    value: 'number',
    low: 0.05,
    high: 2,
    alone: true,
  },
  {
    id: 'blower-fla',
    name: 'blower full load amps',
    say: 'blower [motor] (f l a | full load amps)',
    value: 'number',
    unit: 'A',
    alone: true,
  },
  {
    id: 'min-circuit-amps',
    name: 'minimum circuit ampacity',
    say: 'm c a | (minimum | min) circuit [amps | ampacity]',
    value: 'number',
    low: 2,
    high: 200,
    unit: 'A',
    alone: true,
  },
  {
    id: 'max-overcurrent',
    name: 'maximum overcurrent protection',
    say: 'm o c p | max fuse | maximum fuse | max breaker | maximum breaker | max overcurrent | maximum overcurrent [protection]',
    value: 'number',
    low: 5,
    high: 200,
    unit: 'A',
    alone: true,
  },
  {
    id: 'capacitor-herm',
    name: 'compressor capacitor',
    say: '(herm | compressor) (capacitor | cap) | (capacitor | cap) herm | herm',
    value: 'number',
    unit: 'uF',
  },
  {
    id: 'capacitor-fan',
    name: 'fan capacitor',
    say: 'fan (capacitor | cap) | (capacitor | cap) fan | fan',
    value: 'number',
    unit: 'uF',
  },
  {
    id: 'capacitor-volts',
    name: 'capacitor volts',
    say: '(capacitor | cap) (volts | voltage)',
    value: 'number',
    unit: 'V',
  },
  {
    id: 'refrigerant',
    name: 'refrigerant',
    say: "refrigerant [is] | gas [is] | system is | unit is | (it | unit | system) (uses | takes | has) | it's | it is",
    value: 'choice',
    alone: true,
    choices: [
      { value: 'R-22', say: '[r] twenty two | [r] two two' },
      { value: 'R-32', say: '[r] thirty two | [r] three two' },
      { value: 'R-134a', say: '[r] one thirty four a | [r] one three four a' },
      { value: 'R-290', say: '[r] two ninety | propane' },
      { value: 'R-404A', say: '[r] four oh four [a] | [r] four zero four [a]' },
      { value: 'R-407C', say: '[r] four oh seven [c] | [r] four zero seven [c]' },
      { value: 'R-410A', say: '[r] four ten [a] | [r] four one oh [a] | [r] four one zero [a]' },
      { value: 'R-454B', say: '[r] four fifty four [b] | [r] four five four [b]' },
    ],
  },
  {
    id: 'low-side-test',
    name: 'low side test pressure',
    say: 'low side (test | design) [pressure] [is] | (test | design) pressure low [side] [is]',
    value: 'number',
    unit: '[psi]',
    low: 50,
    high: 700,
    alone: true,
  },
  {
    id: 'charge',
    name: 'factory charge',
    say: '[factory] charge',
    aloneAs: 'factory charge | charge is',
    value: 'number',
    unit: '[oz_av]',
  },
  {
    id: 'subcooling',
    name: 'subcooling',
    say: '[target | design] subcooling',
    aloneAs: '(target | design | nameplate) (subcooling | subcool)',
    value: 'number',
    unit: '[degF]',
    low: 3,
    high: 25,
  },
  {
    id: 'tons',
    name: 'tons',
    say: 'tons | tonnage | size | capacity',
    value: 'number',
    low: 0.5,
    high: 25,
    alone: true,
  },
  {
    id: 'metering',
    name: 'metering device',
    say: "metering [device] | metering device is | [it | unit] (has | uses) a | it's got a | it has got a",
    value: 'choice',
    alone: true,
    choices: [
      { value: 'fixed-orifice', say: '[fixed] orifice | piston | fixed' },
      { value: 'thermostatic-valve', say: 't x v | thermostatic [expansion] valve | expansion valve | t e v' },
    ],
  },
  {
    id: 'contactor-poles',
    name: 'contactor poles',
    say: 'contactor | contactor is [a]',
    value: 'choice',
    choices: [
      { value: '1', say: 'one pole | single pole' },
      { value: '2', say: 'two pole | double pole' },
    ],
  },
  {
    id: 'heat-pump',
    name: 'heat pump',
    say: 'unit [is a] | unit is',
    value: 'choice',
    alone: true,
    choices: [
      { value: 'yes', say: 'heat pump' },
      { value: 'no', say: 'straight cool | cooling only | straight cooling' },
    ],
  },
  {
    id: 'compressor-drive',
    name: 'compressor drive',
    say: '(unit | compressor) is | drive',
    value: 'choice',
    aloneAs: "(unit | compressor | it) is [a] | it's [a]",
    choices: [
      { value: 'inverter', say: 'inverter [driven] | variable speed | communicating' },
      { value: 'single-speed', say: 'single speed | single stage' },
      { value: 'two-stage', say: '[a] two stage | two stages' },
    ],
  },
  {
    id: 'blower-drive',
    name: 'blower drive',
    say: 'blower [motor] [is]',
    value: 'choice',
    choices: [
      { value: 'electronic', say: 'electronic | variable speed | constant torque | e c m' },
      { value: 'capacitor', say: 'capacitor run | p s c' },
    ],
  },
  {
    id: 'crankcase-heater',
    name: 'crankcase heater',
    say: 'crankcase heater',
    value: 'choice',
    choices: [
      { value: 'yes', say: 'yes | fitted | present' },
      { value: 'no', say: 'no | none | not fitted' },
    ],
  },
] as const satisfies readonly NameplateField[];
export type NameplateFieldId = (typeof NAMEPLATE_FIELDS)[number]['id'];
export const NAMEPLATE_FIELDS_BY_ID: Readonly<Record<NameplateFieldId, NameplateField>> = rowsBy(
  'id',
  NAMEPLATE_FIELDS,
);

/** Before the two ratings of a dual capacitor, compressor section first. */
export const RATED_PAIR =
  'nameplate [says | reads] [cap | capacitor] | [the] (cap | capacitor) is rated [at] | rated | nameplate dual (cap | capacitor) | [the] [dual] [run] (cap | capacitor) on the (nameplate | plate | tag) [is | says]';

/** What is asked of the plate, a field at a time; fields of one line are asked in one breath. */
export const PLATE_LINES = [
  ['model', 'serial'],
  ['supply-volts'],
  ['rla', 'lra'],
  ['fan-fla'],
  ['capacitor-herm', 'capacitor-fan'],
  ['refrigerant'],
] as const satisfies readonly (readonly NameplateFieldId[])[];
export type PlateField = (typeof PLATE_LINES)[number][number];

/** What a number of the plate measures where it may be in one unit or another. */
const QUANTITY_OF_UNIT: Readonly<Partial<Record<UnitCode, QuantityId>>> = {
  '[psi]': 'pressure',
  '[degF]': 'difference',
};

/** The unit of a number of the plate that was said without one. */
export function bareUnitOfField({ unit }: NameplateField, choice: UnitChoice = USUAL_CHOICE): UnitCode | undefined {
  const quantity = unit === undefined ? undefined : QUANTITY_OF_UNIT[unit];
  return quantity === undefined ? unit : bareUnit(quantity, choice);
}

/** A number of the plate in the unit of its field, as whoever reckons with it takes it; degrees are differences there. */
export function inUnitOfField({ unit }: NameplateField, value: number, said: UnitCode | undefined): number {
  if (unit === undefined || said === undefined || said === unit) return value;
  const [from, to] = [UNITS_BY_CODE[said], UNITS_BY_CODE[unit]];
  return from.base === to.base ? (value * from.factor) / to.factor : value;
}
