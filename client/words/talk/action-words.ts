import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';

/** A sentence in short and in full talk. */
export interface InBothPaces {
  readonly brief: string;
  readonly full: string;
}
export type Pace = keyof InBothPaces;

/** The words that ask for something to be done, by what answers them. */
const ACTION_WORDS = {
  'call-on': {
    brief: 'Call on.',
    full: 'Set the thermostat to call for cooling, then say "thermostat is calling".',
  },
  'call-off': {
    brief: 'Call off.',
    full: 'Take the cooling call off at the thermostat, then say "thermostat is not calling".',
  },
  'power-off': {
    brief: 'Pull and lock the outdoor disconnect.',
    full: 'Pull the outdoor disconnect, lock and tag it, then say "outdoor disconnect is pulled and locked".',
  },
  'breaker-off': {
    brief: 'Contactor holds in: open and lock the panel breaker.',
    full: 'The contactor holds in. A pull-out is not a load switch: open and lock the breaker at the panel, then say "off and locked".',
  },
  'clamps-placed': {
    brief: 'Clamps on compressor and fan leads, covers on?',
    full: 'While dead, clamps around one compressor lead and one fan lead, cables clear of the fan. Refit the covers, then say done.',
  },
  'absence-proved': {
    brief: 'As live: meter on a live source.',
    full: 'Prove the meter on a known live source, say its volts. Then each pair is asked, then the meter.',
  },
  'meter-again': {
    brief: 'Meter again.',
    full: 'Prove the meter again on the same live source, and say its volts.',
  },
  'disconnect-locked': {
    brief: 'Pull and lock the outdoor disconnect.',
    full: 'Pull the outdoor disconnect, lock and tag it: then its line side can be fed and read to ground.',
  },
  'source-opened': {
    brief: 'Find what feeds it. Open and lock it.',
    full: 'A wrong disconnect, a back-feed, one pole, or a second supply: find which. Open and lock it, then say device and place.',
  },
  'capacitors-discharged': {
    brief: 'Discharge each section.',
    full: 'Discharge herm to common, fan to common, and a start capacitor, through a resistor. Then read volts DC on each section.',
  },
  'charge-left': {
    brief: "Electronic blower: let five minutes pass, or the maker's time. Then say done.",
    full: "The blower's drive holds a charge. Let five minutes pass, or the maker's figure where it is longer. Then say done.",
  },
  'part-fitted': {
    brief: 'Fit it: part and ratings.',
    full: 'Say each wire before it moves. Fit the part, land the wires, pull on each, then say the part with its ratings.',
  },
  'wires-landed': {
    brief: 'A wire is still off. Land it and say where.',
    full: 'A wire that was lifted is still off. Land it, pull on it, and say its colour and terminal.',
  },
  'tug-tested': {
    brief: 'Pull on each landed wire. Say done.',
    full: 'Pull on each wire that was landed, one by one. When none moves, say done.',
  },
  'covers-on': { brief: 'Covers on?', full: 'Refit the covers, then say "covers are on".' },
  'power-on': {
    brief: 'Outdoor disconnect back in.',
    full: 'Stand to one side, put the outdoor disconnect back in, then say so.',
  },
  'consent-asked': {
    brief: 'Customer agrees?',
    full: 'Ask the customer for consent to the work. Say "customer agrees", or "customer declined".',
  },
  'sound-agreed': {
    brief: 'Keep the sound of what you say?',
    full: 'May the sound of what you say be kept, for your supervisor to hear? Deleted after some days; without your word, none is kept.',
  },
  'nameplate-read': {
    brief: 'Plate?',
    full: 'Read the nameplate, line by line. Leave out what is not on it.',
  },
  'meter-named': {
    brief: 'Which meter category?',
    full: 'Look at the category marked beside the jacks of the meter, then say "meter is category" and its number.',
  },
  'leak-searched': {
    brief: 'Leak search: what did you find?',
    full: 'Search every joint for a leak while the pressure stands. Say "found a leak", or "leak search found nothing".',
  },
  'vacuum-isolated': {
    brief: 'Valve off the pump and say so.',
    full: 'Valve off the vacuum pump, then say "pump is valved off". The reading must stand.',
  },
  'thermostat-agreed': {
    brief: 'Thermostat as agreed?',
    full: 'Set the thermostat as agreed with the customer, then say "thermostat is set as agreed".',
  },
  recommended: {
    brief: 'Recommend anything?',
    full: 'Say "recommend" and what for, or "nothing to recommend".',
  },
  'technician-signed': {
    brief: 'Your name?',
    full: 'Say "technician signs" and the name, or write it under More. With it the visit closes.',
  },
  'customer-signed': {
    brief: 'Customer signs?',
    full: 'Say "customer signs" and the name, or "customer not present", or write it under More.',
  },
  'visit-finished': {
    brief: 'Say "finish the visit" when you are ready.',
    full: 'Nothing is left to prove. Say "finish the visit", or go on reading.',
  },
} as const satisfies Readonly<Record<string, InBothPaces>>;

/** All that is asked to be done, by what answers it. */
export const ACTIONS = Object.keys(ACTION_WORDS) as readonly (keyof typeof ACTION_WORDS)[];

/** A repair that is no part alone: what is done is said as it was done. */
const REPAIR_WORDS = {
  part: ACTION_WORDS['part-fitted'],
  work: {
    brief: 'Repair it, then say what was done.',
    full: 'Do the repair, then say it in a few words, as: cleaned the outdoor coil, tightened the lugs, cleared the drain.',
  },
  either: {
    brief: 'Repair it, then say part and ratings, or the work.',
    full: 'Say each wire before it moves. Do the repair, then say the part with its ratings, or what was done.',
  },
  charge: {
    brief: 'Repair the leak, then say what was weighed in.',
    full: 'Recover and weigh what is left. Find and repair the leak, evacuate, weigh the charge in by the nameplate, and say each weight.',
  },
} as const satisfies Readonly<Record<string, InBothPaces>>;

/** Where a zone is opened that is not the outdoor unit's own, which the words of the action speak of. */
const ELSEWHERE: Readonly<
  Record<ZoneId | 'none', 'outdoors' | { readonly at: string; readonly off: string; readonly on: string }>
> = {
  none: 'outdoors',
  'outdoor-load': 'outdoors',
  'capacitor-herm': 'outdoors',
  'capacitor-fan': 'outdoors',
  'capacitor-start': 'outdoors',
  'disconnect-line': {
    at: 'the disconnect line side',
    off: 'Open and lock the breaker at the panel.',
    on: 'Panel breaker back on.',
  },
  'air-handler': {
    at: 'the air handler',
    off: "Open and lock the air handler's switch.",
    on: "Air handler's switch back on.",
  },
  control: {
    at: 'the control circuit',
    off: "Open and lock the air handler's switch.",
    on: "Air handler's switch back on.",
  },
};

/** A unit with two stages is read with both of them called. */
export const CALL_BOTH_STAGES: InBothPaces = {
  brief: 'Call on, both stages: set it far down.',
  full: 'Set the thermostat far below the room, so that it calls both stages, then say "thermostat is calling".',
};

/** Where nobody knows whether a start capacitor is there. */
export const DISCHARGE_WITH_START = 'Discharge each, a start capacitor too.';
const ELSEWHERE_DISCHARGED = 'Discharge the blower capacitor.';

/** Asks for something to be done; where it is done elsewhere than at the outdoor unit, in the words of that place. */
export function actionWords(done: keyof typeof ACTION_WORDS, zone: ZoneId | 'none', pace: Pace): string {
  const elsewhere = ELSEWHERE[zone];
  const words = ACTION_WORDS[done][pace];
  if (elsewhere === 'outdoors') return words;
  switch (done) {
    case 'power-off':
      return elsewhere.off;
    case 'power-on':
      return elsewhere.on;
    case 'absence-proved':
      return words.replace(/\.$/, ` at ${elsewhere.at}.`);
    case 'capacitors-discharged':
      return ELSEWHERE_DISCHARGED;
    default:
      return words;
  }
}

/** Asks for the repair, by what mends the fault; `either` where that is not known. */
export function repairWords(by: keyof typeof REPAIR_WORDS, pace: Pace): string {
  return REPAIR_WORDS[by][pace];
}
