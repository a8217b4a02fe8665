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
  readonly supervisor: string;
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
 * of their own counts as such only where the server signed it for this visit and by this name, for one outcome; else it
 * is `unproven`. A remark that a device wrote, and not the server, is told as one from that device, and a take-over by
 * the name of the device that wrote it.
 *
 * @param isSigned whether the server's signature holds
 */
export function byKnownNames<Item extends DeviceEntry>(
  entries: readonly Item[],
  visit: VisitName,
  isSigned: (word: VouchedWord) => boolean,
): readonly Item[] {
  const used = new Set<string>();
  /** Whose word stands in the input of this batch, and has no outcome yet. */
  let proven: string | undefined;
  return entries.map((entry) => {
    const { event, device } = entry;
    switch (event.type) {
      case 'input.taken': {
        const word = wordIn(event, visit);
        const counts = word !== undefined && !used.has(word.vouched.signature) && isSigned(word);
        if (counts) used.add(word.vouched.signature);
        proven = counts ? word.supervisor : undefined;
        return entry;
      }
      case 'supervisor.acknowledged': {
        const { from, supervisor } = event;
        const isProven = from === 'own-device' && supervisor === proven;
        proven = undefined;
        return from === undefined || from === 'this-device' || isProven
          ? entry
          : { ...entry, event: told(event, { from: 'unproven' }) };
      }
      case 'remark.made':
        return isServers(device) ? entry : { ...entry, event: told(event, { from: 'this-device' }) };
      case 'visit.taken-over':
        return event.device === device ? entry : { ...entry, event: told(event, { device }) };
      default:
        return entry;
    }
  });
}

/** 64 bytes in base64url, written in the one way that there is: nobody uses one twice by writing it otherwise. */
const SIGNATURE = /^[\w-]{85}[AQgw]$/;
/** What is signed has a field a line. */
const isField = (value: unknown): value is string => typeof value === 'string' && !/[\n\r]/.test(value);

/** The word in an input, where it has the form of one: any device may have written it. */
function wordIn(event: VisitEvent, { company, visit }: VisitName): VouchedWord | undefined {
  if (event.type !== 'input.taken' || event.input?.type !== 'supervisor.acknowledged') return undefined;
  const { from, supervisor, vouched } = event.input as Acknowledging;
  if (from !== 'own-device' || typeof vouched !== 'object' || vouched === null) return undefined;
  const { person, time, signature } = vouched;
  if (!isField(person) || !isField(supervisor) || !Number.isSafeInteger(time)) return undefined;
  if (typeof signature !== 'string' || !SIGNATURE.test(signature)) return undefined;
  return { supervisor, vouched, text: acknowledgementText({ company, visit, person, supervisor, time }) };
}

/** One object for each event, so that a fold that goes on knows what it has folded. */
const known = new WeakMap<VisitEvent, VisitEvent>();

function told(event: VisitEvent, by: object): VisitEvent {
  const before = known.get(event);
  if (before !== undefined) return before;
  const now = { ...event, ...by } as VisitEvent;
  known.set(event, now);
  return now;
}
