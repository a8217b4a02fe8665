import { createCipheriv, createDecipheriv, createHash, randomBytes } from 'node:crypto';
import { BOUND_TO_FILE, boundText, type TextCipher } from '../../grammar/visit/personal.ts';

/** Seals as a device does, by Node's AES-GCM: what the browser's does is tried in Chromium. */
export interface DeviceCipher extends TextCipher {
  readonly key: Buffer;
  sealFile(file: Uint8Array): { readonly sealed: Buffer; readonly sha256: string };
}

export function deviceCipher(key = randomBytes(32)): DeviceCipher {
  const seal = (plain: Uint8Array, bound: string): Buffer => {
    const nonce = randomBytes(12);
    const cipher = createCipheriv('aes-256-gcm', key, nonce);
    cipher.setAAD(Buffer.from(bound));
    return Buffer.concat([nonce, cipher.update(plain), cipher.final(), cipher.getAuthTag()]);
  };
  return {
    key,
    seal: async (text, name) => seal(Buffer.from(text), boundText(name)).toString('base64url'),
    open: async (sealed, name) => {
      const bytes = Buffer.from(sealed, 'base64url');
      const decipher = createDecipheriv('aes-256-gcm', key, bytes.subarray(0, 12));
      decipher.setAAD(Buffer.from(boundText(name)));
      decipher.setAuthTag(bytes.subarray(-16));
      try {
        return Buffer.concat([decipher.update(bytes.subarray(12, -16)), decipher.final()]).toString();
      } catch {
        return undefined;
      }
    },
    sealFile: (file) => {
      const sealed = seal(file, BOUND_TO_FILE);
      return { sealed, sha256: createHash('sha256').update(sealed).digest('hex') };
    },
  };
}
