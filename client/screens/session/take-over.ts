import type { StreamId } from '../../../grammar/visit/envelope.ts';
import { foldVisit } from '../../../grammar/visit/fold-visit.ts';
import { joinBodies } from '../../../grammar/visit/join-devices.ts';
import { isServers } from '../../../grammar/visit/known-names.ts';
import type { Leases } from '../../../grammar/visit/leases.ts';
import type { WatchedEvent } from '../../../grammar/visit/messages.ts';
import { wholeBatches } from '../../../grammar/visit/whole-batches.ts';
import type { LeaseGrant, TakenVisit } from '../../record/browser/lease-database.ts';
import { fetchVisit } from '../../record/fetch-visit.ts';
import type { LinkOptions } from '../../record/link.ts';
import { TAKE_OVER } from '../../words/pages/start-words.ts';
import { VisitTexts } from '../review/open-visit-texts.ts';
import { askServer } from './server-answer.ts';
import { askWho } from './who.ts';

/** A visit as the server holds it, for whoever may carry it on. */
export interface VisitElsewhere {
  readonly visit: string;
  readonly site: string;
  readonly complaint: string;
  /** The device that holds it. */
  readonly holder: string;
  readonly lastReceivedAt: number;
}

/** So many of the latest visits are looked at. */
const LATEST = 12;

/**
 * The visits that other devices hold and that are not closed, the latest first; a sentence where the server does not tell.
 */
export async function visitsElsewhere(
  link: LinkOptions,
  company: string,
  device: string,
): Promise<readonly VisitElsewhere[] | string> {
  const answer = await askServer<{ visits: readonly { visit: string; lastReceivedAt: number }[] }>(
    'GET',
    `/api/visits?limit=${LATEST}`,
  );
  if (!answer.ok) return answer.sentence;
  const looked = await Promise.all(
    answer.body.visits.map(async ({ visit, lastReceivedAt }) => {
      const held = await readHeld(link, { company, visit });
      if (typeof held === 'string') return [];
      const { holder } = held.joined;
      const { site, complaint, summary } = foldVisit(held.joined.events);
      const isOpen = holder !== undefined && holder !== device && site !== '' && summary === undefined;
      return isOpen ? [{ visit, site, complaint, holder, lastReceivedAt }] : [];
    }),
  );
  return looked.flat();
}

/** A visit with its personal texts readable, as far as the server gives its keys; the hashes are of the sealed bodies. */
async function fetchOpened(
  link: LinkOptions,
  of: { readonly company: string; readonly visit: string },
): Promise<readonly WatchedEvent[]> {
  const held = await fetchVisit(link, of);
  const { bodies } = await new VisitTexts(of.visit).open(held);
  return held.map((entry, at) => ({ ...entry, body: bodies[at] ?? entry.body }));
}

/** A visit as all its devices wrote it, by who held its lease; a sentence where the server does not tell. */
async function readHeld(link: LinkOptions, of: { readonly company: string; readonly visit: string }) {
  const leases = await askServer<Leases>('GET', `/api/visits/${of.visit}/lease`);
  if (!leases.ok) return leases.sentence;
  return { leases: leases.body, joined: joinBodies(await fetchOpened(link, of), leases.body) };
}

/**
 * Takes a visit over for a device: asks the server for the lease, and for all that it held then.
 *
 * @param own how many events this device has written of it
 * @returns a sentence where that cannot be: the server refuses, the visit is closed, another device was quicker
 */
export async function takeOver(
  link: LinkOptions,
  { company, visit, device }: StreamId,
  own: number,
): Promise<TakenVisit | string> {
  const before = await readHeld(link, { company, visit });
  if (typeof before === 'string') return before;
  const { holder } = before.joined;
  if (holder === undefined) return TAKE_OVER.notThere;
  if (foldVisit(before.joined.events).summary !== undefined) return TAKE_OVER.closed;
  const given = await askServer<Given>('POST', `/api/visits/${visit}/take-over`, { device, from: holder });
  if (!given.ok) return given.sentence;
  // What came in between counts too: the take-over names the last that is here whole.
  const streams = await askServer<{ streams: readonly Held[] }>('GET', `/api/visits/${visit}`);
  if (!streams.ok) return streams.sentence;
  const stood = {
    opener: before.leases.opener,
    steps: before.leases.steps.filter((step) => holder === device || step.number < given.body.lease),
  };
  const { entries } = joinBodies(await fetchOpened(link, { company, visit }), stood);
  const whole = entries.slice(0, wholeBatches(entries.map(({ event }) => event)));
  // Who held the lease may have written nothing whole yet: then the entries end with those of the device before.
  const last = whole.findLast(({ device: writer }) => !isServers(writer));
  if (last === undefined) return TAKE_OVER.notThere;
  const missing = entries.length - whole.length + missingOf(streams.body.streams, last.device);
  const who = await askWho();
  const folded = foldVisit(whole.map(({ event }) => event));
  const { epoch, seq, hash } = last;
  return {
    visit,
    bodies: whole.map(({ body }) => body),
    own,
    grant: given.body.grant,
    taking: {
      type: 'took.over.visit',
      from: { device: last.device, epoch, seq, hash },
      lease: given.body.lease,
      device,
      ...(who?.person === undefined ? {} : { person: who.person.name }),
      role: who?.person === undefined ? folded.role : who.person.role === 'trainee' ? 'trainee' : 'technician',
      software: `readback ${__VERSION__}`,
      ...(missing === 0 ? {} : { missing }),
    },
  };
}

interface Given {
  readonly lease: number;
  readonly grant: LeaseGrant;
}

interface Held {
  readonly device: string;
  readonly head: { readonly seq: number };
  readonly said?: number;
}

/** How many entries a device told of that have not come. */
function missingOf(streams: readonly Held[], holder: string): number {
  return streams
    .filter(({ device }) => device === holder)
    .reduce((sum, { head, said = head.seq }) => sum + said - head.seq, 0);
}
