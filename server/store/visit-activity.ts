import type { Database } from 'better-sqlite3';
import type { StreamId } from '../../grammar/visit/envelope.ts';
import type { VisitSummary } from './event-store.ts';

type VisitId = Pick<StreamId, 'company' | 'visit'>;

/**
 * The visits in the order of their latest activity, held in memory: to list them reads a page of them and never the
 * whole record, behind which acknowledgements would wait, and a visit that did not move is not read again.
 */
export class VisitActivity {
  /** By company; within it the visit that moved last stands last, with what is to be told of it, once it was asked. */
  readonly #visits = new Map<string, Map<string, VisitSummary | undefined>>();

  /** As the record stands: by what came of each visit, and before that by what was only said of it. */
  static of(database: Database): VisitActivity {
    const activity = new VisitActivity();
    const said = database.prepare<[], VisitId>(`
      SELECT company, visit FROM said GROUP BY company, visit ORDER BY max(id)`);
    const came = database.prepare<[], VisitId>(`
      SELECT company, visit FROM stream JOIN event AS last ON last.stream = stream.id
        AND last.seq = (SELECT max(seq) FROM event WHERE stream = stream.id)
      GROUP BY company, visit ORDER BY max(last.arrival)`);
    for (const visit of [...said.all(), ...came.all()]) activity.touched(visit);
    return activity;
  }

  touched({ company, visit }: VisitId): void {
    const visits = this.#visits.get(company) ?? new Map<string, VisitSummary | undefined>();
    this.#visits.set(company, visits);
    visits.delete(visit);
    visits.set(visit, undefined);
  }

  /** What is to be told of it is read anew; its place in the list stays. */
  changed({ company, visit }: VisitId): void {
    const visits = this.#visits.get(company);
    if (visits?.has(visit) === true) visits.set(visit, undefined);
  }

  /** What is told of a visit, read once for each change. */
  summary(company: string, visit: string, read: () => VisitSummary): VisitSummary {
    const visits = this.#visits.get(company);
    const kept = visits?.get(visit);
    if (kept !== undefined) return kept;
    const summary = read();
    if (visits?.has(visit) === true) visits.set(visit, summary);
    return summary;
  }

  /** A page of the company's visits, the one that moved last first. */
  newest(company: string, { limit, offset }: { readonly limit: number; readonly offset: number }): readonly string[] {
    const visits = [...(this.#visits.get(company)?.keys() ?? [])];
    const end = visits.length - offset;
    return end <= 0 ? [] : visits.slice(Math.max(0, end - limit), end).reverse();
  }
}
