import type { HazardId } from '../../../grammar/vocabulary/hazards.ts';
import type { PointId } from '../../../grammar/vocabulary/points.ts';
import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import type { BranchName } from '../circuit/topology.ts';
import type { Unit } from '../unit/unit.ts';
import { type NodePoint, POINT_NODES } from './point-nodes.ts';
import { atTerminals, type Moment, type Place, type TestModel } from './test-model.ts';

const OPEN = Number.POSITIVE_INFINITY;
/** Ohms of an overload that is closed. */
const CLOSED = 0.01;
const OFF = { power: 'off', call: 'any', bench: false } as const;
const BENCH = { power: 'off', call: 'any', bench: true } as const;
const fused = (profile: UnitProfile) => profile.fusedDisconnect !== false;
const twoPoles = (profile: UnitProfile) => profile.contactorPoles !== 1;
const twoStage = (profile: UnitProfile) => profile.twoStage === true;
const switches = (profile: UnitProfile) => profile.pressureSwitches !== false;

function amps(
  at: PointId,
  branch: BranchName,
  when: 'cooling' | 'idle',
  place: Place,
  more?: Partial<TestModel>,
): TestModel {
  return {
    function: 'amps',
    quantity: 'current',
    at: [at],
    needs: { power: 'on', call: when === 'cooling' ? 'cooling' : 'none', bench: false },
    ...atTerminals(place),
    minutes: 1.2,
    hazards: place === 'outdoor' ? ['line-voltage', 'moving-fan'] : ['line-voltage'],
    measure: { kind: 'amps', branch, when },
    ...more,
  };
}

/** Clamp amps. */
export const AMPS_TESTS = {
  'amps-compressor': amps('compressor', 'overload', 'cooling', 'outdoor'),
  'amps-compressor-start': amps('comp-S', 'capacitor-herm', 'cooling', 'outdoor'),
  'amps-fan': amps('fan-motor', 'defrost-relay', 'cooling', 'outdoor'),
  'amps-fan-start': amps('fan-S', 'capacitor-fan', 'cooling', 'outdoor'),
  'amps-blower': amps('blower-motor', 'blower-relay', 'cooling', 'air-handler'),
  'amps-crankcase-heater': amps('crankcase-heater', 'crankcase-heater', 'idle', 'outdoor', {
    possible: (profile) => profile.crankcaseHeater !== false,
  }),
} as const satisfies Partial<Record<TestId, TestModel>>;

interface Ohms {
  readonly at: readonly [PointId, PointId];
  readonly place: Place;
  readonly minutes: number;
  readonly hazards?: readonly HazardId[];
  readonly possible?: (profile: UnitProfile) => boolean;
}

function inCircuit(probe: Ohms & { readonly at: readonly [NodePoint, NodePoint] }): TestModel {
  const [a, b] = probe.at;
  return {
    function: 'ohms',
    quantity: 'resistance',
    at: probe.at,
    needs: OFF,
    ...atTerminals(probe.place),
    minutes: probe.minutes,
    hazards: probe.hazards ?? deadHazards(probe.place),
    measure: { kind: 'ohms', from: POINT_NODES[a], to: POINT_NODES[b] },
    ...(probe.possible ? { possible: probe.possible } : {}),
  };
}

function onBench(probe: Ohms, of: (moment: Moment) => number): TestModel {
  return {
    function: 'ohms',
    quantity: 'resistance',
    at: probe.at,
    needs: BENCH,
    ...atTerminals(probe.place),
    minutes: probe.minutes,
    hazards: probe.hazards ?? deadHazards(probe.place),
    measure: { kind: 'ohms-part', of },
    ...(probe.possible ? { possible: probe.possible } : {}),
  };
}

/** A compressor does not come out: its windings are read in the unit, proven dead, the leads lifted. */
function inPlace(probe: Ohms, of: (moment: Moment) => number): TestModel {
  return { ...onBench(probe, of), needs: OFF };
}

function deadHazards(place: Place): readonly HazardId[] {
  return place === 'outdoor'
    ? ['line-side-stays-live', 'control-stays-live', 'capacitor-charge']
    : ['line-side-stays-live'];
}

const compressor = (a: PointId, b: PointId): Ohms => ({ at: [a, b], place: 'outdoor', minutes: 2 });
const fan = (a: PointId, b: PointId): Ohms => ({ at: [a, b], place: 'outdoor', minutes: 1.5 });
const shell = (a: PointId, b: PointId): Ohms => ({
  at: [a, b],
  place: 'outdoor',
  minutes: 2,
  hazards: ['line-side-stays-live', 'control-stays-live', 'capacitor-charge', 'terminal-venting'],
});

const run = ({ compressor: c, compressorLeadOff }: Unit) => (c.runOpen && !compressorLeadOff ? OPEN : c.runOhms);
const start = ({ compressor: c, compressorLeadOff }: Unit) => (c.startOpen && !compressorLeadOff ? OPEN : c.startOhms);
const fanRun = ({ fan: f, fanLeadOff }: Unit) => (f.runOpen && !fanLeadOff ? OPEN : f.runOhms);
const fanStart = ({ fan: f, fanLeadOff }: Unit) => (f.startOpen && !fanLeadOff ? OPEN : f.startOhms);
/** An overload that tripped on heat is still open when the leads come off. */
const overload = ({ unit, cooling }: Moment) =>
  cooling.state.overloadTripped ? OPEN : unit.compressorLeadOff ? CLOSED : unit.overload;
/** Two ways side by side. */
const beside = (a: number, b: number): number => (a === OPEN ? b : b === OPEN ? a : (a * b) / (a + b));
/** From common to run around the compressor: by the fan's winding, where leads stay on and none of these two is off. */
const aroundByFan = (unit: Unit): number =>
  unit.leadsStayOn && !(unit.compressorLeadOff && unit.compressor.runOpen) ? fanRun(unit) : OPEN;
const besideFan = ({ leadsStayOn, fan }: Unit, ohms: number): number =>
  leadsStayOn ? beside(ohms, fan.shellOhms) : ohms;
const pole = (unit: Unit, leg: 0 | 1) =>
  unit.poleStuck[leg] ? 0.01 : unit.armatureJammed ? OPEN : unit.poleClosed[leg]!;

/** A pressure switch that tripped may still be out when its leads come off. */
const highSwitch = ({ unit, cooling }: Moment) =>
  cooling.state.highTripped && unit.highStaysOut ? OPEN : unit.highSwitch;
const lowSwitch = ({ unit, cooling }: Moment) => (cooling.state.lowTripped ? OPEN : unit.lowSwitch);

/** Y to C at the air handler, both wires off: the run to the condenser, its switches and coil, and any short. */
function callLoop(moment: Moment): number {
  const { unit } = moment;
  const path = highSwitch(moment) + lowSwitch(moment) + unit.delay + unit.coilOhms;
  return unit.yWireOutdoors + beside(path, unit.shortYC) + unit.cWire;
}

/** Ohms, everything proven dead: in place, or with the leads off. */
export const OHMS_TESTS = {
  'ohms-fuse-1': inCircuit({ at: ['fuse-1-line', 'fuse-1-load'], place: 'disconnect', minutes: 1, possible: fused }),
  'ohms-fuse-2': inCircuit({ at: ['fuse-2-line', 'fuse-2-load'], place: 'disconnect', minutes: 1, possible: fused }),
  'ohms-pole-1-pressed': onBench({ at: ['L1', 'T1'], place: 'outdoor', minutes: 2 }, ({ unit }) => pole(unit, 0)),
  'ohms-pole-2-pressed': onBench({ at: ['L2', 'T2'], place: 'outdoor', minutes: 2, possible: twoPoles }, ({ unit }) =>
    unit.poles === 1 ? 0.01 : pole(unit, 1),
  ),
  'ohms-pole-1': inCircuit({ at: ['L1', 'T1'], place: 'outdoor', minutes: 0.8 }),
  'ohms-pole-2': inCircuit({ at: ['L2', 'T2'], place: 'outdoor', minutes: 0.8, possible: twoPoles }),
  'ohms-coil': onBench({ at: ['coil-1', 'coil-2'], place: 'outdoor', minutes: 1 }, ({ unit }) => unit.coilOhms),
  'ohms-compressor-C-R': inPlace(compressor('comp-C', 'comp-R'), (m) =>
    beside(overload(m) + run(m.unit), aroundByFan(m.unit)),
  ),
  'ohms-compressor-C-S': inPlace(
    compressor('comp-C', 'comp-S'),
    (m) => beside(overload(m), aroundByFan(m.unit) + run(m.unit)) + start(m.unit),
  ),
  'ohms-compressor-R-S': inPlace(
    compressor('comp-R', 'comp-S'),
    (m) => beside(run(m.unit), aroundByFan(m.unit) + overload(m)) + start(m.unit),
  ),
  'ohms-compressor-shell': inPlace(shell('comp-C', 'shell'), (m) =>
    besideFan(m.unit, overload(m) + m.unit.compressor.shellOhms),
  ),
  'ohms-compressor-R-shell': inPlace(shell('comp-R', 'shell'), ({ unit }) =>
    besideFan(unit, run(unit) + unit.compressor.shellOhms),
  ),
  'ohms-fan-C-R': onBench(fan('fan-C', 'fan-R'), ({ unit }) => fanRun(unit)),
  'ohms-fan-C-S': onBench(fan('fan-C', 'fan-S'), ({ unit }) => fanStart(unit)),
  'ohms-fan-R-S': onBench(fan('fan-R', 'fan-S'), ({ unit }) => fanRun(unit) + fanStart(unit)),
  'ohms-fan-frame': onBench(fan('fan-C', 'fan-frame'), ({ unit }) => unit.fan.shellOhms),
  'ohms-crankcase-heater': onBench(
    { at: ['heater-1', 'heater-2'], place: 'outdoor', minutes: 1.5, possible: (p) => p.crankcaseHeater !== false },
    ({ unit }) => unit.heaterOhms,
  ),
  'ohms-transformer-primary': onBench(
    { at: ['transformer-primary-1', 'transformer-primary-2'], place: 'air-handler', minutes: 1.5 },
    ({ unit }) => unit.transformerPrimaryOhms,
  ),
  'ohms-transformer-secondary': onBench(
    { at: ['transformer-secondary-1', 'transformer-secondary-2'], place: 'air-handler', minutes: 1.5 },
    ({ unit }) => unit.transformerSecondaryOhms,
  ),
  'ohms-control-fuse': onBench(
    { at: ['control-fuse-1', 'control-fuse-2'], place: 'air-handler', minutes: 0.8 },
    ({ unit, cooling }) => (cooling.state.controlFuseBlown ? OPEN : unit.controlFuse),
  ),
  'ohms-Y-C': onBench({ at: ['Y@air-handler', 'C@air-handler'], place: 'air-handler', minutes: 1.5 }, callLoop),
  // R and C, both wires off and the call taken: the cable to the thermostat alone.
  'ohms-R-C': onBench(
    { at: ['R@air-handler', 'C@air-handler'], place: 'air-handler', minutes: 1.2 },
    ({ unit }) => unit.shortRC,
  ),
  'ohms-Y-wire': onBench(
    { at: ['Y@air-handler', 'Y@condenser'], place: 'outdoor', minutes: 4 },
    ({ unit }) => unit.yWireOutdoors,
  ),
  'ohms-C-wire': onBench(
    { at: ['C@air-handler', 'C@condenser'], place: 'outdoor', minutes: 4 },
    ({ unit }) => unit.cWire,
  ),
  'ohms-unloader': onBench(
    { at: ['unloader-1', 'unloader-2'], place: 'outdoor', minutes: 1.5, possible: twoStage },
    ({ unit }) => unit.unloaderOhms,
  ),
  'ohms-float': onBench(
    { at: ['float-1', 'float-2'], place: 'air-handler', minutes: 1, possible: (p) => p.floatSwitch !== 'none' },
    ({ unit }) => unit.float,
  ),
  'ohms-high-switch': onBench(
    { at: ['high-switch-1', 'high-switch-2'], place: 'outdoor', minutes: 1, possible: switches },
    highSwitch,
  ),
  'ohms-low-switch': onBench(
    { at: ['low-switch-1', 'low-switch-2'], place: 'outdoor', minutes: 1, possible: switches },
    lowSwitch,
  ),
  'ohms-door-switch': onBench(
    { at: ['door-switch-1', 'door-switch-2'], place: 'air-handler', minutes: 1 },
    ({ unit }) => unit.doorSwitch,
  ),
  // A drive of its own shows the meter no winding.
  'ohms-blower': onBench(
    {
      at: ['blower-1', 'blower-2'],
      place: 'air-handler',
      minutes: 1.5,
      possible: (p) => p.blowerDrive !== 'electronic',
    },
    ({ unit }) => (unit.blower.runOpen ? OPEN : unit.blower.runOhms),
  ),
  // The meter charges a healthy section to "open"; a shorted one stays near nothing.
  'ohms-cap-HERM': onBench({ at: ['cap-C', 'cap-HERM'], place: 'outdoor', minutes: 1 }, ({ unit }) =>
    unit.hermShorted ? 0.1 : OPEN,
  ),
  'ohms-cap-FAN': onBench({ at: ['cap-C', 'cap-FAN'], place: 'outdoor', minutes: 1 }, ({ unit }) =>
    unit.fanCapShorted ? 0.1 : OPEN,
  ),
} as const satisfies Partial<Record<TestId, TestModel>>;

function microfarads(
  at: readonly [PointId, PointId],
  place: Place,
  of: (unit: Unit) => number,
  possible?: (profile: UnitProfile) => boolean,
): TestModel {
  return {
    function: 'microfarads',
    quantity: 'capacitance',
    at,
    needs: BENCH,
    ...atTerminals(place),
    minutes: 1.2,
    hazards: [...deadHazards(place), 'capacitor-charge'].filter((h, i, all) => all.indexOf(h) === i) as HazardId[],
    measure: { kind: 'microfarads', of },
    ...(possible ? { possible } : {}),
  };
}

/** Microfarads of a discharged section with its leads off. A shorted section reads as nothing the meter can charge. */
export const MICROFARADS_TESTS = {
  'microfarads-herm': microfarads(['cap-C', 'cap-HERM'], 'outdoor', (u) => (u.hermShorted ? 0 : u.hermMicrofarads)),
  'microfarads-fan': microfarads(['cap-C', 'cap-FAN'], 'outdoor', (u) => (u.fanCapShorted ? 0 : u.fanMicrofarads)),
  'microfarads-blower': microfarads(
    ['blower-cap-1', 'blower-cap-2'],
    'air-handler',
    (u) => u.blowerMicrofarads,
    (profile) => profile.blowerDrive !== 'electronic',
  ),
  'microfarads-hard-start': microfarads(
    ['start-cap-1', 'start-cap-2'],
    'outdoor',
    (u) => (u.hardStart ? u.hardStartMicrofarads : 0),
    (profile) => profile.hardStart === true,
  ),
} as const satisfies Partial<Record<TestId, TestModel>>;
