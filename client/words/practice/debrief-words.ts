import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import { OBSERVATIONS_BY_ID } from '../../../grammar/vocabulary/observations.ts';
import type { UnitCode, Value } from '../../../grammar/vocabulary/quantities.ts';
import { nameIn } from '../../../grammar/vocabulary/rows-by.ts';
import { TESTS_BY_ID, type TestId } from '../../../grammar/vocabulary/tests.ts';
import { faultWords } from '../things/fault-words.ts';

/** What is counted, as its row is called; no row is a sum of others. */
export const COUNT_NAMES = {
  minutes: 'minutes of work',
  tests: 'tests',
  redundant: 'tests that could tell nothing',
  harmful: 'harmful acts',
  nearMisses: 'near misses',
  skippedProofs: 'proofs of absence skipped',
  probesElsewhere: 'probes elsewhere than said',
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
}

export const DEBRIEF = {
  title: 'Debrief',
  hidden: (faults: readonly FaultId[]) => `Hidden: ${faults.map(faultWords).join(', and ')}.`,
  ended: ({ ending, mended, finding }: Ended) =>
    `${ENDING_WORDS[ending]}; ${finding === undefined ? 'no finding' : `finding: ${faultWords(finding)}`}; ${mended ? 'mended' : 'not mended'}`,
  trainee: 'you',
  planner: 'planner',
  stops: 'Near misses and harm',
  noStops: 'Nothing was stopped for.',
  tests: 'Test by test',
  noTests: 'No test was made.',
  counts: 'Counts',
  noTotal: 'Each count stands for itself. There is no total.',
  elsewhere: (said: string, stood: string) => `Told as ${said}; the probes stood at ${stood}.`,
  atMinute: (minutes: number) => `${minutes.toFixed(0)} min`,
  test: (test: TestId) => TESTS_BY_ID[test].name,
  suspected: (suspect: FaultId | 'none-yet') => (suspect === 'none-yet' ? 'none yet' : faultWords(suspect)),
  /** A value as a meter shows it, or what is seen. */
  shown: (value: Value | string, unit: UnitCode | 'observation') =>
    unit === 'observation'
      ? nameIn(OBSERVATIONS_BY_ID, String(value))
      : `${typeof value === 'number' ? short(value) : value} ${value === 'open' ? '' : unit}`.trim(),
  remains: (suspects: readonly { readonly fault: FaultId; readonly probability: number }[]) =>
    suspects.map(({ fault, probability }) => `${faultWords(fault)} ${Math.round(probability * 100)} %`).join(', '),
  wouldShow: 'each suspect said it would show',
  left: 'left',
  toldNothing: 'could tell nothing',
  /** @param bits what a test could tell, of what stood open, both in bits */
  couldTell: (bits: number, open: number) =>
    `could tell about ${Math.max(1, Math.min(100, Math.round((100 * bits) / Math.max(bits, open, 0.01))))} % of what was open`,
} as const;

/** As many figures as a meter has. */
function short(value: number): string {
  return Math.abs(value) >= 100 ? String(Math.round(value)) : String(Math.round(value * 10) / 10);
}
