import { bytesToHex, type Hash, hexToBytes, type Sha256 } from './envelope.ts';
import { utf8Bytes } from './utf8.ts';

const LEAF_TAG = 0x00;
const NODE_TAG = 0x01;
const STEP = /^(left|right) ([0-9a-f]{64})$/;
/** A tree of more leaves than any batch has. */
const LONGEST_PATH = 32;

/** What is hashed for a leaf: 0x00 ‖ the receipt's text in UTF-8. The tag tells leaves from nodes (RFC 6962, 2.1). */
export function leafBytes(receiptText: string): Uint8Array<ArrayBuffer> {
  const text = utf8Bytes(receiptText);
  const bytes = new Uint8Array(1 + text.length);
  bytes[0] = LEAF_TAG;
  bytes.set(text, 1);
  return bytes;
}

/** What is hashed for a node: 0x01 ‖ left (32 bytes) ‖ right (32 bytes). */
export function nodeBytes(left: Hash, right: Hash): Uint8Array<ArrayBuffer> {
  return joined(hexToBytes(left), hexToBytes(right));
}

function joined(left: Uint8Array, right: Uint8Array): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(65);
  bytes[0] = NODE_TAG;
  bytes.set(left, 1);
  bytes.set(right, 33);
  return bytes;
}

/** The root that a receipt's text and path lead to; undefined where the path is not in form. */
export async function rootOf(text: string, path: readonly string[], sha256: Sha256): Promise<Hash | undefined> {
  if (path.length > LONGEST_PATH) return undefined;
  let hash = bytesToHex(await sha256(leafBytes(text)));
  for (const step of path) {
    const [, side, other] = STEP.exec(step) ?? [];
    if (other === undefined) return undefined;
    hash = bytesToHex(await sha256(side === 'left' ? nodeBytes(other, hash) : nodeBytes(hash, other)));
  }
  return hash;
}

/**
 * The root over the texts of receipts, and of each its path there. A node without a partner is passed up as it is.
 *
 * @param texts at least one
 */
export function receiptTree(
  texts: readonly string[],
  sha256: (bytes: Uint8Array<ArrayBuffer>) => Uint8Array,
): { readonly root: Hash; readonly paths: readonly (readonly string[])[] } {
  const paths = texts.map((): string[] => []);
  let level = texts.map((text, leaf) => ({ hash: sha256(leafBytes(text)), leaves: [leaf] }));
  while (level.length > 1) {
    const above: typeof level = [];
    for (let at = 0; at < level.length; at += 2) {
      const [left, right] = [level[at], level[at + 1]];
      if (left === undefined) break;
      if (right === undefined) {
        above.push(left);
        break;
      }
      const [toTheRight, toTheLeft] = [`right ${bytesToHex(right.hash)}`, `left ${bytesToHex(left.hash)}`];
      for (const leaf of left.leaves) paths[leaf]?.push(toTheRight);
      for (const leaf of right.leaves) paths[leaf]?.push(toTheLeft);
      above.push({ hash: sha256(joined(left.hash, right.hash)), leaves: [...left.leaves, ...right.leaves] });
    }
    level = above;
  }
  const [top] = level;
  return { root: top === undefined ? '' : bytesToHex(top.hash), paths };
}
