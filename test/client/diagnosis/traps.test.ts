import { describe, expect, it } from 'vitest';
import { Settled } from '../../../client/diagnosis/circuit/settle.ts';
import { type NodeName, nodeNumber } from '../../../client/diagnosis/circuit/topology.ts';
import type { Evidence } from '../../../client/diagnosis/diagnosis.ts';
import { FAULT_MODELS } from '../../../client/diagnosis/faults/fault-models.ts';
import { HAZARD_SIGNS, hazardBits } from '../../../client/diagnosis/hazards/hazard-signs.ts';
import type { Moment } from '../../../client/diagnosis/measuring/test-model.ts';
import { TEST_MODELS } from '../../../client/diagnosis/measuring/test-models.ts';
import { seededRandom } from '../../../client/diagnosis/random.ts';
import { settleMoment } from '../../../client/diagnosis/table/build-table.ts';
import { meterVolts } from '../../../client/diagnosis/table/predict.ts';
import { drawUnit } from '../../../client/diagnosis/unit/draw-unit.ts';
import type { Unit } from '../../../client/diagnosis/unit/unit.ts';
import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { Volts } from '../../../grammar/vocabulary/quantities.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import { diagnosisOf } from '../../made-diagnosis.ts';

/** The physical traps of the trade, each with its number from the circuit and the hazard that is announced. */
const TWO_POLES: UnitProfile = { id: 'two', supply: { nominal: 240 as Volts }, contactorPoles: 2, heatPump: true };
const ONE_POLE: UnitProfile = { ...TWO_POLES, id: 'one', contactorPoles: 1 };

function moment(fault: FaultId, profile: UnitProfile, change: Partial<Unit> = {}): Moment {
  const unit = Object.assign(drawUnit(profile, seededRandom(5)), change);
  FAULT_MODELS[fault].apply(unit, seededRandom(6));
  Object.assign(unit, change);
  return settleMoment(unit, { cooling: new Settled(), idle: new Settled(), dead: new Settled() });
}

/** What a meter of so many ohms shows. */
const meter = (settled: Settled, from: NodeName, to: NodeName, ohms: number) =>
  meterVolts(settled, nodeNumber(from), nodeNumber(to), ohms).volts;

const announced = (m: Moment) => HAZARD_SIGNS.filter((_, s) => hazardBits(m) & (1 << s)).map(({ id }) => id);

describe('what physics shows and a flow chart misses', () => {
  it('1: one line fuse open, cooling called: 120 to ground on both lugs, 0 between, 240 across, and a low-impedance meter does not clear it', () => {
    const m = moment('line-fuse-1-open', TWO_POLES);
    expect(m.cooling.volts('L1', 'earth')).toBeGreaterThan(110);
    expect(m.cooling.volts('L2', 'earth')).toBeGreaterThan(110);
    expect(m.cooling.volts('L1', 'L2')).toBeLessThan(5);
    expect(m.cooling.volts('fuse-1-line', 'fuse-1-load')).toBeGreaterThan(225);
    expect(meter(m.cooling, 'L1', 'earth', 3000)).toBeGreaterThan(100);
    expect(announced(m)).toContain('back-feed');
  });

  it('2: an open breaker pole is back-fed to about 120 volts', () => {
    const m = moment('breaker-pole-1-open', TWO_POLES);
    expect(m.cooling.volts('breaker-1', 'earth')).toBeGreaterThan(100);
    expect(announced(m)).toContain('breaker-back-fed');
  });

  it('3: a one-pole contactor, off, leaves T1, T2, C and S at about 120 volts to ground', () => {
    const m = moment('nothing-wrong', ONE_POLE);
    for (const node of ['T1', 'T2', 'winding-common', 'HERM'] as const) {
      expect(m.idle.volts(node, 'earth')).toBeGreaterThan(110);
    }
    expect(announced(m)).toContain('one-pole-leaves-leg');
  });

  it('4: two poles off, one fuse open: a ghost at 10 MΩ that a 3 kΩ meter takes away', () => {
    const m = moment('line-fuse-1-open', TWO_POLES, {
      heaterOhms: Number.POSITIVE_INFINITY,
      strayEarth: 1e-9,
      strayPair: 1.5e-9,
    });
    const ghost = meter(m.idle, 'L1', 'earth', 10e6);
    expect(ghost).toBeGreaterThan(12);
    expect(ghost).toBeLessThan(100);
    expect(meter(m.idle, 'L1', 'earth', 3000)).toBeLessThan(1);
    expect(announced(m)).toContain('ghost-voltage');
  });

  it('5: a lost utility leg: near 120 to ground on both, next to nothing between', () => {
    const m = moment('lost-utility-leg', TWO_POLES, { house240Ohms: 30, house120Ohms: [900, 900] });
    expect(m.cooling.volts('service-1', 'earth')).toBeGreaterThan(100);
    expect(m.cooling.volts('service-2', 'earth')).toBeGreaterThan(100);
    expect(m.cooling.volts('service-1', 'service-2')).toBeLessThan(20);
    expect(announced(m)).toContain('lost-leg-looks-good');
  });

  it('6: a loose lug reads good without load and collapses under it', () => {
    const m = moment('loose-lug-1', TWO_POLES, {
      whip: [20, 0.02],
      feeder: [0.05, 0.05],
      // Its overload may open on such volts: nothing would draw then.
      overloadOpenWhenHot: false,
    });
    expect(m.idle.volts('L1', 'L2')).toBeGreaterThan(225);
    expect(m.cooling.volts('L1', 'L2')).toBeLessThan(0.5 * m.idle.volts('L1', 'L2'));
    expect(announced(m)).toContain('loose-lug-needs-load');
  });

  it('7: with the disconnect out, its line side and the 24 volt control stay live, and dead work says so', () => {
    const m = moment('disconnect-open', TWO_POLES);
    expect(m.cooling.volts('L1', 'L2')).toBeLessThan(1);
    expect(m.cooling.volts('disconnect-line-1', 'disconnect-line-2')).toBeGreaterThan(225);
    expect(m.cooling.volts('R-handler', 'C-handler')).toBeGreaterThan(22);
    expect(TEST_MODELS['ohms-compressor-R-S'].hazards).toEqual(
      expect.arrayContaining(['line-side-stays-live', 'control-stays-live', 'capacitor-charge']),
    );
  });

  it('8: a running capacitor sits far above the line, and with an open winding its charge stays', () => {
    const m = moment('nothing-wrong', TWO_POLES);
    expect(m.cooling.volts('T1', 'HERM')).toBeGreaterThan(340);
    expect(m.cooling.volts('T1', 'HERM')).toBeLessThan(470);
    expect(TEST_MODELS['volts-cap-HERM'].hazards).toContain('capacitor-high-voltage');
    expect(announced(moment('compressor-start-winding-open', TWO_POLES))).toContain('charge-stays');
  });

  it('9: with a floating common R and C to ground mislead while R to C is right', () => {
    const m = moment('nothing-wrong', TWO_POLES, { commonBonded: false });
    expect(m.cooling.volts('R-handler', 'C-handler')).toBeGreaterThan(22);
    expect(meter(m.cooling, 'R-handler', 'earth', 10e6)).toBeLessThan(22);
    expect(meter(m.cooling, 'C-handler', 'earth', 10e6)).toBeGreaterThan(1);
    expect(announced(m)).toContain('floating-common');
  });

  it('10: R to Y near zero is a call, or a broken Y without one', () => {
    const calling = moment('nothing-wrong', TWO_POLES).cooling.volts('R-thermostat', 'Y-thermostat');
    const broken = moment('Y-wire-broken-indoors', TWO_POLES);
    const idle = moment('nothing-wrong', TWO_POLES).idle.volts('R-thermostat', 'Y-thermostat');
    expect(calling).toBeLessThan(0.5);
    expect(meter(broken.idle, 'R-thermostat', 'Y-thermostat', 10e6)).toBeLessThan(3);
    expect(idle).toBeGreaterThan(20);
    expect(announced(broken)).toContain('R-Y-two-meanings');
  });

  it('11: a one-pole contactor reads full voltage across its open pole, and 240 at T1–T2 without a call may be landed there', () => {
    const m = moment('nothing-wrong', { ...ONE_POLE, crankcaseHeater: true });
    expect(m.idle.volts('L1', 'T1')).toBeGreaterThan(225);
    expect(announced(m)).toContain('open-pole-reads-full');
    const stuck = moment('contactor-pole-1-stuck-closed', ONE_POLE);
    expect(stuck.idle.volts('T1', 'T2')).toBeGreaterThan(225);
    expect(announced(stuck)).toContain('supply-on-load-side');
  });

  it('12: a still fan on a heat pump may be defrost; 24 volts across a float mean open, and one in R blanks the thermostat', () => {
    const still = moment('defrost-fan-relay-open', TWO_POLES, {
      highTripsWithoutFan: false,
      overloadOpenWhenHot: false,
    });
    expect(still.cooling.state).toMatchObject({ compressor: 'turning', fan: 'stopped' });
    expect(announced(still)).toContain('defrost-stops-fan');
    const float = moment('float-switch-open', { ...TWO_POLES, floatSwitch: 'breaks-R' });
    expect(float.cooling.volts('fused-hot', 'R-handler')).toBeGreaterThan(22);
    expect(float.cooling.volts('R-thermostat', 'C-thermostat')).toBeLessThan(1);
    expect(announced(float)).toContain('open-float-blanks-thermostat');
  });
});

describe('what is announced', () => {
  const diagnosis = diagnosisOf(TWO_POLES);
  const dead: Evidence = {
    seq: 1,
    kind: 'reading',
    quantity: 'voltage',
    at: ['L1', 'L2'],
    value: 0.3,
    unit: 'V',
    power: 'on',
    call: 'cooling',
    bench: false,
  };

  it('names a hazard of any plausible fault, though another one leads', () => {
    const { suspects, hazards, next } = diagnosis.assess([dead], []);
    expect(['line-fuse-1-open', 'line-fuse-2-open']).not.toContain(suspects[0]!.fault);
    expect(hazards).toContain('back-feed');
    expect(hazards).toContain('terminal-venting');
    const atTheDisconnect = next.find((t) => t.id === 'volts-fuse-1')!;
    expect(atTheDisconnect.hazards).toEqual(expect.arrayContaining(['line-voltage', 'back-feed']));
  });

  it('drops it once no plausible fault makes it real', () => {
    const good: Evidence = { ...dead, seq: 2, value: 238 };
    expect(diagnosis.assess([good], []).hazards).not.toContain('back-feed');
  });

  it('a flammable refrigerant is named where gauges go on', () => {
    const a2l = diagnosisOf({ ...TWO_POLES, refrigerant: 'R-454B' });
    const seen = ['fan-turning', 'compressor-running', 'blower-running', 'filter-clean', 'outdoor-coil-clean'] as const;
    const running: Evidence[] = seen.map((observation, i) => ({
      seq: i + 1,
      kind: 'observation',
      observation,
      power: 'on',
      call: 'cooling',
      bench: false,
    }));
    const air = [
      ['temperature', 'outdoor-air', 90],
      ['temperature', 'return-air', 79],
      ['wet-bulb', 'return-air', 66],
    ] as const;
    const read: Evidence[] = air.map(([quantity, at, value], i) => ({
      ...dead,
      seq: 10 + i,
      quantity,
      at: [at],
      value,
      unit: '[degF]',
    }));
    const gauges = a2l.assess([...running, ...read], []).next.find((t) => t.function === 'pressure')!;
    expect(gauges.hazards).toContain('flammable-refrigerant');
  });
});
