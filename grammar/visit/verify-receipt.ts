import { bytesToHex, type Sha256, streamText } from './envelope.ts';
import { type Receipt, receiptText, rootText } from './messages.ts';
import { rootOf } from './receipt-tree.ts';
import { utf8Bytes } from './utf8.ts';

/** Ed25519 (RFC 8032): true where the signature of 64 bytes fits the message and the raw public key of 32 bytes. */
export type Ed25519Verify = (
  publicKey: Uint8Array<ArrayBuffer>,
  message: Uint8Array<ArrayBuffer>,
  signature: Uint8Array<ArrayBuffer>,
) => boolean | Promise<boolean>;

/**
 * True where the server that owns the public key (32 bytes, base64url) signed that it held this event of this stream.
 * A receipt that is not in form is no receipt: false.
 */
export async function verifyReceipt(
  receipt: Receipt,
  publicKey: string,
  sha256: Sha256,
  verify: Ed25519Verify,
): Promise<boolean> {
  const key = base64urlBytes(publicKey);
  const signature = base64urlBytes(receipt.signature);
  if (key?.length !== 32 || signature?.length !== 64) return false;
  if (bytesToHex(await sha256(key)) !== receipt.key) return false;
  const { stream, seq, hash, time, path } = receipt;
  const text = receiptText({ streamText: streamText(stream), seq, hash, time });
  if (path === undefined) return verify(key, utf8Bytes(text), signature);
  const root = await rootOf(text, path, sha256);
  return root !== undefined && verify(key, utf8Bytes(rootText(root)), signature);
}

const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';

/** Bytes of unpadded base64url (RFC 4648 §5), or undefined where the text is not that. */
function base64urlBytes(text: string): Uint8Array<ArrayBuffer> | undefined {
  const bytes = new Uint8Array(Math.floor((text.length * 3) / 4));
  let [bits, count, length] = [0, 0, 0];
  for (const letter of text) {
    const value = ALPHABET.indexOf(letter);
    if (value < 0) return undefined;
    bits = ((bits << 6) | value) & 0xffff;
    count += 6;
    if (count < 8) continue;
    count -= 8;
    bytes[length] = (bits >> count) & 0xff;
    length += 1;
  }
  return bytes;
}
