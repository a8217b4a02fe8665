import { type Cause, decades, fraying } from './causes.ts';
import { OPEN } from './plant.ts';

/** Of units with a second stage half are drawn with something that they alone can have. */
const STAGE_OFTEN = 16;

/** The 24 volt side and the indoor unit. */
export const CAUSES_OF_CONTROL: readonly Cause[] = [
  {
    id: 'transformer-burnt',
    called: ['transformer-dead'],
    put: (p, _s, dice) => {
      p.contacts[dice.yes(0.6) ? 'transformerPrimary' : 'transformerSecondary'] = OPEN;
    },
  },
  {
    id: 'control-fuse-aged',
    called: ['control-fuse-open'],
    put: (p) => {
      p.contacts.controlFuse = OPEN;
    },
  },
  {
    id: 'chafed-Y',
    called: ['control-short-Y-C'],
    put: (p, s) => {
      p.shorts.YToC = decades(3, 0.1, s);
    },
  },
  ...(
    [
      ['wireR', 'R-wire-broken'],
      ['wireYIndoors', 'Y-wire-broken-indoors'],
      ['wireYOutdoors', 'Y-wire-broken-outdoors'],
      ['wireC', 'C-wire-broken'],
      ['wireG', 'G-wire-broken'],
    ] as const
  ).map(
    ([wire, fault]): Cause => ({
      id: `${wire}-broken`,
      called: [fault],
      put: (p, s) => {
        p.contacts[wire] = fraying(s);
      },
    }),
  ),
  {
    id: 'thermostat-dumb',
    called: ['thermostat-not-calling'],
    put: (p, _s, dice) => {
      p.contacts.thermostatY = OPEN;
      p.contacts.thermostatG = OPEN;
      p.contacts.thermostatO = OPEN;
      if (dice.yes(0.6)) p.seen.add('thermostat-not-calling');
    },
  },
  {
    id: 'thermostat-makes-G-not-Y',
    called: ['thermostat-not-calling'],
    put: (p) => {
      p.contacts.thermostatY = OPEN;
    },
  },
  {
    id: 'thermostat-makes-Y-not-G',
    called: ['thermostat-no-fan-call'],
    put: (p) => {
      p.contacts.thermostatG = OPEN;
    },
  },
  {
    id: 'delay-timer-never-ends',
    called: ['delay-stays-open'],
    put: (p) => {
      p.contacts.delayTimer = OPEN;
    },
  },
  {
    id: 'cable-cut-R-to-C',
    called: ['control-short-R-C'],
    put: (p, s) => {
      p.shorts.RToC = decades(2, 0.1, s);
    },
  },
  {
    id: 'wireO-broken',
    called: ['O-wire-broken'],
    fits: (b) => b.heatPump,
    put: (p) => {
      p.contacts.wireO = OPEN;
      p.cycle.reversed = true;
    },
  },
  {
    id: 'float-up',
    called: ['float-switch-open'],
    fits: (b) => b.float !== 'none',
    weight: 1.5,
    put: (p, _s, dice) => {
      p.contacts.float = OPEN;
      if (dice.yes(0.85)) p.seen.add('drain-pan-full');
    },
  },
  {
    id: 'high-switch-failed',
    called: ['high-switch-open'],
    fits: (b) => b.pressureSwitches,
    put: (p) => {
      p.contacts.highSwitch = OPEN;
    },
  },
  {
    id: 'low-switch-failed',
    called: ['low-switch-open'],
    fits: (b) => b.pressureSwitches,
    put: (p) => {
      p.contacts.lowSwitch = OPEN;
    },
  },
  {
    id: 'thermostat-stays-at-first-stage',
    called: ['thermostat-no-second-stage'],
    fits: (b) => b.twoStage,
    weight: STAGE_OFTEN,
    put: (p) => {
      p.stage.thermostat = OPEN;
    },
  },
  ...(['wireIndoors', 'wireOutdoors'] as const).map(
    (wire): Cause => ({
      id: `second-stage-${wire}-broken`,
      called: ['Y2-wire-broken'],
      fits: (b) => b.twoStage,
      weight: STAGE_OFTEN / 2,
      put: (p, s) => {
        p.stage[wire] = fraying(s);
      },
    }),
  ),
  {
    id: 'unloader-coil-burnt',
    called: ['unloader-solenoid-open'],
    fits: (b) => b.twoStage,
    weight: STAGE_OFTEN,
    put: (p) => {
      p.stage.coil = OPEN;
    },
  },
  {
    id: 'unloader-ports-stick',
    called: ['unloader-stuck-unloaded'],
    fits: (b) => b.twoStage,
    weight: STAGE_OFTEN,
    put: (p) => {
      p.stage.portsStick = true;
    },
  },
  {
    id: 'door-ajar',
    called: ['door-switch-open'],
    put: (p) => {
      p.contacts.door = OPEN;
    },
  },
  {
    id: 'blower-winding',
    called: ['blower-motor-open'],
    put: (p) => {
      p.contacts.blowerMain = OPEN;
    },
  },
  {
    id: 'blower-stuck',
    called: ['blower-seized'],
    put: (p) => {
      p.drives.blower.seized = true;
    },
  },
  {
    id: 'blower-relay',
    called: ['blower-relay-open'],
    fits: (b) => !b.electronicBlower,
    put: (p) => {
      p.contacts.blowerRelay = OPEN;
    },
  },
  {
    id: 'blower-capacitor',
    called: ['blower-capacitor-weak'],
    fits: (b) => !b.electronicBlower,
    put: (p, s) => {
      p.microfarads.blower *= 0.6 * (1 - s);
    },
  },
];
