import { reportFault } from '../report-fault.ts';
import type { AuditLine, PeopleStore } from './people-store.ts';

/** Who did something, as far as is known; empty where it is not. */
export type Doer = Partial<Pick<AuditLine, 'company' | 'person' | 'device'>>;

/** So long the same refusals are gathered into one line: whoever knocks 10,000 times does not fill the disk. */
const GATHER_MS = 60_000;
/** So many different refusals are gathered at once; beyond it all are put under one line. */
const MOST_GATHERED = 1_000;
const LONGEST_DETAIL = 200;

/** Writes the trail: each change at once, each kind of refusal at once and then how often it came again, a minute each. */
export class Auditor {
  readonly #store: Pick<PeopleStore, 'note'>;
  readonly #clock: () => number;
  readonly #again = new Map<string, AuditLine>();
  readonly #timer: NodeJS.Timeout;

  constructor(store: Pick<PeopleStore, 'note'>, clock: () => number) {
    this.#store = store;
    this.#clock = clock;
    this.#timer = setInterval(() => void this.flush(), GATHER_MS);
    this.#timer.unref();
  }

  /** Resolves when it is kept: what cannot be put on the trail is not done. */
  async done(deed: string, by: Doer, detail = ''): Promise<void> {
    await this.#store.note(this.#line('done', deed, by, detail));
  }

  /** Resolves at once where the same was refused within the minute. A line that cannot be kept lets nobody in. */
  async refused(deed: string, by: Doer, detail = ''): Promise<void> {
    const line = this.#line('refused', deed, by, detail);
    const { at: _at, times: _times, ...same } = line;
    const key = JSON.stringify(same);
    const gathered = this.#again.get(key);
    if (gathered !== undefined) {
      this.#again.set(key, { ...gathered, at: line.at, times: gathered.times + 1 });
      return;
    }
    if (this.#again.size >= MOST_GATHERED) {
      const many = { ...line, company: '', person: '', device: '', deed: 'many', detail: '' };
      const before = this.#again.get('many');
      this.#again.set('many', { ...many, times: (before?.times ?? 0) + 1 });
      return;
    }
    this.#again.set(key, { ...line, times: 0 });
    await this.#store.note(line).catch(reportFault);
  }

  /** Writes what was gathered. */
  async flush(): Promise<void> {
    const lines = [...this.#again.values()].filter(({ times }) => times > 0);
    this.#again.clear();
    for (const line of lines) await this.#store.note(line).catch(reportFault);
  }

  async close(): Promise<void> {
    clearInterval(this.#timer);
    await this.flush();
  }

  #line(outcome: AuditLine['outcome'], deed: string, by: Doer, detail: string): AuditLine {
    const { company = '', person = '', device = '' } = by;
    return {
      at: this.#clock(),
      company,
      person,
      device,
      deed,
      outcome,
      detail: detail.slice(0, LONGEST_DETAIL),
      times: 1,
    };
  }
}
