import { DEEDS_BY_ID, type LeadsOf } from '../../../grammar/vocabulary/deeds.ts';
import type { IsolationPlace } from '../../../grammar/vocabulary/isolation-places.ts';
import { nameIn } from '../../../grammar/vocabulary/rows-by.ts';
import { ZONE_NAMES, type ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { capital } from '../capital.ts';
import { SWITCH_NAMES } from './return-words.ts';

/** What speaks against something that was done or said; asked back, and an open item where it is kept all the same. */

/** Against a part, by its ratings. */
export const PART_DOUBTS = {
  sectionNotSaid: (section: string) => `The ${section} was not said. Say its microfarads.`,
  otherMicrofarads: (section: string, fitted: number, plated: number) =>
    `${capital(section)} ${fitted}, the nameplate says ${plated} microfarads.`,
  voltsNotSaid: 'Its volts were not said.',
  fewerVolts: (fitted: number, old: number) => `It is rated ${fitted} volts, the old one ${old}.`,
  fewerAmps: (fitted: number, drawn: number) =>
    `It is rated ${fitted} amps; compressor and fan together draw up to ${drawn}.`,
  otherCoil: (volts: number, control: number) => `Its coil is ${volts} volts; the control circuit is ${control}.`,
  fewerPoles: (old: number) => `The old one had ${old} poles: one leg would stay connected.`,
  ampsNotSaid: (part: string) => `The ${part}'s amps were not said.`,
  overLargest: (fitted: number, most: number, rla: number, others: number) =>
    `${fitted} amps; plate unread: 225 percent of ${rla}${others > 0 ? ` plus ${others} for the fan` : ''} is ${most}.`,
  mostAmpsUnknown: 'Maximum overcurrent protection was not read from the nameplate.',
  tooManyAmps: (fitted: number, most: number) => `It is ${fitted} amps; the nameplate allows at most ${most}.`,
  rotation: 'Look at its rotation before the fan blade goes on.',
  drawsMore: (fitted: number, plated: number) => `It draws ${fitted} amps full load; the nameplate says ${plated}.`,
  notSaid: (part: string, ratings: readonly string[]) =>
    `Not said of the ${part}: ${ratings.map((id) => id.replace('-', ' ')).join(', ')}.`,
} as const;

/** What a part is called in its doubts. */
export const DOUBTED = {
  herm: 'herm section',
  fan: 'fan section',
  contactor: 'contactor',
  fanMotor: 'fan motor',
  transformer: 'transformer',
} as const;

/** Against where a wire was landed. */
export const WIRE_DOUBTS = {
  notLifted: 'A wire of that colour was not lifted.',
  otherTerminal: (from: string) => `It came off ${from}; they do not belong together.`,
} as const;

/** What a unit may be listed without. */
export const ABSENT = {
  fuses: 'fuses at the disconnect',
  crankcaseHeater: 'a crankcase heater',
  startCapacitor: 'a start capacitor',
  blowerCapacitor: 'a blower capacitor',
  floatSwitch: 'a float switch',
  pressureSwitches: 'pressure switches',
  reversingValve: 'a reversing valve',
  secondStage: 'a second stage',
} as const;

/** What is to be done about what keeps a visit from closing. */
const ASKS = {
  jumper: ': take it off.',
  bypassed: ': take the bypass out.',
  refusedPart: ' Fit a smaller one, or say why.',
  leadsOff: ': put them back, and say so.',
  notLanded: ' Land it and say so.',
  unproven: ' Say why.',
  locked: ' Report it back on.',
} as const;

/** Why a visit does not close yet, each with what to do. */
export const NOT_CLOSED = {
  jumper: `A jumper is still in place${ASKS.jumper}`,
  bypassed: `A switch is still bypassed${ASKS.bypassed}`,
  refusedPart: (words: string) => `Refused and not told out: ${words}.${ASKS.refusedPart}`,
  leadsOff: (part: LeadsOf) => `${capital(nameIn(DEEDS_BY_ID, `${part}-leads-off`))}${ASKS.leadsOff}`,
  notLanded: (wires: readonly string[]) => `Not landed: ${wires.join(', ')}.${ASKS.notLanded}`,
  unproven: (zone: ZoneId, what: readonly string[]) =>
    `Not proven dead, ${ZONE_NAMES[zone]}: ${what.join('; ')}.${ASKS.unproven}`,
  locked: (place: IsolationPlace) => `The ${SWITCH_NAMES[place]} is still locked.${ASKS.locked}`,
} as const;

/** The same as it stands open once the visit is closed: nobody is there to be asked any more. */
export function asOpen(words: string): string {
  const ask = Object.values(ASKS).find((one) => words.endsWith(one));
  return ask === undefined ? words : words.slice(0, -ask.length).replace(/\.$/, '');
}
