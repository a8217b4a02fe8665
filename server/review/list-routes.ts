import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox';
import Type, { type Static } from 'typebox';
import { csvLines } from '../../grammar/export/csv-lines.ts';
import { NameSchema } from '../../grammar/visit/message-schemas.ts';
import { ServerError } from '../errors.ts';
import { callerOf } from '../people/guard.ts';
import { guardVisits } from '../people/may-read.ts';
import type { PeopleStore } from '../people/people-store.ts';
import type { EventStore } from '../store/event-store.ts';
import type { BriefFilter, ListedBrief, VisitIndex } from '../store/visit-index.ts';
import { FLEET_TABLES, Fleet } from './fleet.ts';
import type { IndexKeeper } from './index-keeper.ts';
import { ErrorSchema } from './visits.ts';

export interface ListOptions {
  readonly store: Pick<EventStore, 'streams'>;
  readonly people: Pick<PeopleStore, 'devices' | 'leases' | 'people'>;
  readonly index: VisitIndex;
  readonly keeper: IndexKeeper;
}

const Milliseconds = Type.Integer({ description: 'milliseconds since 1970' });
const Count = Type.Integer({ minimum: 0 });
const Text = Type.String({ maxLength: 200 });
const Flag = Type.Optional(Type.Boolean());

const FilterSchema = Type.Object({
  words: Type.Optional(Text),
  state: Type.Optional(Type.Union(['running', 'closed', 'not-complete'].map((state) => Type.Literal(state)))),
  finding: Type.Optional(Text),
  part: Type.Optional(Text),
  technician: Type.Optional(Text),
  from: Type.Optional(Milliseconds),
  until: Type.Optional(Milliseconds),
  unproven: Flag,
  cautionsOpen: Flag,
  repeated: Flag,
});

const BriefSchema = Type.Object({
  visit: NameSchema,
  openedAt: Milliseconds,
  lastReceivedAt: Milliseconds,
  events: Count,
  said: Type.Optional(Count),
  device: Type.String(),
  closed: Type.Boolean(),
  role: Type.String(),
  site: Type.String(),
  complaint: Type.String(),
  model: Type.String(),
  serial: Type.String(),
  made: Type.Optional(Type.Integer()),
  technician: Type.String(),
  finding: Type.Optional(Type.String()),
  certainty: Type.Optional(Type.Number()),
  likeliest: Type.Optional(Type.String()),
  parts: Type.Array(Type.String()),
  works: Type.Array(Type.String()),
  cautionsOpen: Count,
  unproven: Count,
  cools: Type.Optional(Type.String()),
  minutes: Type.Number(),
  before: Type.Integer({ description: 'visits at the same unit in the 90 days before it' }),
});

const ChoiceSchema = Type.Array(Type.Object({ value: Type.String(), visits: Count }));
const FleetTableSchema = Type.Object({
  id: Type.String(),
  columns: Type.Array(Type.String()),
  rows: Type.Array(Type.Array(Type.Union([Type.String(), Type.Number()]))),
});
const SpanSchema = Type.Object({ from: Type.Optional(Milliseconds), until: Type.Optional(Milliseconds) });

/** Between so many briefs others are served. */
const BRIEFS_A_TURN = 100;

/** The visits looked through, one line each, and what all of them come to. They know of no visit but what the index holds. */
export const listRoutes: FastifyPluginAsyncTypebox<ListOptions> = async (app, { store, people, index, keeper }) => {
  guardVisits(app, people, store);
  const tags = ['review'];

  app.get(
    '/api/list',
    {
      config: { needs: 'read-visits' },
      schema: {
        tags,
        summary: 'visits by words and filters, newest activity first, a line each',
        querystring: Type.Intersect([
          FilterSchema,
          Type.Object({
            limit: Type.Integer({ minimum: 1, maximum: 200, default: 50 }),
            offset: Type.Integer({ minimum: 0, maximum: Number.MAX_SAFE_INTEGER, default: 0 }),
          }),
        ]),
        response: {
          200: Type.Object({
            visits: Type.Array(BriefSchema),
            total: Count,
            behind: Type.Integer({ description: 'visits whose line is still to be brought up to date' }),
          }),
          400: ErrorSchema,
        },
      },
    },
    async (request) => {
      const { company } = callerOf(request);
      const { limit, offset, ...asked } = request.query;
      await keeper.level(company);
      const filter = await withDevices(people, company, asked as BriefFilter);
      const { visits, total } = await index.list(company, filter, { limit, offset });
      return { visits: visits.map(toShown), total, behind: keeper.behind(company) };
    },
  );

  app.get(
    '/api/list/choices',
    {
      config: { needs: 'read-visits' },
      schema: {
        tags,
        summary: 'what the filters of the list may be set to, each with how many visits have it',
        response: { 200: Type.Object({ findings: ChoiceSchema, parts: ChoiceSchema, technicians: ChoiceSchema }) },
      },
    },
    async (request) => {
      const { company } = callerOf(request);
      const { findings, parts, technicians } = await index.choices(company);
      const signed = new Set(technicians.map(({ value }) => value));
      const writers = new Set((await people.devices(company)).map(({ person }) => person));
      const paired = (await people.people(company))
        .filter(({ person, name }) => writers.has(person) && !signed.has(name))
        .map(({ name }) => ({ value: name, visits: 0 }));
      return { findings: [...findings], parts: [...parts], technicians: [...technicians, ...paired] };
    },
  );

  app.get(
    '/api/visits/:visit/same-unit',
    {
      config: { needs: 'read-visits' },
      schema: {
        tags,
        summary: 'other visits to its unit, the latest first: by serial number, else by site',
        params: Type.Object({ visit: NameSchema }),
        response: { 200: Type.Object({ visits: Type.Array(BriefSchema) }), 404: ErrorSchema },
      },
    },
    async (request) => {
      const { company } = callerOf(request);
      const { visit } = request.params;
      if ((await store.streams(company, visit)).length === 0) throw new ServerError('visit-unknown', visit);
      await keeper.level(company);
      return { visits: (await index.atSameUnit(company, visit)).map(toShown) };
    },
  );

  const fleetOf = async (company: string, { from, until }: Static<typeof SpanSchema>) => {
    await keeper.level(company);
    const fleet = new Fleet();
    for (let after = ''; ; ) {
      const briefs = await index.all(company, { after, limit: BRIEFS_A_TURN });
      for (const brief of briefs) {
        if (brief.openedAt >= (from ?? -Infinity) && brief.openedAt < (until ?? Infinity)) fleet.add(brief);
      }
      const last = briefs.at(-1);
      if (last === undefined || briefs.length < BRIEFS_A_TURN) return fleet;
      after = last.visit;
      await new Promise((resolve) => setImmediate(resolve));
    }
  };

  app.get(
    '/api/fleet',
    {
      config: { needs: 'read-visits' },
      schema: {
        tags,
        summary: 'what the visits come to: by finding, part, age, month, repeat call, step, and what is misheard',
        querystring: SpanSchema,
        response: { 200: Type.Object({ visits: Count, tables: Type.Array(FleetTableSchema) }), 400: ErrorSchema },
      },
    },
    async (request) => {
      const fleet = await fleetOf(callerOf(request).company, request.query);
      const tables = fleet.tables().map(({ id, columns, rows }) => ({
        id,
        columns: [...columns],
        rows: rows.map((row) => [...row]),
      }));
      return { visits: fleet.visits, tables };
    },
  );

  app.get(
    '/api/fleet.csv',
    {
      config: { needs: 'read-visits' },
      schema: {
        tags,
        summary: 'one table of the fleet, RFC 4180',
        querystring: Type.Object({
          ...SpanSchema.properties,
          table: Type.Union(
            FLEET_TABLES.map((table) => Type.Literal(table)),
            { default: 'findings' },
          ),
        }),
        response: {
          200: { description: 'a row a line', content: { 'text/csv': { schema: Type.String() } } },
          400: ErrorSchema,
        },
      },
    },
    async (request, reply) => {
      const fleet = await fleetOf(callerOf(request).company, request.query);
      const { columns, rows } = fleet.tables().find(({ id }) => id === request.query.table) ?? {
        columns: [],
        rows: [],
      };
      return reply
        .header('content-disposition', 'attachment')
        .type('text/csv; charset=utf-8; header=present')
        .send(csvLines([columns, ...rows]));
    },
  );
};

/** A technician is known by the name they signed with, and by the devices that are paired to somebody of that name. */
async function withDevices(
  people: Pick<PeopleStore, 'devices' | 'leases' | 'people'>,
  company: string,
  filter: BriefFilter,
): Promise<BriefFilter> {
  const { technician } = filter;
  if (technician === undefined) return filter;
  const named = new Set(
    (await people.people(company)).filter(({ name }) => name === technician).map(({ person }) => person),
  );
  const devices = (await people.devices(company)).filter(({ person }) => named.has(person));
  return { ...filter, devices: devices.map(({ device }) => device) };
}

const toShown = ({ parts, works, ...brief }: ListedBrief) => ({ ...brief, parts: [...parts], works: [...works] });
