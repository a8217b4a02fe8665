import type { UnitCode } from './quantities.ts';
import { rowsBy } from './rows-by.ts';

/** A rating that may be said with a part: its name in the record, its unit, whether it may be said as a pair "a over b". */
export interface PartRating {
  readonly id: string;
  readonly unit: UnitCode | 'pole' | 'ton' | '1';
  readonly say: string;
  /** No part of a unit has more. Common practice. */
  readonly high: number;
}

/** Parts that are fitted, with the ratings that belong to each, in the order in which they are usually said. */
export const PARTS = [
  {
    id: 'dual-capacitor',
    name: 'dual capacitor',
    say: '(dual [run] | dual run) (capacitor | cap)',
    ratings: ['herm-uF', 'fan-uF', 'volts'],
  },
  {
    id: 'capacitor',
    name: 'capacitor',
    say: '[run | fan | single] (capacitor | cap)',
    ratings: ['uF', 'volts', 'herm-uF', 'fan-uF'],
  },
  { id: 'hard-start', name: 'hard start kit', say: 'hard start [kit] | start kit', ratings: [] },
  { id: 'contactor', name: 'contactor', say: 'contactor', ratings: ['poles', 'amps', 'coil-volts'] },
  {
    id: 'fan-motor',
    name: 'fan motor',
    say: '[condenser | outdoor | outside] fan motor',
    ratings: ['hp', 'rpm', 'volts', 'amps'],
  },
  { id: 'blower-motor', name: 'blower motor', say: 'blower motor', ratings: ['hp', 'volts', 'amps'] },
  { id: 'fuse', name: 'fuse', say: '(fuse | fuses | line fuse | line fuses)', ratings: ['amps', 'volts'] },
  {
    id: 'control-fuse',
    name: 'control fuse',
    say: '(control | board) fuse | fuse on the [control] board',
    ratings: ['amps'],
  },
  { id: 'breaker', name: 'breaker', say: 'breaker', ratings: ['poles', 'amps'] },
  { id: 'transformer', name: 'transformer', say: 'transformer', ratings: ['va', 'volts'] },
  { id: 'thermostat', name: 'thermostat', say: 'thermostat | stat', ratings: [] },
  { id: 'float-switch', name: 'float switch', say: 'float switch', ratings: [] },
  { id: 'pressure-switch', name: 'pressure switch', say: '[high | low] pressure switch', ratings: [] },
  { id: 'disconnect', name: 'disconnect', say: 'disconnect | pull out', ratings: ['amps'] },
  { id: 'filter', name: 'air filter', say: '[air] filter', ratings: [] },
  { id: 'filter-drier', name: 'filter drier', say: '[liquid line | filter] drier', ratings: [] },
  { id: 'compressor', name: 'compressor', say: 'compressor', ratings: ['tons'] },
  {
    id: 'defrost-board',
    name: 'defrost board',
    say: '(defrost | outdoor) (board | control board) | defrost control',
    ratings: [],
  },
  { id: 'control-board', name: 'control board', say: '[control | furnace | indoor | air handler] board', ratings: [] },
  { id: 'blower-relay', name: 'blower relay', say: '(blower | indoor fan) relay', ratings: [] },
  { id: 'reversing-valve', name: 'reversing valve', say: 'reversing valve', ratings: [] },
  {
    id: 'unloader-solenoid',
    name: 'unloader solenoid',
    say: 'unloader [solenoid] | second stage solenoid',
    ratings: [],
  },
  { id: 'crankcase-heater', name: 'crankcase heater', say: 'crankcase heater', ratings: [] },
  { id: 'door-switch', name: 'blower door switch', say: '[blower] door switch', ratings: [] },
  { id: 'expansion-valve', name: 'expansion valve', say: '(expansion | metering) valve', ratings: ['tons'] },
  { id: 'valve-core', name: 'valve core', say: '(valve | schrader) core | (valve | schrader) cores', ratings: [] },
] as const;
export type PartId = (typeof PARTS)[number]['id'];
/** What counts as fitted: a part, or refrigerant weighed in. */
export type FittedPartId = PartId | 'refrigerant';
export const PARTS_BY_ID = rowsBy('id', PARTS);

export const PART_RATINGS = [
  { id: 'uF', unit: 'uF', say: 'microfarad | microfarads | mike | mikes', high: 1000 },
  { id: 'herm-uF', unit: 'uF', say: 'microfarad herm | microfarads herm | herm', high: 120 },
  { id: 'fan-uF', unit: 'uF', say: 'microfarad fan | microfarads fan | fan', high: 40 },
  { id: 'volts', unit: 'V', say: 'volt | volts', high: 600 },
  { id: 'coil-volts', unit: 'V', say: 'volt coil | volts coil', high: 240 },
  { id: 'amps', unit: 'A', say: 'amp | amps', high: 200 },
  { id: 'poles', unit: 'pole', say: 'pole | poles', high: 4 },
  { id: 'hp', unit: '1', say: 'horse | horsepower | h p', high: 5 },
  { id: 'rpm', unit: '1', say: 'r p m', high: 1800 },
  { id: 'va', unit: '1', say: 'v a', high: 200 },
  { id: 'tons', unit: 'ton', say: 'ton | tons', high: 10 },
] as const satisfies readonly PartRating[];
export type PartRatingId = (typeof PART_RATINGS)[number]['id'];
export const RATINGS_BY_ID: Readonly<Record<PartRatingId, PartRating>> = rowsBy('id', PART_RATINGS);

/** Words between a part that was taken out and the ratings of the one put in: "swapped the cap for a …". */
export const FITTED_FOR = '(for | with) [a | an]';

/** Words before a part that say it was put in, and behind it. */
export const FITTED =
  "[i | i've | i have] (fitted | installed | put in | replaced | changed [out] | swapped [out | in] | new) [with] [a | an | the | in | both [of] [the]] [new | another] | [i | i've | i have] put (in [a] new | (a | the) new)";

export const FITTED_AFTER = 'installed | fitted | [is] in | in place';
