import { Simulation } from 'eecircuit-engine';
import { beforeAll, describe, expect, it } from 'vitest';
import { Settled } from '../../client/diagnosis/circuit/settle.ts';
import { NODES } from '../../client/diagnosis/circuit/topology.ts';
import { FAULT_MODELS } from '../../client/diagnosis/faults/fault-models.ts';
import { seededRandom } from '../../client/diagnosis/random.ts';
import { settleMoment } from '../../client/diagnosis/table/build-table.ts';
import { drawUnit } from '../../client/diagnosis/unit/draw-unit.ts';
import type { FaultId } from '../../grammar/vocabulary/faults.ts';
import type { UnitProfile } from '../../grammar/vocabulary/unit-profile.ts';
import { ngspiceNetlist } from './ngspice-netlist.ts';

/** Circuits of many kinds: supplies, poles, heaters, motors turning and standing, short and open, floating and bonded. */
const CIRCUITS: readonly (readonly [FaultId, UnitProfile, 'cooling' | 'idle', number])[] = [
  ['nothing-wrong', { id: 'a', contactorPoles: 2 }, 'cooling', 1],
  ['nothing-wrong', { id: 'b', contactorPoles: 1, crankcaseHeater: true }, 'idle', 2],
  ['line-fuse-1-open', { id: 'c', contactorPoles: 2 }, 'cooling', 3],
  ['line-fuse-2-open', { id: 'd', contactorPoles: 2, crankcaseHeater: false }, 'idle', 4],
  ['lost-utility-leg', { id: 'e' }, 'cooling', 5],
  ['loose-lug-1', { id: 'f', contactorPoles: 2 }, 'cooling', 6],
  ['breaker-pole-2-open', { id: 'g' }, 'cooling', 7],
  ['contactor-pole-1-burnt', { id: 'h' }, 'cooling', 8],
  ['herm-capacitor-weak', { id: 'i' }, 'cooling', 9],
  ['herm-capacitor-shorted', { id: 'j' }, 'cooling', 10],
  ['fan-capacitor-open', { id: 'k' }, 'cooling', 11],
  ['compressor-start-winding-open', { id: 'l' }, 'cooling', 12],
  ['fan-motor-grounded', { id: 'm' }, 'cooling', 13],
  ['control-short-Y-C', { id: 'n', heatPump: true }, 'cooling', 14],
  ['float-switch-open', { id: 'o', floatSwitch: 'breaks-R' }, 'cooling', 15],
  ['supply-low', { id: 'p', heatPump: true }, 'idle', 16],
  ['nothing-wrong', { id: 'q', twoStage: true }, 'cooling', 17],
  ['unloader-solenoid-open', { id: 'r', twoStage: true, heatPump: true }, 'cooling', 18],
  ['Y2-wire-broken', { id: 's', twoStage: true }, 'cooling', 20],
  ['C-wire-broken', { id: 't', twoStage: true }, 'cooling', 19],
];

describe('node voltages against ngspice (eecircuit-engine 1.8.0, ngspice in WebAssembly)', () => {
  const simulation = new Simulation();
  beforeAll(() => simulation.start());

  async function ngspice(netlist: string): Promise<Map<string, number>> {
    simulation.setNetList(netlist);
    const result = await simulation.runSim();
    if (result.dataType !== 'complex') throw new Error(`no phasors: ${simulation.getError().join('; ')}`);
    const sizes = result.data.map(({ name, values }) => [name, Math.hypot(values[0]!.real, values[0]!.img)] as const);
    return new Map(sizes.map(([name, size]) => [name.toLowerCase().replace(/^v\((.*)\)$/, '$1'), size]));
  }

  for (const [fault, profile, when, seed] of CIRCUITS) {
    it(`${fault}, ${when}: every node within 1e-5 of ngspice, half of them within 1e-8`, async () => {
      const unit = drawUnit(profile, seededRandom(seed));
      FAULT_MODELS[fault].apply(unit, seededRandom(seed + 100));
      const moment = settleMoment(unit, { cooling: new Settled(), idle: new Settled(), dead: new Settled() });
      const settled = moment[when];
      const theirs = await ngspice(ngspiceNetlist(settled.values));
      const errors = NODES.slice(1).map((name, i) => {
        const spice = theirs.get(`n${i + 1}`)!;
        return Math.abs(settled.volts(name, 'earth') - spice) / Math.max(1e-3, spice);
      });
      expect(Math.max(...errors)).toBeLessThanOrEqual(1e-5);
      // A 24 volt side that floats hangs on a billionth of a siemens, which costs ngspice five digits; the rest does better.
      const sorted = [...errors].sort((a, b) => a - b);
      expect(sorted[Math.floor(sorted.length / 2)]).toBeLessThanOrEqual(1e-8);
    });
  }
});
