import type { DeviceEntry } from './device-entry.ts';
import type { VisitEvent } from './events.ts';
import type { VisitInput } from './inputs.ts';
import { acknowledgementText, type Vouched } from './messages.ts';

/** How streams that the server itself writes begin: remarks by the names that it knows. No device is called so. */
export const REMARKS_DEVICE = 'remarks-';

/** Whether a stream is one of the server's own. */
export const isServers = (device: string): boolean => device.startsWith(REMARKS_DEVICE);

/** A word of a supervisor's as it stands in a record: what the server would have signed of it, and the signature. */
export interface VouchedWord {
  readonly text: string;
  readonly vouched: Vouched;
}

type VisitName = { readonly company: string; readonly visit: string };
type Acknowledging = Extract<VisitInput, { type: 'supervisor.acknowledged' }>;

/** Every word of a supervisor's "from their own device" that stands in the entries, to be checked. */
export function vouchedWords(entries: readonly DeviceEntry[], visit: VisitName): readonly VouchedWord[] {
  return entries.flatMap(({ event }) => {
    const word = wordIn(event, visit);
    return word === undefined ? [] : [word];
  });
}

/**
 * The entries with names as far as the server knows them: a device can write any name. A supervisor's word from a device
 * of their own counts as such only where the server signed it for this visit, once; else it is `unproven`. A remark that
 * a device wrote, and not the server, is told as one from that device.
 *
 * @param isSigned whether the server's signature holds
 */
export function byKnownNames<Item extends DeviceEntry>(
  entries: readonly Item[],
  visit: VisitName,
  isSigned: (word: VouchedWord) => boolean,
): readonly Item[] {
  const used = new Set<string>();
  let isProven = false;
  return entries.map((entry) => {
    const { event, device } = entry;
    if (event.type === 'remark.made') return isServers(device) ? entry : { ...entry, event: fromDevice(event) };
    if (event.type === 'input.taken') {
      const word = wordIn(event, visit);
      isProven = word !== undefined && !used.has(word.vouched.signature) && isSigned(word);
      if (word !== undefined) used.add(word.vouched.signature);
    }
    return claimsOwnDevice(event) && !isProven ? { ...entry, event: unproven(event) } : entry;
  });
}

function wordIn(event: VisitEvent, { company, visit }: VisitName): VouchedWord | undefined {
  if (event.type !== 'input.taken' || event.input?.type !== 'supervisor.acknowledged') return undefined;
  const { from, supervisor, vouched } = event.input as Acknowledging;
  if (from !== 'own-device' || typeof vouched !== 'object' || vouched === null) return undefined;
  const { person, time } = vouched;
  return { text: acknowledgementText({ company, visit, person, supervisor, time }), vouched };
}

const claimsOwnDevice = (event: VisitEvent): boolean =>
  event.type === 'supervisor.acknowledged' && event.from === 'own-device';

/** One object for each event, so that a fold that goes on knows what it has folded. */
const told = new WeakMap<VisitEvent, VisitEvent>();

function toldOnce(event: VisitEvent, tell: () => VisitEvent): VisitEvent {
  const before = told.get(event);
  if (before !== undefined) return before;
  const now = tell();
  told.set(event, now);
  return now;
}

const unproven = (event: VisitEvent): VisitEvent =>
  toldOnce(event, () => ({ ...event, from: 'unproven' }) as VisitEvent);
const fromDevice = (event: VisitEvent): VisitEvent =>
  toldOnce(event, () => ({ ...event, from: 'this-device' }) as VisitEvent);
