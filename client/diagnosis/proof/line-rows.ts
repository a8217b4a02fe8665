import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import {
  atLeast,
  atLeastShare,
  below,
  broken,
  by,
  carries,
  carriesNone,
  fed,
  holds,
  indirectly,
  orAbsent,
  type ProofRow,
  SHORTED_OHMS,
  SOUND_COIL_OHMS,
  sees,
  twoPoles,
  underShare,
  whole,
} from './proof-row.ts';

/** What opened may have opened on a grounded winding or a shorted capacitor: each is read (common practice). */
const NOTHING_SHORTED: ProofRow['needs'] = [
  [by(holds('ohms-compressor-R-shell')), by(holds('ohms-compressor-shell'))],
  [by(holds('ohms-fan-frame'))],
  [by(atLeast('ohms-cap-HERM', SHORTED_OHMS)), by(atLeast('microfarads-herm', 1))],
];

/** Supply between legs, wherever it was read ahead of the unit. */
const SUPPLY: readonly TestId[] = [
  'volts-service',
  'volts-breaker',
  'volts-disconnect-line',
  'volts-disconnect-load',
  'volts-L1-L2',
];

/** What a supply is low by (common practice: a tenth; less what meters scatter). */
const LOW = 0.92;
const notLow = (test: TestId) => atLeastShare(test, LOW);
const isLow = (test: TestId) => [underShare(test, LOW), atLeast(test, 100)] as const;
/**
 * A compressor that cannot start draws six times its amps, one with shorted turns more, and a sound supply sags under
 * them: whoever saw it stand may have heard no hum.
 */
const RUNS = sees('look-compressor', 'compressor-running');
const DRAWS_NOTHING = below('amps-compressor', 1);

/** Each leg to ground, where it can be read. */
const BOTH_LEGS: readonly (readonly [TestId, TestId])[] = [
  ['volts-disconnect-line-1-ground', 'volts-disconnect-line-2-ground'],
  ['volts-disconnect-load-1-ground', 'volts-disconnect-load-2-ground'],
  ['volts-L1-ground', 'volts-L2-ground'],
  ['volts-breaker-1-ground', 'volts-breaker-2-ground'],
];

/** A tripped one shows volts over a pole as well: it is looked at first. */
const breakerPole = (n: 1 | 2): ProofRow => ({
  needs: [
    [by(sees('look-breaker', 'breaker-on'))],
    [by(atLeast(`volts-breaker-pole-${n}`, 40)), by(fed('volts-service'), below(`volts-breaker-${n}-ground`, 60))],
  ],
});

const lineFuse = (n: 1 | 2): ProofRow => ({
  needs: [[by(atLeast(`volts-fuse-${n}`, 40)), by(broken(`ohms-fuse-${n}`))], ...NOTHING_SHORTED],
  against: [below(`ohms-fuse-${n}`, 100)],
});

/** Volts over blade and fuse together, and none over the fuse; over the blade alone where there is no fuse. */
const burntBlade = (n: 1 | 2): ProofRow => ({
  needs: [
    [by(atLeast(`volts-blade-${n}`, 4))],
    [by(orAbsent(below(`volts-fuse-${n}`, 2))), by(below(`ohms-fuse-${n}`, 100))],
    [by(sees('look-disconnect', 'disconnect-in'))],
  ],
  against: [below(`volts-blade-${n}`, 1)],
});

const looseLug = (n: 1 | 2): ProofRow => ({
  needs: [
    [
      by(atLeast(`volts-lug-${n}`, 4)),
      // At the line lug of the disconnect: what the breaker gives does not arrive.
      indirectly(fed('volts-breaker'), underShare('volts-disconnect-line', 0.85)),
    ],
  ],
});

const ACROSS = { 1: 'volts-L1-T1', 2: 'volts-L2-T2' } as const;

/** Drop over the pole under call with the armature in, or its ohms with the armature pressed in. */
const burntPole = (n: 1 | 2): ProofRow => ({
  needs: [
    [
      by(atLeast(ACROSS[n], 2), sees('look-contactor', 'contactor-pulled-in')),
      by(atLeast(`ohms-pole-${n}-pressed`, 0.7)),
    ],
  ],
  against: [below(`ohms-pole-${n}-pressed`, 0.4), below(ACROSS[n], 1)],
});

const stuckPole = (n: 1 | 2, ...more: ProofRow['needs'][number]): ProofRow => ({
  needs: [
    [
      ...more,
      by(below(`ohms-pole-${n}`, 5), twoPoles(`ohms-pole-${n}`)),
      // Beside a contact in the other leg a bar conducts as well.
      indirectly(below(`ohms-pole-${n}`, 5)),
      // With both poles open the load side floats, and the meter itself ties it to the line: no volts across an open pole.
      by(below(`${ACROSS[n]}-no-call`, 5), atLeast(`volts-T${n}-ground-no-call`, 80)),
      by(sees('look-contacts', 'contacts-stuck')),
      by(sees('look-contactor-no-call', 'contactor-pulled-in')),
    ],
  ],
  against: [broken(`ohms-pole-${n}`), below(`volts-T${n}-ground-no-call`, 50)],
});

/** Line circuit: service, breaker, disconnect, fuses, lugs, contactor (common practice). */
export const LINE_ROWS = {
  // Low on both legs: one that is lost reads low between the legs as well, and so does one bad pole ahead of the meter.
  'supply-low': {
    needs: [
      [
        by(...isLow('volts-L1-L2-no-call')),
        ...SUPPLY.map((test) => by(...isLow(test), RUNS)),
        ...SUPPLY.map((test) => by(...isLow(test), DRAWS_NOTHING)),
        ...SUPPLY.map((test) => indirectly(...isLow(test))),
      ],
      BOTH_LEGS.map(([one, two]) => by(atLeast(one, 55), atLeast(two, 55))),
    ],
    against: [notLow('volts-L1-L2-no-call')],
  },
  // At the service: further on a pole of the breaker looks the same.
  'lost-utility-leg': {
    needs: [[by(underShare('volts-service', 0.8)), indirectly(underShare('volts-disconnect-line', 0.8))]],
    against: SUPPLY.map(fed),
  },
  'breaker-tripped': {
    needs: [
      [by(sees('look-breaker', 'breaker-tripped')), by(underShare('volts-breaker', 0.3), fed('volts-service'))],
      ...NOTHING_SHORTED,
    ],
    against: [fed('volts-disconnect-line')],
  },
  'breaker-pole-1-open': breakerPole(1),
  'breaker-pole-2-open': breakerPole(2),
  'disconnect-open': {
    needs: [
      [
        by(sees('look-disconnect', 'disconnect-out')),
        by(
          fed('volts-disconnect-line'),
          below('volts-disconnect-load-1-ground', 60),
          below('volts-disconnect-load-2-ground', 60),
        ),
      ],
    ],
    against: [fed('volts-disconnect-load'), fed('volts-L1-L2')],
  },
  'disconnect-blade-1-burnt': burntBlade(1),
  'disconnect-blade-2-burnt': burntBlade(2),
  'line-fuse-1-open': lineFuse(1),
  'line-fuse-2-open': lineFuse(2),
  'loose-lug-1': looseLug(1),
  'loose-lug-2': looseLug(2),
  'air-handler-no-power': { needs: [[by(below('volts-handler-supply', 60))]] },
  'contactor-pole-1-burnt': burntPole(1),
  'contactor-pole-2-burnt': burntPole(2),
  // A contactor of one pole needs no other to run the compressor by.
  'contactor-pole-1-stuck-closed': stuckPole(
    1,
    by(sees('look-no-call', 'compressor-running'), carriesNone('volts-coil-no-call')),
  ),
  'contactor-pole-2-stuck-closed': stuckPole(2),
  'contactor-stuck-closed': {
    needs: [
      [
        by(sees('look-no-call', 'compressor-running')),
        by(fed('volts-T1-T2-no-call')),
        by(below('ohms-pole-1', 5), below('ohms-pole-2', 5)),
        by(sees('look-contactor-no-call', 'contactor-pulled-in')),
      ],
    ],
    against: [carries('volts-coil-no-call'), broken('ohms-pole-1'), broken('ohms-pole-2')],
  },
  'contactor-jammed-open': {
    needs: [
      // On less than twenty volts a sound one may stay out as well (common practice).
      [by(atLeast('volts-coil', 20))],
      [by(sees('look-contactor', 'contactor-not-pulled-in')), by(broken('ohms-pole-1-pressed'))],
      [by(whole('ohms-coil'), atLeast('ohms-coil', SOUND_COIL_OHMS))],
    ],
    against: [carriesNone('volts-coil'), sees('look-contactor', 'contactor-pulled-in')],
  },
  'contactor-coil-open': { needs: [[by(broken('ohms-coil'))]] },
  'contactor-coil-shorted': { needs: [[by(below('ohms-coil', SOUND_COIL_OHMS))]] },
} as const satisfies Partial<Record<FaultId, ProofRow>>;
