import { REPEAT_WITHIN_DAYS, type VisitBrief } from '../store/visit-index.ts';

/** A table of the fleet: its columns by name, the first of them what the row is of. */
export interface FleetTable {
  readonly id: FleetTableId;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly (string | number)[])[];
}

export const FLEET_TABLES = [
  'findings',
  'parts',
  'ages',
  'months',
  'repeats',
  'units',
  'steps',
  'misheard',
  'set-right',
] as const;
export type FleetTableId = (typeof FLEET_TABLES)[number];

/** Of tables that have a row for each of something without end. */
const MOST_ROWS = 100;
/** A step of a search has the number of that search in its id: of many visits it is the same step. */
const NUMBERED = /#\d+$/;
const DAY_MS = 86_400_000;
/** Units by age in so many years a row. */
const AGE_STEP = 5;
const OLDEST = 20;

type Counted = Pick<
  VisitBrief,
  | 'openedAt'
  | 'finding'
  | 'certainty'
  | 'parts'
  | 'made'
  | 'serial'
  | 'site'
  | 'steps'
  | 'misheard'
  | 'setRight'
  | 'minutes'
>;

/**
 * What many visits come to: counts and medians, and nothing is weighed into one figure. It is filled visit by visit,
 * so that whoever goes over many can let others have their turns.
 */
export class Fleet {
  #visits = 0;
  readonly #findings = new Map<string, number[]>();
  readonly #parts = new Map<string, { visits: number; times: number }>();
  readonly #ages = new Map<string, number>();
  readonly #months = new Map<string, number>();
  readonly #units = new Map<string, { name: string; opened: { at: number; finding: string }[] }>();
  readonly #steps = new Map<string, number[]>();
  readonly #misheard = new Map<string, { times: number; visits: number }>();
  readonly #setRight = new Map<string, number>();

  get visits(): number {
    return this.#visits;
  }

  add(brief: Counted): void {
    this.#visits += 1;
    const finding = brief.finding ?? 'none';
    push(this.#findings, finding, brief.finding === undefined ? undefined : brief.certainty);
    for (const part of new Set(brief.parts)) {
      const before = this.#parts.get(part) ?? { visits: 0, times: 0 };
      const times = brief.parts.filter((one) => one === part).length;
      this.#parts.set(part, { visits: before.visits + 1, times: before.times + times });
    }
    const opened = new Date(brief.openedAt);
    count(this.#ages, ageOf(brief.made, opened.getUTCFullYear()));
    count(this.#months, String(opened.getUTCMonth() + 1).padStart(2, '0'));
    this.#addUnit(brief, finding);
    for (const { step, minutes } of brief.steps) push(this.#steps, step.replace(NUMBERED, ''), minutes);
    for (const words of new Set(brief.misheard)) {
      const before = this.#misheard.get(words) ?? { times: 0, visits: 0 };
      const times = brief.misheard.filter((one) => one === words).length;
      this.#misheard.set(words, { times: before.times + times, visits: before.visits + 1 });
    }
    for (const place of brief.setRight) count(this.#setRight, place);
  }

  #addUnit({ serial, site, openedAt }: Counted, finding: string): void {
    const name = serial === '' ? site : serial;
    const key = name.toLowerCase().replaceAll(/[^\p{L}\p{N}]+/gu, '');
    if (key === '') return;
    const unit = this.#units.get(key) ?? { name, opened: [] };
    this.#units.set(key, unit);
    unit.opened.push({ at: openedAt, finding });
  }

  tables(): readonly FleetTable[] {
    return FLEET_TABLES.map((id) => ({ id, ...this.#table(id) }));
  }

  #table(id: FleetTableId): Omit<FleetTable, 'id'> {
    const share = (visits: number, of = this.#visits) => (of === 0 ? 0 : Math.round((visits / of) * 1000) / 1000);
    switch (id) {
      case 'findings':
        return {
          columns: ['finding', 'visits', 'share', 'median-certainty'],
          rows: most(this.#findings, (sure) => sure.length).map(([finding, sure]) => {
            const known = sure.filter((one) => one !== undefined);
            return [finding, sure.length, share(sure.length), known.length === 0 ? '' : quantile(known, 0.5)];
          }),
        };
      case 'parts':
        return {
          columns: ['part', 'visits', 'share', 'fitted'],
          rows: most(this.#parts, ({ visits }) => visits).map(([part, { visits, times }]) => [
            part,
            visits,
            share(visits),
            times,
          ]),
        };
      case 'ages':
        return { columns: ['age', 'visits', 'share'], rows: inOrder(this.#ages).map(([age, n]) => [age, n, share(n)]) };
      case 'months':
        return { columns: ['month', 'visits', 'share'], rows: inOrder(this.#months).map(([m, n]) => [m, n, share(n)]) };
      case 'repeats':
        return { columns: ['finding', 'visits', 'repeated', 'share'], rows: this.#repeats(share) };
      case 'units':
        return {
          columns: ['unit', 'visits'],
          rows: most(this.#units, ({ opened }) => opened.length)
            .filter(([, { opened }]) => opened.length > 1)
            .map(([, { name, opened }]) => [name, opened.length]),
        };
      case 'steps':
        return {
          columns: ['step', 'times', 'median-minutes', 'nine-in-ten-minutes'],
          rows: most(this.#steps, (minutes) => minutes.length).map(([step, minutes]) => [
            step,
            minutes.length,
            quantile(minutes, 0.5),
            quantile(minutes, 0.9),
          ]),
        };
      case 'misheard':
        return {
          columns: ['words', 'times', 'visits'],
          rows: most(this.#misheard, ({ times }) => times).map(([words, { times, visits }]) => [words, times, visits]),
        };
      case 'set-right':
        return { columns: ['place', 'times'], rows: most(this.#setRight, (times) => times).map((row) => [...row]) };
    }
  }

  /** By what was found: how many visits were followed by another at the same unit within the days of a repeat call. */
  #repeats(share: (visits: number, of: number) => number): FleetTable['rows'] {
    const counts = new Map<string, { visits: number; repeated: number }>();
    for (const { opened } of this.#units.values()) {
      opened.sort((a, b) => a.at - b.at);
      for (const [at, { at: time, finding }] of opened.entries()) {
        const next = opened[at + 1]?.at;
        const isRepeated = next !== undefined && next - time <= REPEAT_WITHIN_DAYS * DAY_MS;
        const before = counts.get(finding) ?? { visits: 0, repeated: 0 };
        counts.set(finding, { visits: before.visits + 1, repeated: before.repeated + (isRepeated ? 1 : 0) });
      }
    }
    return most(counts, ({ repeated }) => repeated).map(([finding, { visits, repeated }]) => [
      finding,
      visits,
      repeated,
      share(repeated, visits),
    ]);
  }
}

function count(counts: Map<string, number>, key: string): void {
  counts.set(key, (counts.get(key) ?? 0) + 1);
}

function push<Value>(lists: Map<string, Value[]>, key: string, value: Value): void {
  const list = lists.get(key);
  if (list === undefined) lists.set(key, [value]);
  else list.push(value);
}

/** "00-04", "05-09", … "20+", so that they sort as they grow. */
function ageOf(made: number | undefined, year: number): string {
  if (made === undefined || made > year) return 'unknown';
  const from = Math.min(OLDEST, Math.floor((year - made) / AGE_STEP) * AGE_STEP);
  const two = (years: number) => String(years).padStart(2, '0');
  return from === OLDEST ? `${OLDEST}+` : `${two(from)}-${two(from + AGE_STEP - 1)}`;
}

/** The largest first; of those alike, by name. */
function most<Value>(rows: Map<string, Value>, size: (value: Value) => number): readonly (readonly [string, Value])[] {
  return [...rows].sort((a, b) => size(b[1]) - size(a[1]) || (a[0] < b[0] ? -1 : 1)).slice(0, MOST_ROWS);
}

const inOrder = (rows: Map<string, number>) => [...rows].sort(([a], [b]) => (a < b ? -1 : 1));

/** The value below which that share of the values lies, to a hundredth; the nearest of them. */
function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return Math.round((sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? 0) * 100) / 100;
}
