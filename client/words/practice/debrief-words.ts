import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import { OBSERVATIONS_BY_ID } from '../../../grammar/vocabulary/observations.ts';
import type { UnitCode, Value } from '../../../grammar/vocabulary/quantities.ts';
import { nameIn } from '../../../grammar/vocabulary/rows-by.ts';
import { TESTS_BY_ID, type TestId } from '../../../grammar/vocabulary/tests.ts';
import { showValue } from '../shown/show-reading.ts';
import { faultWords } from '../things/fault-words.ts';
import { wholePercent } from '../things/value-words.ts';

/** What is counted, as its row is called; there is no total. */
export const COUNT_NAMES = {
  minutes: 'minutes of work',
  tests: 'tests',
  redundant: 'tests that could tell nothing',
  harmful: 'harmful acts',
  nearMisses: 'near misses',
  skippedProofs: 'proofs of absence skipped',
  notSwitchedOff: 'of these, not even switched off',
  notRead: 'of these, off and nothing read',
  probesElsewhere: 'probes elsewhere than said',
  untested: 'suspects named, not tested',
  leftOpen: 'questions and steps left open',
  unfounded: 'repairs begun before a finding',
  needlessParts: 'parts fitted needlessly',
  notProven: 'repairs not proven',
  hints: 'hints',
} as const;
export type CountName = keyof typeof COUNT_NAMES;

const ENDING_WORDS = {
  closed: 'the visit was closed',
  stopped: 'stopped for safety',
  'given-up': 'given up',
  'out-of-time': 'out of time',
  running: 'not finished',
} as const;

interface Ended {
  readonly ending: keyof typeof ENDING_WORDS;
  readonly mended: boolean;
  readonly finding: FaultId | undefined;
  readonly counts: { readonly notProven: number };
}

export const DEBRIEF = {
  title: 'Debrief',
  hidden: (faults: readonly FaultId[]) => `Hidden: ${faults.map(faultWords).join(', and ')}.`,
  ended: ({ ending, mended, finding, counts }: Ended) =>
    `${ENDING_WORDS[ending]}; ${finding === undefined ? 'no finding' : `finding: ${faultWords(finding)}`}; ${mended ? 'mended' : 'not mended'}${counts.notProven > 0 ? ', not proven' : ''}`,
  trainee: 'you',
  planner: 'planner',
  stops: 'Near misses and harm',
  noStops: 'Nothing was stopped for.',
  /** No harm, and a list of its own where there is one. */
  elsewhereTitle: 'Probes elsewhere than said or asked',
  tests: 'Test by test',
  noTests: 'No test was made.',
  counts: 'Counts',
  noTotal: 'Each count stands for itself. There is no total.',
  elsewhere: (said: string, stood: string, asked = false) =>
    `${asked ? 'Asked at' : 'Told as'} ${said}; the probes stood at ${stood}.`,
  atMinute: (minutes: number) => `${minutes.toFixed(0)} min`,
  test: (test: TestId) => TESTS_BY_ID[test].name,
  suspected: (suspect: FaultId | 'none-yet') => (suspect === 'none-yet' ? 'none yet' : faultWords(suspect)),
  /** A value as a meter shows it, or what is seen. */
  shown: (value: Value | string, unit: UnitCode | 'observation') =>
    unit === 'observation'
      ? nameIn(OBSERVATIONS_BY_ID, String(value))
      : showValue(typeof value === 'number' ? short(value) : (value as Value), unit),
  remains: (suspects: readonly { readonly fault: FaultId; readonly probability: number }[]) =>
    suspects.map(({ fault, probability }) => `${faultWords(fault)} ${wholePercent(probability)} %`).join(', '),
  wouldShow: 'each suspect said it would show',
  left: 'left',
  toldNothing: 'could tell nothing',
  /** @param bits what a test could tell, of what stood open, both in bits */
  couldTell: (bits: number, open: number) =>
    `could tell about ${Math.max(1, Math.min(100, Math.round((100 * bits) / Math.max(bits, open, 0.01))))} % of what was open`,
} as const;

/** As many figures as a meter has. */
function short(value: number): number {
  return Math.abs(value) >= 100 ? Math.round(value) : Math.round(value * 10) / 10;
}
