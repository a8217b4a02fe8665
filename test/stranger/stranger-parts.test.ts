import { readFileSync } from 'node:fs';
import { Simulation } from 'eecircuit-engine';
import { describe, expect, it } from 'vitest';
import { FAULTS } from '../../grammar/vocabulary/faults.ts';
import { Chance } from './chance.ts';
import { boilingPsi, FLUIDS, type Fluid, type Loop, runLoop } from './loop.ts';
import { cx, Mesh } from './mesh.ts';
import { standYard } from './run-yard.ts';
import { type Motor, slipOf, startTorque } from './sheet-motor.ts';
import { TROUBLES } from './troubles.ts';
import { drawDesign, drawYard } from './yard.ts';
import { drawYardCase, yardOf } from './yard-case.ts';

const TURN = 2 * Math.PI * 60;

describe('the mesh', () => {
  it('agrees with ngspice (eecircuit-engine, ngspice in WebAssembly) on twenty random circuits', async () => {
    const simulation = new Simulation();
    await simulation.start();
    let worst = 0;
    for (let seed = 1; seed <= 20; seed += 1) {
      const chance = new Chance(seed);
      const mesh = new Mesh();
      const spice = ['* random', 'V1 s 0 dc 0 ac 240', 'Rs s a 0.2'];
      mesh.join('V1', 'a', 'earth', 0.2, { volts: [240, 0] });
      const name = (n: string) => (n === 'earth' ? '0' : n);
      for (let i = 0; i < 14; i += 1) {
        const [p, q] = [chance.pick(['earth', 'a', 'b', 'c', 'd']), 'abcde'[i % 5]!];
        if (p === q) continue;
        const [ohms, henries] = [chance.span(0.5, 900), chance.span(0.001, 0.5)];
        mesh.join(`R${i}`, p, q, [ohms, TURN * henries]);
        spice.push(`R${i} ${name(p)} m${i} ${ohms}`, `L${i} m${i} ${name(q)} ${henries}`);
      }
      // A transformer: volts of its own by others, amps drawn where they come from.
      mesh.join('T', 'e', 'earth', 3, { from: { plus: 'b', minus: 'earth', gain: [0.11, 0] }, drawn: true });
      spice.push('E1 t 0 b 0 0.11', 'Vt t u 0', 'Rt u e 3', 'F1 b 0 Vt 0.11', 'Rg e 0 1e9', '.ac lin 1 60 60', '.end');
      simulation.setNetList(spice.join('\n'));
      const result = await simulation.runSim();
      if (result.dataType !== 'complex') throw new Error('no phasors');
      const solved = mesh.solve();
      for (const n of 'abe') {
        const { real, img } = result.data.find((d) => d.name.toLowerCase() === `v(${n})`)!.values[0]!;
        const mine = cx.size(solved.at(n)!);
        worst = Math.max(worst, Math.abs(mine - Math.hypot(real, img)) / Math.max(mine, 1e-6));
      }
    }
    expect(worst).toBeLessThan(1e-5);
  }, 60_000);
});

describe('the motor', () => {
  const yard = drawYard(drawDesign(new Chance(1)), new Chance(1));
  const { compressor } = yard;

  it('slips a little at rated volts, more at less, and stalls far below (common practice)', () => {
    const slips = [1, 0.9, 0.8].map((share) => slipOf(compressor, share * 230, 1)!);
    expect(slips[0]).toBeGreaterThan(0.02);
    expect(slips[0]).toBeLessThan(0.08);
    expect(slips[1]).toBeGreaterThan(slips[0]!);
    expect(slips[2]).toBeGreaterThan(slips[1]!);
    expect(slipOf(compressor, 0.55 * 230, 1)).toBeUndefined();
    expect(slipOf({ ...compressor, load: 50 } satisfies Motor, 230, 1)).toBeUndefined();
  });

  it('has no torque to start with where one winding carries nothing', () => {
    expect(startTorque(compressor, [30, -40], [0, 0])).toBe(0);
    expect(startTorque(compressor, [0, 0], [9, 4])).toBe(0);
  });
});

describe('the loop', () => {
  it('boils within two in a hundred of the reference equations of state (CoolProp, fixtures/reference)', () => {
    const rows = readFileSync('fixtures/reference/saturation_reference.csv', 'utf8').trim().split('\n').slice(1);
    let compared = 0;
    for (const row of rows) {
      const [fluid, at, , dew] = row.split(',');
      if (!FLUIDS.includes(fluid as Fluid) || Number(at) < 10 || Number(at) > 140) continue;
      expect(Math.abs(boilingPsi(fluid as Fluid, Number(at)) / Number(dew) - 1), row).toBeLessThan(0.02);
      compared += 1;
    }
    expect(compared).toBeGreaterThan(80);
  });

  const sound = {
    ...drawYard(drawDesign(new Chance(1)), new Chance(1)).loop,
    charge: 1,
    valve: false,
    fluid: 'R-410A',
  } as Loop;
  const weather = { outdoors: 92, return: 78, wetBulb: 65 };
  const right = runLoop(sound, weather);

  it('stands as a sound unit does: superheat and subcooling some ten, twenty over air (common practice)', () => {
    expect(right.boils).toBeGreaterThan(33);
    expect(right.boils).toBeLessThan(46);
    expect(right.condenses - weather.outdoors).toBeGreaterThan(14);
    expect(right.condenses - weather.outdoors).toBeLessThan(28);
    expect(right.superheat).toBeGreaterThan(4);
    expect(right.superheat).toBeLessThan(18);
    expect(right.subcooling).toBeGreaterThan(6);
    expect(right.subcooling).toBeLessThan(15);
  });

  // Rossi and Braun, "A statistical, rule-based fault detection and diagnostic method for vapor compression air
  // conditioners" (1997), for a fixed orifice; overcharge and foreign gas: common practice.
  it.each([
    [
      'low charge',
      { charge: 0.68 },
      { boils: -1, superheat: 1, condenses: -1, subcooling: -1, discharge: 1, capacity: -1 },
    ],
    ['leaking valves', { pumping: 0.55 }, { boils: 1, superheat: -1, condenses: -1, capacity: -1 }],
    ['restriction', { liquidWay: 0.35 }, { boils: -1, superheat: 1, condenses: -1, subcooling: 1, discharge: 1 }],
    [
      'dirty outdoor coil',
      { outdoorSurface: 0.6 },
      { boils: 1, superheat: -1, condenses: 1, subcooling: -1, discharge: 1 },
    ],
    ['low indoor air', { indoorAir: 0.5 }, { boils: -1, superheat: -1, condenses: -1, supply: -1 }],
    ['overcharge', { charge: 1.4 }, { subcooling: 1, condenses: 1, superheat: -1 }],
    ['foreign gas', { foreignPsi: 60 }, { liquidPsi: 1 }],
  ] as const)('moves as published for %s', (_, change, signs) => {
    const now = runLoop({ ...sound, ...change }, weather);
    const moved = Object.entries(signs).map(([figure]) => {
      const key = figure as keyof typeof now;
      return [figure, Math.sign(now[key] - right[key])];
    });
    expect(Object.fromEntries(moved)).toEqual(signs);
  });
});

describe('yards', () => {
  it('run when nothing is wrong with them', () => {
    for (let seed = 1; seed <= 25; seed += 1) {
      const { state, trips } = standYard(drawYard(drawDesign(new Chance(seed)), new Chance(seed)), true);
      expect(
        [state.compressor, state.fan, state.blower].every((turn) => turn !== undefined),
        `${seed}`,
      ).toBe(true);
      expect(trips).toBe('no');
    }
  });

  it('hide every fault of the list but those that no reading and no complaint can tell of', () => {
    const called = new Set(TROUBLES.flatMap((t) => t.called));
    expect(FAULTS.map((f) => f.id).filter((id) => !called.has(id))).toEqual([
      'crankcase-heater-open',
      'indoor-coil-iced',
      'nothing-wrong',
      'something-else',
    ]);
    expect(TROUBLES.filter((t) => t.family === 'outside').every((t) => t.called.length === 0)).toBe(true);
  });

  it('are the same for the same numbers', () => {
    const design = drawDesign(new Chance(7));
    const volts = () => {
      const kase = drawYardCase(design, 9, 'inside', 1);
      const unit = yardOf(kase, kase.wrongs);
      return [kase.wrongs.map((w) => w.trouble.id), unit.stood.state.contactor, unit.stood.loop?.liquidPsi];
    };
    expect(volts()).toEqual(volts());
  });
});
