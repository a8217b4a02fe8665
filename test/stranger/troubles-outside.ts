import { BROKEN, lines } from './trouble.ts';

/** No name of the list is right for these. */
export const OUTSIDE = lines('outside', [
  [
    'turns-shorted',
    [],
    (y, d) => {
      y.compressor.turnsLeft = 0.72 - 0.2 * d;
      y.compressor.mainOhms *= 0.7 - 0.3 * d;
    },
  ],
  [
    'fan-wrong-way',
    [],
    (y) => {
      y.fanBackwards = true;
    },
  ],
  [
    'neutral-adrift',
    [],
    (y, d) => {
      y.neutralOhms = BROKEN;
      y.house = [6 + 4 * d, 30, 200];
    },
    (d) => d.blowerOn120,
  ],
  [
    'valve-floods',
    [],
    (y) => {
      y.loop.valveStuckOpen = true;
    },
    (d) => d.valve,
  ],
  [
    'hot-air-breathed-again',
    [],
    (y, d) => {
      y.loop.breathesAgain = 16 + 16 * d;
    },
  ],
  [
    'fan-motor-wrong-size',
    [],
    (y, d) => {
      y.fan.load = 1.8 + 0.6 * d;
      y.loop.outdoorAir *= 0.5;
    },
  ],
  [
    'fan-blade-slips',
    [],
    (y) => {
      y.loop.outdoorAir = 0.15;
    },
  ],
  [
    'blower-wheel-slips',
    [],
    (y) => {
      y.loop.indoorAir = 0.12;
      y.blower.load = 0.4;
    },
  ],
  [
    'feed-conductor-burnt-1',
    [],
    (y) => {
      y.ohms.feed1 = BROKEN;
    },
  ],
  [
    'feed-conductor-burnt-2',
    [],
    (y) => {
      y.ohms.feed2 = BROKEN;
    },
  ],
  [
    'condenser-half-wired',
    [],
    (y) => {
      y.ohms.firstSwitch = BROKEN;
    },
    (d) => !d.switches,
  ],
]);
