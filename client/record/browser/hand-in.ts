import { attachmentText, REQUEST_HEADERS, requestText } from '../../../grammar/visit/device-texts.ts';
import { bytesToHex } from '../../../grammar/visit/envelope.ts';
import { askForTicket } from './link-edge.ts';
import { type FileRow, withPersonal } from './personal-database.ts';
import { fromBase64url } from './sealing.ts';
import { sha256 } from './sha256.ts';
import { forgetPart, keyOf, type VisitPart } from './visit-keys.ts';

/** Held by the one page, or the service worker, that sends files. */
const FILES_LOCK = 'readback-files';
/** So many bytes go in one request: what a bad network cuts is little. */
const PART_BYTES = 262_144;
/** By which the server says that what is personal was erased there. */
const ERASED = 410;
/** Of this file alone, and at this time: its visit is not there yet, or its bytes did not arrive as they are. */
const NOT_NOW: ReadonlySet<number> = new Set([400, 404, 409, 413]);
/** Somebody must act, and the record's own connection says so. */
const TURNED_AWAY: ReadonlySet<number> = new Set([401, 403, 404, 409]);

type Bytes = Uint8Array<ArrayBuffer>;

/**
 * Hands in the key of a part, so that whoever may read the visit reads its personal texts. Where those were erased there,
 * they are erased here too. Rejects where it is worth trying again.
 */
export async function handInKey(part: VisitPart): Promise<void> {
  const raw = await keyOf(part);
  if (raw === undefined) return;
  const response = await put(`/api/visits/${part.visit}/devices/${part.device}/key`, raw);
  if (response.status === ERASED) return forgetPart(part);
  if (!response.ok && !TURNED_AWAY.has(response.status)) throw new Error(`key not taken: ${response.status}`);
}

/**
 * Sends the files that events name, the oldest first, each from where the server's bytes end. Only the server's receipt for
 * the whole file lets this device forget its own. Resolves when none is left, or the server takes none now; one that it
 * does not take stays for another time, and holds up no other.
 */
export async function handInFiles(): Promise<void> {
  await navigator.locks.request(FILES_LOCK, { ifAvailable: true }, async (lock) => {
    if (lock === null) return;
    const tried = new Set<string>();
    // Others may be kept meanwhile.
    for (let names = await namesToSend(tried); names.length > 0; names = await namesToSend(tried)) {
      for (const name of names) {
        tried.add(name);
        const row = await withPersonal((database) => database.get('files', name));
        if (row?.file !== undefined && (await handInFile({ ...row, file: row.file })) === 'none-now') return;
      }
    }
  });
}

/** Of the files that wait here and were not tried, the oldest first: each is looked at by itself, all may be large. */
async function namesToSend(tried: ReadonlySet<string>): Promise<readonly string[]> {
  const waiting = await withPersonal(async (database) => {
    const found: Pick<FileRow, 'sha256' | 'keptAt'>[] = [];
    let cursor = await database.transaction('files').store.openCursor();
    for (; cursor !== null; cursor = await cursor.continue()) {
      const { sha256: name, keptAt, named, file } = cursor.value;
      if (named && file !== undefined && !tried.has(name)) found.push({ sha256: name, keptAt });
    }
    return found;
  });
  return waiting.sort((a, b) => a.keptAt - b.keptAt).map(({ sha256: name }) => name);
}

interface HeldAnswer {
  readonly held: number;
  readonly receipt?: NonNullable<FileRow['receipt']>;
}

/** `done`: received, or erased there; `later`: this one is not taken now; `none-now`: no other would be either. */
async function handInFile(row: FileRow & { readonly file: Bytes }): Promise<'done' | 'later' | 'none-now'> {
  const [company = '', visit = '', device = ''] = row.part.split('/');
  const what = `of=${row.bytes}&kind=${row.kind}&media=${encodeURIComponent(row.media)}`;
  let at = 0;
  // First it is asked how far the server has come.
  let data = new Uint8Array(0);
  for (;;) {
    const path = `/api/visits/${visit}/devices/${device}/attachments/${row.sha256}?at=${at}&${what}`;
    const response = await put(path, data);
    if (response.status === ERASED) {
      await forget(row, undefined);
      return 'done';
    }
    if (!response.ok) return NOT_NOW.has(response.status) ? 'later' : 'none-now';
    const { held, receipt } = (await response.json()) as HeldAnswer;
    if (receipt !== undefined) {
      const text = attachmentText({ company, visit, device, sha256: row.sha256, bytes: row.bytes, time: receipt.time });
      if (!(await isSigned(text, receipt))) return 'none-now';
      await forget(row, receipt);
      return 'done';
    }
    // The server carried on from elsewhere, or not at all.
    if (data.length > 0 && held <= at) return 'later';
    at = held;
    data = row.file.slice(at, at + PART_BYTES);
  }
}

/** The bytes go; that they were received stays. */
async function forget({ file: _file, ...row }: FileRow, receipt: FileRow['receipt']): Promise<void> {
  await withPersonal(async (database) => {
    if (receipt === undefined) await database.delete('files', row.sha256);
    else await database.put('files', { ...row, receipt });
  });
}

/** Whether the key that the server shows signed it. A browser without Ed25519 cannot tell, and takes the answer as it is. */
async function isSigned(text: string, receipt: NonNullable<FileRow['receipt']>): Promise<boolean> {
  const { receiptKey } = (await (await fetch('/api/health')).json()) as { receiptKey: string };
  try {
    const jwk = { kty: 'OKP', crv: 'Ed25519', x: receiptKey };
    const key = await crypto.subtle.importKey('jwk', jwk, { name: 'Ed25519' }, false, ['verify']);
    const signature = fromBase64url(receipt.signature);
    return await crypto.subtle.verify({ name: 'Ed25519' }, key, signature, new TextEncoder().encode(text));
  } catch (error) {
    return error instanceof DOMException && error.name === 'NotSupportedError';
  }
}

/** A request that this device signs, where it is paired. */
async function put(path: string, body: Bytes): Promise<Response> {
  const admission = await askForTicket();
  const headers: Record<string, string> = { 'content-type': 'application/octet-stream' };
  if (admission !== undefined) {
    const { ticket, sign } = admission;
    headers[REQUEST_HEADERS.ticket] = ticket;
    const text = requestText({ ticket, method: 'PUT', path, body: bytesToHex(await sha256(body)) });
    if (sign !== undefined) headers[REQUEST_HEADERS.signature] = await sign(text);
  }
  return fetch(path, { method: 'PUT', headers, body });
}
