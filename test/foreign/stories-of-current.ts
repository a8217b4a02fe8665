import { CAPACITOR_RULE, FUSE_RULE, PRACTICE, SERIES_RULE, type Story, WINDING_RULE } from './story.ts';

const LINE = [225, 250] as const;
const NONE = [0, 4] as const;
const CONTROL = [22, 29] as const;

/** Supply, contactor, capacitors, motors and the 24 volt side. */
export const STORIES_OF_CURRENT: readonly Story[] = [
  {
    title: 'one line fuse open: nothing between the legs, both live to ground',
    source: SERIES_RULE,
    hidden: [['fuse-1-aged', 1]],
    reads: {
      'volts-fuse-1': LINE,
      'volts-fuse-2': NONE,
      'volts-L1-L2': [0, 12],
      'volts-L2-ground': [112, 126],
      'volts-disconnect-line': LINE,
      'ohms-fuse-1': 'open',
    },
  },
  {
    title: 'a burnt pole with the coil pulled in',
    source: SERIES_RULE,
    hidden: [['pole-1-burnt', 1]],
    reads: {
      'volts-L1-T1': LINE,
      'volts-L2-T2': NONE,
      'volts-coil': CONTROL,
      'look-contactor': 'contactor-pulled-in',
      'look-compressor': 'compressor-not-running',
    },
  },
  {
    title: 'control voltage on a coil that is open',
    source: PRACTICE,
    hidden: [['coil-burnt-open', 1]],
    reads: { 'volts-coil': CONTROL, 'ohms-coil': 'open', 'look-contactor': 'contactor-not-pulled-in' },
  },
  {
    title: 'the compressor hums and trips on a dead capacitor',
    source: CAPACITOR_RULE,
    hidden: [['herm-section-open', 1]],
    reads: {
      'microfarads-herm': [0, 2],
      'look-compressor': 'compressor-hums-and-trips',
      'look-outdoor-fan': 'fan-turning',
      'look-compressor-heat': 'compressor-very-hot',
    },
  },
  {
    title: 'the fan hums, turns freely by hand, and its capacitor is open',
    source: CAPACITOR_RULE,
    hidden: [['fan-section-open', 1]],
    reads: {
      'microfarads-fan': [0, 0.3],
      'look-fan-by-hand': 'fan-spins-freely',
      'amps-fan-start': [0, 0.1],
    },
  },
  {
    title: 'an overload that does not close again',
    source: WINDING_RULE,
    hidden: [['overload-failed-open', 0.3]],
    reads: {
      'ohms-compressor-R-S': [2, 8],
      'ohms-compressor-C-R': [20, 120],
      'amps-compressor': [0, 0.3],
      'look-compressor': 'compressor-not-running',
    },
  },
  {
    title: 'a start winding open',
    source: WINDING_RULE,
    hidden: [['start-winding-open', 1]],
    reads: {
      'ohms-compressor-C-S': 'open',
      'ohms-compressor-R-S': 'open',
      'ohms-compressor-C-R': [0.3, 2],
      'look-compressor': 'compressor-hums-and-trips',
    },
  },
  {
    title: 'a winding on the shell has taken both fuses',
    source: WINDING_RULE,
    hidden: [['compressor-to-shell', 0.95]],
    reads: { 'ohms-compressor-shell': [0, 5], 'volts-T1-T2': [0, 12] },
  },
  {
    title: 'a seized compressor: locked current with good volts, capacitor and windings',
    source: 'locked rotor current is five to six times rated current: common practice',
    hidden: [['rotor-stuck', 1]],
    reads: {
      'microfarads-herm': [37, 43],
      'ohms-compressor-R-S': [2, 6],
      'look-compressor': 'compressor-hums-and-trips',
      'volts-T1-T2': LINE,
    },
  },
  {
    title: 'line volts into a transformer and nothing out',
    source: SERIES_RULE,
    hidden: [['transformer-burnt', 1]],
    reads: { 'volts-transformer-primary': LINE, 'volts-transformer-secondary': NONE },
  },
  {
    title: 'a chafed cable shorts Y to C and takes the control fuse',
    source: FUSE_RULE,
    hidden: [['chafed-Y', 0.8]],
    reads: { 'volts-control-fuse': CONTROL, 'ohms-Y-C': [0, 2], 'ohms-control-fuse': 'open' },
  },
  {
    title: 'a full pan: the float in Y is open',
    source: SERIES_RULE,
    hidden: [['float-up', 1]],
    reads: {
      'volts-float': CONTROL,
      'look-drain-pan': 'drain-pan-full',
      'volts-Y-C-air-handler': CONTROL,
      'volts-Y-C-condenser': NONE,
      'look-blower': 'blower-running',
    },
  },
  {
    title: 'a full pan: the float in R blanks the thermostat',
    source: PRACTICE,
    build: { float: 'breaks-R' },
    hidden: [['float-up', 1]],
    reads: {
      'look-thermostat': 'thermostat-blank',
      'volts-R-C-thermostat': NONE,
      'volts-transformer-secondary': CONTROL,
      'volts-float': CONTROL,
    },
  },
  {
    title: 'a thermostat that does not close R to Y',
    source: SERIES_RULE,
    hidden: [['thermostat-dumb', 1]],
    reads: { 'volts-R-Y-thermostat': CONTROL, 'volts-R-C-thermostat': CONTROL, 'volts-Y-C-air-handler': NONE },
  },
  {
    title: 'Y is there indoors and not outdoors: the wire between is broken',
    source: SERIES_RULE,
    build: { float: 'none' },
    hidden: [['wireYOutdoors-broken', 1]],
    reads: { 'volts-Y-C-air-handler': CONTROL, 'volts-Y-C-condenser': NONE, 'ohms-Y-wire': 'open' },
  },
  {
    title: 'a leg lost in the street: what is left comes through the house',
    source: 'a lost leg is fed through what hangs between the legs: common practice',
    hidden: [['lost-leg', 1]],
    reads: { 'volts-service': [0, 200], 'volts-breaker-pole-1': NONE },
  },
  {
    title: 'a loose lug is found under load',
    source: 'voltage drop over a connection under load: common practice',
    hidden: [['lug-1', 0.15]],
    reads: { 'volts-L1-L2-no-call': LINE, 'volts-lug-1': [6, 60], 'volts-lug-2': NONE },
  },
  {
    title: 'a welded contactor runs on without a call',
    source: PRACTICE,
    hidden: [['contactor-welded', 1]],
    reads: {
      'volts-T1-T2-no-call': LINE,
      'volts-coil-no-call': NONE,
      'look-no-call': 'compressor-running',
    },
  },
  {
    title: 'a door ajar darkens the air handler',
    source: SERIES_RULE,
    hidden: [['door-ajar', 1]],
    reads: { 'volts-door-switch': LINE, 'volts-transformer-primary': NONE, 'look-blower': 'blower-not-running' },
  },
  {
    title: 'a blower that hums on a dead capacitor',
    source: CAPACITOR_RULE,
    hidden: [['blower-capacitor', 1]],
    reads: {
      'microfarads-blower': [0, 0.5],
      'volts-blower': LINE,
      'look-blower': 'blower-not-running',
      'look-blower-by-hand': 'blower-spins-freely',
    },
  },
  {
    title: 'the contactor held out by an open high pressure switch',
    source: SERIES_RULE,
    hidden: [['high-switch-failed', 1]],
    reads: {
      'volts-high-switch': CONTROL,
      'volts-low-switch': NONE,
      'volts-Y-C-condenser': CONTROL,
      'volts-coil': NONE,
    },
  },
  {
    title: 'two at once: a dead run capacitor behind a burnt pole',
    source: PRACTICE,
    hidden: [
      ['pole-2-burnt', 1],
      ['herm-section-open', 1],
    ],
    reads: { 'volts-L2-T2': LINE, 'microfarads-herm': [0, 2] },
  },
];
