import type { DeviceEntry } from './device-entry.ts';
import type { LastEntry } from './inputs.ts';

/** Where a device's stream ended. */
export interface StreamEnd {
  readonly device: string;
  readonly epoch: number;
  readonly seq: number;
}

/** The lease as the server gave it once. */
export interface LeaseStep {
  /** From 1 on, in the order in which it was given. */
  readonly number: number;
  readonly device: string;
  /** Where the streams of the visit ended on the server then: a take-over names these entries or later ones. */
  readonly behind: readonly StreamEnd[];
}

/** Who held the technician's lease of a visit, one after another, by the server's word. */
export interface Leases {
  /** The device whose first event came first. */
  readonly opener: string;
  readonly steps: readonly LeaseStep[];
  /**
   * Who held the lease when the server began to keep each: the take-overs without a number are believed, as far as they
   * lead there.
   */
  readonly older?: string;
}

/** Entries that a device wrote while it held the lease: from `begin` to before `end` of its own. */
export interface Held<Item> {
  readonly own: readonly Item[];
  readonly begin: number;
  readonly end: number;
}

/** A take-over as a device wrote it: where in its own entries it stands, which lease it goes by, which entry it names. */
interface Claim<Item> {
  readonly own: readonly Item[];
  readonly at: number;
  readonly number: number;
  readonly from: LastEntry;
}

/** One holder of the lease, and the entry of the holder before behind which it begins. */
interface Holder<Item> {
  readonly own: readonly Item[];
  /** Where its own entries begin to count. */
  readonly begin: number;
  readonly before?: { readonly holder: Holder<Item>; readonly end: number };
}

/** So many leases of a record are looked at, and so many take-overs by one: what was made up holds no reader up. */
const MOST_LEASES = 1_000;
const MOST_TRIES = 1_000;
/** Of the take-overs without a number so many of each device, its first: what it adds later crowds out nobody's. */
const MOST_OLDER = 50;

/**
 * What each holder of the lease wrote while holding it, one after another. A take-over counts where the server gave its
 * device the lease, was written since, and names an entry of the holder before behind which the server had nothing whole
 * of that one; of holders that had sent nothing whole by then, nothing counts. Of several by one lease the first that may
 * counts. Without the server's word (files beside each other) the take-overs are believed, in the order of their leases.
 */
export function heldInTurn<Item extends DeviceEntry>(
  devices: readonly (readonly Item[])[],
  leases: Leases | undefined,
): readonly Held<Item>[] {
  const opening = openerOf(devices, leases);
  if (opening === undefined) return [];
  const holders: (Holder<Item> & { readonly number: number })[] = [{ own: opening, begin: 0, number: 0 }];
  for (const { number, claims } of claimsOf(devices, leases)) {
    const step = leases?.steps.find((one) => one.number === number);
    for (const claim of claims) {
      const before = holderBefore(holders, claim, step);
      if (before === undefined) continue;
      holders.push({ own: claim.own, begin: claim.at, number, before });
      break;
    }
  }
  const last = holders.at(-1) as (typeof holders)[number];
  return [...turnsUpTo(last), { own: last.own, begin: last.begin, end: lastEnd(last, leases) }];
}

/** The turns before a holder's own. */
function turnsUpTo<Item>({ before }: Holder<Item>): readonly Held<Item>[] {
  const turns: Held<Item>[] = [];
  for (let one = before; one !== undefined; one = one.holder.before) {
    turns.push({ own: one.holder.own, begin: one.holder.begin, end: one.end });
  }
  return turns.reverse();
}

function openerOf<Item extends DeviceEntry>(devices: readonly (readonly Item[])[], leases: Leases | undefined) {
  if (leases !== undefined) {
    const named = devices.find(([first]) => first?.device === leases.opener);
    if (named !== undefined) return named;
  }
  return devices.find((one) => one.some(({ event }) => event.type === 'visit.opened')) ?? devices[0];
}

/** The take-overs that may count, by their leases in order. */
function claimsOf<Item extends DeviceEntry>(
  devices: readonly (readonly Item[])[],
  leases: Leases | undefined,
): readonly { readonly number: number; readonly claims: readonly Claim<Item>[] }[] {
  const byDevice = devices.map((own) =>
    own.flatMap((entry, at) => toClaim(own, entry, at)).filter((claim) => isGiven(claim, leases)),
  );
  const numbered = byDevice.map((claims) => claims.filter(({ number }) => number !== BEFORE_NUMBERS));
  const unnumbered = byDevice.map((claims) =>
    claims.filter(({ number }) => number === BEFORE_NUMBERS).slice(0, MOST_OLDER),
  );
  const byLease = new Map<number, Claim<Item>[]>();
  for (const claim of numbered.flat().toSorted((a, b) => (nameOf(a) < nameOf(b) ? -1 : 1))) {
    const before = byLease.get(claim.number);
    if (before === undefined) byLease.set(claim.number, [claim]);
    else if (before.length < MOST_TRIES) before.push(claim);
  }
  const inOrder = [...byLease]
    .map(([number, claims]) => ({ number, claims }))
    .toSorted((a, b) => a.number - b.number)
    .slice(0, MOST_LEASES);
  return [
    ...olderOf(unnumbered.flat(), leases).map((claim) => ({ number: BEFORE_NUMBERS, claims: [claim] })),
    ...inOrder,
  ];
}

/** Take-overs without a number, in their order, as far as they lead to who held the lease when the numbers began. */
function olderOf<Item extends DeviceEntry>(claims: readonly Claim<Item>[], leases: Leases | undefined) {
  const inOrder = claims.toSorted((a, b) => timeOf(a) - timeOf(b));
  if (leases === undefined) return inOrder.slice(0, MOST_LEASES);
  return inOrder.slice(0, inOrder.findLastIndex((claim) => nameOf(claim) === leases.older) + 1);
}

/** Take-overs that were written before leases had numbers name none. */
const BEFORE_NUMBERS = 0;

/** The server gave its device that lease, before the device wrote it. */
function isGiven<Item extends DeviceEntry>({ own, at, number }: Claim<Item>, leases: Leases | undefined): boolean {
  if (number === BEFORE_NUMBERS) return leases === undefined || leases.older !== undefined;
  const step = leases?.steps.find((one) => one.number === number);
  return leases === undefined || (step?.device === own[0]?.device && step !== undefined && held(own, step) <= at);
}

function toClaim<Item extends DeviceEntry>(own: readonly Item[], { event }: Item, at: number): Claim<Item>[] {
  if (event.type !== 'input.taken' || event.input?.type !== 'took.over.visit') return [];
  const { from, lease = BEFORE_NUMBERS } = event.input as {
    readonly from?: LastEntry | null;
    readonly lease?: unknown;
  };
  const isNamed = typeof from === 'object' && from !== null && Number.isSafeInteger(from.epoch);
  return isNamed && Number.isSafeInteger(from.seq) && Number.isSafeInteger(lease)
    ? [{ own, at, number: lease as number, from }]
    : [];
}

const timeOf = (claim: Claim<DeviceEntry>): number => {
  const event = claim.own[claim.at]?.event;
  return event?.type === 'input.taken' ? Date.parse(event.input.time.at) : 0;
};
const nameOf = ({ own }: Claim<DeviceEntry>) => own[0]?.device ?? '';

/** The holder that the claim takes it over from, the latest first; undefined where the claim leaves out what was there. */
function holderBefore<Item extends DeviceEntry>(
  holders: readonly Holder<Item>[],
  claim: Claim<Item>,
  step: LeaseStep | undefined,
): { readonly holder: Holder<Item>; readonly end: number } | undefined {
  for (const holder of holders.toReversed()) {
    const named = indexOf(holder.own, claim.from);
    if (named >= holder.begin) {
      const turns = [...turnsUpTo(holder), { own: holder.own, begin: holder.begin, end: named + 1 }];
      const isBehindOwn = turns.every(({ own, end }) => own !== claim.own || end <= claim.at);
      const isWhole = step === undefined || namesAllOf(holder, named, step);
      return isBehindOwn && isWhole ? { holder, end: named + 1 } : undefined;
    }
    if (step !== undefined && hasWhole(holder.own, holder.begin, held(holder.own, step))) return undefined;
  }
  return undefined;
}

/** How many of a device's entries the server had when it gave the lease. */
function held<Item extends DeviceEntry>(own: readonly Item[], { behind }: LeaseStep): number {
  const ends = behind.filter(({ device }) => device === own[0]?.device);
  const last = ({ epoch, seq }: StreamEnd) =>
    placesOf(own).get(`${epoch}/${seq}`) ?? own.findLastIndex((entry) => entry.epoch === epoch && entry.seq <= seq);
  return Math.max(0, ...ends.map((end) => last(end) + 1));
}

/** Behind the entry that is named the server had no whole batch of the holder: nothing that was read is left out. */
function namesAllOf<Item extends DeviceEntry>({ own }: Holder<Item>, named: number, step: LeaseStep): boolean {
  return !hasWhole(own, named + 1, held(own, step));
}

/** Whether there is more from `begin` to before `end` than the beginning of one batch. */
function hasWhole(own: readonly DeviceEntry[], begin: number, end: number): boolean {
  if (end <= begin) return false;
  const first = own[begin]?.event;
  if (first?.type !== 'input.taken' || end - begin - 1 >= (first.outcomes ?? 0)) return true;
  for (let at = begin + 1; at < end; at += 1) if (own[at]?.event.type === 'input.taken') return true;
  return false;
}

/** Where each entry of a device stands among its own, by epoch and number: looked for once. */
const places = new WeakMap<readonly DeviceEntry[], ReadonlyMap<string, number>>();

function placesOf(own: readonly DeviceEntry[]): ReadonlyMap<string, number> {
  const before = places.get(own);
  if (before !== undefined) return before;
  const found = new Map<string, number>();
  for (const [at, { epoch, seq }] of own.entries()) {
    if (!found.has(`${epoch}/${seq}`)) found.set(`${epoch}/${seq}`, at);
  }
  places.set(own, found);
  return found;
}

/** Where the lease was given on and the one that has it wrote nothing yet, what came later of the one before waits. */
function lastEnd<Item extends DeviceEntry>(
  last: Holder<Item> & { readonly number: number },
  leases: Leases | undefined,
): number {
  const next = leases?.steps.find(({ number }) => number > last.number);
  const holder = leases?.steps.at(-1)?.device;
  if (next === undefined || holder === last.own[0]?.device) return last.own.length;
  return Math.max(last.begin + 1, held(last.own, next));
}

/** Where the entry that is named stands among a device's own; -1 where it is none of them. */
function indexOf(own: readonly DeviceEntry[], from: LastEntry): number {
  const at = placesOf(own).get(`${from.epoch}/${from.seq}`);
  const entry = at === undefined ? undefined : own[at];
  const isNamed = entry?.device === from.device && (entry?.hash === undefined || entry.hash === from.hash);
  return at === undefined || !isNamed ? -1 : at;
}
