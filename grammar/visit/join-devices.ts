import type { DeviceEntry } from './device-entry.ts';
import type { VisitEvent } from './events.ts';
import { isServers } from './known-names.ts';
import { heldInTurn, type Leases } from './leases.ts';
import { readBodies } from './read-bodies.ts';

/** One visit of several devices, and what of it does not count. */
export interface JoinedVisit<Item extends DeviceEntry = DeviceEntry> {
  readonly entries: readonly Item[];
  /** The device whose entries end what counts; undefined for no entries at all. */
  readonly writer: string | undefined;
  /** The device that holds the technician's lease: another one than the writer where it has written nothing yet. */
  readonly holder: string | undefined;
  /** How many entries of each device do not count, remarks aside: written by who did not hold the lease. */
  readonly leftOut: readonly { readonly device: string; readonly count: number }[];
}

/**
 * One visit from the entries of all its devices. One device at a time holds the technician's lease: the one that opened
 * the visit, until another took it over behind an entry that it names. What the others log does not count, so that two
 * devices never both say what was measured; of them only remarks are taken, each placed by the time it claims: the server's own, and of whoever held the lease.
 *
 * @param entries each device's in its order; between devices any order will do, but the opening one comes first where
 * none holds the opening of a visit
 * @param leases to whom the server gave the lease; without it the take-overs are believed as they stand
 */
export function joinDevices<Item extends DeviceEntry>(entries: readonly Item[], leases?: Leases): JoinedVisit<Item> {
  const turns = heldInTurn([...byDevice(entries).values()], leases);
  const joined = turns.flatMap(({ own, begin, end }) => own.slice(begin, end));
  // Of most visits every entry counts.
  const others = joined.length === entries.length ? [] : without(entries, joined);
  const writers = new Set(turns.map(({ own }) => own[0]?.device));
  const mayRemark = ({ device }: Item) => leases === undefined || isServers(device) || writers.has(device);
  const remarks = others.filter((entry) => isRemark(entry) && mayRemark(entry));
  const placed = new Set(remarks);
  const left = byDevice(others.filter((entry) => !placed.has(entry) && !isRemarkInput(entry.event)));
  const writer = turns.at(-1)?.own[0]?.device;
  return {
    entries: withRemarks(joined, remarks),
    writer,
    holder: writer === undefined ? undefined : (leases?.steps.at(-1)?.device ?? leases?.older ?? writer),
    leftOut: [...left].map(([device, { length }]) => ({ device, count: length })),
  };
}

function without<Item>(all: readonly Item[], some: readonly Item[]): readonly Item[] {
  const left = new Set(some);
  return all.filter((one) => !left.has(one));
}

function byDevice<Item extends DeviceEntry>(entries: readonly Item[]): ReadonlyMap<string, readonly Item[]> {
  const devices = new Map<string, Item[]>();
  for (const entry of entries) {
    const own = devices.get(entry.device);
    if (own === undefined) devices.set(entry.device, [entry]);
    else own.push(entry);
  }
  return devices;
}

const isRemark = ({ event }: { readonly event: VisitEvent }) => event.type === 'remark.made';
const isRemarkInput = (event: VisitEvent) => event.type === 'input.taken' && event.input?.type === 'remarked.visit';

/** The entries with each remark behind the last of them that claims no later time, and behind the rest of its batch. */
function withRemarks<Item extends DeviceEntry>(entries: readonly Item[], remarks: readonly Item[]): readonly Item[] {
  if (remarks.length === 0) return entries;
  const times = entries.map(claimed);
  /** The earliest time from each entry on. */
  const earliest = [...times];
  for (let at = earliest.length - 2; at >= 0; at -= 1) {
    earliest[at] = Math.min(earliest[at] as number, earliest[at + 1] as number);
  }
  /** Where the next batch begins behind each entry: a batch (an input and what came of it) is never cut. */
  const nextBatch: number[] = Array.from({ length: entries.length + 1 }, () => entries.length);
  for (let at = entries.length - 1; at >= 0; at -= 1) {
    nextBatch[at] = entries[at]?.event.type === 'input.taken' ? at : (nextBatch[at + 1] as number);
  }
  const behind = new Map<number, Item[]>();
  for (const remark of remarks.toSorted((a, b) => claimed(a) - claimed(b))) {
    const place = nextBatch[countUpTo(earliest, claimed(remark))] as number;
    const there = behind.get(place);
    if (there === undefined) behind.set(place, [remark]);
    else there.push(remark);
  }
  return [...entries, undefined].flatMap((entry, at) => [
    ...(behind.get(at) ?? []),
    ...(entry === undefined ? [] : [entry]),
  ]);
}

/** How many of ascending numbers are no larger. */
function countUpTo(ascending: readonly number[], most: number): number {
  let [low, high] = [0, ascending.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((ascending[middle] as number) <= most) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** A time that is none is later than all. */
function claimed({ event }: DeviceEntry): number {
  const at = Date.parse(event.type === 'input.taken' ? event.input.time.at : event.time.at);
  return Number.isNaN(at) ? Number.POSITIVE_INFINITY : at;
}

/** As `joinDevices`, from the bodies of all devices; and the events that count. */
export function joinBodies<Item extends Omit<DeviceEntry, 'event'> & { readonly body: string }>(
  stored: readonly Item[],
  leases?: Leases,
): JoinedVisit<Item & DeviceEntry> & { readonly events: readonly VisitEvent[] } {
  const read = readBodies(stored.map(({ body }) => body));
  const joined = joinDevices(
    stored.map((entry, at) => ({ ...entry, event: read[at] as VisitEvent })),
    leases,
  );
  return { ...joined, events: joined.entries.map(({ event }) => event) };
}

/** The events of one device as the entries of its first epoch. */
export function entriesOfDevice(device: string, events: readonly VisitEvent[]): readonly DeviceEntry[] {
  return events.map((event, at) => ({ device, epoch: 1, seq: at + 1, event }));
}
