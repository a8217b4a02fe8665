import { fromBase64url } from './sealing.ts';

/**
 * Whether the key that the server shows signed a text. A browser without Ed25519 cannot tell, and takes it as it is.
 * @param signature 64 bytes in base64url
 */
export async function isServerSigned(text: string, signature: string): Promise<boolean> {
  const { receiptKey } = (await (await fetch('/api/health')).json()) as { receiptKey: string };
  try {
    const jwk = { kty: 'OKP', crv: 'Ed25519', x: receiptKey };
    const key = await crypto.subtle.importKey('jwk', jwk, { name: 'Ed25519' }, false, ['verify']);
    const signed = new TextEncoder().encode(text);
    return await crypto.subtle.verify({ name: 'Ed25519' }, key, fromBase64url(signature), signed);
  } catch (error) {
    return error instanceof DOMException && error.name === 'NotSupportedError';
  }
}
