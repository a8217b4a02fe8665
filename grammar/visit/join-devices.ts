import type { VisitEvent } from './events.ts';
import type { LastEntry } from './inputs.ts';
import { readBodies } from './read-bodies.ts';

/** One entry of a device's record of a visit. */
export interface DeviceEntry {
  readonly device: string;
  readonly epoch: number;
  readonly seq: number;
  /** Where it is known: a take-over has to name the same. */
  readonly hash?: string;
  readonly event: VisitEvent;
}

/** One visit of several devices, and what of it does not count. */
export interface JoinedVisit<Item extends DeviceEntry = DeviceEntry> {
  readonly entries: readonly Item[];
  /** The device that holds the technician's lease; undefined for no entries at all. */
  readonly holder: string | undefined;
  /** How many entries of each device do not count, remarks aside: written by who did not hold the lease. */
  readonly leftOut: readonly { readonly device: string; readonly count: number }[];
}

/**
 * One visit from the entries of all its devices. One device at a time holds the technician's lease: the one that opened
 * the visit, until another took it over behind an entry that it names. What the others log does not count, so that two
 * devices never both say what was measured; of them only remarks are taken, each placed by the time it claims.
 *
 * @param entries each device's in its order; between devices any order will do, but the opening one comes first where
 * none holds the opening of a visit
 */
export function joinDevices<Item extends DeviceEntry>(entries: readonly Item[]): JoinedVisit<Item> {
  const devices = byDevice(entries);
  const counted = [...leasesOf(devices)];
  const joined = counted.flat();
  const counts = new Set(joined);
  const others = entries.filter((entry) => !counts.has(entry));
  for (const remark of others.filter(isRemark).toSorted((a, b) => claimed(a) - claimed(b))) place(joined, remark);
  const left = byDevice(others.filter(({ event }) => !isRemark({ event }) && !isRemarkInput(event)));
  return {
    entries: joined,
    holder: counted.at(-1)?.[0]?.device,
    leftOut: [...left].map(([device, { length }]) => ({ device, count: length })),
  };
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

/** A take-over as a device wrote it: where in its own entries it stands, and which entry of which device it names. */
interface Claim<Item> {
  readonly by: readonly Item[];
  readonly at: number;
  readonly from: LastEntry;
}

/** What each holder of the lease wrote while holding it, one after another: no entry counts twice, whatever names it. */
function* leasesOf<Item extends DeviceEntry>(devices: ReadonlyMap<string, readonly Item[]>): Generator<Item[]> {
  const all = [...devices.values()];
  const claims = all.flatMap((by) =>
    by.flatMap(({ event }, at): Claim<Item>[] => {
      const from = takenFrom(event);
      return from === undefined ? [] : [{ by, at, from }];
    }),
  );
  /** How many entries of a device were counted, or passed over. */
  const past = new Map<readonly Item[], number>();
  let own = all.find((one) => one.some(({ event }) => event.type === 'visit.opened')) ?? all[0];
  let begin = 0;
  while (own !== undefined) {
    const taken = nextTakeOver(claims, own, begin, past);
    const end: number = taken === undefined ? own.length : taken.last + 1;
    yield own.slice(begin, end);
    past.set(own, end);
    own = taken?.by;
    begin = taken?.at ?? 0;
  }
}

/** Who took the visit over from the device whose entries these are, behind its entry `begin` or a later one. */
function nextTakeOver<Item extends DeviceEntry>(
  claims: readonly Claim<Item>[],
  own: readonly Item[],
  begin: number,
  past: ReadonlyMap<readonly Item[], number>,
) {
  const device = own[0]?.device;
  const named = claims.filter(({ from }) => from.device === device);
  const found = named
    .filter(({ by, at }) => by !== own && at >= (past.get(by) ?? 0))
    .map((claim) => ({ ...claim, last: own.findIndex((one) => isEntry(one, claim.from)) }))
    .filter(({ last }) => last >= begin);
  // Who took it back from a device that had written nothing yet names an entry of their own: what comes of the other
  // one later is void. Where two claim the lease, it goes to who took it earlier.
  const takenBack = Math.max(-1, ...named.filter(({ by }) => by === own).map(({ at }) => at));
  return found.filter(({ last }) => last >= takenBack).toSorted((a, b) => a.last - b.last)[0];
}

function takenFrom(event: VisitEvent): LastEntry | undefined {
  if (event.type !== 'input.taken' || event.input?.type !== 'took.over.visit') return undefined;
  const from: LastEntry | null | undefined = event.input.from;
  return typeof from === 'object' && from !== null ? from : undefined;
}

const isEntry = (entry: DeviceEntry, from: LastEntry) =>
  entry.device === from.device &&
  entry.epoch === from.epoch &&
  entry.seq === from.seq &&
  (entry.hash === undefined || entry.hash === from.hash);
const isRemark = ({ event }: { readonly event: VisitEvent }) => event.type === 'remark.made';
const isRemarkInput = (event: VisitEvent) => event.type === 'input.taken' && event.input?.type === 'remarked.visit';

function place<Item extends DeviceEntry>(joined: Item[], remark: Item): void {
  const after = joined.findLastIndex((entry) => claimed(entry) <= claimed(remark));
  joined.splice(Math.max(after, batchEnd(joined, after)) + 1, 0, remark);
}

function claimed({ event }: DeviceEntry): number {
  return Date.parse(event.type === 'input.taken' ? event.input.time.at : event.time.at);
}

/** A batch (an input and what came of it) is never cut by a remark. */
function batchEnd(entries: readonly DeviceEntry[], index: number): number {
  const next = entries.findIndex(({ event }, at) => at > index && event.type === 'input.taken');
  return next < 0 ? entries.length - 1 : next - 1;
}

/** As `joinDevices`, from the bodies of all devices; and the events that count. */
export function joinBodies<Item extends Omit<DeviceEntry, 'event'> & { readonly body: string }>(
  stored: readonly Item[],
): JoinedVisit<Item & DeviceEntry> & { readonly events: readonly VisitEvent[] } {
  const read = readBodies(stored.map(({ body }) => body));
  const joined = joinDevices(stored.map((entry, at) => ({ ...entry, event: read[at] as VisitEvent })));
  return { ...joined, events: joined.entries.map(({ event }) => event) };
}

/** The events of one device as the entries of its first epoch. */
export function entriesOfDevice(device: string, events: readonly VisitEvent[]): readonly DeviceEntry[] {
  return events.map((event, at) => ({ device, epoch: 1, seq: at + 1, event }));
}
