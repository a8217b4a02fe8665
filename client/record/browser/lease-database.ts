import { type DBSchema, openDB } from 'idb';
import type { VisitInput } from '../../../grammar/visit/inputs.ts';
import type { TakenOver } from '../../../grammar/visit/messages.ts';

/** What the server signed of the leases of a visit. */
export interface LeaseGrant {
  readonly text: string;
  readonly signature: string;
}

/** What a visit was before this device took it over. */
export interface TakenVisit {
  readonly visit: string;
  /** The bodies of all that counted until then, in order, this device's own among them; on the disk sealed by its key. */
  readonly bodies: readonly string[];
  /** How many events this device had written of it by then: those behind them follow `bodies`. */
  readonly own: number;
  /** The server's word that this device was given it, for a server whose record was put back to before that. */
  readonly grant: LeaseGrant;
  /** What this device writes first: where it was not written yet, the visit is not taken over yet. */
  readonly taking: Taking;
}

/** The input by which a visit is taken over; its time is read when it is taken. */
export type Taking = Omit<Extract<VisitInput, { type: 'took.over.visit' }>, 'time'>;

/** A visit of this device that another one carries on. */
export interface LeftVisit extends Pick<TakenOver, 'device' | 'name' | 'time'> {
  readonly visit: string;
}

interface LeaseSchema extends DBSchema {
  taken: { key: string; value: TakenVisit };
  left: { key: string; value: LeftVisit };
}

/** Beside the records, in a database of its own: its form is not theirs. */
const NAME = 'readback-leases';

/** Which visits this browser took over from another device, and which another took over from it. */
export class LeaseDatabase {
  async taken(visit: string): Promise<TakenVisit | undefined> {
    return withDatabase((database) => database.get('taken', visit));
  }

  async left(visit: string): Promise<LeftVisit | undefined> {
    return withDatabase((database) => database.get('left', visit));
  }

  /** This device holds the lease from here on. */
  async take(taken: TakenVisit): Promise<void> {
    await withDatabase(async (database) => {
      const change = database.transaction(['taken', 'left'], 'readwrite', { durability: 'strict' });
      await change.objectStore('taken').put(taken);
      await change.objectStore('left').delete(taken.visit);
      await change.done;
    });
  }

  async leave(left: LeftVisit): Promise<void> {
    await withDatabase(async (database) => void (await database.put('left', left)));
  }
}

/** What a visit is for this device: all that counted before it took it over, and what it wrote itself since. */
export function withTaken<Entry extends { readonly body: string }>(
  own: readonly Entry[],
  taken: TakenVisit | undefined,
): readonly { readonly body: string }[] {
  return taken === undefined ? own : [...taken.bodies.map((body) => ({ body })), ...own.slice(taken.own)];
}

async function withDatabase<Result>(work: (database: Awaited<ReturnType<typeof open>>) => Promise<Result>) {
  const database = await open();
  try {
    return await work(database);
  } finally {
    database.close();
  }
}

function open() {
  return openDB<LeaseSchema>(NAME, 1, {
    upgrade: (database) => {
      database.createObjectStore('taken', { keyPath: 'visit' });
      database.createObjectStore('left', { keyPath: 'visit' });
    },
  });
}
