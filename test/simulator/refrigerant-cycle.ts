import { readFileSync } from 'node:fs';
import type { HiddenUnit } from './hidden-unit.ts';

/** Saturation points of the reference table (CoolProp 8), °F and psi gauge at sea level, read between rows. */
const table = new Map<string, { t: number[]; bubble: number[]; dew: number[] }>();
for (const line of readFileSync('fixtures/reference/saturation_reference.csv', 'utf8').trim().split('\n').slice(1)) {
  const [fluid, t, , , bubble, dew] = line.split(',');
  const rows = table.get(fluid!) ?? { t: [], bubble: [], dew: [] };
  rows.t.push(Number(t));
  rows.bubble.push(Number(bubble));
  rows.dew.push(Number(dew));
  table.set(fluid!, rows);
}

/** psi gauge at a saturation temperature; the logarithm of the pressure runs straight between rows. */
function gauge(fluid: string, kind: 'bubble' | 'dew', t: number): number {
  const rows = table.get(fluid)!;
  const at = Math.min(Math.max(t, rows.t[0]!), rows.t.at(-1)! - 0.01);
  const i = rows.t.findIndex((x, k) => x <= at && rows.t[k + 1]! > at);
  const f = (at - rows.t[i]!) / (rows.t[i + 1]! - rows.t[i]!);
  const low = Math.log(rows[kind][i]! + 14.696);
  const high = Math.log(rows[kind][i + 1]! + 14.696);
  return Math.exp(low + f * (high - low)) - 14.696;
}

export interface CycleState {
  suctionPsi: number;
  liquidPsi: number;
  suctionLineF: number;
  liquidLineF: number;
  dischargeF: number;
  condenserOutF: number;
  supplyF: number;
  condensingF: number;
}

/** Everything still: pressures level out at the temperature around. */
function still(u: HiddenUnit, blowerTurns: boolean): CycleState {
  const around = u.outdoorF - 1;
  return {
    suctionPsi: gauge(u.fluid, 'dew', around),
    liquidPsi: gauge(u.fluid, 'bubble', around + 12 * u.gas),
    suctionLineF: u.outdoorF,
    liquidLineF: u.outdoorF,
    dischargeF: u.outdoorF + 4,
    condenserOutF: u.outdoorF + 0.5,
    supplyF: u.indoorF - (blowerTurns ? 0.5 : 3),
    condensingF: around,
  };
}

/**
 * A steady state from three balances: what the compressor pumps, what the indoor coil takes up, what the outdoor coil
 * gives off. Btu/h and °F. Charge and restriction starve the indoor coil, which shows as superheat.
 */
export function runCycle(
  u: HiddenUnit,
  running: boolean,
  fanTurns: number,
  blowerTurns: boolean,
  stage = 1,
): CycleState {
  if (!running) return still(u, blowerTurns);
  if (u.reversed) return heating(u);
  const rated = 12_000 * u.tons;
  const air = blowerTurns ? u.air * (u.iced ? 0.55 : 1) : 0.07;
  const overfill = Math.max(0, u.charge - 1);
  const shortfall = Math.max(0, 1 - u.charge);
  const starved = 2.2 * Math.max(0, shortfall - (u.valve ? 0.12 : 0)) + 0.9 * u.restriction;
  const meant = u.valve ? 10 : Math.max(4, 13 + 1.55 * (u.wetBulbF - 67) - 0.5 * (u.outdoorF - 95));
  const slack = u.valve ? 0.35 : 1;
  const superheat = Math.max(
    0,
    meant + 34 * starved - slack * (22 * overfill + 16 * Math.max(0, 1 - air) + 12 * u.leak),
  );
  const wetted = Math.max(0.25, 1 - 0.011 * Math.max(0, superheat - 10));
  const uaEvaporator = (rated / (67 - u.evaporatorF)) * air ** 0.6 * wetted;
  const uaCondenser =
    ((1.24 * rated) / u.approachF) * u.condenser * (0.12 + 0.88 * fanTurns) * (1 - 0.9 * Math.min(0.7, overfill));
  let te = u.evaporatorF;
  let tc = u.outdoorF + u.approachF;
  for (let i = 0; i < 60; i += 1) {
    const pumped = rated * (1 + 0.019 * (te - 45) - 0.0065 * (tc - 115)) * (1 - u.leak) * stage;
    const power = 0.24 * rated * stage * (1 + 0.011 * (tc - 115));
    te += 0.5 * (u.wetBulbF - pumped / uaEvaporator - te);
    tc += 0.4 * (u.outdoorF + (pumped + power) / uaCondenser - tc);
    tc = Math.min(tc, 149);
    te = Math.max(te, -15);
  }
  const pumped = rated * (1 + 0.019 * (te - 45) - 0.0065 * (tc - 115)) * (1 - u.leak) * stage;
  const power = 0.24 * rated * stage * (1 + 0.011 * (tc - 115));
  const subcool = Math.max(0, u.subcoolF - 48 * shortfall + 42 * overfill + 11 * u.restriction - 9 * u.leak);
  // Dry-bulb approach of the air to the coil; slow air comes closer to it.
  const ntu = 0.81 * wetted * Math.max(0.1, air) ** -0.45;
  const gasF = 15 * u.gas;
  const sensible = Math.min(1, Math.max(0.45, 0.74 - 0.03 * (u.wetBulbF - 67) + 0.022 * (u.indoorF - 80)));
  return {
    suctionPsi: gauge(u.fluid, 'dew', te),
    liquidPsi: gauge(u.fluid, 'bubble', tc + gasF),
    suctionLineF: te + superheat,
    liquidLineF: Math.max(u.outdoorF + 1, tc - subcool),
    dischargeF: tc + gasF * 0.6 + 42 + 0.9 * (superheat - 10) + 0.4 * (tc - te - 70) + 8 * u.leak,
    condenserOutF:
      u.outdoorF + (pumped + power) / (1.08 * 830 * u.tons * Math.max(0.2, fanTurns) * (0.55 + 0.45 * u.condenser)),
    supplyF: u.indoorF - (u.indoorF - te) * (1 - Math.exp(-ntu)) * (0.75 + 0.33 * sensible),
    condensingF: tc + gasF,
  };
}

/** The valve left in heating: the indoor coil gives heat off, the outdoor coil takes it up. */
function heating(u: HiddenUnit): CycleState {
  const hot = u.indoorF + 28;
  const cold = u.outdoorF - 20;
  return {
    suctionPsi: gauge(u.fluid, 'dew', cold),
    liquidPsi: gauge(u.fluid, 'bubble', hot),
    suctionLineF: cold + 9,
    liquidLineF: hot - 9,
    dischargeF: hot + 42,
    condenserOutF: u.outdoorF - 11,
    supplyF: u.indoorF + 19,
    condensingF: hot,
  };
}
