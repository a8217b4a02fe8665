import { recordedBodies } from '../browser/put-visit.ts';

type Body = Record<string, unknown>;

/** Fields that number something within a visit: those of a copy go on from the visit before it. */
const NUMBERS: ReadonlySet<string> = new Set(['number', 'numbers', 'evidence', 'forSeq', 'cause', 'of', 'readings']);
/** Of so many the numbers of one copy are apart from those of the next. */
const APART = 1_000;
/** What stands once in a visit. */
const ONCE: ReadonlySet<string> = new Set(['visit.opened', 'visit.closed', 'opened.visit']);

/** A visit of so many events: the library visit again and again, its clock and its numbers going on. */
export function longVisit(events: number): readonly string[] {
  const recorded = recordedBodies('library').map((body) => JSON.parse(body) as Body);
  const lasts = Math.max(...recorded.map((body) => timeOf(body).mono)) + 10_000;
  const bodies: string[] = [];
  for (let copy = 0; bodies.length < events; copy += 1) {
    for (const body of recorded) {
      if (bodies.length >= events) break;
      const type = String((body['input'] as Body | undefined)?.['type'] ?? body['type']);
      if (copy > 0 && ONCE.has(type)) continue;
      if (type === 'visit.closed') continue;
      bodies.push(JSON.stringify(shifted(body, copy, lasts)));
    }
  }
  return bodies;
}

function shifted(value: unknown, copy: number, lasts: number, name = ''): unknown {
  if (typeof value === 'number') return NUMBERS.has(name) ? value + copy * APART : value;
  if (Array.isArray(value)) return value.map((one) => shifted(one, copy, lasts, name));
  if (typeof value !== 'object' || value === null) return value;
  if (name === 'time') {
    const { at, mono } = value as { at: string; mono: number };
    const later = copy * lasts;
    return { at: new Date(Date.parse(at) + later).toISOString(), mono: mono + later };
  }
  // A reading holds a value under its own names, and no number of ours.
  if (name === 'reading' || name === 'from' || name === 'to') return value;
  return Object.fromEntries(Object.entries(value).map(([key, inside]) => [key, shifted(inside, copy, lasts, key)]));
}

function timeOf(body: Body): { readonly mono: number } {
  return ((body['input'] as Body | undefined)?.['time'] ?? body['time']) as { mono: number };
}
