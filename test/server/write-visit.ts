import { randomBytes } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { sealBody } from '../../grammar/visit/personal.ts';
import { type DeviceCipher, deviceCipher } from './device-cipher.ts';
import { chainFor, RawClient, streamOf } from './running-app.ts';

/** The entries of a whole visit, in the open. */
export const LIBRARY: readonly string[] = readFileSync(
  new URL('../../fixtures/visits/library/events.jsonl', import.meta.url),
  'utf8',
)
  .trim()
  .split('\n');
/** Where that visit was. */
export const LIBRARY_SITE = JSON.parse(LIBRARY[0] as string).input.site as string;

/** Writes bodies into a stream as a device does; resolves when all are acknowledged. */
export async function writeBodies(url: string, visit: string, bodies: readonly string[], device = 'phone') {
  const client = await RawClient.open(url);
  const stream = streamOf(visit, device);
  await client.hello(stream);
  const chain = await chainFor(stream, bodies);
  for (let acknowledged = 0; acknowledged < chain.length; ) {
    const until = Math.min(acknowledged + 64, chain.length);
    for (const entry of chain.slice(acknowledged, until)) client.say({ kind: 'append', ...entry });
    while (acknowledged < until) {
      const message = await client.hear();
      if (message.kind === 'ack') acknowledged = message.seq;
    }
  }
  client.socket.close();
}

/** What a device sealed by, and the sound that it sent. */
export interface WrittenVisit {
  readonly cipher: DeviceCipher;
  readonly sound: Buffer;
  readonly sha256: string;
}

/** The library's visit at some site, sealed, with its key ahead and a sound behind. */
export async function writeSealed(url: string, visit: string, site: string): Promise<WrittenVisit> {
  const cipher = deviceCipher();
  const sound = randomBytes(5_000);
  const { sealed, sha256 } = cipher.sealFile(sound);
  await putBytes(url, `/api/visits/${visit}/devices/phone/key`, cipher.key);
  const plain = LIBRARY.map((body) => body.replaceAll(LIBRARY_SITE, site));
  await writeBodies(url, visit, await Promise.all(plain.map((body) => sealBody(body, cipher))));
  const query = `at=0&of=${sealed.length}&kind=sound&media=audio%2Fwav`;
  await putBytes(url, `/api/visits/${visit}/devices/phone/attachments/${sha256}?${query}`, sealed);
  return { cipher, sound, sha256 };
}

async function putBytes(url: string, path: string, bytes: Buffer): Promise<void> {
  const response = await fetch(`${url}${path}`, {
    method: 'PUT',
    headers: { 'content-type': 'application/octet-stream', origin: url },
    body: new Uint8Array(bytes),
  });
  if (!response.ok) throw new Error(`${path}: ${response.status} ${await response.text()}`);
}
