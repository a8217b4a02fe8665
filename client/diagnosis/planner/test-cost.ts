import { HAZARDS } from '../../../grammar/vocabulary/hazards.ts';
import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import type { Place } from '../measuring/test-model.ts';
import { TEST_MODELS } from '../measuring/test-models.ts';
import type { Standing } from '../posterior/take-readings.ts';

/** Where the technician stands and what is switched on. */
export interface Stance {
  readonly place: Place;
  readonly power: 'on' | 'off';
  readonly call: 'cooling' | 'none';
  readonly outdoorPanelOff: boolean;
  readonly gaugesOn: boolean;
  /** The test done last. */
  readonly last?: TestId;
}

export const ON_ARRIVAL: Stance = {
  place: 'thermostat',
  power: 'on',
  call: 'cooling',
  outdoorPanelOff: false,
  gaugesOn: false,
};

/** Minutes beside the work itself (common practice for a house or small building, our figures). */
export const MINUTES = {
  /** On foot. */
  indoorsToOutdoors: 1.5,
  thermostatToAirHandler: 0.8,
  disconnectToUnit: 0.2,
  /** Off, locked and proven dead; back on; the call given or taken. */
  provingDead: 2,
  powerOn: 1,
  callChanged: 1,
  /** Once a visit. */
  outdoorPanel: 1,
  gauges: 2.5,
} as const;

function walk(from: Place, to: Place): number {
  if (from === to) return 0;
  const indoors = (place: Place) => place === 'thermostat' || place === 'air-handler';
  const outside = (place: Place) => place === 'outdoor' || place === 'disconnect';
  if (outside(from) && outside(to)) return MINUTES.disconnectToUnit;
  if (indoors(from) && indoors(to)) return MINUTES.thermostatToAirHandler;
  return MINUTES.indoorsToOutdoors;
}

/** A zone is proven dead pair by pair, each asked and answered: what is read live is read before (our figure). */
const TALK_OF_PROVING = 1.5;

/** Minutes to make power and call ready. Proving dead takes the longest. */
function ready(stance: Stance, id: TestId): number {
  const { needs } = TEST_MODELS[id];
  let minutes = 0;
  if (needs.power === 'off' && stance.power === 'on') minutes += MINUTES.provingDead + TALK_OF_PROVING;
  if (needs.power === 'on' && stance.power === 'off') minutes += MINUTES.powerOn;
  if (needs.call !== 'any' && needs.power === 'on' && needs.call !== stance.call) minutes += MINUTES.callChanged;
  // A call that is taken is given again for whatever is read next.
  if (needs.call === 'none' && stance.call === 'cooling') minutes += MINUTES.callChanged;
  return minutes;
}

const misleads = new Set<string>(HAZARDS.filter((h) => 'misleads' in h).map((h) => h.id));
/** Each test is asked, answered and read back, whatever it is (our figure). */
const TALK_MINUTES = 0.3;
/** A hazard to the body weighs like this many minutes. */
const HAZARD_MINUTES = 0.15;

/** The probes are still in place: reading once more takes a moment. */
const ONCE_MORE_MINUTES = 0.4;

/** Minutes of a test from here, danger counted in. */
export function testCost(stance: Stance, id: TestId): number {
  if (stance.last === id) return TALK_MINUTES + ONCE_MORE_MINUTES;
  const model = TEST_MODELS[id];
  const danger = model.hazards.filter((h) => !misleads.has(h)).length * HAZARD_MINUTES;
  const panel = model.behindPanel && !stance.outdoorPanelOff ? MINUTES.outdoorPanel : 0;
  const gauges = model.function === 'pressure' && !stance.gaugesOn ? MINUTES.gauges : 0;
  return TALK_MINUTES + model.minutes + walk(stance.place, model.place) + ready(stance, id) + panel + gauges + danger;
}

/** Where the technician stands after a test. */
export function stanceAfter(stance: Stance, id: TestId): Stance {
  const { place, behindPanel, needs, function: fn } = TEST_MODELS[id];
  return {
    place,
    power: needs.power === 'any' ? stance.power : needs.power,
    call: needs.call === 'any' ? stance.call : needs.call,
    outdoorPanelOff: stance.outdoorPanelOff || behindPanel,
    gaugesOn: stance.gaugesOn || fn === 'pressure',
    last: id,
  };
}

/** Minutes of the tests whose readings stand, since the last repair. */
export function minutesSpent({ all, repairedAt = -1 }: Pick<Standing, 'all' | 'repairedAt'>): number {
  let at = ON_ARRIVAL;
  let minutes = 0;
  for (const { test, seq, times } of all) {
    if (seq > repairedAt) minutes += testCost(at, test);
    at = stanceAfter(at, test);
    if (seq > repairedAt) minutes += (times - 1) * testCost(at, test);
  }
  return minutes;
}
