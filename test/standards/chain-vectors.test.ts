import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import {
  chainBodies,
  type Entry,
  emptyHead,
  linkBytes,
  type StreamId,
  streamText,
} from '../../grammar/visit/envelope.ts';

interface Vectors {
  chains: { name: string; stream: StreamId; streamText: string; start: string; events: Entry[] }[];
  links: { seq: number; previous: string; body: string; hash: string }[];
}
const vectors: Vectors = JSON.parse(
  readFileSync(new URL('../../fixtures/reference/chain-vectors.json', import.meta.url), 'utf8'),
);

const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest();
const subtle = async (bytes: Uint8Array<ArrayBuffer>) => new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));

/** The system's own program as a third implementation, reading the bytes from a pipe. */
function systemSha256(bytes: Uint8Array): string {
  return execFileSync('sha256sum', { input: bytes }).toString().slice(0, 64);
}

describe('the published chain vectors', () => {
  // FIPS 180-4 example, as published by NIST ("abc", one block).
  test('both hashers give the published SHA-256 of "abc"', async () => {
    const published = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad';
    expect(Buffer.from(sha256(Buffer.from('abc'))).toString('hex')).toBe(published);
    expect(Buffer.from(await subtle(new TextEncoder().encode('abc'))).toString('hex')).toBe(published);
  });

  test.each(vectors.chains)('$name: start and every link are reproduced', async (chain) => {
    expect(streamText(chain.stream)).toBe(chain.streamText);
    for (const hasher of [sha256, subtle]) {
      const start = await emptyHead(chain.stream, hasher);
      expect(start.hash).toBe(chain.start);
      const bodies = chain.events.map((event) => event.body);
      expect(await chainBodies(start, bodies, hasher)).toEqual(
        chain.events.map(({ seq, hash, body }) => ({ seq, hash, body })),
      );
    }
  });

  test.each(vectors.links)('the link at seq $seq is big-endian over 64 bits', (link) => {
    const bytes = linkBytes(link.seq, link.previous, link.body);
    expect(systemSha256(bytes)).toBe(link.hash);
    expect(Buffer.from(sha256(bytes)).toString('hex')).toBe(link.hash);
  });

  test('the vectors agree with bytes laid out by hand and hashed by the system', () => {
    for (const chain of vectors.chains) {
      let previous = systemSha256(Buffer.concat([Buffer.from([0]), Buffer.from(chain.streamText, 'utf8')]));
      expect(previous).toBe(chain.start);
      for (const event of chain.events) {
        const seq = Buffer.alloc(8);
        seq.writeBigUInt64BE(BigInt(event.seq));
        previous = systemSha256(
          Buffer.concat([Buffer.from([1]), seq, Buffer.from(previous, 'hex'), Buffer.from(event.body, 'utf8')]),
        );
        expect(previous).toBe(event.hash);
      }
    }
  });
});
