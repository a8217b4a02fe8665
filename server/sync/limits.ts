/** What one connection, one device and one visit may take of the server: beyond it they alone are refused. */
export const LIMITS = {
  /** Connections in all, those that have not said hello among them. */
  connections: 4_096,
  /** Connections that have said nothing yet; the one that waits longest is cut for another. */
  silent: 256,
  /** Connections of one device that write at once: its visits, each by a page or the service worker. */
  writersOfDevice: 16,
  /** Readers of one visit at once. */
  watchersOfVisit: 100,
  /** Readers in all. */
  watchers: 1_000,
} as const;

/** How many hold something, by name. */
export class Holders {
  readonly #counts = new Map<string, number>();
  #all = 0;

  /** Of all names together. */
  get all(): number {
    return this.#all;
  }

  count(name: string): number {
    return this.#counts.get(name) ?? 0;
  }

  /** Holds until what is returned is called; called again it does nothing. */
  hold(name: string): () => void {
    this.#counts.set(name, this.count(name) + 1);
    this.#all += 1;
    let holds = true;
    return () => {
      if (!holds) return;
      holds = false;
      this.#all -= 1;
      const left = this.count(name) - 1;
      if (left === 0) this.#counts.delete(name);
      else this.#counts.set(name, left);
    };
  }
}
