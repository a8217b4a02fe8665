import type { Spending } from '../../client/practice/work-clock.ts';
import { calibrate } from './quality.ts';

/** A case that is over, whichever simulator it came from. */
export interface Ended {
  readonly right: boolean;
  readonly named: readonly string[];
  /** Of the last one named. */
  readonly probability: number;
  readonly tests: number;
  readonly minutes: number;
  /** What the minutes went to. */
  readonly spent: ReadonlyMap<Spending, number>;
  /** Minutes until the truth led and was not left again. */
  readonly searching: number;
  /** Each step's leader: its probability, and whether it was the truth. */
  readonly claims: readonly (readonly [number, boolean])[];
}

/** One round of one simulator, with the branching chart beside it. */
export interface Sat {
  readonly simulator: string;
  readonly title: string;
  readonly ended: readonly Ended[];
  readonly charts: readonly { readonly right: boolean; readonly minutes: number }[];
}

const SURE = 0.9;
const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / Math.max(1, values.length);
const share = (values: readonly boolean[]) => `${(100 * mean(values.map(Number))).toFixed(1)} %`.padStart(8);

/** Named something false with 0.9 or more: somebody would have bought the part. */
export const surelyWrong = (e: Ended): boolean =>
  !e.right && e.probability >= SURE && e.named.at(-1) !== 'something-else' && e.named.length > 0;

function row({ simulator, title, ended, charts }: Sat): string {
  return [
    simulator.padEnd(8),
    title.padEnd(26),
    `${ended.length}`.padStart(5),
    share(ended.map((e) => e.right)),
    share(ended.map(surelyWrong)),
    share(ended.map((e) => e.named.at(-1) === 'something-else')),
    mean(ended.map((e) => e.tests))
      .toFixed(1)
      .padStart(6),
    mean(ended.map((e) => e.minutes))
      .toFixed(1)
      .padStart(6),
    share(charts.map((c) => c.right)),
    mean(charts.map((c) => c.minutes))
      .toFixed(1)
      .padStart(6),
  ].join(' ');
}

const bins = (claims: readonly (readonly [number, boolean])[]) =>
  calibrate(claims).map((b) => `${b.claimed.toFixed(2)}→${b.true.toFixed(2)} (${b.steps})`);

/** Minutes of a case in the mean, by what they went to, the most first. */
function whereMinutesGo(ended: readonly Ended[]): string {
  const all = [...new Set(ended.flatMap(({ spent }) => [...spent.keys()]))];
  const each = all.map((what) => [what, mean(ended.map(({ spent }) => spent.get(what) ?? 0))] as const);
  const told = each.sort(([, a], [, b]) => b - a).map(([what, minutes]) => `${what} ${minutes.toFixed(1)}`);
  const searching = mean(ended.map((e) => e.searching));
  const proving = mean(ended.map((e) => e.minutes)) - searching;
  return `until the truth leads ${searching.toFixed(1)}, after ${proving.toFixed(1)}: ${told.join(', ')}`;
}

/** Every simulator under the same heads: what was right, what was surely wrong, and what a claim was worth. */
export function sideBySide(sittings: readonly Sat[]): string[] {
  const head = `${''.padEnd(35)} cases    right  surely wrong    else  tests    min   chart right  min`;
  const worth = sittings.flatMap(({ simulator, title, ended }) => [
    `${simulator} ${title}`,
    `  each step, claimed→true: ${bins(ended.flatMap((e) => e.claims)).join('  ')}`,
    `  at the end:              ${bins(ended.map((e) => [e.probability, e.right])).join('  ')}`,
    `  minutes ${whereMinutesGo(ended)}`,
  ]);
  return [head, ...sittings.map(row), '', ...worth];
}
