import type { HazardId } from '../../../grammar/vocabulary/hazards.ts';
import type { PointId } from '../../../grammar/vocabulary/points.ts';
import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import type { Unit } from '../unit/unit.ts';
import { type NodePoint, POINT_NODES } from './point-nodes.ts';
import { atTerminals, type Measure, type Place, type TestModel } from './test-model.ts';

const LINE: readonly HazardId[] = ['line-voltage'];
const LOW: readonly HazardId[] = [];

interface Probe {
  readonly at: readonly [PointId, PointId];
  readonly measure: (when: 'cooling' | 'idle') => Measure;
  readonly place: Place;
  readonly minutes?: number;
  readonly hazards?: readonly HazardId[];
  readonly possible?: (profile: UnitProfile) => boolean;
  readonly onlyVolunteered?: true;
  readonly lastResort?: true;
}

/** Two points, and the nodes of the circuit that they stand for. */
function between(a: NodePoint, b: NodePoint): Pick<Probe, 'at' | 'measure'> {
  return { at: [a, b], measure: (when) => ({ kind: 'volts', from: POINT_NODES[a], to: POINT_NODES[b], when }) };
}

/** The float switch sits in R or in Y: its two sides follow. */
const ACROSS_FLOAT: Pick<Probe, 'at' | 'measure'> = {
  at: ['float-1', 'float-2'],
  measure: (when) => ({
    kind: 'volts-float',
    from: (unit: Unit) => (unit.floatBreaks === 'R' ? 'fused-hot' : 'Y-handler'),
    to: (unit: Unit) => (unit.floatBreaks === 'R' ? 'R-handler' : 'Y-float'),
    when,
  }),
};

const fused = (profile: UnitProfile) => profile.fusedDisconnect !== false;
const heatPump = (profile: UnitProfile) => profile.heatPump !== false;
const pressureSwitches = (profile: UnitProfile) => profile.pressureSwitches !== false;
const twoStage = (profile: UnitProfile) => profile.twoStage === true;
const floatSwitch = (profile: UnitProfile) => profile.floatSwitch !== 'none';

const outdoor = (a: NodePoint, b: NodePoint): Probe => ({ ...between(a, b), place: 'outdoor', hazards: LINE });
const disconnect = (a: NodePoint, b: NodePoint): Probe => ({
  ...between(a, b),
  place: 'disconnect',
  hazards: LINE,
  minutes: 0.8,
});
const panel = (a: NodePoint, b: NodePoint): Probe => ({
  ...between(a, b),
  place: 'panel',
  hazards: LINE,
  minutes: 1.5,
});
const low = (place: Place, a: NodePoint, b: NodePoint): Probe => ({
  ...between(a, b),
  place,
  hazards: LOW,
  minutes: place === 'thermostat' ? 1.2 : 0.5,
});
const handler = (a: NodePoint, b: NodePoint): Probe => ({
  ...between(a, b),
  place: 'air-handler',
  hazards: LINE,
  minutes: 0.8,
});

/** A running capacitor sits at some 400 volts and keeps them: its microfarads tell more, dead. */
const ON_A_CAPACITOR: Pick<Probe, 'hazards' | 'lastResort'> = {
  hazards: ['line-voltage', 'capacitor-high-voltage'],
  lastResort: true,
};

const PROBES = {
  'volts-L1-L2': outdoor('L1', 'L2'),
  'volts-L1-ground': outdoor('L1', 'ground'),
  'volts-L2-ground': outdoor('L2', 'ground'),
  'volts-T1-T2': outdoor('T1', 'T2'),
  'volts-T1-ground': outdoor('T1', 'ground'),
  'volts-T2-ground': outdoor('T2', 'ground'),
  'volts-L1-T1': outdoor('L1', 'T1'),
  'volts-L2-T2': outdoor('L2', 'T2'),
  'volts-fuse-1': { ...disconnect('fuse-1-line', 'fuse-1-load'), possible: fused },
  'volts-fuse-2': { ...disconnect('fuse-2-line', 'fuse-2-load'), possible: fused },
  'volts-blade-1': disconnect('disconnect-line-1', 'disconnect-load-1'),
  'volts-blade-2': disconnect('disconnect-line-2', 'disconnect-load-2'),
  'volts-disconnect-line': disconnect('disconnect-line-1', 'disconnect-line-2'),
  'volts-disconnect-load': disconnect('disconnect-load-1', 'disconnect-load-2'),
  'volts-disconnect-line-1-ground': disconnect('disconnect-line-1', 'ground'),
  'volts-disconnect-line-2-ground': disconnect('disconnect-line-2', 'ground'),
  'volts-disconnect-load-1-ground': disconnect('disconnect-load-1', 'ground'),
  'volts-disconnect-load-2-ground': disconnect('disconnect-load-2', 'ground'),
  'volts-breaker': panel('breaker-1', 'breaker-2'),
  'volts-breaker-1-ground': panel('breaker-1', 'ground'),
  'volts-breaker-2-ground': panel('breaker-2', 'ground'),
  'volts-service': panel('service-1', 'service-2'),
  'volts-breaker-pole-1': panel('service-1', 'breaker-1'),
  'volts-breaker-pole-2': panel('service-2', 'breaker-2'),
  'volts-lug-1': { ...between('disconnect-load-1', 'L1'), place: 'outdoor', hazards: LINE, minutes: 1.2 },
  'volts-lug-2': { ...between('disconnect-load-2', 'L2'), place: 'outdoor', hazards: LINE, minutes: 1.2 },
  'volts-coil': low('outdoor', 'coil-1', 'coil-2'),
  'volts-Y-C-condenser': low('outdoor', 'Y@condenser', 'C@condenser'),
  'volts-Y-ground-condenser': low('outdoor', 'Y@condenser', 'ground'),
  'volts-R-C-condenser': { ...low('outdoor', 'R@condenser', 'C@condenser'), possible: heatPump },
  'volts-O-C-condenser': { ...low('outdoor', 'O@condenser', 'C@condenser'), possible: heatPump },
  'volts-R-C-air-handler': low('air-handler', 'R@air-handler', 'C@air-handler'),
  'volts-Y-C-air-handler': low('air-handler', 'Y@air-handler', 'C@air-handler'),
  'volts-G-C-air-handler': low('air-handler', 'G@air-handler', 'C@air-handler'),
  'volts-R-C-thermostat': low('thermostat', 'R@thermostat', 'C@thermostat'),
  'volts-R-Y-thermostat': low('thermostat', 'R@thermostat', 'Y@thermostat'),
  'volts-R-G-thermostat': low('thermostat', 'R@thermostat', 'G@thermostat'),
  'volts-Y-C-thermostat': low('thermostat', 'Y@thermostat', 'C@thermostat'),
  'volts-Y2-C-condenser': { ...low('outdoor', 'Y2@condenser', 'C@condenser'), possible: twoStage },
  // On the way between both: taken when offered. Asked for, it was the first question before anybody had looked.
  'volts-Y2-C-air-handler': {
    ...low('air-handler', 'Y2@air-handler', 'C@air-handler'),
    possible: twoStage,
    onlyVolunteered: true,
  },
  'volts-R-Y2-thermostat': { ...low('thermostat', 'R@thermostat', 'Y2@thermostat'), possible: twoStage },
  // Where the common floats these mislead: taken when offered, never asked for.
  'volts-R-ground': { ...low('air-handler', 'R@air-handler', 'ground'), onlyVolunteered: true },
  'volts-C-ground': { ...low('air-handler', 'C@air-handler', 'ground'), onlyVolunteered: true },
  'volts-float': { ...ACROSS_FLOAT, place: 'air-handler', hazards: LOW, minutes: 0.5, possible: floatSwitch },
  'volts-high-switch': { ...low('outdoor', 'high-switch-1', 'high-switch-2'), possible: pressureSwitches },
  'volts-low-switch': { ...low('outdoor', 'low-switch-1', 'low-switch-2'), possible: pressureSwitches },
  'volts-control-fuse': low('air-handler', 'control-fuse-1', 'control-fuse-2'),
  'volts-transformer-primary': handler('transformer-primary-1', 'transformer-primary-2'),
  'volts-transformer-secondary': low('air-handler', 'transformer-secondary-1', 'transformer-secondary-2'),
  'volts-handler-supply': handler('handler-L1', 'handler-L2'),
  'volts-door-switch': handler('door-switch-1', 'door-switch-2'),
  'volts-blower': handler('blower-1', 'blower-2'),
  'volts-cap-HERM': { ...outdoor('cap-C', 'cap-HERM'), ...ON_A_CAPACITOR },
  'volts-cap-FAN': { ...outdoor('cap-C', 'cap-FAN'), ...ON_A_CAPACITOR },
  'volts-fan': outdoor('fan-C', 'fan-R'),
} as const satisfies Partial<Record<TestId, Probe>>;

/** The same probes with the thermostat satisfied. The first group is worth asking for, the second only taken. */
const WITHOUT_CALL = [
  'volts-T1-T2',
  'volts-T1-ground',
  'volts-T2-ground',
  'volts-L1-T1',
  'volts-L2-T2',
  'volts-L1-L2',
  'volts-coil',
] as const;
const WITHOUT_CALL_TAKEN = [
  'volts-L1-ground',
  'volts-L2-ground',
  'volts-Y-C-condenser',
  'volts-R-C-condenser',
  'volts-R-C-air-handler',
  'volts-Y-C-air-handler',
  'volts-R-C-thermostat',
  'volts-R-Y-thermostat',
  'volts-transformer-secondary',
  'volts-handler-supply',
  'volts-disconnect-line',
  'volts-disconnect-load',
  'volts-fuse-1',
  'volts-fuse-2',
  'volts-breaker',
] as const;

type WithCall = keyof typeof PROBES;
type WithoutCall = `${(typeof WITHOUT_CALL)[number] | (typeof WITHOUT_CALL_TAKEN)[number]}-no-call`;

function model(id: WithCall, when: 'cooling' | 'idle'): TestModel {
  const probe: Probe = PROBES[id];
  return {
    function: 'volts',
    quantity: 'voltage',
    at: probe.at,
    needs: { power: 'on', call: when === 'cooling' ? 'cooling' : 'none', bench: false },
    ...atTerminals(probe.place),
    minutes: probe.minutes ?? 0.6,
    ...(probe.onlyVolunteered ? { onlyVolunteered: true } : {}),
    ...(probe.lastResort ? { lastResort: true } : {}),
    hazards:
      probe.place === 'outdoor' && when === 'cooling'
        ? [...(probe.hazards ?? LINE), 'moving-fan']
        : (probe.hazards ?? LINE),
    measure: probe.measure(when),
    ...(probe.possible ? { possible: probe.possible } : {}),
  };
}

function collect(): Record<WithCall | WithoutCall, TestModel> {
  const called = (Object.keys(PROBES) as WithCall[]).map((id) => [id, model(id, 'cooling')] as const);
  const idle = WITHOUT_CALL.map((id) => [`${id}-no-call`, model(id, 'idle')] as const);
  const taken = WITHOUT_CALL_TAKEN.map(
    (id) => [`${id}-no-call`, { ...model(id, 'idle'), onlyVolunteered: true }] as const,
  );
  return Object.fromEntries([...called, ...idle, ...taken]) as Record<WithCall | WithoutCall, TestModel>;
}

/** Volts, by a meter of 10 MΩ. */
export const VOLTS_TESTS = collect();
