/** The user's own files for the wake word: they are kept in this browser and go nowhere. */
export type WakeFile = 'model' | 'keyword';

const CACHE = 'readback-wake';
/** Sent only with requests for the wake word's program: the server then lets that program speak to its maker's host. */
const COOKIE = 'readback-wake';

export async function keepWakeFile(which: WakeFile, file: Blob): Promise<void> {
  await (await caches.open(CACHE)).put(`/${which}`, new Response(file));
}

/** The file in base64, as the engine takes it. */
export async function readWakeFile(which: WakeFile): Promise<string | undefined> {
  const kept = await (await caches.open(CACHE)).match(`/${which}`);
  if (kept === undefined) return undefined;
  const bytes = new Uint8Array(await kept.arrayBuffer());
  let text = '';
  for (let at = 0; at < bytes.length; at += 0x8000) text += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
  return btoa(text);
}

export async function forgetWakeFiles(): Promise<void> {
  await caches.delete(CACHE);
}

/** Lets the wake word's program speak to its maker's host, or takes that back. */
export function admitWakeHost(admit: boolean): void {
  // biome-ignore lint/suspicious/noDocumentCookie: the other interface is missing in browsers that are in use
  document.cookie = `${COOKIE}=on; Path=/wake; SameSite=Strict; Max-Age=${admit ? 31_536_000 : 0}`;
}
