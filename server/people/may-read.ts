import type { FastifyInstance } from 'fastify';
import { ServerError } from '../errors.ts';
import type { EventStore } from '../store/event-store.ts';
import { callerOf } from './guard.ts';
import type { Caller } from './people.ts';
import type { PeopleStore } from './people-store.ts';
import { may } from './permissions.ts';

/** Whether somebody may read a visit of their company: any, or one that a device of theirs writes in. */
export async function mayReadVisit(
  caller: Caller,
  visit: string,
  people: Pick<PeopleStore, 'devices' | 'leases'>,
  store: Pick<EventStore, 'streams'>,
): Promise<boolean> {
  if (may(caller.role, 'read-visits')) return true;
  return may(caller.role, 'read-own-visits') && (await isOwnVisit(caller, visit, people, store));
}

/** Whether somebody may hear and see what is kept beside the events of a visit that they may read. */
export async function mayOpenAttachments(
  caller: Caller,
  visit: string,
  people: Pick<PeopleStore, 'devices' | 'leases'>,
  store: Pick<EventStore, 'streams'>,
): Promise<boolean> {
  return may(caller.role, 'open-attachments') || isOwnVisit(caller, visit, people, store);
}

/** Whether a device of theirs writes in it, or was given it to carry on. */
export async function isOwnVisit(
  caller: Caller,
  visit: string,
  people: Pick<PeopleStore, 'devices' | 'leases'>,
  store: Pick<EventStore, 'streams'>,
): Promise<boolean> {
  const own = new Set(
    (await people.devices(caller.company)).filter(({ person }) => person === caller.person).map(({ device }) => device),
  );
  const streams = await store.streams(caller.company, visit);
  if (streams.some(({ device }) => own.has(device))) return true;
  return (await people.leases(caller.company, visit)).some(({ device }) => own.has(device));
}

/** Every route of the plugin that names a visit answers as if there were none where its caller may not read it. */
export function guardVisits(
  app: FastifyInstance,
  people: Pick<PeopleStore, 'devices' | 'leases'>,
  store: Pick<EventStore, 'streams'>,
): void {
  app.addHook('preHandler', async (request) => {
    const { visit } = request.params as { readonly visit?: string };
    if (visit === undefined) return;
    if (!(await mayReadVisit(callerOf(request), visit, people, store))) throw new ServerError('visit-unknown', visit);
  });
}
