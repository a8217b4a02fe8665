import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import {
  arrives,
  atLeast,
  below,
  beyond,
  broken,
  brokenWire,
  by,
  carries,
  carriesNone,
  farBelow,
  indirectly,
  orAbsent,
  type ProofRow,
  sags,
  sees,
  underRating,
  whole,
  wholeWire,
} from './proof-row.ts';

/** Volts across a closed switch or a whole wire, and over an open one in a 24 V circuit. */
const CLOSED = 3;
const OPEN = 12;
/** Volts of a 24 V transformer that is fed and whole, loaded (common practice: below 20 a contactor may not pull in). */
const RIGHT = 20;

type Opening = 'float' | 'high-switch' | 'low-switch';
const openSwitch = (part: Opening): ProofRow => ({
  needs: [[by(atLeast(`volts-${part}`, OPEN)), by(broken(`ohms-${part}`))]],
  against: [whole(`ohms-${part}`)],
});

/** Open: whether by itself or by a pressure that was there shows once it has closed again, or not. */
const openedBy = (part: Opening): ProofRow['needs'][number] => [
  indirectly(atLeast(`volts-${part}`, OPEN)),
  indirectly(broken(`ohms-${part}`)),
  by(beyond('pressure-standing')),
];

/** A float switch in Y opens the same wire. */
const FLOAT_CLOSED: ProofRow['needs'][number] = [by(orAbsent(below('volts-float', CLOSED))), by(whole('ohms-float'))];

/** 24 V circuit, thermostat, safety switches, blower (common practice: volts at both ends of what is called broken). */
export const CONTROL_ROWS = {
  'transformer-dead': {
    // One that sags may be held down by a short: both loops are read before it is condemned.
    needs: [
      [by(atLeast('volts-transformer-primary', 90))],
      [
        by(below('volts-transformer-secondary', 2)),
        by(below('volts-transformer-secondary', 20), atLeast('ohms-Y-C', 5), atLeast('ohms-R-C', 5)),
      ],
    ],
    against: [atLeast('volts-transformer-secondary', 22)],
  },
  // A fuse that blew on a short blows again: Y and R to C are read before a new one goes in.
  'control-fuse-open': {
    needs: [
      [by(atLeast('volts-control-fuse', OPEN)), by(broken('ohms-control-fuse'))],
      [by(atLeast('ohms-Y-C', 5))],
      [by(atLeast('ohms-R-C', 5))],
    ],
    against: [whole('ohms-control-fuse')],
  },
  // The coil is in the same loop: with shorted turns it reads the same from the air handler, and no less than by itself.
  'control-short-Y-C': { needs: [[by(below('ohms-Y-C', 8))], [farBelow('ohms-Y-C', 'ohms-coil')]] },
  // An ohm between them blows the fuse, or it takes all the volts: some that are left come from a transformer that sags,
  // and the ohm is its own winding, read at the terminals instead of the wires.
  'control-short-R-C': {
    needs: [
      [by(below('ohms-R-C', 8))],
      [
        by(broken('ohms-control-fuse')),
        by(atLeast('volts-control-fuse', OPEN)),
        by(below('volts-transformer-secondary', 3)),
        by(atLeast('volts-transformer-secondary', RIGHT)),
        by(atLeast('ohms-R-C', 3), below('volts-transformer-secondary', RIGHT)),
      ],
    ],
  },
  'R-wire-broken': {
    needs: [
      [by(carries('volts-R-C-air-handler'))],
      [by(carriesNone('volts-R-C-thermostat')), sags('volts-R-C-thermostat', 'volts-R-C-air-handler')],
    ],
  },
  'Y-wire-broken-indoors': {
    needs: [
      [by(below('volts-R-Y-thermostat', CLOSED))],
      [by(carries('volts-R-C-air-handler'))],
      [by(carriesNone('volts-Y-C-air-handler'))],
      // Behind a broken R wire there is nothing between R and Y either.
      [
        arrives('volts-R-C-thermostat', 'volts-R-C-air-handler'),
        indirectly(sees('look-thermostat', 'thermostat-calling')),
      ],
    ],
  },
  'Y-wire-broken-outdoors': {
    needs: [
      [by(carries('volts-Y-C-air-handler'))],
      FLOAT_CLOSED,
      [by(brokenWire('ohms-Y-wire')), by(carriesNone('volts-Y-C-condenser'), wholeWire('ohms-C-wire'))],
    ],
    against: [wholeWire('ohms-Y-wire')],
  },
  'C-wire-broken': {
    needs: [
      [by(carries('volts-Y-C-air-handler'))],
      FLOAT_CLOSED,
      [by(brokenWire('ohms-C-wire')), by(carriesNone('volts-Y-C-condenser'), wholeWire('ohms-Y-wire'))],
    ],
    against: [wholeWire('ohms-C-wire')],
  },
  'G-wire-broken': {
    needs: [
      [by(below('volts-R-G-thermostat', CLOSED))],
      [by(carriesNone('volts-G-C-air-handler'))],
      // Where everything sags there is little between G and C as well.
      [by(carries('volts-R-C-air-handler')), by(carries('volts-transformer-secondary'))],
    ],
  },
  'thermostat-not-calling': {
    needs: [
      [
        by(atLeast('volts-R-Y-thermostat', OPEN)),
        by(carries('volts-R-C-thermostat'), carriesNone('volts-Y-C-thermostat')),
      ],
      // Alive: what has lost its R calls for nothing either.
      [by(sees('look-thermostat', 'thermostat-calling', 'thermostat-not-calling'))],
      // What it switches is not shorted: that takes its volts away and it calls for nothing.
      [by(atLeast('ohms-Y-C', 5))],
      // Nor do its volts sag: on too few it closes nothing. Those of a frayed R wire are fewer than at the air handler.
      [by(atLeast('volts-R-Y-thermostat', RIGHT))],
      [
        arrives('volts-R-Y-thermostat', 'volts-R-C-air-handler'),
        arrives('volts-R-Y-thermostat', 'volts-transformer-secondary'),
        arrives('volts-R-Y-thermostat', 'volts-R-C-condenser'),
      ],
    ],
    against: [below('volts-R-Y-thermostat', CLOSED)],
  },
  'thermostat-no-fan-call': {
    // On fewer volts than a sound transformer gives it closes nothing.
    needs: [[by(atLeast('volts-R-G-thermostat', RIGHT))], [by(carriesNone('volts-G-C-air-handler'))]],
    against: [below('volts-R-G-thermostat', CLOSED)],
  },
  'O-wire-broken': {
    needs: [
      [by(carriesNone('volts-O-C-condenser'))],
      [by(carries('volts-Y-C-condenser')), by(carries('volts-R-C-condenser')), by(carries('volts-coil'))],
    ],
  },
  // Y calls, so it is alive. Some hold the second stage back: ten minutes mostly settle it (common practice).
  'thermostat-no-second-stage': {
    afterWait: { check: atLeast('volts-R-Y2-thermostat', OPEN), minutes: 10 },
    needs: [
      [by(atLeast('volts-R-Y2-thermostat', RIGHT))],
      [by(below('volts-R-Y-thermostat', CLOSED)), by(carries('volts-Y-C-condenser'))],
      [by(carriesNone('volts-Y2-C-condenser')), by(carriesNone('volts-Y2-C-air-handler'))],
    ],
    against: [below('volts-R-Y2-thermostat', CLOSED)],
  },
  // Called at the thermostat, and it does not arrive where Y does: the common is whole.
  'Y2-wire-broken': {
    needs: [
      [by(below('volts-R-Y2-thermostat', CLOSED))],
      [by(carriesNone('volts-Y2-C-condenser')), sags('volts-Y2-C-condenser', 'volts-Y-C-condenser')],
      [by(carries('volts-Y-C-condenser')), by(carries('volts-coil'))],
    ],
    against: [atLeast('volts-R-Y2-thermostat', OPEN)],
  },
  'unloader-solenoid-open': { needs: [[by(broken('ohms-unloader'))]], against: [whole('ohms-unloader')] },
  // Volts and solenoid are right and the amps do not rise: what it moves is inside, and valves that leak read like it.
  'unloader-stuck-unloaded': {
    needs: [
      [by(carries('volts-Y2-C-condenser'))],
      [by(whole('ohms-unloader'))],
      [indirectly(sees('look-second-stage', 'second-stage-no-change')), by(beyond('look-second-stage'))],
    ],
    against: [sees('look-second-stage', 'second-stage-loads')],
    twice: true,
  },
  // What enters at Y and C passes both switches and does not come to the coil. A delay ends by itself: it is waited for
  // (common practice: three to five minutes against short cycling).
  'delay-stays-open': {
    afterWait: { check: carriesNone('volts-coil'), minutes: 5 },
    needs: [
      [by(carries('volts-Y-C-condenser'))],
      // A lead that is off between the terminal and the coil reads the same.
      [indirectly(carriesNone('volts-coil')), by(beyond('volts-coil'))],
      // Behind an open coil an open switch has no volts over it.
      [by(whole('ohms-coil'))],
      [by(orAbsent(below('volts-high-switch', CLOSED))), by(whole('ohms-high-switch'))],
      [by(orAbsent(below('volts-low-switch', CLOSED))), by(whole('ohms-low-switch'))],
    ],
  },
  'float-switch-open': openSwitch('float'),
  // It opens for a reason: a compressor that ran first says that the pressure was there.
  'high-switch-open': {
    opensOnCause: true,
    needs: [openedBy('high-switch'), [by(sees('look-outdoor-coil', 'outdoor-coil-clean'))]],
    against: [whole('ohms-high-switch'), sees('look-compressor', 'compressor-runs-then-trips')],
  },
  // One that opened on a cold coil closes again: air, ice and a compressor that ran come before it.
  'low-switch-open': {
    opensOnCause: true,
    needs: [openedBy('low-switch'), [by(sees('look-blower', 'blower-running'))]],
    against: [
      whole('ohms-low-switch'),
      sees('look-compressor', 'compressor-runs-then-trips', 'compressor-running'),
      sees('look-indoor-coil', 'coil-iced'),
    ],
  },
  'door-switch-open': { needs: [[by(atLeast('volts-door-switch', 60)), by(broken('ohms-door-switch'))]] },
  // One with a drive of its own shows no winding: whether it is stuck is felt.
  'blower-motor-open': {
    needs: [
      [by(broken('ohms-blower'))],
      [by(broken('ohms-blower')), by(sees('look-blower-by-hand', 'blower-spins-freely'))],
    ],
  },
  'blower-seized': {
    needs: [[by(sees('look-blower-by-hand', 'blower-stiff'))]],
    against: [sees('look-blower', 'blower-running')],
  },
  'blower-relay-open': {
    needs: [
      [by(carries('volts-G-C-air-handler'))],
      [by(below('volts-blower', 60), atLeast('volts-handler-supply', 90))],
    ],
  },
  'blower-capacitor-weak': { needs: [[by(underRating('microfarads-blower', 'blower', 0.92))]] },
} as const satisfies Partial<Record<FaultId, ProofRow>>;
