import { afterShort, BROKEN, lines, link, open } from './trouble.ts';

export const MOTORS = lines('motors', [
  [
    'herm-dried-out',
    'herm-capacitor-weak',
    (y, d) => {
      y.herm *= 0.6 - 0.5 * d;
    },
    undefined,
    3,
  ],
  [
    'herm-no-contact',
    ['herm-capacitor-open', 'herm-capacitor-weak'],
    (y) => {
      y.herm = 0;
    },
  ],
  [
    'herm-punctured',
    'herm-capacitor-shorted',
    (y) => {
      y.hermShorted = true;
    },
  ],
  [
    'fan-section-dried-out',
    'fan-capacitor-weak',
    (y, d) => {
      y.fanCap *= 0.55 - 0.5 * d;
    },
    undefined,
    3,
  ],
  [
    'fan-section-no-contact',
    ['fan-capacitor-open', 'fan-capacitor-weak'],
    (y) => {
      y.fanCap = 0;
    },
  ],
  [
    'fan-section-punctured',
    'fan-capacitor-shorted',
    (y) => {
      y.fanCapShorted = true;
    },
  ],
  [
    'start-part-dead',
    'hard-start-failed',
    (y) => {
      y.startCap = 2;
      y.needsStart = true;
    },
    (d) => d.hardStart,
  ],
  [
    'start-relay-welded',
    'hard-start-relay-welded',
    (y) => {
      y.startStuck = true;
    },
    (d) => d.hardStart,
  ],
  ['capacitor-wire-off', 'capacitor-lead-off', open('leadCap')],
  ['compressor-plug-scorched-C', 'compressor-lead-burnt', link('leadC', 20)],
  ['compressor-plug-scorched-R', 'compressor-lead-burnt', link('leadR', 20)],
  ['compressor-plug-scorched-S', 'compressor-lead-burnt', open('leadS')],
  [
    'run-turns-broken',
    'compressor-run-winding-open',
    (y) => {
      y.compressor.mainOhms = BROKEN;
    },
  ],
  [
    'start-turns-broken',
    'compressor-start-winding-open',
    (y) => {
      y.compressor.startOhms = BROKEN;
    },
  ],
  [
    'compressor-to-shell',
    'compressor-grounded',
    (y, d, chance) => {
      const ohms = 4e3 * 1e-4 ** d;
      y.shorts.push({ a: 'windings', b: 'earth', ohms });
      afterShort(y, ohms, chance);
    },
    undefined,
    2,
  ],
  ['protector-dead', 'compressor-overload-open', open('overload')],
  [
    'compressor-locked',
    'compressor-seized',
    (y) => {
      y.compressor.load = 50;
    },
    undefined,
    2,
  ],
  ['fan-wire-off', 'fan-lead-off', open('leadFan')],
  [
    'fan-run-broken',
    'fan-run-winding-open',
    (y) => {
      y.fan.mainOhms = BROKEN;
    },
  ],
  [
    'fan-start-broken',
    'fan-start-winding-open',
    (y) => {
      y.fan.startOhms = BROKEN;
    },
  ],
  [
    'fan-to-frame',
    'fan-motor-grounded',
    (y, d, chance) => {
      const ohms = 2e3 * 1e-3 ** d;
      y.shorts.push({ a: 'fan-C', b: 'earth', ohms });
      afterShort(y, ohms, chance);
    },
  ],
  [
    'fan-bearing-dry',
    'fan-bearings-seized',
    (y) => {
      y.fan.load = 20;
    },
    undefined,
    2,
  ],
  ['board-relay-dead', 'defrost-fan-relay-open', open('defrostRelay'), (d) => d.heatPump],
  [
    'blower-turns-broken',
    'blower-motor-open',
    (y) => {
      y.blower.mainOhms = BROKEN;
    },
  ],
  [
    'blower-bearing-dry',
    'blower-seized',
    (y) => {
      y.blower.load = 20;
    },
  ],
  [
    'blower-section-dried-out',
    'blower-capacitor-weak',
    (y, d) => {
      y.blowerCap *= 0.25 - 0.2 * d;
    },
    (d) => !d.drivenBlower,
  ],
  [
    'blower-relay-dead',
    'blower-relay-open',
    (y) => {
      y.blowerRelay = false;
    },
    (d) => !d.drivenBlower,
  ],
]);
