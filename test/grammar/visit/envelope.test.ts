import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chainBodies, emptyHead, linkBytes, parseStreamText, streamText } from '../../../grammar/visit/envelope.ts';
import { utf8Bytes, utf8Length } from '../../../grammar/visit/utf8.ts';
import { verifyChain } from '../../../grammar/visit/verify-chain.ts';

const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest();
const stream = { company: 'local', visit: 'v-1', device: 'phone', epoch: 1 };
const chainOf = async (bodies: readonly string[]) => chainBodies(await emptyHead(stream, sha256), bodies, sha256);

describe('a stream id', () => {
  test('is written one way only and read back', () => {
    expect(streamText(stream)).toBe('local/v-1/phone/1');
    expect(parseStreamText('local/v-1/phone/1')).toEqual(stream);
  });

  test.each(['local/v-1/phone', 'local/v-1/phone/0', 'local/v-1/phone/01', 'Local/v-1/phone/1', 'a//b/1', 'a/b/c/1.5'])(
    '%s is not canonical',
    (text) => expect(parseStreamText(text)).toBeUndefined(),
  );

  test.each([
    { ...stream, visit: 'a/b' },
    { ...stream, visit: '' },
    { ...stream, device: 'x'.repeat(65) },
    { ...stream, company: 'Örtlich' },
    { ...stream, epoch: 0 },
    { ...stream, epoch: 1.5 },
  ])('with a part out of form is refused: %o', (wrong) => expect(() => streamText(wrong)).toThrow(RangeError));
});

describe('the bytes that are hashed', () => {
  test('text becomes the same UTF-8 as the platform writes', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect(utf8Bytes(text)).toEqual(new TextEncoder().encode(text));
        expect(utf8Length(text)).toBe(Buffer.byteLength(text));
      }),
    );
  });

  test('a lone surrogate is refused rather than replaced', () => {
    expect(() => linkBytes(1, 'a'.repeat(64), 'x\ud800y')).toThrow(/surrogate/);
  });

  test.each([0, -1, 1.5, 2 ** 53, Number.NaN])('seq %s is refused', (seq) => {
    expect(() => linkBytes(seq, 'a'.repeat(64), '')).toThrow(RangeError);
  });

  test('a previous hash that is not one is refused', () => {
    expect(() => linkBytes(1, 'A'.repeat(64), '')).toThrow(RangeError);
  });
});

describe('checking a chain', () => {
  test('an untouched chain is intact and tells its head', async () => {
    const entries = await chainOf(['a', 'b', 'c']);
    expect(await verifyChain(stream, entries, sha256)).toEqual({
      intact: true,
      head: { seq: 3, hash: entries[2]?.hash },
    });
  });

  test('every single bit flipped in a body is found and its event named', async () => {
    const entries = await chainOf(['one', 'two', 'three']);
    for (const [at, entry] of entries.entries()) {
      for (let bit = 0; bit < entry.body.length * 7; bit += 1) {
        const codes = [...entry.body].map((letter) => letter.charCodeAt(0));
        codes[Math.floor(bit / 7)]! ^= 1 << (bit % 7);
        const flipped = entries.with(at, { ...entry, body: String.fromCharCode(...codes) });
        expect(await verifyChain(stream, flipped, sha256)).toMatchObject({
          intact: false,
          seq: at + 1,
          reason: 'altered',
        });
      }
    }
  });

  test('a missing event, a swapped pair and another stream are found', async () => {
    const [a, b, c] = await chainOf(['a', 'b', 'c']);
    expect(await verifyChain(stream, [a!, c!], sha256)).toMatchObject({ intact: false, seq: 2, reason: 'missing' });
    const swapped = [a!, { ...c!, seq: 2 }, { ...b!, seq: 3 }];
    expect(await verifyChain(stream, swapped, sha256)).toMatchObject({ intact: false, seq: 2, reason: 'altered' });
    const other = { ...stream, device: 'another' };
    expect(await verifyChain(other, [a!, b!, c!], sha256)).toMatchObject({ intact: false, seq: 1 });
  });

  test('a cut end and a chain written anew are found against a kept head', async () => {
    const entries = await chainOf(['a', 'b', 'c']);
    const kept = { seq: 3, hash: entries[2]!.hash };
    expect(await verifyChain(stream, entries.slice(0, 2), sha256)).toMatchObject({ intact: true });
    expect(await verifyChain(stream, entries.slice(0, 2), sha256, kept)).toMatchObject({ seq: 3, reason: 'short' });
    const anew = await chainOf(['a', 'B', 'c']);
    expect(await verifyChain(stream, anew, sha256)).toMatchObject({ intact: true });
    expect(await verifyChain(stream, anew, sha256, kept)).toMatchObject({ seq: 3, reason: 'replaced' });
  });

  test('no tampering at all passes against a kept head', async () => {
    const entries = await chainOf(Array.from({ length: 8 }, (_, at) => `{"value":${at}}`));
    const kept = { seq: 8, hash: entries[7]!.hash };
    await fc.assert(
      fc.asyncProperty(fc.nat(7), fc.constantFrom('drop', 'double', 'body', 'rechain', 'cut'), async (at, how) => {
        const entry = entries[at]!;
        const bodies = entries.map((each) => each.body);
        const tampered = {
          drop: entries.toSpliced(at, 1),
          double: entries.toSpliced(at, 0, entry),
          body: entries.with(at, { ...entry, body: `${entry.body} ` }),
          rechain: await chainOf(bodies.with(at, 'another')),
          cut: entries.slice(0, at),
        }[how];
        expect((await verifyChain(stream, tampered, sha256, kept)).intact).toBe(false);
      }),
    );
  });
});
