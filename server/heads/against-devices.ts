import type { HeldByDevice } from './held-by-device.ts';
import type { Finding, HeldStream } from './verify-stream.ts';

/** Holds what is held of a stream against the records of devices: what they hold more, and where the two part. */
export function againstDevices(held: readonly HeldStream[], devices: readonly HeldByDevice[]): readonly Finding[] {
  return devices.flatMap(({ stream, entries, acknowledged }) => {
    const events = held.find((one) => one.stream === stream)?.events ?? [];
    const hashes = new Map(events.map(({ seq, hash }) => [seq, hash]));
    const parted = entries.find(({ seq, hash }) => hashes.has(seq) && hashes.get(seq) !== hash);
    if (parted !== undefined) {
      return [{ stream, seq: parted.seq, sentence: `Event ${parted.seq} is another one on the device.` }];
    }
    const [last, own, told] = [events.at(-1)?.seq ?? 0, entries.at(-1)?.seq ?? 0, acknowledged?.seq ?? 0];
    if (told > last) {
      const sentence = `Not complete: ${last} held here, and the device was told that ${told} were.`;
      return [{ stream, seq: last + 1, sentence }];
    }
    if (own > last) {
      const sentence = `Not complete: ${last} held here, and the device holds ${own}: the others were not sent, or are gone.`;
      return [{ stream, seq: last + 1, sentence }];
    }
    if (own < last) {
      const sentence = `The end is missing on the device: its file holds ${own}, and ${last} are held here.`;
      return [{ stream, seq: own + 1, sentence }];
    }
    return [];
  });
}
