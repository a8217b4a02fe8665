import { isSealed, openBody } from '../../../grammar/visit/personal.ts';
import { type Cipher, cipherOf, fromBase64url } from '../../record/browser/sealing.ts';

interface Sealed {
  readonly device: string;
  readonly body: string;
}

interface KeysAnswer {
  readonly keys: readonly { readonly device: string; readonly key?: string; readonly erasedAt?: number }[];
}

/** So long after the last time the server is not asked again for a key that has not come. Milliseconds. */
export const ASK_AGAIN_MS = 2_000;

/** Opens what is personal in a visit as the server holds it, by the keys that it gives to whoever may read the visit. */
export class VisitTexts {
  readonly #visit: string;
  readonly #ciphers = new Map<string, Cipher>();
  readonly #erased = new Set<string>();
  #askedAt: number | undefined;

  constructor(visit: string) {
    this.#visit = visit;
  }

  /**
   * The bodies with their texts readable, in their order; without a key `NOT_READABLE` stands for each of them.
   * `waits`: a key may still come, and it is worth opening them again then.
   */
  async open(entries: readonly Sealed[]): Promise<{ readonly bodies: readonly string[]; readonly waits: boolean }> {
    const sealed = entries.filter(({ body }) => isSealed(body));
    if (sealed.length === 0) return { bodies: entries.map(({ body }) => body), waits: false };
    const lacks = () => sealed.some(({ device }) => !this.#knows(device));
    if (lacks()) await this.#ask();
    const bodies = await Promise.all(entries.map(({ device, body }) => openBody(body, this.#ciphers.get(device))));
    return { bodies, waits: lacks() };
  }

  #knows(device: string): boolean {
    return this.#ciphers.has(device) || this.#erased.has(device);
  }

  async #ask(): Promise<void> {
    if (this.#askedAt !== undefined && performance.now() - this.#askedAt < ASK_AGAIN_MS) return;
    this.#askedAt = performance.now();
    const response = await fetch(`/api/visits/${encodeURIComponent(this.#visit)}/keys`).catch(() => undefined);
    if (response?.ok !== true) return;
    for (const { device, key, erasedAt } of ((await response.json()) as KeysAnswer).keys) {
      if (key !== undefined) this.#ciphers.set(device, await cipherOf(fromBase64url(key)));
      else if (erasedAt !== undefined) this.#erased.add(device);
    }
  }
}
