import { GAUGE_TABLE, PRACTICE, type Story } from './story.ts';

/**
 * Air and refrigerant, on a hot day. A good unit would stand near 130 psi and 380 psi there: evaporator some 35 °F under
 * the return air, condenser some 20 °F over the outdoor air (common practice).
 */
export const STORIES_OF_COOLING: readonly Story[] = [
  {
    title: 'low charge at a valve: subcooling gone, then superheat up',
    source: GAUGE_TABLE,
    hidden: [['leak', 0.35]],
    reads: {
      'pressure-suction': [40, 112],
      'look-compressor': 'compressor-running',
      'temperature-discharge-line': [175, 290],
    },
  },
  {
    title: 'low charge at an orifice: suction low, superheat high',
    source: GAUGE_TABLE,
    build: { valve: false },
    hidden: [['leak', 0.3]],
    reads: { 'pressure-suction': [40, 112], 'temperature-suction-line': [58, 85] },
  },
  {
    title: 'a choked liquid side: suction low with liquid enough behind it',
    source: GAUGE_TABLE,
    build: { valve: false },
    hidden: [['liquid-side-choked', 0.5]],
    reads: { 'pressure-suction': [40, 105], 'temperature-suction-line': [58, 85] },
  },
  {
    title: 'too much charge: head and subcooling up',
    source: GAUGE_TABLE,
    hidden: [['too-much-charge', 0.9]],
    reads: { 'look-outdoor-coil': 'outdoor-coil-clean', 'look-filter': 'filter-clean' },
  },
  {
    title: 'an outdoor coil matted with fluff: head up, the compressor trips',
    source: GAUGE_TABLE,
    hidden: [['outdoor-coil-matted', 0.6]],
    reads: { 'look-outdoor-coil': 'outdoor-coil-dirty', 'pressure-liquid': [420, 640] },
  },
  {
    title: 'a loaded filter: suction low, little and very cold air',
    source: GAUGE_TABLE,
    hidden: [['filter-loaded', 0.6]],
    reads: { 'look-filter': 'filter-dirty', 'pressure-suction': [50, 118], 'temperature-supply-air': [33, 56] },
  },
  {
    title: 'valves that leak: suction high, head low, little current',
    source: GAUGE_TABLE,
    hidden: [['valves-broken', 0.6]],
    reads: { 'pressure-suction': [140, 230], 'amps-compressor': [3, 13] },
  },
  {
    title: 'air in the system: pressure at rest above that of the outdoor air',
    source: 'standing pressure against the chart: common practice',
    hidden: [['air-in-system', 0.5]],
    reads: { 'pressure-standing': [250, 460] },
  },
  {
    title: 'a fan that stands takes the head up until the switch opens',
    source: PRACTICE,
    hidden: [['fan-dry', 1]],
    reads: { 'look-fan-by-hand': 'fan-stiff', 'look-compressor': 'compressor-runs-then-trips' },
  },
  {
    title: 'two at once: a weak fan capacitor and a matted coil',
    source: PRACTICE,
    hidden: [
      ['fan-section-weak', 0.8],
      ['outdoor-coil-matted', 0.4],
    ],
    reads: { 'microfarads-fan': [0.5, 3], 'look-outdoor-coil': 'outdoor-coil-dirty' },
  },
];
