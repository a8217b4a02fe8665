import { setup, transition } from 'xstate';
import { type EnergyState, ZONES, type ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { CAPACITOR_ZONES } from '../rules/isolation.ts';

/** What may move the energy of a zone. */
export type EnergyMove =
  /** Voltage, amps or something that runs; power or a lock came back; a charge was found. */
  | 'live'
  /** Nothing is known any more. */
  | 'doubted'
  /** A word alone. */
  | 'reported-off'
  | 'proof-began'
  /** Every pair read dead between two readings of a known live source. */
  | 'read-dead'
  /** Its stored charge is released, or it holds none. */
  | 'released'
  /** No voltage was found here, but a charge may stand. */
  | 'charge-doubted'
  /** Something was said that was not understood: whether it is still off is asked. */
  | 'asked'
  /** It was answered that it is. */
  | 'still-off'
  /** The proof has run out: what was reported of the switch still stands. */
  | 'lapsed';

const energySetup = setup({ types: { events: {} as { readonly type: EnergyMove } } });

/**
 * The energy of a zone's conductors. `unknown` counts as live everywhere. A word alone leads only to `reported-off`;
 * numbers lead to `reads-dead`; released charge to `proven-dead`. Live evidence ends a proof from wherever it stood; words
 * that nobody understood leave it `in-doubt` until it is answered that nothing came back.
 */
export const conductorChart = energySetup.createMachine({
  id: 'conductors',
  initial: 'unknown',
  states: {
    unknown: { on: { live: 'live', 'reported-off': 'reported-off' } },
    live: { on: { 'reported-off': 'reported-off', doubted: 'unknown' } },
    'reported-off': { on: { live: 'live', doubted: 'unknown', 'proof-began': 'proving', 'read-dead': 'reads-dead' } },
    proving: { on: { live: 'live', doubted: 'unknown', lapsed: 'reported-off', 'read-dead': 'reads-dead' } },
    'reads-dead': { on: { live: 'live', doubted: 'unknown', lapsed: 'reported-off', released: 'proven-dead' } },
    'proven-dead': {
      on: {
        live: 'live',
        doubted: 'unknown',
        lapsed: 'reported-off',
        'charge-doubted': 'reads-dead',
        asked: 'in-doubt',
      },
    },
    'in-doubt': {
      on: {
        live: 'live',
        doubted: 'unknown',
        lapsed: 'reported-off',
        // Two doubts at once: neither answer brings it back.
        'charge-doubted': 'reported-off',
        'still-off': 'proven-dead',
      },
    },
  } satisfies Readonly<Record<EnergyState, unknown>>,
});

/** The charge of a capacitor section: no switch takes it, and one reading across its terminals proves it released. */
export const sectionChart = energySetup.createMachine({
  id: 'section',
  initial: 'unknown',
  states: {
    unknown: { on: { live: 'live', 'reported-off': 'reported-off', released: 'proven-dead' } },
    live: { on: { 'reported-off': 'reported-off', doubted: 'unknown', released: 'proven-dead' } },
    'reported-off': { on: { live: 'live', doubted: 'unknown', released: 'proven-dead' } },
    'proven-dead': { on: { live: 'live', doubted: 'unknown', lapsed: 'reported-off', asked: 'in-doubt' } },
    'in-doubt': { on: { live: 'live', doubted: 'unknown', lapsed: 'reported-off', 'still-off': 'proven-dead' } },
  },
});

export type EnergyChart = typeof conductorChart | typeof sectionChart;

function chartOf(zone: ZoneId): EnergyChart {
  return (CAPACITOR_ZONES as readonly ZoneId[]).includes(zone) ? sectionChart : conductorChart;
}

/** The charts of all zones: what moves them, they decide; what they are in, the facts hold. */
export const ENERGY_CHARTS = Object.fromEntries(ZONES.map((zone) => [zone, chartOf(zone)])) as Readonly<
  Record<ZoneId, EnergyChart>
>;

/** Where a zone goes from a state by a move; where its chart knows no such move it stays. */
export function energyAfter(chart: EnergyChart, from: EnergyState, move: EnergyMove): EnergyState {
  const machine = chart as typeof conductorChart;
  return transition(machine, machine.resolveState({ value: from }), { type: move })[0].value as EnergyState;
}
