import type { ObservationId } from '../../../grammar/vocabulary/observations.ts';
import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import { overheats } from '../circuit/settle.ts';
import type { TestNeeds } from '../diagnosis.ts';
import { type Moment, placeOf, type Spot, type TestModel } from './test-model.ts';

const CALL = { power: 'on', call: 'cooling', bench: false } as const;
const NO_CALL = { power: 'on', call: 'none', bench: false } as const;
const ANY = { power: 'any', call: 'any', bench: false } as const;
const OFF = { power: 'off', call: 'any', bench: false } as const;

function look<Answer extends ObservationId>(
  answers: readonly Answer[],
  chances: (moment: Moment) => readonly number[],
  needs: TestNeeds,
  spot: Spot,
  minutes = 0.4,
): TestModel & { readonly measure: { readonly answers: readonly Answer[] } } {
  return {
    function: 'look',
    quantity: 'observation',
    at: [],
    needs,
    ...placeOf(spot),
    minutes,
    hazards: [],
    measure: { kind: 'look', answers, chances },
  };
}

/** Two answers, the first with this chance. */
const odds = (chance: number) => [chance, 1 - chance] as const;
/** Eye and ear seldom err on these. */
const sure = (yes: boolean) => odds(yes ? 0.985 : 0.015);

/** running, not running, hums and trips, runs then trips. */
function compressorChances(moment: Moment): readonly number[] {
  const { unit, cooling } = moment;
  const fed = cooling.volts('T1', 'T2') > 60;
  if (cooling.state.highTripped || cooling.state.lowTripped) return [0.25, 0.35, 0.02, 0.38];
  if (!fed) return [0.004, 0.98, 0.012, 0.004];
  if (cooling.state.compressor === 'turning') {
    if (cooling.state.fan === 'stopped') return [0.6, 0.07, 0.02, 0.31];
    const strained = unit.hermMicrofarads < 0.85 * unit.compressor.ratedMicrofarads || unit.outdoorCoilDirty;
    return strained ? [0.8, 0.04, 0.05, 0.11] : [0.955, 0.012, 0.008, 0.025];
  }
  const able = unit.overload !== Number.POSITIVE_INFINITY && !unit.compressor.runOpen;
  if (!able) return unit.compressor.runOpen ? [0.008, 0.6, 0.38, 0.012] : [0.004, 0.975, 0.015, 0.006];
  const ranFirst = cooling.state.overloadTripped && couldStart(moment);
  return ranFirst ? [0.1, 0.35, 0.08, 0.47] : [0.012, 0.32, 0.65, 0.018];
}

/** The standing compressor could have started: it tripped on heat, not on a failed start. */
function couldStart({ unit }: Moment): boolean {
  const { compressor } = unit;
  const pushed = unit.hermMicrofarads >= compressor.capacitorLimit * compressor.ratedMicrofarads;
  return pushed && !unit.needsHardStart && !compressor.seized && !compressor.startOpen && !unit.hermShorted;
}

/** turning, not turning, hums. */
function fanChances({ unit, cooling }: Moment): readonly number[] {
  if (cooling.state.highTripped) return [0.02, 0.8, 0.18];
  if (cooling.state.lowTripped) return [0.4, 0.59, 0.01];
  if (cooling.state.fan === 'turning') return [0.98, 0.015, 0.005];
  const fed = cooling.volts('T1', 'fan-common') > 60;
  const hums = fed && !unit.fan.runOpen;
  return hums ? [0.02, 0.7, 0.28] : [0.012, 0.973, 0.015];
}

/** calling, not calling, blank. */
function thermostatChances({ unit, cooling }: Moment): readonly number[] {
  const lit = unit.thermostatBatteries || cooling.volts('R-thermostat', 'C-thermostat') > 17;
  if (!lit) return [0.02, 0.03, 0.95];
  return unit.thermostatCalls ? [0.96, 0.03, 0.01] : [0.45, 0.53, 0.02];
}

const iced = ({ unit, cooling }: Moment) =>
  unit.coilIced ||
  cooling.state.lowTripped ||
  (cooling.state.compressor === 'turning' && cooling.state.blower === 'stopped')
    ? 0.85
    : 0.03;

/** Looking, listening, a hand near a part. */
export const LOOK_TESTS = {
  'look-outdoor-fan': look(['fan-turning', 'fan-not-turning', 'fan-hums'], fanChances, CALL, 'outdoor-in-reach', 0.2),
  'look-compressor': look(
    ['compressor-running', 'compressor-not-running', 'compressor-hums-and-trips', 'compressor-runs-then-trips'],
    compressorChances,
    CALL,
    'outdoor-in-reach',
    0.3,
  ),
  'look-contactor': look(
    ['contactor-pulled-in', 'contactor-not-pulled-in'],
    ({ unit, cooling }) => sure(cooling.state.contactor && !unit.armatureJammed),
    CALL,
    'outdoor-behind-panel',
    0.5,
  ),
  'look-no-call': look(
    ['compressor-running', 'compressor-not-running'],
    ({ idle }) => sure(idle.state.compressor === 'turning'),
    NO_CALL,
    'outdoor-in-reach',
  ),
  'look-contactor-no-call': look(
    ['contactor-pulled-in', 'contactor-not-pulled-in'],
    ({ unit }) =>
      odds(unit.poleStuck[0] && unit.poleStuck[1] ? 0.9 : unit.poleStuck[0] || unit.poleStuck[1] ? 0.5 : 0.01),
    NO_CALL,
    'outdoor-behind-panel',
    0.5,
  ),
  'look-contacts': look(
    ['contacts-burnt', 'contacts-stuck', 'contacts-clean'],
    ({ unit }) => {
      const burnt = unit.poleClosed[0] > 0.1 || unit.poleClosed[1] > 0.1;
      const stuck = unit.poleStuck[0] || unit.poleStuck[1];
      return burnt ? [0.85, 0.03, 0.12] : stuck ? [0.2, 0.7, 0.1] : [0.12, 0.02, 0.86];
    },
    OFF,
    'outdoor-behind-panel',
    0.8,
  ),
  'look-capacitor': look(
    ['capacitor-swollen', 'capacitor-not-swollen'],
    ({ unit }) => {
      const worst = Math.min(
        unit.hermMicrofarads / unit.compressor.ratedMicrofarads,
        unit.fanMicrofarads / unit.fan.ratedMicrofarads,
      );
      return odds(unit.hermShorted || unit.fanCapShorted || worst < 0.06 ? 0.6 : worst < 0.85 ? 0.4 : 0.02);
    },
    OFF,
    'outdoor-behind-panel',
    0.5,
  ),
  'look-blower': look(
    ['blower-running', 'blower-not-running'],
    ({ cooling }) => sure(cooling.state.blower === 'turning'),
    CALL,
    'air-handler',
  ),
  'look-filter': look(
    ['filter-dirty', 'filter-clean'],
    ({ unit }) => odds(unit.filterDirty ? 0.96 : 0.03),
    ANY,
    'air-handler',
    0.7,
  ),
  'look-indoor-coil': look(['coil-iced', 'coil-clear'], (moment) => odds(iced(moment)), ANY, 'air-handler', 1.5),
  'look-outdoor-coil': look(
    ['outdoor-coil-dirty', 'outdoor-coil-clean'],
    ({ unit }) => odds(unit.outdoorCoilDirty ? 0.94 : 0.04),
    ANY,
    'outdoor-in-reach',
  ),
  'look-drain-pan': look(
    ['drain-pan-full', 'drain-pan-dry'],
    ({ unit }) => odds(unit.float === Number.POSITIVE_INFINITY ? 0.85 : 0.03),
    ANY,
    'air-handler',
    0.6,
  ),
  'look-oil': look(
    ['oil-stain', 'no-oil-stain'],
    ({ unit }) => odds(unit.oilAtJoint ? 0.9 : 0.04),
    ANY,
    'outdoor-in-reach',
    1.5,
  ),
  'look-thermostat': look(
    ['thermostat-calling', 'thermostat-not-calling', 'thermostat-blank'],
    thermostatChances,
    CALL,
    'thermostat',
    0.3,
  ),
  'look-breaker': look(
    ['breaker-tripped', 'breaker-on'],
    ({ unit }) => odds(unit.breaker[0] === Infinity && unit.breaker[1] === Infinity ? 0.93 : 0.015),
    ANY,
    'panel',
    0.5,
  ),
  'look-disconnect': look(
    ['disconnect-in', 'disconnect-out'],
    ({ unit }) => odds(unit.blade[0] === Infinity && unit.blade[1] === Infinity ? 0.15 : 0.99),
    ANY,
    'disconnect',
    0.3,
  ),
  'look-fan-by-hand': look(
    ['fan-spins-freely', 'fan-stiff'],
    ({ unit }) => odds(unit.fan.seized ? 0.04 : 0.97),
    OFF,
    'outdoor-in-reach',
    0.4,
  ),
  'look-blower-by-hand': look(
    ['blower-spins-freely', 'blower-stiff'],
    ({ unit }) => odds(unit.blower.seized ? 0.04 : 0.97),
    OFF,
    'air-handler',
    0.6,
  ),
  // A clamp on its common lead, the 24 V wire of the second stage lifted and put back: the one way to see a valve that no
  // lead reaches (common practice).
  'look-second-stage': {
    ...look(
      ['second-stage-loads', 'second-stage-no-change'],
      ({ cooling }) => odds(cooling.state.compressor === 'turning' && !cooling.state.unloaded ? 0.97 : 0.03),
      CALL,
      'outdoor-behind-panel',
      2,
    ),
    hazards: ['line-voltage', 'moving-fan'],
    possible: (profile: UnitProfile) => profile.twoStage === true,
  },
  'look-compressor-heat': look(
    ['compressor-very-hot', 'compressor-not-hot'],
    ({ unit, cooling }) => odds(overheats(unit, cooling) || cooling.state.overloadTripped ? 0.75 : 0.06),
    ANY,
    'outdoor-behind-panel',
    0.4,
  ),
} as const satisfies Partial<Record<TestId, TestModel>>;

export type LookId = keyof typeof LOOK_TESTS;
type Evident = (typeof LOOK_TESTS)[LookId]['measure']['answers'][number];

/** What may be reported as seen and answers no look, with the reason why it tells nothing of a fault. */
export const NO_EVIDENCE = {
  'covers-on': 'how the unit is left',
} as const satisfies Readonly<Record<Exclude<ObservationId, Evident>, string>>;
