import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import { TESTS_BY_ID } from '../../../grammar/vocabulary/tests.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import type { ActionDone, Step, VisitContext } from '../chart/context.ts';
import { repairOf } from '../rules/repairs.ts';
import { cautionById, cautionsFor } from './cautions.ts';
import { capital, FUNCTION_WORDS, observationWords, placeWords, pointWords } from './prompts.ts';

/** The words that ask a step. None suggests a value before it is read; none calls anything safe. */

const ACTION_WORDS: Readonly<Record<ActionDone, { readonly brief: string; readonly full: string }>> = {
  'call-on': {
    brief: 'Set a call for cooling.',
    full: 'Set the thermostat to call for cooling, then say "thermostat is calling".',
  },
  'call-off': {
    brief: 'Take the call off at the thermostat.',
    full: 'Take the cooling call off at the thermostat, then say "thermostat is not calling".',
  },
  'power-off': {
    brief: 'Pull and lock the outdoor disconnect.',
    full: 'Pull the outdoor disconnect, lock and tag it, then say "outdoor disconnect is pulled and locked".',
  },
  'absence-proved': {
    brief: 'Prove it dead: meter, each pair, each leg to ground, meter again.',
    full: 'Prove the meter on a known live source. Read leg to leg and each leg to ground. Prove the meter again. Say the five numbers.',
  },
  'capacitors-discharged': {
    brief: 'Discharge both sections, then read volts DC on each.',
    full: 'Discharge herm to common and fan to common through a resistor. Then read volts DC on each section and say both.',
  },
  'part-fitted': {
    brief: 'Fit the part and say it with its ratings.',
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
  'covers-on': { brief: 'Covers back on?', full: 'Refit the covers, then say "covers are on".' },
  'power-on': {
    brief: 'Outdoor disconnect back in.',
    full: 'Stand to one side, put the outdoor disconnect back in, then say so.',
  },
  'consent-asked': {
    brief: 'Does the customer agree to the work?',
    full: 'Ask the customer for consent to the work. Say "customer agrees", or "customer declined".',
  },
  'nameplate-read': {
    brief: 'Nameplate: volts, amps, microfarads, refrigerant.',
    full: 'Read the nameplate line by line, each behind the word "nameplate". Leave out what is not on it.',
  },
  'meter-named': {
    brief: 'Which category is the meter?',
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
    brief: 'Anything to recommend?',
    full: 'Say "recommend" and what for, or "nothing to recommend".',
  },
  'technician-signed': {
    brief: 'Who signs for the work?',
    full: 'Say "technician signs" and the name, or write it under More.',
  },
  'customer-signed': {
    brief: 'Does the customer sign?',
    full: 'Say "customer signs" and the name, or "customer not present", or write it under More.',
  },
  'visit-finished': {
    brief: 'Say "finish the visit" when you are ready.',
    full: 'Nothing is left to prove. Say "finish the visit", or go on reading.',
  },
};

/** A repair that is no part alone: what is done is said as it was done. */
const REPAIR_WORDS = {
  part: ACTION_WORDS['part-fitted'],
  work: {
    brief: 'Do the repair, then say what was done.',
    full: 'Do the repair, then say it in a few words, as: cleaned the outdoor coil, tightened the lugs, cleared the drain.',
  },
  either: {
    brief: 'Do the repair, then say the part with its ratings, or what was done.',
    full: 'Say each wire before it moves. Do the repair, then say the part with its ratings, or what was done: tightened the lugs, repaired the control wire.',
  },
  charge: {
    brief: 'Find and repair the leak, then say what was weighed in.',
    full: 'Recover and weigh what is left. Find and repair the leak, evacuate, weigh the charge in by the nameplate, and say each weight.',
  },
} as const;

function repairWords(fault: FaultId | undefined): { readonly brief: string; readonly full: string } {
  return REPAIR_WORDS[repairOf(fault)];
}

/** Where a zone is opened that is not the outdoor unit's own, which the words of the action speak of. */
const ELSEWHERE: Readonly<
  Record<ZoneId | 'none', 'outdoors' | { readonly at: string; readonly off: string; readonly on: string }>
> = {
  none: 'outdoors',
  'outdoor-load': 'outdoors',
  'capacitor-herm': 'outdoors',
  'capacitor-fan': 'outdoors',
  'disconnect-line': {
    at: 'the disconnect line side',
    off: 'Open and lock the breaker at the panel.',
    on: 'Breaker at the panel back on.',
  },
  'air-handler': {
    at: 'the air handler',
    off: "Open and lock the air handler's switch.",
    on: "Air handler's switch back on.",
  },
  control: {
    at: 'the control circuit',
    off: "Open and lock the air handler's switch: it feeds the transformer.",
    on: "Air handler's switch back on.",
  },
};

function actionWords(done: ActionDone, zone: ZoneId | 'none', full: boolean): string {
  const elsewhere = ELSEWHERE[zone];
  const words = ACTION_WORDS[done][full ? 'full' : 'brief'];
  if (elsewhere === 'outdoors') return words;
  switch (done) {
    case 'power-off':
      return elsewhere.off;
    case 'power-on':
      return elsewhere.on;
    case 'absence-proved':
      return words.replace(/\.$/, ` at ${elsewhere.at}.`);
    case 'capacitors-discharged':
      return 'Discharge the blower capacitor, then read volts DC on it.';
    default:
      return words;
  }
}

/** The words that ask a step; a live step already cautioned begins with the caution's short form. */
export function stepWords(step: Step, context: VisitContext): string {
  const lead = cautionsFor(step)
    .map((id) => cautionById(id).again)
    .join(' ');
  const words = askWords(step, context);
  return lead === '' ? words : `${lead} ${words}`;
}

/** What a step asks, without the short form of its caution. */
export function askWords(step: Step, context: VisitContext): string {
  const full = context.pace === 'full' || context.role === 'trainee';
  switch (step.ask.kind) {
    case 'action':
      return step.ask.done === 'part-fitted'
        ? repairWords(context.finding?.fault)[full ? 'full' : 'brief']
        : actionWords(step.ask.done, step.zone, full);
    case 'look':
      return full
        ? `${lookWords(step)}: ${step.ask.answers.map(observationWords).join(', or ')}?`
        : `${lookWords(step)}.`;
    case 'reading': {
      const own = REFRIGERANT_WORDS[step.id];
      if (own !== undefined) return full ? own.full : own.brief;
      const bench = step.needs.bench ? ', on the bench' : '';
      const place = placeWords(step.ask.at);
      const what = FUNCTION_WORDS[step.ask.quantity];
      // "suction pressure" says already what is read there.
      const brief = `${capital(place.endsWith(what) ? place : `${place}, ${what}`)}${bench}.`;
      return full ? `${brief} ${placementWords(step)}` : brief;
    }
  }
}

/** What is looked at, without saying what may be seen there. */
function lookWords(step: Step): string {
  const name = step.test === undefined ? PLAN_LOOKS[step.id] : TESTS_BY_ID[step.test].name;
  return capital(name ?? step.id);
}

/** Readings of an opened circuit: what is done first belongs to the asking. */
const REFRIGERANT_WORDS: Readonly<Record<string, { readonly brief: string; readonly full: string }>> = {
  'refrigerant.recovered': {
    brief: 'Refrigerant recovered, by weight.',
    full: 'Recover the refrigerant into its cylinder on the scale. Say "recovered", then pounds and ounces.',
  },
  'refrigerant.test-start': {
    brief: 'Nitrogen in. Test pressure?',
    full: 'Fill with dry nitrogen through the regulator to the test pressure, close it, and read: "nitrogen pressure", then psi.',
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
  'arrive.call': 'look: thermostat, is it calling',
  'arrive.fan': 'look: outdoor fan',
  'prove.fan-turning': 'look: outdoor fan',
};

/** Full talk: function, jack and where the probes go. */
function placementWords(step: Step): string {
  if (step.ask.kind !== 'reading') return '';
  const [first, second] = step.ask.at;
  const place = first === undefined ? '' : pointWords(first);
  switch (step.ask.quantity) {
    case 'voltage':
      return `Meter on volts AC, leads in the volt jacks. One probe on ${place}, the other on ${second === undefined ? 'ground' : pointWords(second)}. Read it out.`;
    case 'voltage-dc':
      return `Meter on volts DC One probe on ${place}, the other on ${second === undefined ? 'common' : pointWords(second)}. Read it out.`;
    case 'resistance':
    case 'insulation':
      return `Meter on ohms, leads zeroed. Lift one lead of the part so that no other path counts. Read it out.`;
    case 'capacitance':
      return `Meter on microfarads. Leads off the section, probes on ${place} and ${second === undefined ? 'common' : pointWords(second)}. Read it out.`;
    case 'current':
      return `Clamp around one lead of the ${place}, alone. Read it out once it has settled.`;
    case 'temperature':
    case 'wet-bulb':
      return `Probe in or on the ${place}, shaded from the sun, until it holds still. Read it out.`;
    case 'difference':
    case 'pressure':
    case 'vacuum':
    case 'static-pressure':
    case 'airflow':
    case 'frequency':
    case 'humidity':
    case 'mass':
    case 'time':
      return 'Read it out once it holds still.';
  }
}
