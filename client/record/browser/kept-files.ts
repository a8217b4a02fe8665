import { bytesToHex } from '../../../grammar/visit/envelope.ts';
import { RecordError } from '../errors.ts';
import { type FileRow, withPersonal } from './personal-database.ts';
import { sha256 } from './sha256.ts';
import { openerOf, partText, sealerOf, type VisitPart } from './visit-keys.ts';

type Kept = Pick<FileRow, 'kind' | 'media'>;

/**
 * Seals a sound or photo and keeps it beside the record. It is on the disk when this resolves, and is sent once an event
 * names it.
 *
 * @returns the SHA-256 of the sealed bytes in hex: what the event carries
 * @throws {RecordError} log-full, log-unwritable
 */
export async function keepFile(part: VisitPart, file: Uint8Array<ArrayBuffer>, { kind, media }: Kept): Promise<string> {
  try {
    const sealed = await (await sealerOf(part)).sealFile(file);
    const name = bytesToHex(await sha256(sealed));
    const row: FileRow = {
      sha256: name,
      part: partText(part),
      kind,
      media,
      bytes: sealed.length,
      keptAt: Date.now(),
      named: false,
      file: sealed,
    };
    await withPersonal(async (database) => {
      const transaction = database.transaction('files', 'readwrite', { durability: 'strict' });
      await transaction.store.put(row);
      await transaction.done;
    });
    return name;
  } catch (error) {
    if (error instanceof DOMException && error.name === 'QuotaExceededError')
      throw new RecordError('log-full', '', error);
    throw new RecordError('log-unwritable', error instanceof Error ? error.name : String(error), error);
  }
}

/** An event names these: they are to be sent. */
export async function nameFiles(hashes: readonly string[]): Promise<void> {
  if (hashes.length === 0) return;
  await withPersonal(async (database) => {
    const transaction = database.transaction('files', 'readwrite', { durability: 'strict' });
    for (const hash of hashes) {
      const row = await transaction.store.get(hash);
      if (row !== undefined) await transaction.store.put({ ...row, named: true });
    }
    await transaction.done;
  });
}

/** After a break: what events name is to be sent, and what none came to name is dropped. */
export async function settleFiles(part: VisitPart, named: ReadonlySet<string>): Promise<void> {
  await withPersonal(async (database) => {
    const transaction = database.transaction('files', 'readwrite', { durability: 'strict' });
    // One after another: all of them together may be large.
    let cursor = await transaction.store.index('part').openCursor(partText(part));
    for (; cursor !== null; cursor = await cursor.continue()) {
      if (!named.has(cursor.value.sha256)) await cursor.delete();
      else if (!cursor.value.named) await cursor.update({ ...cursor.value, named: true });
    }
    await transaction.done;
  });
}

/** A file as it was before it was sealed; undefined where this device does not hold it (any more). */
export async function readFile(name: string): Promise<Uint8Array<ArrayBuffer> | undefined> {
  const row = await withPersonal((database) => database.get('files', name));
  if (row?.file === undefined || bytesToHex(await sha256(row.file)) !== name) return undefined;
  const [company = '', visit = '', device = ''] = row.part.split('/');
  return (await openerOf({ company, visit, device }))?.openFile(row.file);
}
