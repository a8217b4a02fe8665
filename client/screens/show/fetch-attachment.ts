/** A sound or photo of a visit from the server, which puts that on its trail; or the sentence that says why there is none. */
export async function fetchAttachment(visit: string, sha256: string): Promise<Uint8Array<ArrayBuffer> | string> {
  const response = await fetch(`/api/visits/${encodeURIComponent(visit)}/attachments/${sha256}`);
  if (!response.ok) return ((await response.json()) as { sentence: string }).sentence;
  return new Uint8Array(await response.arrayBuffer());
}
