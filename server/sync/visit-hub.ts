/** So many watchers are told in one turn of the event loop: events and acknowledgements come in between. */
const A_TURN = 32;

/** Tells watchers that a visit has grown; what is new they read themselves. */
export class VisitHub {
  readonly #watchers = new Map<string, Set<() => void>>();
  readonly #due = new Set<() => void>();
  #telling = false;

  watch(company: string, visit: string, grown: () => void): () => void {
    const key = `${company}/${visit}`;
    const watchers = this.#watchers.get(key) ?? new Set();
    this.#watchers.set(key, watchers.add(grown));
    return () => {
      watchers.delete(grown);
      this.#due.delete(grown);
      if (watchers.size === 0) this.#watchers.delete(key);
    };
  }

  tell(visits: Iterable<{ readonly company: string; readonly visit: string }>): void {
    if (this.#watchers.size === 0) return;
    const keys = new Set<string>();
    for (const { company, visit } of visits) keys.add(`${company}/${visit}`);
    for (const key of keys) for (const grown of this.#watchers.get(key) ?? []) this.#due.add(grown);
    if (!this.#telling) this.#tellSome();
  }

  /** Any visit may have grown. */
  tellAll(): void {
    for (const watchers of this.#watchers.values()) for (const grown of watchers) this.#due.add(grown);
    if (!this.#telling) this.#tellSome();
  }

  #tellSome(): void {
    this.#telling = this.#due.size > 0;
    let told = 0;
    for (const grown of this.#due) {
      if (told === A_TURN) break;
      told += 1;
      this.#due.delete(grown);
      grown();
    }
    if (this.#telling) setImmediate(() => this.#tellSome());
  }
}
