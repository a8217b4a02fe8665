import type { PlateField } from '../../../grammar/vocabulary/nameplate.ts';
import { nameplateName } from '../things/nameplate-words.ts';
import type { InBothPaces, Pace } from './action-words.ts';

/** The question for a line of the nameplate, by the first field that is asked; a line is asked in one breath. */
const QUESTIONS: Readonly<Record<PlateField, { readonly line: InBothPaces; readonly alone: InBothPaces }>> = {
  model: {
    line: {
      brief: 'Plate: model and serial?',
      full: 'Read the nameplate: "model" and its letters and digits, then "serial". What cannot be read is left out: say "can\'t read it".',
    },
    alone: { brief: 'Plate: model?', full: 'From the nameplate: the model, letter by letter.' },
  },
  serial: both('Serial?', 'From the nameplate: the serial number, sign by sign.'),
  'supply-volts': both('Rated volts?', 'From the nameplate: the rated volts of the supply.'),
  rla: {
    line: {
      brief: 'Compressor R L A and L R A?',
      full: "From the nameplate: the compressor's rated load amps and locked rotor amps, each behind its name.",
    },
    alone: { brief: 'Compressor R L A?', full: "From the nameplate: the compressor's rated load amps." },
  },
  lra: both('L R A?', "From the nameplate: the compressor's locked rotor amps."),
  'fan-fla': both('Fan full load amps?', "From the nameplate: the outdoor fan's full load amps."),
  'capacitor-herm': {
    line: {
      brief: 'Capacitor, herm over fan?',
      full: 'From the capacitor or the nameplate: both sections in microfarads, compressor over fan.',
    },
    alone: { brief: 'Capacitor, herm?', full: 'The rating of the compressor section, in microfarads.' },
  },
  'capacitor-fan': both('Capacitor, fan?', 'The rating of the fan section, in microfarads.'),
  refrigerant: both('Refrigerant?', 'From the nameplate: which refrigerant.'),
};

function both(brief: string, full: string): { readonly line: InBothPaces; readonly alone: InBothPaces } {
  return { line: { brief, full }, alone: { brief, full } };
}

/** Asks for fields of the nameplate, those of one line in one breath. */
export function plateQuestion([first, second]: readonly PlateField[], pace: Pace): string {
  return first === undefined ? '' : QUESTIONS[first][second === undefined ? 'alone' : 'line'][pace];
}

/** Fields that were passed by, as open words: the whole plate where nothing of it was read. */
export function plateMissing(passed: readonly PlateField[], anyRead: boolean): readonly string[] {
  if (passed.length === 0) return [];
  return anyRead ? passed.map((field) => `nameplate ${nameplateName(field)}`) : ['nameplate'];
}
