/** SHA-256 by the browser: 32 bytes. Only there in a secure context (https, or http on this machine). */
export async function sha256(bytes: Uint8Array<ArrayBuffer>): Promise<Uint8Array> {
  return new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
}
