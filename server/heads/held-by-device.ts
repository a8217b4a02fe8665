import { createPublicKey, verify } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { type Entry, streamText } from '../../grammar/visit/envelope.ts';
import type { Receipt } from '../../grammar/visit/messages.ts';
import { type Acknowledgement, parseRecordLine } from '../../grammar/visit/record-lines.ts';
import { verifyChain } from '../../grammar/visit/verify-chain.ts';
import { verifyReceipt } from '../../grammar/visit/verify-receipt.ts';
import { ServerError } from '../errors.ts';
import { verifierOf } from '../sync/receipt-signer.ts';
import { type Finding, sha256 } from './verify-stream.ts';

/** A device's own record of one stream, as its file has it. */
export interface HeldByDevice {
  readonly stream: string;
  readonly entries: readonly Entry[];
  /** The latest. */
  readonly acknowledged?: Acknowledgement;
  /** Those before it. */
  readonly earlier: readonly Acknowledgement[];
}

/** @throws {ServerError} tool-wrong, where the file cannot be read or is no record. */
export function heldByDevice(path: string): HeldByDevice {
  const lines = readText(path)
    .split('\n')
    .filter((line) => line !== '');
  let held: HeldByDevice | undefined;
  const entries: Entry[] = [];
  const earlier: Acknowledgement[] = [];
  for (const [at, text] of lines.entries()) {
    const line = parseRecordLine(text);
    if (line === undefined || (line.kind === 'stream') !== (at === 0)) throw notARecord(path, at + 1);
    if (line.kind === 'stream' && line.version !== 1) {
      throw new ServerError(
        'tool-wrong',
        `${path} is a record of version ${line.version}, and this program reads version 1: verify it with the one that wrote it.`,
      );
    }
    if (line.kind === 'stream') held = { stream: nameOf(line.stream, path), entries, earlier };
    else if (held !== undefined && line.kind === 'batch') entries.push(...line.entries);
    else if (held !== undefined && line.kind === 'acknowledged') {
      if (held.acknowledged !== undefined) earlier.push(held.acknowledged);
      held = { ...held, acknowledged: line };
    }
  }
  if (held === undefined) throw notARecord(path, 1);
  return held;
}

/**
 * Holds a device's record against its own chain, the head that was acknowledged to it and the receipt of that.
 *
 * @param publicKey the server's, 32 bytes in base64url; without it no receipt can be checked
 */
export async function verifyDevice(held: HeldByDevice, publicKey: string | undefined): Promise<readonly Finding[]> {
  const { stream, entries, acknowledged, earlier } = held;
  const [company = '', visit = '', device = '', epoch = ''] = stream.split('/');
  const verdict = await verifyChain({ company, visit, device, epoch: Number(epoch) }, entries, sha256, acknowledged);
  if (!verdict.intact) return [{ stream, seq: verdict.seq, sentence: verdict.sentence }];
  const other = earlier.find(({ seq, hash }) => entries[seq - 1]?.hash !== hash);
  if (other !== undefined) {
    return [{ stream, seq: other.seq, sentence: `Event ${other.seq} was acknowledged with another hash than it has.` }];
  }
  const all = [...earlier, ...(acknowledged === undefined ? [] : [acknowledged])];
  const foreign = all.find((one) => one.receipt !== undefined && !speaksOf(stream, one, one.receipt));
  if (foreign !== undefined) {
    const sentence = `The receipt it keeps for event ${foreign.seq} is one of another event, or of another visit.`;
    return [{ stream, seq: foreign.seq, sentence }];
  }
  if (publicKey === undefined || acknowledged === undefined) return [];
  const { keyName } = verifierOf(publicKey);
  for (const { seq, receipt } of all) {
    // A server whose key was lost signs with another one since: what the old one signed cannot be checked.
    const isChecked = receipt !== undefined && (receipt.key === keyName || seq === acknowledged.seq);
    if (!isChecked || (await verifyReceipt(receipt, publicKey, sha256, byNode))) continue;
    return [
      { stream, seq, sentence: `The receipt it keeps for event ${seq} is not one that this server signed for it.` },
    ];
  }
  // As it connects again a device is told once more, without a receipt: an earlier one of the same event is enough.
  if (all.some(({ seq, receipt }) => seq === acknowledged.seq && receipt !== undefined)) return [];
  const sentence = `No receipt is kept for event ${acknowledged.seq}: it did not come, or was taken out.`;
  return [{ stream, seq: acknowledged.seq, sentence }];
}

function speaksOf(stream: string, { seq, hash }: Acknowledgement, receipt: Receipt): boolean {
  try {
    return receipt.seq === seq && receipt.hash === hash && streamText(receipt.stream) === stream;
  } catch {
    return false;
  }
}

function byNode(key: Uint8Array, message: Uint8Array, signature: Uint8Array): boolean {
  const x = Buffer.from(key).toString('base64url');
  return verify(null, message, createPublicKey({ key: { kty: 'OKP', crv: 'Ed25519', x }, format: 'jwk' }), signature);
}

function nameOf(stream: Parameters<typeof streamText>[0], path: string): string {
  try {
    return streamText(stream);
  } catch {
    throw notARecord(path, 1);
  }
}

function notARecord(path: string, line: number): ServerError {
  return new ServerError(
    'tool-wrong',
    `${path} is no record of a device (line ${line}): name the file as it was kept.`,
  );
}

function readText(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    throw new ServerError('tool-wrong', `${path} cannot be read: check the path.`, error);
  }
}
