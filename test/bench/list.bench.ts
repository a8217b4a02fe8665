import { join } from 'node:path';
import { readBodies } from '../../grammar/visit/read-bodies.ts';
import { summariseVisit } from '../../server/review/summarise-visit.ts';
import { openSqliteVisitIndex } from '../../server/store/sqlite-visit-index.ts';
import type { VisitBrief } from '../../server/store/visit-index.ts';
import { RECORDED, recordedBodies } from '../browser/put-visit.ts';
import { scratchFolder } from '../server/built-server.ts';
import { type RunningApp, runApp } from '../server/running-app.ts';
import { type Bench, type Figure, median, quantile } from './figures.ts';

const DAY_MS = 86_400_000;
/** What is answered within it is felt as at once (R. B. Miller 1968). Milliseconds. */
const AT_ONCE = 100;

/** The list of visits. Options: visits=20000 rounds=60. */
export const bench: Bench = async (options, progress) => {
  const number = (name: string, standard: number) => Number(options.get(name) ?? standard);
  const [visits, rounds] = [number('visits', 20_000), number('rounds', 60)];
  const scratch = scratchFolder();
  const index = await openSqliteVisitIndex(join(scratch.path, 'visit-index.sqlite'));
  const server = await runApp({ index });
  try {
    progress('summarising the recorded visits');
    const began = performance.now();
    const briefs = await Promise.all(RECORDED.map(summarised));
    const summarising = (performance.now() - began) / RECORDED.length;
    progress(`putting ${visits} visits into the index`);
    const filling = performance.now();
    for (let n = 0; n < visits; n += 1) await index.put('local', varied(briefs[n % briefs.length] as VisitBrief, n));
    const put = (performance.now() - filling) / visits;
    const figures: Figure[] = [
      { name: 'a visit of about 400 events summarised', value: summarising, unit: 'ms' },
      { name: 'a summary put into the index', value: put, unit: 'ms' },
    ];
    for (const [name, path] of ASKED) {
      progress(name);
      const { times, total } = await askedFor(server, path, rounds);
      const of = total === undefined ? '' : `; ${total} fit`;
      figures.push(
        { name: `${name}, median`, value: median(times), unit: 'ms' },
        {
          name: `${name}, p95`,
          value: quantile(times, 0.95),
          unit: 'ms',
          against: `limit ${AT_ONCE}; of ${rounds}${of}`,
        },
      );
    }
    progress('counting the fleet');
    const { times } = await askedFor(server, () => '/api/fleet', Math.min(5, rounds));
    figures.push({ name: `the fleet of ${visits} visits counted, median`, value: median(times), unit: 'ms' });
    return figures;
  } finally {
    await server.stop();
    scratch.remove();
  }
};

/** What is asked, other in each round, so that no answer lies ready. */
const ASKED: readonly (readonly [string, (round: number) => string])[] = [
  ['a page', (round) => `/api/list?offset=${round * 50}`],
  ['a page far behind', (round) => `/api/list?offset=${15_000 + round * 50}`],
  ['a search for a serial number', (round) => `/api/list?words=SN-${round * 37}`],
  ['a search for two words said', (round) => `/api/list?words=${['fan section', 'leg one', 'outdoor air'][round % 3]}`],
  ['a search for the beginning of a word', (round) => `/api/list?words=${['ca', 'comp', 'fil'][round % 3]}`],
  [
    'a search with filters',
    (round) =>
      `/api/list?words=capacitor&finding=fan-capacitor-weak&part=dual-capacitor&state=closed&from=${opened(round * 100)}`,
  ],
  ['repeat calls alone', (round) => `/api/list?repeated=true&offset=${round}`],
  ['choices of the filters', () => '/api/list/choices'],
];

const opened = (n: number) => Date.UTC(2024, 0, 1, 8) + Math.floor((n * 700 * DAY_MS) / 20_000);

async function summarised(name: (typeof RECORDED)[number]): Promise<VisitBrief> {
  const bodies = recordedBodies(name);
  const held = { visit: name, device: 'phone', events: bodies.length, lastReceivedAt: 0 };
  return summariseVisit(held, readBodies(bodies));
}

/** One of many: its own name, day, unit and words. */
function varied(brief: VisitBrief, n: number): VisitBrief {
  // One in twenty is a repeat call: at the unit of the visit but nine before.
  const unit = (n % 20 === 19 ? n - 10 : n) % 9_000;
  const street = n % 777;
  return {
    ...brief,
    visit: `visit-${n}`,
    openedAt: opened(n),
    lastReceivedAt: opened(n) + 3_600_000,
    site: `Site ${unit}, Street ${street}`,
    serial: `SN-${unit}`,
    technician: `Technician ${n % 40}`,
    unproven: n % 50 === 0 ? 1 : 0,
    words: `${brief.words}\nSite ${unit}, Street ${street}\nSN-${unit}\nTechnician ${n % 40}`,
  };
}

async function askedFor({ url }: RunningApp, path: (round: number) => string, rounds: number) {
  const times: number[] = [];
  let total: number | undefined;
  for (let round = 0; round < rounds; round += 1) {
    const began = performance.now();
    const answer = (await (await fetch(`${url}${path(round)}`)).json()) as { total?: number; error?: string };
    times.push(performance.now() - began);
    if (answer.error !== undefined) throw new Error(`${path(round)}: ${answer.error}`);
    total = answer.total;
  }
  return { times, total };
}
