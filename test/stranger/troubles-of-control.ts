import { BROKEN, lines, open } from './trouble.ts';
import type { Design } from './yard.ts';

const stages = (d: Design) => d.switches;
const second = (d: Design) => d.stages === 2;
/** Half of what befalls units with a second stage befalls it: they are drawn in a round of their own. */
const STAGE_OFTEN = 20;

export const CONTROL = lines('control', [
  [
    'transformer-gives-half',
    'transformer-dead',
    (y, d) => {
      y.transformer.stiff = 16 + 22 * d;
    },
  ],
  [
    'coil-turns-shorted',
    'contactor-coil-shorted',
    (y, d) => {
      y.coilTurns = 0.5 - 0.3 * d;
      y.coilOhms *= 0.5 - 0.3 * d;
    },
  ],
  [
    'transformer-burnt-out',
    'transformer-dead',
    (y, d) => {
      y.transformer.works = false;
      if (d > 0.5) y.transformer.primaryOhms = BROKEN;
      else y.transformer.secondaryOhms = BROKEN;
    },
    undefined,
    2,
  ],
  ['blade-fuse-gone', 'control-fuse-open', open('controlFuse'), undefined, 2],
  [
    'Y-staple',
    'control-short-Y-C',
    (y, d) => {
      y.shorts.push({ a: 'Y@condenser', b: 'C@condenser', ohms: 0.4 + 0.6 * d });
      y.ohms.controlFuse = BROKEN;
    },
  ],
  [
    'R-staple',
    'control-short-R-C',
    (y, d) => {
      y.shorts.push({ a: 'R@thermostat', b: 'C@thermostat', ohms: 0.4 + 0.6 * d });
      y.ohms.controlFuse = BROKEN;
    },
    (d) => d.wiredCommon,
  ],
  ['R-cut', 'R-wire-broken', open('wireR')],
  ['Y-cut-indoors', 'Y-wire-broken-indoors', open('wireY')],
  ['Y-chewed-outdoors', 'Y-wire-broken-outdoors', open('outY'), undefined, 2],
  ['C-chewed-outdoors', 'C-wire-broken', open('outC')],
  ['G-cut', 'G-wire-broken', open('wireG')],
  [
    'O-cut',
    'O-wire-broken',
    (y) => {
      y.ohms.outO = BROKEN;
      y.loop.reversed = true;
    },
    (d) => d.heatPump,
  ],
  [
    'thermostat-off',
    'thermostat-not-calling',
    (y) => {
      y.thermostatOff = true;
    },
  ],
  [
    'thermostat-no-Y',
    'thermostat-not-calling',
    (y) => {
      y.closes.Y = false;
    },
  ],
  [
    'thermostat-no-G',
    'thermostat-no-fan-call',
    (y) => {
      y.closes.G = false;
    },
  ],
  ['timer-dead', 'delay-stays-open', open('delay'), (d) => d.delay],
  [
    'pan-full',
    'float-switch-open',
    (y, _, chance) => {
      y.look.pan = chance.yes(0.8);
      if (y.design.float === 'breaks-R') y.ohms.floatR = BROKEN;
      else y.ohms.floatY = BROKEN;
    },
    (d) => d.float !== 'none',
    3,
  ],
  [
    'high-switch-dead',
    'high-switch-open',
    (y) => {
      y.ohms[y.design.lowFirst ? 'secondSwitch' : 'firstSwitch'] = BROKEN;
    },
    stages,
  ],
  [
    'low-switch-dead',
    'low-switch-open',
    (y) => {
      y.ohms[y.design.lowFirst ? 'firstSwitch' : 'secondSwitch'] = BROKEN;
    },
    stages,
  ],
  ['door-ajar', 'door-switch-open', open('door')],
  [
    'thermostat-no-Y2',
    'thermostat-no-second-stage',
    (y) => {
      y.stage.calls = false;
    },
    second,
    STAGE_OFTEN,
  ],
  [
    'Y2-cut',
    'Y2-wire-broken',
    (y, d) => {
      y.stage[d > 0.5 ? 'outdoors' : 'indoors'] = BROKEN;
    },
    second,
    STAGE_OFTEN,
  ],
  [
    'unloader-coil-burnt-out',
    'unloader-solenoid-open',
    (y) => {
      y.stage.coil = BROKEN;
    },
    second,
    STAGE_OFTEN,
  ],
  [
    'plunger-stuck',
    'unloader-stuck-unloaded',
    (y) => {
      y.stage.plunger = false;
    },
    second,
    STAGE_OFTEN,
  ],
]);
