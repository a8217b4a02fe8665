import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { receiptTree, rootOf } from '../../../grammar/visit/receipt-tree.ts';

const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest();

/** Leaves and roots of the first 1 to 8 of them: test data of the trees of RFC 6962, section 2.1 (from memory). */
const LEAVES = ['', '\x00', '\x10', ' !', '01', '@ABC', 'PQRSTUVW', '`abcdefghijklmno'];
const ROOTS = [
  '6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d',
  'fac54203e7cc696cf0dfcb42c92a1d9dbaf70ad9e621f4bd8d98662f00e3c125',
  'aeb6bcfe274b70a14fb067a5e5578264db0fa9b51af5e0ba159158f329e06e77',
  'd37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7',
  '4e3bbb1f7b478dcfe71fb631631519a3bca12c9aefca1612bfce4c13a86264d4',
  '76e67dadbcdf1e10e1b74ddc608abd2f98dfb16fbce75277b5232a127f2087ef',
  'ddb89be403809e325750d3d263cd78929c2942b7942a34b77e122c9594a74c8c',
  '5dc9da79a70659a9ad559cb701ded9a2ab9d823aad2f4960cfe370eff4604328',
];

describe('the tree over many receipts', () => {
  test('has the roots of RFC 6962', () => {
    const roots = LEAVES.map((_, at) => receiptTree(LEAVES.slice(0, at + 1), sha256).root);
    expect(roots).toEqual(ROOTS);
  });

  test('leads from each receipt to its root, and from no other', async () => {
    for (let count = 1; count <= 70; count += 1) {
      const texts = Array.from({ length: count }, (_, at) => `receipt ${at}`);
      const { root, paths } = receiptTree(texts, sha256);
      for (const [at, text] of texts.entries()) {
        const path = paths[at] as readonly string[];
        expect(await rootOf(text, path, sha256)).toBe(root);
        expect(await rootOf(`${text}0`, path, sha256)).not.toBe(root);
        if (count > 1) expect(await rootOf(text, paths[(at + 1) % count] as readonly string[], sha256)).not.toBe(root);
      }
    }
  });

  test('knows no path that is not in form', async () => {
    const wrong = [
      ['up 00'],
      [`left ${'0'.repeat(63)}`],
      [`left ${'g'.repeat(64)}`],
      Array(33).fill(`left ${ROOTS[0]}`),
    ];
    for (const path of wrong) expect(await rootOf('receipt', path, sha256)).toBeUndefined();
  });
});
