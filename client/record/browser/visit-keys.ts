import type { StreamId } from '../../../grammar/visit/envelope.ts';
import { withPersonal } from './personal-database.ts';
import { type Cipher, cipherOf } from './sealing.ts';

/** A device's part of a visit, over all its epochs. */
export type VisitPart = Pick<StreamId, 'company' | 'visit' | 'device'>;

const KEY_BYTES = 32;

export function partText({ company, visit, device }: VisitPart): string {
  return `${company}/${visit}/${device}`;
}

/** What a part of a visit that is written here is sealed by: its key is made, and on the disk, before anything is sealed. */
export async function sealerOf(part: VisitPart): Promise<Cipher> {
  const name = partText(part);
  const raw = await withPersonal(async (database) => {
    // Where two tabs are at it at once, the first decides.
    const transaction = database.transaction('keys', 'readwrite', { durability: 'strict' });
    const found = await transaction.store.get(name);
    const row = found ?? { part: name, raw: crypto.getRandomValues(new Uint8Array(KEY_BYTES)) };
    if (found === undefined) await transaction.store.add(row);
    await transaction.done;
    return row.raw;
  });
  return cipherOf(raw);
}

/** What opens a part that was written here; undefined where it was never sealed, or its key was erased. */
export async function openerOf(part: VisitPart): Promise<Cipher | undefined> {
  const raw = await keyOf(part);
  return raw === undefined ? undefined : cipherOf(raw);
}

export async function keyOf(part: VisitPart): Promise<Uint8Array<ArrayBuffer> | undefined> {
  return (await withPersonal((database) => database.get('keys', partText(part))))?.raw;
}

/** Forgets the key and every file of a part: what is personal was erased. */
export async function forgetPart(part: VisitPart): Promise<void> {
  const name = partText(part);
  await withPersonal(async (database) => {
    const transaction = database.transaction(['keys', 'files'], 'readwrite', { durability: 'strict' });
    const files = transaction.objectStore('files');
    for (const sha256 of await files.index('part').getAllKeys(name)) await files.delete(sha256);
    await transaction.objectStore('keys').delete(name);
    await transaction.done;
  });
}
