import { lines } from './trouble.ts';

export const COOLING = lines('cooling', [
  [
    'filter-felted',
    'filter-dirty',
    (y, d) => {
      y.look.filter = true;
      y.loop.indoorAir *= 0.65 - 0.35 * d;
    },
    undefined,
    2,
  ],
  [
    'registers-shut',
    'low-indoor-air',
    (y, d) => {
      y.loop.indoorAir *= 0.62 - 0.32 * d;
    },
  ],
  [
    'coil-felted-behind',
    'low-indoor-air',
    (y, d) => {
      y.loop.indoorAir *= 0.65 - 0.25 * d;
      y.loop.indoorSurface *= 0.85 - 0.2 * d;
    },
  ],
  [
    'leaked-down',
    'low-charge',
    (y, d, chance) => {
      y.loop.charge *= 0.74 - 0.32 * d;
      y.look.oil = chance.yes(0.4);
    },
    undefined,
    4,
  ],
  [
    'filled-too-much',
    'overcharge',
    (y, d) => {
      y.loop.charge *= 1.3 + 0.4 * d;
    },
  ],
  [
    'drier-clogged',
    'liquid-restriction',
    (y, d) => {
      y.loop.liquidWay = 0.5 - 0.25 * d;
    },
  ],
  [
    'coil-outside-felted',
    'condenser-dirty',
    (y, d) => {
      y.look.outdoorCoil = true;
      y.loop.outdoorSurface *= 0.62 - 0.25 * d;
      y.loop.outdoorAir *= 0.8;
    },
    undefined,
    3,
  ],
  [
    'air-left-in',
    'non-condensables',
    (y, d) => {
      y.loop.foreignPsi = 35 + 60 * d;
    },
  ],
  [
    'valves-broken',
    'leaking-valves',
    (y, d) => {
      y.loop.pumping *= 0.65 - 0.3 * d;
    },
  ],
  [
    'slide-stuck',
    'reversing-valve-stuck',
    (y) => {
      y.loop.reversed = true;
    },
    (d) => d.heatPump,
  ],
  [
    'bulb-lost',
    'liquid-restriction',
    (y, d) => {
      y.loop.valveReach = 0.42 - 0.2 * d;
    },
    (d) => d.valve,
  ],
]);
