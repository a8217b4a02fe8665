import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import { placeWords } from './place-words.ts';
import type { Speech } from './speech.ts';
import { bareValueWords, ENGLISH_VALUES, FUNCTION_WORDS, valueWords } from './value-words.ts';

/** English readings. */
const ENGLISH_SPEECH: Speech = { ...ENGLISH_VALUES, measured: measuredWords, readback: sentenceOf };

/** A reading as it is read back, in English where no other speech is handed in. */
export function readbackWords(reading: Reading, digitByDigit = false, speech = ENGLISH_SPEECH): string {
  const value = valueWords(reading.value, reading.unit, digitByDigit, speech);
  return speech.readback(speech.measured(reading), value, reading);
}

/** "herm section, forty-four microfarads, on the bench." */
function sentenceOf(measured: string, value: string, reading: Reading): string {
  const direct = reading.quantity === 'voltage-dc' ? ' DC' : '';
  const bench = reading.bench === true ? ', on the bench' : '';
  return `${measured}, ${value}${direct}${bench}.`;
}

/** The same without its unit, behind a step that asked for just that. */
export function briefReadbackWords(reading: Reading): string {
  if (reading.unit === '[oz_av]') return readbackWords(reading);
  return `${measuredWords(reading)}, ${bareValueWords(reading.value, reading.unit)}.`;
}

/** What was measured: its place, and the quantity where the place alone does not say which. */
function measuredWords({ quantity, at, value }: Reading): string {
  const place = placeWords(at);
  switch (quantity) {
    case 'wet-bulb':
      return `${place} wet bulb`;
    case 'mass':
      return typeof value === 'number' && value < 0 ? 'refrigerant out' : 'refrigerant in';
    case 'vacuum':
      return at[0] === 'system' ? 'vacuum' : place;
    case 'pressure':
      return at[0] === 'system' ? 'system pressure' : place;
    case 'difference':
      return differenceWords(at);
    case 'humidity':
      return `${place} humidity`;
    case 'airflow':
      return 'airflow';
    case 'frequency':
      return 'line frequency';
    case 'time':
      return 'run time';
    case 'static-pressure':
      return at.length === 2 ? 'total static' : place;
    case 'voltage':
    case 'voltage-dc':
    case 'current':
    case 'resistance':
    case 'insulation':
    case 'capacitance':
    case 'temperature':
      return place;
  }
}

/** A difference of two temperatures goes by its name in the trade. */
function differenceWords([first, second]: Reading['at']): string {
  if (second !== undefined) return 'split';
  return first === 'suction-line' ? 'superheat' : 'subcooling';
}

/** What was measured where hands had not to be: "fan common to fan run, ohms". The value was refused. */
export function unprovenWords({ at, quantity }: Reading): string {
  return `${placeWords(at)}, ${FUNCTION_WORDS[quantity]}`;
}
