import type { QuantityId, UnitCode } from './quantities.ts';
import { rowsBy } from './rows-by.ts';

/**
 * Units as UCUM codes (The Unified Code for Units of Measure, ucum.org), with every way each is said.
 * `factor` and `offset` turn a value in this unit into the base unit of its quantity: base = value × factor + offset.
 */
export interface Unit {
  readonly code: UnitCode;
  readonly quantities: readonly QuantityId[];
  readonly base: UnitCode;
  readonly factor: number;
  readonly offset?: number;
  /** Short sign on screen and paper. */
  readonly sign: string;
  readonly say: string;
  /** Understood, and not listened for: a short sound that other words end in. */
  readonly unheard?: true;
  /** Names no scale: it stands for the one that is chosen (unit-choice.ts). */
  readonly asChosen?: true;
}

export const UNITS = [
  {
    code: 'V',
    quantities: ['voltage', 'voltage-dc'],
    base: 'V',
    factor: 1,
    sign: 'V',
    say: 'volt | volts | v',
  },
  {
    code: 'V',
    quantities: ['voltage'],
    base: 'V',
    factor: 1,
    sign: 'V',
    say: 'volt a c | volts a c | v a c | a c [volts]',
  },
  {
    code: 'V',
    quantities: ['voltage-dc'],
    base: 'V',
    factor: 1,
    sign: 'V',
    say: 'volt d c | volts d c | v d c | d c [volts]',
  },
  {
    code: 'mV',
    quantities: ['voltage', 'voltage-dc'],
    base: 'V',
    factor: 0.001,
    sign: 'mV',
    say: 'millivolt | millivolts',
  },
  { code: 'A', quantities: ['current'], base: 'A', factor: 1, sign: 'A', say: 'amp | amps | ampere | amperes' },
  { code: 'mA', quantities: ['current'], base: 'A', factor: 0.001, sign: 'mA', say: 'milliamp | milliamps' },
  { code: 'Ohm', quantities: ['resistance', 'insulation'], base: 'Ohm', factor: 1, sign: 'Ω', say: 'ohm | ohms' },
  {
    code: 'mOhm',
    quantities: ['resistance'],
    base: 'Ohm',
    factor: 1e-3,
    sign: 'mΩ',
    say: 'milliohm | milliohms | milli ohms',
  },
  {
    code: 'kOhm',
    quantities: ['resistance', 'insulation'],
    base: 'Ohm',
    factor: 1e3,
    sign: 'kΩ',
    say: 'k | k ohms | kilohm | kilohms | kilo ohms',
  },
  {
    code: 'MOhm',
    quantities: ['resistance', 'insulation'],
    base: 'Ohm',
    factor: 1e6,
    sign: 'MΩ',
    say: 'meg | megs | megohm | megohms | meg ohms',
  },
  {
    code: 'GOhm',
    quantities: ['insulation', 'resistance'],
    base: 'Ohm',
    factor: 1e9,
    sign: 'GΩ',
    say: 'gigohm | gigohms | gig ohms | gig | gigs',
  },
  {
    code: 'uF',
    quantities: ['capacitance'],
    base: 'uF',
    factor: 1,
    sign: 'µF',
    say: 'microfarad | microfarads | micro farads | mike | mikes | mics | m f d | u f',
  },
  {
    code: '[degF]',
    quantities: ['temperature', 'wet-bulb', 'difference'],
    base: '[degF]',
    factor: 1,
    sign: '°F',
    say: 'degree | degrees',
    asChosen: true,
  },
  {
    code: '[degF]',
    quantities: ['temperature', 'wet-bulb', 'difference'],
    base: '[degF]',
    factor: 1,
    sign: '°F',
    say: '(degree | degrees) fahrenheit | fahrenheit | degrees f',
  },
  {
    code: 'Cel',
    quantities: ['temperature', 'wet-bulb', 'difference'],
    base: '[degF]',
    factor: 1.8,
    offset: 32,
    sign: '°C',
    say: '(degree | degrees) (celsius | centigrade) | celsius | centigrade | degrees c',
  },
  {
    code: 'K',
    quantities: ['temperature', 'wet-bulb', 'difference'],
    base: '[degF]',
    factor: 1.8,
    offset: -459.67,
    sign: 'K',
    say: 'kelvin | kelvins | degrees kelvin | degrees k',
  },
  {
    code: 'K',
    quantities: ['temperature', 'wet-bulb', 'difference'],
    base: '[degF]',
    factor: 1.8,
    offset: -459.67,
    sign: 'K',
    say: 'k',
    unheard: true,
  },
  {
    code: '[psi]',
    quantities: ['pressure'],
    base: '[psi]',
    factor: 1,
    sign: 'psig',
    say: 'p s i | p s i g | psi | p s i gauge | psi gauge | pounds | pound | pounds per square inch | pounds gauge',
  },
  // Factors as UCUM defines the units: 1 psi = 6894.757 Pa, 1 inH2O = 249.0889 Pa, 1 µmHg = 0.133322 Pa.
  {
    code: 'kPa',
    quantities: ['pressure'],
    base: '[psi]',
    factor: 0.145037737730209,
    sign: 'kPa',
    say: 'kilopascal | kilopascals | k p a | kilopascals gauge',
  },
  {
    code: 'MPa',
    quantities: ['pressure'],
    base: '[psi]',
    factor: 145.037737730209,
    sign: 'MPa',
    say: 'megapascal | megapascals | m p a | megapascals gauge',
  },
  {
    code: 'bar',
    quantities: ['pressure'],
    base: '[psi]',
    factor: 14.5037737730209,
    sign: 'bar',
    say: 'bar | bars | bar gauge | bars gauge | bar g',
  },
  {
    code: 'Pa',
    quantities: ['static-pressure'],
    base: "[in_i'H2O]",
    factor: 0.00401463076,
    sign: 'Pa',
    say: 'pascal | pascals',
  },
  { code: 'Pa', quantities: ['vacuum'], base: 'um[Hg]', factor: 7.5006375542, sign: 'Pa', say: 'pascal | pascals' },
  {
    code: "[in_i'Hg]",
    quantities: ['vacuum'],
    base: "[in_i'Hg]",
    factor: 1,
    sign: 'inHg',
    say: 'inch of mercury | inches of mercury | inches of vacuum | inches vacuum',
  },
  {
    code: "[in_i'H2O]",
    quantities: ['static-pressure'],
    base: "[in_i'H2O]",
    factor: 1,
    sign: 'inH2O',
    say: 'inch [of] [water] [column] | inches [of] [water] [column]',
  },
  {
    code: 'um[Hg]',
    quantities: ['vacuum'],
    base: 'um[Hg]',
    factor: 1,
    sign: 'µmHg',
    say: 'micron | microns | millitorr',
  },
  {
    code: 'mm[Hg]',
    quantities: ['vacuum'],
    base: 'um[Hg]',
    factor: 1e3,
    sign: 'mmHg',
    say: 'torr | millimeters of mercury',
  },
  {
    code: '[cft_i]/min',
    quantities: ['airflow'],
    base: '[cft_i]/min',
    factor: 1,
    sign: 'cfm',
    say: 'c f m | cubic feet [per] [a] minute',
  },
  { code: 'Hz', quantities: ['frequency'], base: 'Hz', factor: 1, sign: 'Hz', say: 'hertz | cycles' },
  { code: '%', quantities: ['humidity'], base: '%', factor: 1, sign: '%', say: 'percent' },
  { code: 'min', quantities: ['time'], base: 'min', factor: 1, sign: 'min', say: 'minute | minutes' },
  { code: '[lb_av]', quantities: ['mass'], base: '[oz_av]', factor: 16, sign: 'lb', say: 'pound | pounds' },
  { code: '[oz_av]', quantities: ['mass'], base: '[oz_av]', factor: 1, sign: 'oz', say: 'ounce | ounces' },
  {
    code: 'kg',
    quantities: ['mass'],
    base: '[oz_av]',
    factor: 35.2739619495804,
    sign: 'kg',
    say: 'kilogram | kilograms | kilo | kilos',
  },
  { code: 'g', quantities: ['mass'], base: '[oz_av]', factor: 0.0352739619495804, sign: 'g', say: 'gram | grams' },
] as const satisfies readonly Unit[];

/** Each unit by its code, the first row of a code: a code without a row does not compile. */
export const UNITS_BY_CODE: Readonly<Record<UnitCode, Unit>> = rowsBy('code', UNITS);

/** The row of a unit as far as it measures a quantity; undefined where it does not. */
export function unitFor(code: UnitCode, quantity: QuantityId): Unit | undefined {
  const rows: readonly Unit[] = UNITS;
  return rows.find((unit) => unit.code === code && unit.quantities.includes(quantity));
}

/** The unit a bare value of a quantity is taken in: as the trade reads it off. */
export const USUAL_UNITS: Readonly<Record<QuantityId, UnitCode>> = {
  voltage: 'V',
  'voltage-dc': 'V',
  current: 'A',
  resistance: 'Ohm',
  insulation: 'MOhm',
  capacitance: 'uF',
  temperature: '[degF]',
  'wet-bulb': '[degF]',
  difference: '[degF]',
  pressure: '[psi]',
  vacuum: 'um[Hg]',
  'static-pressure': "[in_i'H2O]",
  airflow: '[cft_i]/min',
  frequency: 'Hz',
  humidity: '%',
  mass: '[oz_av]',
  time: 'min',
};

/** Units that nothing here is measured in. A value that was said in one of them is told so, never taken without it. */
export const FOREIGN_UNITS: readonly string[] = [
  'horse',
  'horsepower',
  'watt',
  'watts',
  'kilowatt',
  'kilowatts',
  'kilovolt',
  'kilovolts',
  'kiloamps',
  'microamp',
  'microamps',
  'microvolts',
  'nanofarad',
  'nanofarads',
  'picofarads',
  'millifarads',
  'gigaohms',
  'teraohms',
  'hectopascals',
  'millibar',
  'millibars',
  'torr',
  'millitorr',
  'atmosphere',
  'atmospheres',
  'rankine',
  'feet',
  'foot',
  'centimeters',
  'millimeters',
  'meters',
  'gallons',
  'liters',
  'quarts',
  'joules',
  'btu',
  'btus',
  'kilohertz',
  'decibels',
  'milligrams',
  'seconds',
  'hours',
  'absolute',
  'stone',
  'stones',
  'tonne',
  'tonnes',
  'litre',
  'litres',
  'liter',
  'gallon',
  'pints',
  'yards',
  'miles',
  'farad',
  'farads',
  'coulombs',
];

const UNIT_SAID: readonly Unit[] = UNITS;
/** Every word that names a unit; its single letters do not, and what is written without a space is not a word. */
export const UNIT_NAMES: ReadonlySet<string> = new Set([
  ...UNIT_SAID.flatMap((unit) => unit.say.match(/[a-z]{3,}/g) ?? []).filter((word) => !['per', 'feet'].includes(word)),
  ...FOREIGN_UNITS,
]);
