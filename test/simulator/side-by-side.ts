import type { Spending } from '../../client/practice/work-clock.ts';
import { calibrate } from './quality.ts';

/** A case that is over, whichever simulator it came from. */
export interface Ended {
  /** What was hidden belongs to: power, motors, control, cooling, outside the list. */
  readonly family: string;
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
  /** Milliseconds of each answer. */
  readonly steps: readonly number[];
}

/** One round of one simulator, with the branching chart beside it. */
export interface Sat {
  readonly simulator: string;
  readonly title: string;
  readonly ended: readonly Ended[];
  readonly charts: readonly { readonly right: boolean; readonly minutes: number }[];
  /** Minutes of who knows the fault and only proves it; none where no row tells of it, or of two. */
  readonly known: readonly number[];
}

const SURE = 0.9;
const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / Math.max(1, values.length);
const share = (values: readonly boolean[]) => `${(100 * mean(values.map(Number))).toFixed(1)} %`.padStart(8);

/** Named something false with 0.9 or more: somebody would have bought the part. */
export const surelyWrong = (e: Pick<Ended, 'right' | 'probability' | 'named'>): boolean =>
  !e.right && e.probability >= SURE && e.named.at(-1) !== 'something-else' && e.named.length > 0;

const one = (value: number, wide = 6) => (Number.isNaN(value) ? '–' : value.toFixed(1)).padStart(wide);
const meanOf = (values: readonly number[]) => (values.length === 0 ? Number.NaN : mean(values));
function percentile(values: readonly number[], part: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))] ?? Number.NaN;
}

function row({ simulator, title, ended, charts, known }: Sat): string {
  const steps = ended.flatMap((e) => e.steps);
  return [
    simulator.padEnd(8),
    title.padEnd(28),
    `${ended.length}`.padStart(5),
    share(ended.map((e) => e.right)),
    share(ended.map(surelyWrong)),
    share(ended.map((e) => e.named.at(-1) === 'something-else')),
    one(meanOf(ended.map((e) => e.tests))),
    one(meanOf(ended.map((e) => e.minutes))),
    one(percentile(steps, 0.5)),
    one(percentile(steps, 0.95)),
    share(charts.map((c) => c.right)),
    one(meanOf(charts.map((c) => c.minutes))),
    one(meanOf(known), 9),
  ].join(' ');
}

/** Right, surely wrong and minutes by what was hidden, the chart's right beside. */
function byFamily({ ended, charts }: Sat): string {
  const families = [...new Set(ended.map((e) => e.family))].sort();
  const each = families.map((family) => {
    const here = ended.flatMap((e, i) => (e.family === family ? [[e, charts[i]!] as const] : []));
    const right = here.filter(([e]) => e.right).length;
    const sure = here.filter(([e]) => surelyWrong(e)).length;
    const chart = here.filter(([, c]) => c.right).length;
    const wrong = sure > 0 ? `, ${sure} surely wrong` : '';
    return `${family} ${right}/${here.length} in ${meanOf(here.map(([e]) => e.minutes)).toFixed(1)} min${wrong} (chart ${chart} in ${meanOf(here.map(([, c]) => c.minutes)).toFixed(1)})`;
  });
  return each.join('; ');
}

/**
 * How what is outside the list was called. A near name is one under which its repair is done all the same, where the
 * simulator grants any: a contactor of the wrong coil that is called jammed is changed as well.
 */
function byName(ended: readonly Ended[]): string[] {
  const outside = ended.filter((e) => e.family === 'outside');
  if (outside.length === 0) return [];
  const isElse = (e: Ended) => e.named.at(-1) === 'something-else';
  const named = [
    ['something else', outside.filter(isElse)],
    ['a near name', outside.filter((e) => e.right && !isElse(e))],
    ['a false one', outside.filter((e) => !e.right)],
  ] as const;
  const told = named.map(([name, cases]) => `${name} ${share(outside.map((e) => cases.includes(e))).trim()}`);
  return [`  outside the list called ${told.join(', ')}`];
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
  const head = `${''.padEnd(37)} cases    right  sure+false else  tests    min  p50 ms p95 ms    chart    min  knowing`;
  const worth = sittings.flatMap((sat) => {
    const { simulator, title, ended } = sat;
    return [
      `${simulator} ${title}`,
      `  by family: ${byFamily(sat)}`,
      ...byName(ended),
      `  each step, claimed→true: ${bins(ended.flatMap((e) => e.claims)).join('  ')}`,
      `  at the end:              ${bins(ended.map((e) => [e.probability, e.right])).join('  ')}`,
      `  minutes ${whereMinutesGo(ended)}`,
    ];
  });
  return [head, ...sittings.map(row), '', ...worth];
}
