import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import {
  atLeast,
  below,
  beyond,
  broken,
  brokenWinding,
  by,
  fed,
  fedWell,
  holds,
  indirect,
  indirectly,
  leaks,
  lockedRotor,
  ofRating,
  type ProofRow,
  SHORTED_OHMS,
  sameAmps,
  sees,
  underRating,
  underShare,
  whole,
  wholeWinding,
  withoutStartPart,
} from './proof-row.ts';

/** Of its rating: a section that the meter charges hardly at all. */
const NOTHING = 0.08;
/** Common practice condemns a run capacitor from 6 to 10 % below its rating. */
const WEAK = 0.92;

const weak = (section: 'herm' | 'fan'): ProofRow => ({
  needs: [[by(underRating(`microfarads-${section}`, section, WEAK), atLeast(`microfarads-${section}`, 0.5))]],
});

const open = (section: 'herm' | 'fan', pair: 'HERM' | 'FAN'): ProofRow => ({
  needs: [
    [by(underRating(`microfarads-${section}`, section, NOTHING))],
    [by(atLeast(`ohms-cap-${pair}`, SHORTED_OHMS))],
  ],
});

const shorted = (section: 'herm' | 'fan', pair: 'HERM' | 'FAN'): ProofRow => ({
  needs: [[by(below(`ohms-cap-${pair}`, SHORTED_OHMS))]],
  against: [atLeast(`microfarads-${section}`, 1)],
});

/** Capacitors, compressor, outdoor fan (common practice). */
export const LOAD_ROWS = {
  'herm-capacitor-weak': weak('herm'),
  'herm-capacitor-open': open('herm', 'HERM'),
  'herm-capacitor-shorted': shorted('herm', 'HERM'),
  'fan-capacitor-weak': weak('fan'),
  'fan-capacitor-open': open('fan', 'FAN'),
  'fan-capacitor-shorted': shorted('fan', 'FAN'),
  'hard-start-failed': {
    needs: [
      [
        by(below('microfarads-hard-start', 60)),
        // Whole, behind a relay that never closes: a seized compressor draws the same.
        indirectly(atLeast('microfarads-hard-start', 60), lockedRotor('amps-compressor')),
      ],
    ],
  },
  // It turns, and its start capacitor still carries amps: standing, it would by right (common practice).
  'hard-start-relay-welded': {
    needs: [
      [by(atLeast('amps-start-capacitor', 2))],
      [by(sees('look-compressor', 'compressor-running', 'compressor-runs-then-trips'))],
    ],
    against: [below('amps-start-capacitor', 0.5)],
  },
  // Whole on the bench, and no charge where both motors ask for it.
  'capacitor-lead-off': {
    needs: [
      [by(ofRating('microfarads-herm', 'herm', 0.8))],
      [by(fed('volts-T1-T2'))],
      // Of either motor alone it may be that motor's own lead, of the compressor its overload as well.
      [
        by(below('amps-fan-start', 0.1), below('amps-compressor-start', 0.3)),
        indirectly(below('amps-fan-start', 0.1)),
        indirectly(below('amps-compressor-start', 0.3)),
      ],
      [by(wholeWinding('ohms-compressor-R-S')), by(whole('ohms-fan-R-S'))],
    ],
  },
  // Fed, and whole at its own terminals: what is open or hot lies between.
  'compressor-lead-burnt': {
    needs: [
      [by(fed('volts-T1-T2'))],
      [
        by(wholeWinding('ohms-compressor-C-R'), wholeWinding('ohms-compressor-C-S')),
        by(wholeWinding('ohms-compressor-R-S'), sees('look-compressor-heat', 'compressor-very-hot')),
      ],
      [by(ofRating('microfarads-herm', 'herm', 0.8))],
      [
        by(below('amps-compressor', 1), sees('look-compressor-heat', 'compressor-not-hot')),
        // Through the run winding alone, or through what is left of a lead: an overload that opens hides the same.
        indirectly(below('amps-compressor-start', 0.3)),
        indirectly(atLeast('amps-compressor', 1)),
        indirectly(below('amps-compressor', 1), sees('look-compressor-heat', 'compressor-very-hot')),
      ],
    ],
    against: [sees('look-compressor', 'compressor-running', 'compressor-runs-then-trips')],
  },
  // An open winding shows at two of the three pairs of terminals; the third says that the overload is closed.
  'compressor-run-winding-open': {
    needs: [
      [
        by(
          brokenWinding('ohms-compressor-C-R'),
          wholeWinding('ohms-compressor-C-S'),
          brokenWinding('ohms-compressor-R-S'),
        ),
      ],
    ],
    twice: true,
  },
  'compressor-start-winding-open': {
    needs: [
      [
        by(
          brokenWinding('ohms-compressor-C-S'),
          wholeWinding('ohms-compressor-C-R'),
          brokenWinding('ohms-compressor-R-S'),
        ),
        // Hot, its overload is open as well: which winding it is shows once it has cooled.
        indirectly(
          brokenWinding('ohms-compressor-C-S'),
          brokenWinding('ohms-compressor-R-S'),
          sees('look-compressor-heat', 'compressor-very-hot'),
        ),
      ],
    ],
    twice: true,
  },
  'compressor-grounded': {
    // Leads that stay on show a grounded fan motor at the compressor as well.
    needs: [[by(leaks('ohms-compressor-R-shell')), by(leaks('ohms-compressor-shell'))], [by(holds('ohms-fan-frame'))]],
    twice: true,
  },
  // Cold: an overload that opened on heat closes again, and is no fault (common practice: half an hour, often hours).
  // While it stays hot it is found by exclusion.
  'compressor-overload-open': {
    afterWait: { check: sees('look-compressor-heat', 'compressor-very-hot'), minutes: 30 },
    needs: [
      [by(brokenWinding('ohms-compressor-C-R'), wholeWinding('ohms-compressor-R-S'))],
      [by(brokenWinding('ohms-compressor-C-S'))],
      [
        by(sees('look-compressor-heat', 'compressor-not-hot')),
        indirectly(sees('look-compressor-heat', 'compressor-very-hot')),
      ],
    ],
    twice: true,
  },
  // Fed, capacitor and windings right, drawing through both windings, and it does not turn.
  'compressor-seized': {
    needs: [
      [by(fedWell('volts-T1-T2'))],
      // Without outdoor air it stalls against its own head: what stops the fan is found first.
      [
        by(sees('look-outdoor-fan', 'fan-turning')),
        indirectly(sees('look-outdoor-fan', 'fan-not-turning', 'fan-hums')),
      ],
      // Without indoor air it trips hot as well.
      [by(sees('look-blower', 'blower-running'))],
      [by(ofRating('microfarads-herm', 'herm', 0.8))],
      [
        by(wholeWinding('ohms-compressor-C-R'), wholeWinding('ohms-compressor-C-S')),
        by(wholeWinding('ohms-compressor-R-S'), sees('look-compressor-heat', 'compressor-very-hot')),
      ],
      [
        by(
          lockedRotor('amps-compressor'),
          atLeast('amps-compressor-start', 0.5),
          withoutStartPart,
          sees('look-compressor-heat', 'compressor-not-hot'),
        ),
        // Where it has a part that helps it start, or may have one, that part may be what fails: its relay is not read.
        indirectly(lockedRotor('amps-compressor'), atLeast('amps-compressor-start', 0.5)),
        // Its overload has opened on heat: nothing flows, and a burnt lead would look the same.
        indirectly(
          below('amps-compressor', 1),
          wholeWinding('ohms-compressor-R-S'),
          sees('look-compressor-heat', 'compressor-very-hot'),
        ),
      ],
    ],
    // What is hot has run, or tried for long: whether it starts once it is cold and its pressures are even is not read.
    // What runs first and trips then is not stuck.
    against: [sees('look-compressor', 'compressor-running', 'compressor-runs-then-trips')],
    twice: true,
  },
  'crankcase-heater-open': {
    needs: [[by(broken('ohms-crankcase-heater')), by(below('amps-crankcase-heater', 0.05))]],
  },
  'fan-lead-off': {
    needs: [
      // Without its fan the unit trips, and nothing is fed any more.
      [by(fed('volts-T1-T2')), indirectly(sees('look-compressor', 'compressor-runs-then-trips'))],
      [by(whole('ohms-fan-C-R'), whole('ohms-fan-C-S')), by(whole('ohms-fan-C-R'), whole('ohms-fan-R-S'))],
      [by(ofRating('microfarads-fan', 'fan', 0.8))],
      [by(sees('look-fan-by-hand', 'fan-spins-freely'))],
      // Common off: nothing. Start off: nothing there. Run off: all that flows goes through the start winding.
      [by(below('amps-fan', 0.15)), by(below('amps-fan-start', 0.1)), indirect(sameAmps('amps-fan', 'amps-fan-start'))],
    ],
    against: [sees('look-outdoor-fan', 'fan-turning')],
  },
  // At two of the three pairs: a probe beside its terminal reads open as well, and then mostly again.
  'fan-run-winding-open': { needs: [[by(broken('ohms-fan-C-R'), broken('ohms-fan-R-S'))]] },
  'fan-start-winding-open': { needs: [[by(broken('ohms-fan-C-S'), broken('ohms-fan-R-S'))]] },
  'fan-motor-grounded': { needs: [[by(leaks('ohms-fan-frame'))]] },
  'fan-bearings-seized': { needs: [[by(sees('look-fan-by-hand', 'fan-stiff'))]] },
  'defrost-fan-relay-open': {
    needs: [
      [
        // A lead that is off ahead of the motor reads the same.
        indirectly(fed('volts-T1-T2'), underShare('volts-fan', 0.5)),
        by(beyond('volts-fan')),
        // Without its fan it trips on pressure, and nothing is fed any more: what is left is a motor that is whole.
        indirectly(
          sees('look-compressor', 'compressor-runs-then-trips'),
          whole('ohms-fan-C-R'),
          whole('ohms-fan-R-S'),
          sees('look-fan-by-hand', 'fan-spins-freely'),
          ofRating('microfarads-fan', 'fan', 0.8),
        ),
      ],
    ],
    against: [
      atLeast('amps-fan', 0.2),
      atLeast('amps-fan-start', 0.2),
      fed('volts-fan'),
      sees('look-outdoor-fan', 'fan-turning'),
    ],
  },
} as const satisfies Partial<Record<FaultId, ProofRow>>;
