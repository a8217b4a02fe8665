import { type Cause, decades, failing } from './causes.ts';
import { OPEN, type Plant } from './plant.ts';

const legs = [1, 2] as const;

/** From the street to the load side of the contactor. */
export const CAUSES_OF_POWER: readonly Cause[] = [
  {
    id: 'supply-low',
    called: ['supply-low'],
    put: (p, s) => {
      p.supplyShare = 0.9 - 0.3 * s;
    },
  },
  {
    id: 'lost-leg',
    called: ['lost-utility-leg'],
    put: (p, s, dice) => {
      p.contacts[dice.yes(0.5) ? 'utility1' : 'utility2'] = decades(40, OPEN, s);
    },
  },
  {
    id: 'tripped-breaker',
    called: ['breaker-tripped'],
    put: (p) => {
      p.contacts.breaker1 = OPEN;
      p.contacts.breaker2 = OPEN;
      p.seen.add('breaker-tripped');
    },
  },
  ...legs.map(
    (n): Cause => ({
      id: `breaker-pole-${n}`,
      called: [`breaker-pole-${n}-open`],
      put: (p, s) => {
        p.contacts[`breaker${n}`] = s > 0.3 ? OPEN : decades(30, 3000, s / 0.3);
      },
    }),
  ),
  {
    id: 'disconnect-out',
    called: ['disconnect-open'],
    put: (p) => {
      p.disconnectOut = true;
    },
  },
  ...legs.map(
    (n): Cause => ({
      id: `disconnect-blade-${n}-burnt`,
      called: [`disconnect-blade-${n}-burnt`],
      put: (p, s) => {
        p.contacts[`blade${n}`] = failing(s);
      },
    }),
  ),
  ...legs.map(
    (n): Cause => ({
      id: `fuse-${n}-aged`,
      called: [`line-fuse-${n}-open`],
      fits: (b) => b.fused,
      put: (p) => {
        p.contacts[`fuse${n}`] = OPEN;
      },
    }),
  ),
  ...legs.map(
    (n): Cause => ({
      id: `lug-${n}`,
      called: [`loose-lug-${n}`],
      put: (p, s) => {
        p.contacts[`lug${n}`] = decades(0.5, 30, s);
      },
    }),
  ),
  {
    id: 'handler-dark',
    called: ['air-handler-no-power'],
    put: (p, _s, dice) => {
      p.contacts.handlerBreaker1 = OPEN;
      if (dice.yes(0.8)) p.contacts.handlerBreaker2 = OPEN;
    },
  },
  ...legs.map(
    (n): Cause => ({
      id: `pole-${n}-burnt`,
      called: [`contactor-pole-${n}-burnt`],
      fits: (b) => b.poles === 2 || b.switchedPole === n,
      put: (p, s, dice) => {
        p.contacts[`pole${n}`] = failing(s);
        if (dice.yes(0.75)) p.seen.add('contacts-burnt');
      },
    }),
  ),
  ...legs.map(
    (n): Cause => ({
      id: `pole-${n}-welded`,
      called: [`contactor-pole-${n}-stuck-closed`],
      fits: (b) => b.poles === 2,
      quiet: true,
      weight: 0.5,
      put: (p, _s, dice) => {
        p.shorts[`pole${n}`] = 0.01;
        if (dice.yes(0.7)) p.seen.add('contacts-stuck');
      },
    }),
  ),
  {
    id: 'contactor-welded',
    called: ['contactor-stuck-closed'],
    fits: (b) => b.poles === 2,
    quiet: true,
    put: weldBoth,
  },
  {
    id: 'single-pole-welded',
    called: ['contactor-stuck-closed', 'contactor-pole-1-stuck-closed', 'contactor-pole-2-stuck-closed'],
    fits: (b) => b.poles === 1,
    quiet: true,
    put: weldBoth,
  },
  {
    id: 'armature-jammed',
    called: ['contactor-jammed-open'],
    put: (p) => {
      p.armature = 'jammed';
    },
  },
  {
    id: 'coil-burnt-open',
    called: ['contactor-coil-open'],
    put: (p) => {
      p.contacts.coil = OPEN;
    },
  },
  {
    id: 'coil-turns-shorted',
    called: ['contactor-coil-shorted'],
    put: (p, s) => {
      p.shorts.coilTurns = decades(4, 0.2, s);
    },
  },
];

function weldBoth(p: Plant): void {
  p.shorts.pole1 = 0.01;
  p.shorts.pole2 = 0.01;
  p.seen.add('contacts-stuck');
  p.seen.add('armature-in');
}
