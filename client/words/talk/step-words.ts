import type { ObservationId } from '../../../grammar/vocabulary/observations.ts';
import type { PointId } from '../../../grammar/vocabulary/points.ts';
import type { QuantityId } from '../../../grammar/vocabulary/quantities.ts';
import { TESTS_BY_ID, type TestId } from '../../../grammar/vocabulary/tests.ts';
import { capital } from '../capital.ts';
import { observationWords } from '../things/observation-words.ts';
import { placeWords, pointWords } from '../things/place-words.ts';
import { FUNCTION_WORDS } from '../things/value-words.ts';
import { MOST_WORDS, wordsIn } from '../within.ts';
import type { InBothPaces, Pace } from './action-words.ts';
import { cautionById, withoutVolts } from './caution-words.ts';

/** The words that ask for a reading or a look. None suggests a value before it is read; none calls anything safe. */

/** A reading that a step asks for. */
export interface AskedReading {
  readonly quantity: QuantityId;
  readonly at: readonly PointId[];
  /** With the part taken out. */
  readonly bench: boolean;
}

/** A look that a step asks for, and what may be seen there. */
export interface AskedLook {
  readonly test: TestId | undefined;
  readonly answers: readonly ObservationId[];
}

/** @param step its id: a reading of an opened refrigerant circuit is asked in words of its own */
export function readingStepWords(step: string, asked: AskedReading, pace: Pace): string {
  // In a proof the function stays as it is, and only the place is said.
  if (step.startsWith('energy.pair@') && pace === 'brief') return `${capital(placeWords(asked.at))}.`;
  const own = REFRIGERANT_WORDS[step];
  if (own !== undefined) return own[pace];
  const bench = asked.bench ? ', on the bench' : '';
  const place = placeWords(asked.at);
  const what = FUNCTION_WORDS[asked.quantity];
  // "suction pressure" says already what is read there.
  const isSaid = place.endsWith(what) || (asked.quantity === 'temperature' && pace === 'brief');
  const brief = `${capital(isSaid ? place : `${place}, ${what}`)}${bench}.`;
  return pace === 'full' ? inFull(brief, placementWords(asked)) : brief;
}

/** What is looked at; only full talk names what may be seen there. @param step its id: a plan's look has no test */
export function lookStepWords(step: string, { test, answers }: AskedLook, pace: Pace): string {
  const name = capital(test === undefined ? (PLAN_LOOKS[step] ?? step) : TESTS_BY_ID[test].name);
  return pace === 'full' ? `${name}: ${answers.map(observationWords).join(', or ')}?` : `${name}.`;
}

/** A step whose cautions were given before is led by their short forms. */
export function underCautions(again: readonly string[], words: string): string {
  return [...again, again.includes(cautionById('live-line').again) ? withoutVolts(words) : words].join(' ');
}

/** Readings of an opened refrigerant circuit: what is done first belongs to the asking. */
const REFRIGERANT_WORDS: Readonly<Record<string, InBothPaces>> = {
  'refrigerant.recovered': {
    brief: 'Refrigerant recovered, by weight.',
    full: 'Recover the refrigerant into its cylinder on the scale. Say "recovered", then pounds and ounces.',
  },
  'refrigerant.test-start': {
    brief: 'Test pressure?',
    full: 'Fill with dry nitrogen through the regulator to the test pressure, close it, and read: "nitrogen pressure", then its number.',
  },
  'refrigerant.test-end': {
    brief: 'Test pressure again?',
    full: 'Read the test pressure again. If the air outdoors has changed, read that first.',
  },
  'refrigerant.evacuated': {
    brief: 'Evacuate. Microns?',
    full: 'Release the nitrogen, evacuate with the gauge at the system, away from the pump, and read the microns.',
  },
  'refrigerant.decay': { brief: 'Microns again?', full: 'Read the microns again with the pump still valved off.' },
  'refrigerant.charged': {
    brief: 'Refrigerant in, by weight.',
    full: 'Weigh the refrigerant in by the nameplate. Say "added", then pounds and ounces.',
  },
};

const PLAN_LOOKS: Readonly<Record<string, string>> = {
  'arrive.call': 'look: thermostat',
  'arrive.fan': 'look: outdoor fan',
  'prove.fan-turning': 'look: outdoor fan',
};

const READ_OUT = 'Read it out once it holds still.';
/** A caution that leads the step goes before it. */
const MOST_IN_FULL = MOST_WORDS - 3;

/** As much of how it is read as can be kept in mind; who asks is told the rest. */
function inFull(brief: string, placement: string): string {
  const [how = ''] = placement.split(/(?<=\.) /);
  const ways = [`${brief} ${placement} ${READ_OUT}`, `${brief} ${placement}`, `${brief} ${how}`];
  return ways.find((words) => wordsIn(words) <= MOST_IN_FULL) ?? brief;
}

/** Function, jack and where the probes go: told in full talk, and to whoever asks. */
export function placementWords({ quantity, at }: Pick<AskedReading, 'quantity' | 'at'>): string {
  const [first, second] = at;
  const place = first === undefined ? '' : pointWords(first);
  const other = (alone: string): string => (second === undefined ? alone : pointWords(second));
  switch (quantity) {
    case 'voltage':
      return `Meter on volts AC, volt jacks. One probe on ${place}, the other on ${other('ground')}.`;
    case 'voltage-dc':
      return `Meter on volts DC. One probe on ${place}, the other on ${other('common')}.`;
    case 'resistance':
      return `Meter on ohms, leads zeroed. Lift one lead of the part. Probes on ${place} and ${other('ground')}.`;
    case 'insulation':
      return `Insulation tester, electronics off it. Leads on ${place} and ${other('ground')}.`;
    case 'capacitance':
      return `Meter on microfarads. Leads off the section, probes on ${place} and ${other('common')}.`;
    case 'current':
      return `Clamp around one lead of the ${place}, alone.`;
    case 'temperature':
    case 'wet-bulb':
      return `Probe in or on the ${place}, shaded from the sun${quantity === 'wet-bulb' ? ', its wick wet' : ''}.`;
    case 'pressure':
      return `Hose on the ${place}, purged, valve core depressed.`;
    case 'vacuum':
      return 'Gauge at the system, away from the pump.';
    case 'static-pressure':
      return `Tip in the ${place}, facing the air.`;
    case 'frequency':
      return `Meter on hertz, probes as for volts at the ${place}.`;
    case 'humidity':
    case 'airflow':
      return `Instrument in the ${place}, clear of the grille.`;
    case 'mass':
      return 'Cylinder on the scale, zeroed before the valve opens.';
    case 'difference':
    case 'time':
      return '';
  }
}
