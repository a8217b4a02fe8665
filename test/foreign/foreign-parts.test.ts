import { readFileSync } from 'node:fs';
import { Simulation } from 'eecircuit-engine';
import { describe, expect, it } from 'vitest';
import { balanceCycle } from '../../client/practice/plant/balance-cycle.ts';
import { Dice } from '../../client/practice/plant/dice.ts';
import { NodalNetwork } from '../../client/practice/plant/nodal-network.ts';
import { over, size } from '../../client/practice/plant/phasor.ts';
import type { Refrigerating } from '../../client/practice/plant/plant.ts';
import { boilsAt, gaugeAt } from '../../client/practice/plant/pressure-chart.ts';
import { designMotor, onBench } from '../../client/practice/plant/split-phase-motor.ts';
import { buildOf, STORIES } from './stories.ts';

const TURN = 2 * Math.PI * 60;

describe('the nodal network', () => {
  it('agrees with ngspice (eecircuit-engine, ngspice in WebAssembly) on thirty random circuits', async () => {
    const simulation = new Simulation();
    await simulation.start();
    let worst = 0;
    for (let seed = 1; seed <= 30; seed += 1) {
      const dice = new Dice(seed);
      const node = () => dice.pick(['ground', 'a', 'b', 'c', 'd', 'e', 'f']);
      const net = new NodalNetwork();
      const spice = ['* random', 'I1 0 a dc 0 ac 3'];
      net.inject('ground', 'a', [3, 0]);
      const name = (n: string) => (n === 'ground' ? '0' : n);
      for (let i = 0; i < 16; i += 1) {
        const [p, q] = i < 6 ? ['ground', 'abcdef'[i]!] : [node(), node()];
        if (p === q) continue;
        const [ohms, henries] = [dice.span(0.5, 900), dice.span(0.001, 0.5)];
        net.admittance(p, q, over([1, 0], [ohms, TURN * henries]));
        spice.push(`R${i} ${name(p)} m${i} ${ohms}`, `L${i} m${i} ${name(q)} ${henries}`);
        const microfarads = dice.span(1, 60);
        net.admittance(p, q, [0, TURN * microfarads * 1e-6]);
        spice.push(`C${i} ${name(p)} ${name(q)} ${microfarads}u`);
      }
      net.transfer('b', 'c', 'd', 'ground', [0.003, 0]);
      spice.push('G1 b c d 0 0.003', '.ac lin 1 60 60', '.end');
      simulation.setNetList(spice.join('\n'));
      const result = await simulation.runSim();
      if (result.dataType !== 'complex') throw new Error('no phasors');
      const volts = net.solve();
      for (const n of 'abcdef') {
        const { real, img } = result.data.find((d) => d.name.toLowerCase() === `v(${n})`)!.values[0]!;
        const mine = size(volts(n, 'ground'));
        worst = Math.max(worst, Math.abs(mine - Math.hypot(real, img)) / Math.max(mine, 1e-6));
      }
    }
    expect(worst).toBeLessThan(1e-6);
  }, 60_000);
});

describe('the motor', () => {
  const compressor = designMotor(230, 78, 'compressor');

  it('draws its locked current standing and a fifth of it running, and none turns it at full speed', () => {
    expect(onBench(compressor, 230, 40, 1).amps / 78).toBeGreaterThan(0.9);
    expect(onBench(compressor, 230, 40, 1).amps / 78).toBeLessThan(1.1);
    expect(onBench(compressor, 230, 40, 0.026).amps / 78).toBeLessThan(0.25);
    expect(onBench(compressor, 230, 0, 0.00001).torque).toBeLessThanOrEqual(0);
  });

  it('has no torque standing without its capacitor, and more with more of it', () => {
    const torques = [0, 10, 20, 40].map((uf) => onBench(compressor, 230, uf, 1).torque);
    expect(Math.abs(torques[0]!)).toBeLessThan(1);
    expect(torques.slice(1).every((t, i) => t > torques[i]!)).toBe(true);
  });

  it('lifts the capacitor above the line: some 1.5 times, as texts have it of running ones (common practice)', () => {
    const { auxiliaryAmps } = onBench(compressor, 230, 40, 0.026);
    const across = (auxiliaryAmps * 1e6) / (TURN * 40);
    expect(across / 230).toBeGreaterThan(1.3);
    expect(across / 230).toBeLessThan(1.9);
  });
});

describe('the pressure chart', () => {
  it('is within one in a hundred of the reference equations of state (CoolProp, fixtures/reference)', () => {
    const rows = readFileSync('fixtures/reference/saturation_reference.csv', 'utf8').trim().split('\n').slice(1);
    let compared = 0;
    for (const row of rows) {
      const [fluid, f, , , , dew] = row.split(',');
      if ((fluid !== 'R-410A' && fluid !== 'R-22') || Number(f) < 0) continue;
      expect(Math.abs(gaugeAt(fluid, Number(f)) / Number(dew) - 1), row.slice(0, 40)).toBeLessThan(0.01);
      expect(Math.abs(boilsAt(fluid, Number(dew)) - Number(f))).toBeLessThan(0.7);
      compared += 1;
    }
    expect(compared).toBeGreaterThan(50);
  });
});

describe('the refrigerant cycle at a fixed orifice', () => {
  const build = { ...buildOf(STORIES[0]!), valve: false };
  const day: Refrigerating = {
    charge: 1,
    opening: 1,
    outdoorAir: 1,
    indoorAir: 1,
    foreignGas: 0,
    leak: 0,
    reversed: false,
    outdoorF: 90,
    returnF: 80,
    wetBulbF: 66,
  };
  const good = balanceCycle(build, day);
  /** Signs after T. Rossi and J. Braun, 1997: evaporating, superheat, condensing, subcooling, condenser air, evaporator air. */
  const SIGNS: readonly (readonly [string, Partial<Refrigerating>, string])[] = [
    ['low charge', { charge: 0.75 }, '-+----'],
    ['leaking valves', { leak: 0.4 }, '+-----'],
    ['restriction', { opening: 0.6 }, '-+-+--'],
    ['dirty condenser', { outdoorAir: 0.5 }, '+-+-+-'],
    ['low indoor air', { indoorAir: 0.5 }, '-----+'],
  ];

  it('stands at rest where a good unit stands on such a day (common practice)', () => {
    expect(good.evaporatorF).toBeGreaterThan(38);
    expect(good.evaporatorF).toBeLessThan(50);
    expect(good.condenserF - day.outdoorF).toBeGreaterThan(15);
    expect(good.condenserF - day.outdoorF).toBeLessThan(28);
    expect(day.returnF - good.supplyF).toBeGreaterThan(16);
    expect(day.returnF - good.supplyF).toBeLessThan(24);
  });

  it.each(SIGNS)('%s moves every residual the published way', (_name, change, signs) => {
    const bad = balanceCycle(build, { ...day, ...change });
    const moved = [
      bad.evaporatorF - good.evaporatorF,
      bad.superheat - good.superheat,
      bad.condenserF - good.condenserF,
      bad.subcooling - good.subcooling,
      bad.condenserOutF - good.condenserOutF,
      good.supplyF - bad.supplyF,
    ];
    // A restriction keeps its head: it must not rise by what a thermometer shows.
    const sign = (x: number, i: number) => (i === 2 && Math.abs(x) < 1 ? signs[2] : x > 0 ? '+' : '-');
    expect(moved.map(sign).join('')).toBe(signs);
  });
});
