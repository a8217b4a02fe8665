import { sayDigits, sayNumber } from '../../../grammar/phrases/languages/english/numbers/say-number.ts';
import type { QuantityId, UnitCode, Value } from '../../../grammar/vocabulary/quantities.ts';
import type { ValueSpeech } from './speech.ts';

export const UNIT_WORDS: Readonly<Record<UnitCode, string>> = {
  V: 'volts',
  mV: 'millivolts',
  A: 'amps',
  mA: 'milliamps',
  Ohm: 'ohms',
  mOhm: 'milliohms',
  kOhm: 'kilohms',
  MOhm: 'megohms',
  GOhm: 'gigohms',
  uF: 'microfarads',
  '[degF]': 'degrees',
  Cel: 'degrees Celsius',
  K: 'kelvin',
  '[psi]': 'psi',
  kPa: 'kilopascals',
  MPa: 'megapascals',
  Pa: 'pascals',
  bar: 'bar',
  "[in_i'Hg]": 'inches of mercury',
  "[in_i'H2O]": 'inches of water',
  'um[Hg]': 'microns',
  'mm[Hg]': 'torr',
  '[cft_i]/min': 'cubic feet a minute',
  Hz: 'hertz',
  '%': 'percent',
  min: 'minutes',
  '[lb_av]': 'pounds',
  '[oz_av]': 'ounces',
  kg: 'kilograms',
  g: 'grams',
};

/** One of a unit: "one amp", "one inch of mercury". */
const oneOf = (words: string): string =>
  words.replace(/^(?:inches|cubic feet|[a-z]+s)\b/, (many) =>
    many === 'cubic feet' ? 'cubic foot' : many.replace(/(?:(?<=ch)e)?s$/, ''),
  );

/** What a meter function is called aloud. */
export const FUNCTION_WORDS: Readonly<Record<QuantityId, string>> = {
  voltage: 'volts',
  'voltage-dc': 'volts DC',
  current: 'amps',
  resistance: 'ohms',
  capacitance: 'microfarads',
  temperature: 'temperature',
  'wet-bulb': 'wet bulb',
  pressure: 'pressure',
  vacuum: 'vacuum',
  'static-pressure': 'static',
  airflow: 'airflow',
  frequency: 'hertz',
  humidity: 'humidity',
  insulation: 'megohms',
  mass: 'weight',
  time: 'minutes',
  difference: 'difference',
};

/** English values. */
export const ENGLISH_VALUES: ValueSpeech = {
  id: 'en-US',
  number: sayNumber,
  digits: sayDigits,
  amount: (number, unit) => `${number} ${number === 'one' ? oneOf(UNIT_WORDS[unit]) : UNIT_WORDS[unit]}`,
  weight: weightWords,
  open: 'open line',
};

/** "one eighteen volts": value and unit the trade's way; digit by digit where a doubt was just cleared. */
export function valueWords(value: Value, unit: UnitCode, digitByDigit = false, speech = ENGLISH_VALUES): string {
  if (value === 'open') return speech.open;
  if (unit === '[oz_av]') return speech.weight(Math.abs(value));
  // What was taken out is said so, not by a minus.
  if (WEIGHTS.has(unit)) return speech.amount(speech.number(Math.abs(value)), unit);
  if (unit === 'Ohm' && value >= MANY_OHMS) return speech.amount(speech.number(inMegohms(value)), 'MOhm');
  return speech.amount(digitByDigit ? speech.digits(value) : speech.number(value), unit);
}

const WEIGHTS: ReadonlySet<UnitCode> = new Set(['[lb_av]', 'kg', 'g']);

/** From here on a meter shows megohms, to three digits. */
const MANY_OHMS = 100_000;
const inMegohms = (ohms: number): number => Number((ohms / 1e6).toPrecision(3));

/** A number alone, where what was asked says its unit. */
export function bareValueWords(value: Value, unit?: UnitCode): string {
  if (value === 'open' || unit === undefined || (unit === 'Ohm' && value >= MANY_OHMS))
    return value === 'open' ? 'open line' : unit === undefined ? sayNumber(value) : valueWords(value, unit);
  return sayNumber(value);
}

/** "four pounds two ounces", as a scale shows it. */
function weightWords(ounces: number): string {
  const pounds = Math.floor(ounces / 16);
  const rest = Math.round((ounces - pounds * 16) * 10) / 10;
  const parts = [
    ...(pounds > 0 ? [`${sayNumber(pounds)} ${pounds === 1 ? 'pound' : 'pounds'}`] : []),
    ...(rest > 0 || pounds === 0 ? [`${sayNumber(rest)} ${rest === 1 ? 'ounce' : 'ounces'}`] : []),
  ];
  return parts.join(' ');
}

/** A probability as it is told, in whole hundredths: no model of a unit is entirely sure. */
export function wholePercent(probability: number): number {
  return Math.min(99, Math.round(probability * 100));
}

/** A probability, to a hundredth. */
export function percentWords(probability: number): string {
  return `${wholePercent(probability)} percent`;
}
