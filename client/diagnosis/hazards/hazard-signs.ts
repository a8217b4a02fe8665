import type { HazardId } from '../../../grammar/vocabulary/hazards.ts';
import type { Moment, Place } from '../measuring/test-model.ts';

/** A hazard that the circuit itself shows: true where the drawn unit makes it real. */
interface HazardSign {
  /** Steps at these places are announced with it. */
  readonly places: readonly Place[];
  readonly real: (moment: Moment) => boolean;
}

const near120 = (volts: number) => volts > 70;
const OPEN = Number.POSITIVE_INFINITY;

/**
 * Every hazard: the sign that shows it, in the order of their bits, or what else announces it. `of-the-step`: the test
 * names it itself; `of-the-fluid`: the nameplate does.
 */
const SIGNS: Readonly<Record<HazardId, HazardSign | 'of-the-step' | 'of-the-fluid'>> = {
  'back-feed': {
    places: ['outdoor', 'disconnect'],
    real: ({ cooling }) =>
      near120(cooling.volts('L1', 'earth')) && near120(cooling.volts('L2', 'earth')) && cooling.volts('L1', 'L2') < 20,
  },
  'breaker-back-fed': {
    places: ['panel', 'disconnect'],
    real: ({ unit, cooling }) =>
      (unit.breaker[0] === OPEN && near120(cooling.volts('breaker-1', 'earth'))) ||
      (unit.breaker[1] === OPEN && near120(cooling.volts('breaker-2', 'earth'))),
  },
  'one-pole-leaves-leg': {
    places: ['outdoor'],
    real: ({ unit, idle }) =>
      unit.poles === 1 && near120(idle.volts('T1', 'earth')) && near120(idle.volts('T2', 'earth')),
  },
  'contactor-may-not-open': {
    places: ['outdoor'],
    real: ({ unit }) => unit.poleStuck[0] || unit.poleStuck[1],
  },
  'charge-stays': {
    places: ['outdoor'],
    real: ({ unit }) => unit.compressor.startOpen || unit.compressor.runOpen || unit.fan.startOpen || unit.fan.runOpen,
  },
  'starts-after-reset': {
    places: ['outdoor'],
    real: ({ unit, cooling }) => cooling.state.overloadTripped || unit.overload === OPEN,
  },
  'terminal-venting': {
    places: ['outdoor'],
    real: ({ unit }) => unit.compressor.shellOhms < 5e5,
  },
  'ghost-voltage': {
    places: ['outdoor', 'disconnect'],
    real: ({ idle }) => {
      const floating = (leg: 1 | 2) => idle.volts(`L${leg}`, 'earth') > 12 && idle.volts(`L${leg}`, 'earth') < 90;
      return floating(1) || floating(2);
    },
  },
  'lost-leg-looks-good': {
    places: ['outdoor', 'disconnect', 'panel'],
    real: ({ unit, cooling }) =>
      (unit.legOhms[0] > 1 && cooling.volts('service-1', 'earth') > 60) ||
      (unit.legOhms[1] > 1 && cooling.volts('service-2', 'earth') > 60),
  },
  'loose-lug-needs-load': {
    places: ['outdoor', 'disconnect'],
    real: ({ cooling, idle }) =>
      idle.volts('L1', 'L2') > 190 && cooling.volts('L1', 'L2') < 0.88 * idle.volts('L1', 'L2'),
  },
  'floating-common': {
    places: ['air-handler', 'thermostat', 'outdoor'],
    real: ({ unit }) => !unit.commonBonded,
  },
  'R-Y-two-meanings': {
    places: ['thermostat'],
    real: ({ unit }) => unit.yWireIndoors === OPEN,
  },
  'open-pole-reads-full': {
    places: ['outdoor'],
    real: ({ unit, idle }) => unit.poles === 1 && !unit.poleStuck[0] && idle.volts('L1', 'T1') > 180,
  },
  'supply-on-load-side': {
    places: ['outdoor'],
    real: ({ idle }) => idle.volts('T1', 'T2') > 180,
  },
  'defrost-stops-fan': {
    places: ['outdoor'],
    real: ({ unit, cooling }) =>
      unit.heatPump && cooling.state.fan === 'stopped' && cooling.state.compressor === 'turning',
  },
  'open-float-blanks-thermostat': {
    places: ['thermostat', 'air-handler'],
    real: ({ unit }) => unit.float === OPEN && unit.floatBreaks === 'R',
  },
  'line-voltage': 'of-the-step',
  'moving-fan': 'of-the-step',
  'hot-line': 'of-the-step',
  'pressurised-refrigerant': 'of-the-step',
  'flammable-refrigerant': 'of-the-fluid',
  'capacitor-charge': 'of-the-step',
  'capacitor-high-voltage': 'of-the-step',
  'line-side-stays-live': 'of-the-step',
  'control-stays-live': 'of-the-step',
};

export const HAZARD_SIGNS: readonly (HazardSign & { readonly id: HazardId })[] = Object.entries(SIGNS).flatMap(
  ([id, sign]) => (typeof sign === 'string' ? [] : [{ id: id as HazardId, ...sign }]),
);

/** Bit mask of the signs that are real. */
export function hazardBits(moment: Moment): number {
  return HAZARD_SIGNS.reduce((bits, sign, index) => (sign.real(moment) ? bits | (1 << index) : bits), 0);
}
