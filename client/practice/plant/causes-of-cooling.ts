import type { Cause } from './causes.ts';

/** Air and refrigerant. */
export const CAUSES_OF_COOLING: readonly Cause[] = [
  {
    id: 'filter-loaded',
    called: ['filter-dirty'],
    weight: 1.5,
    put: (p, s, dice) => {
      p.cycle.indoorAir *= 0.75 - 0.6 * s;
      if (dice.yes(0.95)) p.seen.add('filter-dirty');
    },
  },
  {
    id: 'duct-crushed',
    called: ['low-indoor-air'],
    put: (p, s) => {
      p.cycle.indoorAir *= 0.7 - 0.55 * s;
    },
  },
  {
    id: 'coil-frozen',
    called: ['indoor-coil-iced'],
    put: (p, s) => {
      p.iced = true;
      p.cycle.indoorAir *= 1 - 0.5 * s;
      p.seen.add('coil-iced');
    },
  },
  {
    id: 'leak',
    called: ['low-charge'],
    weight: 3,
    put: (p, s, dice) => {
      p.cycle.charge = 0.85 - 0.8 * s;
      if (dice.yes(0.45)) p.seen.add('oil-stain');
      // A starved coil may freeze: the ice is then seen first.
      if (s > 0.25 && s < 0.7 && dice.yes(0.2)) p.seen.add('coil-iced');
    },
  },
  {
    id: 'too-much-charge',
    called: ['overcharge'],
    put: (p, s) => {
      p.cycle.charge = 1.15 + 0.4 * s;
    },
  },
  {
    id: 'liquid-side-choked',
    called: ['liquid-restriction'],
    weight: 1.5,
    put: (p, s) => {
      p.cycle.opening = (p.build.valve ? 0.6 : 0.75) - 0.55 * s;
    },
  },
  {
    id: 'outdoor-coil-matted',
    called: ['condenser-dirty'],
    weight: 2,
    put: (p, s, dice) => {
      p.cycle.outdoorAir *= 0.6 - 0.45 * s;
      if (dice.yes(0.9)) p.seen.add('outdoor-coil-dirty');
    },
  },
  {
    id: 'air-in-system',
    called: ['non-condensables'],
    put: (p, s) => {
      p.cycle.foreignGas = 25 + 130 * s;
    },
  },
  {
    id: 'valves-broken',
    called: ['leaking-valves'],
    put: (p, s) => {
      p.cycle.leak = 0.25 + 0.65 * s;
    },
  },
  {
    id: 'reversing-valve-sticks',
    called: ['reversing-valve-stuck'],
    fits: (b) => b.heatPump,
    put: (p) => {
      p.cycle.reversed = true;
    },
  },
];
