import { type ExpressionBuilder, type Kysely, type SqlBool, sql, type Transaction } from 'kysely';
import type { BriefChoices, BriefFilter, ListedBrief, VisitBrief, VisitIndex } from './visit-index.ts';
import { REPEAT_WITHIN_DAYS } from './visit-index.ts';
import type { IndexTables } from './visit-index-tables.ts';

const DAY_MS = 86_400_000;
const REPEAT_MS = REPEAT_WITHIN_DAYS * DAY_MS;
/** So many other visits to a unit are offered. */
const MOST_OF_UNIT = 50;
/** Choices of a filter beyond so many are left to the search. */
const MOST_CHOICES = 200;

/** The index over its tables: all SQL of it that is not the making of them. */
export function sqlVisitIndex(db: Kysely<IndexTables>): VisitIndex {
  const listed = () => db.selectFrom('brief').select(['brief.shown', 'brief.before']);
  return {
    put: (company, brief) =>
      db.transaction().execute(async (within) => {
        const row = rowOf(company, brief);
        const was = await unitOf(within, company, brief.visit);
        const moved = was === undefined || hasMoved(was, row);
        const { id } = await within
          .insertInto('brief')
          .values({ ...row, before: 0 })
          .onConflict((conflict) =>
            conflict.columns(['company', 'visit']).doUpdateSet(moved ? { ...row, before: 0 } : row),
          )
          .returning('id')
          .executeTakeFirstOrThrow();
        await within.deleteFrom('fitted').where('brief', '=', id).execute();
        const parts = [...new Set(brief.parts)].map((part) => ({ company, part, brief: id }));
        if (parts.length > 0) await within.insertInto('fitted').values(parts).execute();
        await within.deleteFrom('spoken').where('rowid', '=', id).execute();
        await within.insertInto('spoken').values({ rowid: id, words: brief.words }).execute();
        if (moved) await countBefore(within, company, was === undefined ? [row] : [was, row]);
      }),
    forget: (company, visit) =>
      db.transaction().execute(async (within) => {
        const row = await within
          .selectFrom('brief')
          .select(['id', ...UNIT])
          .where('company', '=', company)
          .where('visit', '=', visit)
          .executeTakeFirst();
        if (row === undefined) return;
        await within.deleteFrom('fitted').where('brief', '=', row.id).execute();
        await within.deleteFrom('spoken').where('rowid', '=', row.id).execute();
        await within.deleteFrom('brief').where('id', '=', row.id).execute();
        await countBefore(within, company, [row]);
      }),
    held: () => db.selectFrom('brief').select(['company', 'visit', 'events', 'site']).execute(),
    list: async (company, filter, { limit, offset }) => {
      const where = conditions(company, filter);
      const rows = await listed().where(where).orderBy('last_at', 'desc').limit(limit).offset(offset).execute();
      const { total } = await db
        .selectFrom('brief')
        .select(({ fn }) => fn.countAll<number>().as('total'))
        .where(where)
        .executeTakeFirstOrThrow();
      return { visits: rows.map(toListed), total };
    },
    choices: (company) => choicesOf(db, company),
    atSameUnit: async (company, visit) => {
      const rows = await listed()
        .innerJoin('brief as mine', (join) => join.onRef('mine.company', '=', 'brief.company'))
        .where('mine.company', '=', company)
        .where('mine.visit', '=', visit)
        .whereRef('brief.visit', '<>', 'mine.visit')
        .where(({ or }) => or([sameSerial('brief', 'mine'), sameSite('brief', 'mine')]))
        .orderBy('brief.opened_at', 'desc')
        .limit(MOST_OF_UNIT)
        .execute();
      return rows.map(toListed);
    },
    all: async (company, { after, limit }) => {
      const rows = await db
        .selectFrom('brief')
        .select(['shown', 'counted'])
        .where('company', '=', company)
        .where('visit', '>', after)
        .orderBy('visit')
        .limit(limit)
        .execute();
      return rows.map(({ shown, counted }) => ({ ...JSON.parse(shown), ...JSON.parse(counted), words: '' }));
    },
    close: () => db.destroy(),
  };
}

const column = (table: string, name: keyof IndexTables['brief']) => sql.ref(`${table}.${name}`);

/** The same serial number. */
const sameSerial = (one: string, other: string) =>
  sql<SqlBool>`(${column(one, 'serial_key')} = ${column(other, 'serial_key')} AND ${column(other, 'serial_key')} <> '')`;

/** The same site, where one of the two has no serial number. */
const sameSite = (one: string, other: string) =>
  sql<SqlBool>`(${column(one, 'site_key')} = ${column(other, 'site_key')} AND ${column(other, 'site_key')} <> ''
    AND (${column(one, 'serial_key')} = '' OR ${column(other, 'serial_key')} = ''))`;

/** Visits in the days before that are the same in one way: asked way by way, each finds its rows by an index. */
const before = (same: typeof sameSerial) =>
  sql`FROM brief AS earlier WHERE earlier.company = brief.company AND earlier.opened_at < brief.opened_at
    AND earlier.opened_at >= brief.opened_at - ${sql.lit(REPEAT_MS)} AND ${same('earlier', 'brief')}`;
const beforeCount = sql<number>`(SELECT count(*) ${before(sameSerial)}) + (SELECT count(*) ${before(sameSite)})`;

/** What says which visits are of one unit, and which was before which. */
const UNIT = ['opened_at', 'serial_key', 'site_key'] as const;
type OfUnit = Pick<IndexTables['brief'], (typeof UNIT)[number]>;

const unitOf = (db: Transaction<IndexTables>, company: string, visit: string): Promise<OfUnit | undefined> =>
  db.selectFrom('brief').select(UNIT).where('company', '=', company).where('visit', '=', visit).executeTakeFirst();

const hasMoved = (was: OfUnit, is: OfUnit): boolean => UNIT.some((name) => was[name] !== is[name]);

/**
 * Counts anew what was before: of the visits that a row may be before, and of itself. It is kept in the rows, since a
 * list of repeat calls would else look behind every visit of the company.
 */
async function countBefore(db: Transaction<IndexTables>, company: string, rows: readonly OfUnit[]): Promise<void> {
  for (const { opened_at, serial_key, site_key } of rows) {
    await db
      .updateTable('brief')
      .set({ before: beforeCount })
      .where('company', '=', company)
      .where('opened_at', '>=', opened_at)
      .where('opened_at', '<=', opened_at + REPEAT_MS)
      .where(({ eb, or, and }) =>
        or([
          and([eb('serial_key', '=', serial_key), eb('serial_key', '<>', '')]),
          and([eb('site_key', '=', site_key), eb('site_key', '<>', '')]),
        ]),
      )
      .execute();
  }
}

function conditions(company: string, filter: BriefFilter) {
  return (builder: ExpressionBuilder<IndexTables, 'brief'>) => {
    const { state, finding, part, from, until, technician, devices = [] } = filter;
    const words = findsWords(filter.words ?? '');
    return builder.and([
      builder('company', '=', company),
      ...(words === undefined ? [] : [words]),
      ...(state === 'not-complete' ? [builder('said', '>', 0)] : []),
      ...(state === 'closed' ? [builder('closed', '=', 1)] : []),
      ...(state === 'running' ? [builder('closed', '=', 0)] : []),
      ...(finding === undefined ? [] : [builder('finding', '=', finding === 'none' ? '' : finding)]),
      ...(part === undefined
        ? []
        : [
            sql<SqlBool>`brief.id IN (SELECT fitted.brief FROM fitted WHERE fitted.company = ${company} AND fitted.part = ${part})`,
          ]),
      ...(from === undefined ? [] : [builder('opened_at', '>=', from)]),
      ...(until === undefined ? [] : [builder('opened_at', '<', until)]),
      ...(technician === undefined
        ? []
        : [
            builder.or([
              builder('technician', '=', technician),
              ...(devices.length === 0 ? [] : [builder('device', 'in', devices)]),
            ]),
          ]),
      ...(filter.unproven === true ? [builder('unproven', '>', 0)] : []),
      ...(filter.cautionsOpen === true ? [builder('cautions_open', '>', 0)] : []),
      ...(filter.repeated === true ? [builder('before', '>', 0)] : []),
    ]);
  };
}

/** Which visits hold all words of a search; of one that has signs but no word none does. */
function findsWords(asked: string) {
  const words = searchText(asked);
  if (words !== '') return sql<SqlBool>`brief.id IN (SELECT rowid FROM spoken WHERE spoken MATCH ${words})`;
  return asked.trim() === '' ? undefined : sql<SqlBool>`0`;
}

const LETTER = /^[\p{Script=Latin}\p{N}]$/u;

/**
 * All words of a search as the full-text table takes them: each whole or from its beginning on, a single letter only as a
 * word of its own, for it begins too many. What is no word is left out.
 */
function searchText(asked: string): string {
  const words = asked.normalize('NFKC').match(/[\p{L}\p{N}]+/gu) ?? [];
  return words.map((word) => `"${word}"${LETTER.test(word) ? '' : '*'}`).join(' ');
}

async function choicesOf(db: Kysely<IndexTables>, company: string): Promise<BriefChoices> {
  const counted = (column: 'finding' | 'technician') =>
    db
      .selectFrom('brief')
      .select(({ ref, fn }) => [ref(column).as('value'), fn.countAll<number>().as('visits')])
      .where('company', '=', company)
      .where(column, '<>', '')
      .groupBy(column)
      .orderBy('visits', 'desc')
      .limit(MOST_CHOICES)
      .execute();
  const parts = await db
    .selectFrom('fitted')
    .select(({ fn }) => ['part as value', fn.countAll<number>().as('visits')])
    .where('company', '=', company)
    .groupBy('part')
    .orderBy('visits', 'desc')
    .limit(MOST_CHOICES)
    .execute();
  return { findings: await counted('finding'), parts, technicians: await counted('technician') };
}

function rowOf(company: string, brief: VisitBrief) {
  const { steps, misheard, setRight, words: _words, ...shown } = brief;
  return {
    company,
    visit: brief.visit,
    opened_at: brief.openedAt,
    last_at: brief.lastReceivedAt,
    events: brief.events,
    said: brief.said ?? 0,
    device: brief.device,
    closed: brief.closed ? 1 : 0,
    site: brief.site,
    site_key: asCompared(brief.site),
    serial_key: asCompared(brief.serial),
    technician: brief.technician,
    finding: brief.finding ?? '',
    cautions_open: brief.cautionsOpen,
    unproven: brief.unproven,
    shown: JSON.stringify(shown),
    counted: JSON.stringify({ steps, misheard, setRight }),
  };
}

const asCompared = (text: string) =>
  text
    .normalize('NFKC')
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, '');

function toListed(row: { readonly shown: string; readonly before: number }): ListedBrief {
  return { ...JSON.parse(row.shown), before: row.before };
}
