import { createPublicKey, verify } from 'node:crypto';
import { readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openMemoryLog } from '../../client/record/memory-log.ts';
import { nodeLink } from '../../client/record/node/link-edge.ts';
import { sha256 } from '../../client/record/node/sha256.ts';
import { Outbox } from '../../client/record/outbox.ts';
import type { Receipt } from '../../grammar/visit/messages.ts';
import { type Ed25519Verify, verifyReceipt } from '../../grammar/visit/verify-receipt.ts';
import { openReceiptSigner } from '../../server/sync/receipt-signer.ts';
import { scratchFolder } from './built-server.ts';
import { getJson } from './get-json.ts';
import { type RunningApp, runApp, streamOf } from './running-app.ts';

const byNode: Ed25519Verify = (publicKey, message, signature) => {
  const key = createPublicKey({
    key: { kty: 'OKP', crv: 'Ed25519', x: Buffer.from(publicKey).toString('base64url') },
    format: 'jwk',
  });
  return verify(null, message, key, signature);
};
const byWebCrypto: Ed25519Verify = async (publicKey, message, signature) => {
  const key = await crypto.subtle.importKey('raw', publicKey, { name: 'Ed25519' }, false, ['verify']);
  return crypto.subtle.verify('Ed25519', key, signature, message);
};

const scratch = scratchFolder();
let server: RunningApp;
let receipt: Receipt;
let publicKey: string;
beforeAll(async () => {
  server = await runApp({ clock: () => 1_700_000_000_000 });
  const log = await openMemoryLog(streamOf('v-receipt'), sha256);
  const outbox = new Outbox({ log, ...nodeLink(server.url) }).start();
  await outbox.append(['one', 'two']);
  await outbox.settled();
  outbox.stop();
  receipt = log.acknowledged()?.receipt as Receipt;
  publicKey = (await getJson<{ receiptKey: string }>(`${server.url}/api/health`)).receiptKey;
});
afterAll(async () => {
  await server.stop();
  scratch.remove();
});

describe('a receipt', () => {
  test('is kept by the device, names its event and time, and is signed by the key the server shows', async () => {
    expect(receipt).toMatchObject({ stream: streamOf('v-receipt'), seq: 2, time: 1_700_000_000_000 });
    expect(await verifyReceipt(receipt, publicKey, sha256, byNode)).toBe(true);
    expect(await verifyReceipt(receipt, publicKey, sha256, byWebCrypto)).toBe(true);
  });

  test('with anything in it changed is none', async () => {
    const changed: Receipt[] = [
      { ...receipt, seq: 3 },
      { ...receipt, time: receipt.time + 1 },
      {
        ...receipt,
        hash: `0${receipt.hash.slice(1)}` === receipt.hash ? `1${receipt.hash.slice(1)}` : `0${receipt.hash.slice(1)}`,
      },
      { ...receipt, stream: { ...receipt.stream, epoch: 2 } },
      { ...receipt, stream: { ...receipt.stream, device: 'other' } },
      { ...receipt, key: '0'.repeat(64) },
      { ...receipt, signature: '' },
      { ...receipt, signature: `${receipt.signature}!` },
    ];
    for (const each of changed) expect(await verifyReceipt(each, publicKey, sha256, byNode)).toBe(false);
    const other = openReceiptSigner(join(scratch.path, 'other.pem')).publicKey;
    expect(await verifyReceipt(receipt, other, sha256, byNode)).toBe(false);
  });

  test('with any bit of its signature changed is none', async () => {
    await fc.assert(
      fc.asyncProperty(fc.nat(511), async (bit) => {
        const bytes = Buffer.from(receipt.signature, 'base64url');
        bytes[bit >> 3]! ^= 1 << (bit & 7);
        const flipped = { ...receipt, signature: bytes.toString('base64url') };
        expect(await verifyReceipt(flipped, publicKey, sha256, byNode)).toBe(false);
      }),
    );
  });
});

describe('receipts asked for at once', () => {
  const signer = () => openReceiptSigner(join(scratch.path, 'many.pem'));
  const heldAt = (at: number) => ({
    stream: streamOf(`v-many-${at}`),
    seq: at + 1,
    hash: receipt.hash,
    time: 1_700_000,
  });

  test('are signed by one signature, and each speaks for itself alone', async () => {
    const { sign, publicKey: key } = signer();
    for (const count of [1, 2, 3, 5, 64, 100]) {
      const signed = await Promise.all(Array.from({ length: count }, (_, at) => sign(heldAt(at))));
      expect(new Set(signed.map(({ signature }) => signature)).size).toBe(1);
      for (const [at, one] of signed.entries()) {
        expect(one).toMatchObject(heldAt(at));
        expect(await verifyReceipt(one, key, sha256, byNode)).toBe(true);
        expect(await verifyReceipt({ ...one, seq: one.seq + 1 }, key, sha256, byNode)).toBe(false);
        const { path: _path, ...alone } = one;
        expect(await verifyReceipt(alone, key, sha256, byNode)).toBe(count === 1);
        const other = signed[(at + 1) % count]?.path;
        if (other !== undefined) expect(await verifyReceipt({ ...one, path: other }, key, sha256, byNode)).toBe(false);
      }
    }
  });

  test('one by one are signed one by one, as servers did before', async () => {
    const { sign, publicKey: key } = signer();
    const one = await sign(heldAt(0));
    expect(one).not.toHaveProperty('path');
    expect(await verifyReceipt(one, key, sha256, byNode)).toBe(true);
  });
});

describe('the key that signs receipts', () => {
  test('is made once, readable by its owner alone, and stays the same', () => {
    const path = join(scratch.path, 'key.pem');
    const made = openReceiptSigner(path);
    expect(statSync(path).mode & 0o777).toBe(0o600);
    expect(openReceiptSigner(path).publicKey).toBe(made.publicKey);
  });

  test('damaged, or of another kind, is told in one sentence and left as it is', () => {
    const path = join(scratch.path, 'damaged.pem');
    openReceiptSigner(path);
    const torn = readFileSync(path, 'utf8').slice(0, 60);
    writeFileSync(path, torn);
    expect(() => openReceiptSigner(path)).toThrow(/is damaged: put a good copy there/);
    expect(readFileSync(path, 'utf8')).toBe(torn);
    expect(() => openReceiptSigner(join(path, 'below'))).toThrow(/cannot be written/);
  });
});
