import type { Cause } from './causes.ts';

const ELSE = 'something-else' as const;

/**
 * Single faults that have no name in the list; each with what repairs it all the same, where the list has such a name.
 */
export const CAUSES_OUTSIDE: readonly Cause[] = [
  {
    id: 'fan-blade-loose-on-shaft',
    called: [ELSE],
    put: (p) => {
      p.cycle.outdoorAir = 0.05;
      p.seen.add('blade-slips');
    },
  },
  {
    id: 'fan-turns-backwards',
    called: [ELSE],
    put: (p, s) => {
      p.cycle.outdoorAir = 0.3 - 0.15 * s;
    },
  },
  {
    id: 'blower-wheel-loose-on-shaft',
    called: [ELSE, 'low-indoor-air'],
    put: (p, s) => {
      p.cycle.indoorAir = 0.25 - 0.2 * s;
    },
  },
  {
    id: 'contactor-coil-for-line-volts',
    called: [ELSE, 'contactor-jammed-open'],
    put: (p) => {
      p.pullIn = 90;
    },
  },
  {
    id: 'transformer-tired',
    called: [ELSE, 'transformer-dead'],
    put: (p, s) => {
      p.transformerHealth = 0.62 - 0.3 * s;
    },
  },
];
