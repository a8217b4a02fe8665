/** Tells watchers that a visit has grown; what is new they read themselves. */
export class VisitHub {
  readonly #watchers = new Map<string, Set<() => void>>();

  watch(company: string, visit: string, grown: () => void): () => void {
    const key = `${company}/${visit}`;
    const watchers = this.#watchers.get(key) ?? new Set();
    this.#watchers.set(key, watchers.add(grown));
    return () => {
      watchers.delete(grown);
      if (watchers.size === 0) this.#watchers.delete(key);
    };
  }

  tell(visits: Iterable<{ readonly company: string; readonly visit: string }>): void {
    const keys = new Set<string>();
    for (const { company, visit } of visits) keys.add(`${company}/${visit}`);
    for (const key of keys) for (const grown of this.#watchers.get(key) ?? []) grown();
  }
}
