/** A queue in which names take turns: who brings much waits behind nobody's little. Order holds within a name. */
export class TakeTurns<Item> {
  readonly #lines = new Map<string, Item[]>();
  #size = 0;

  get size(): number {
    return this.#size;
  }

  add(name: string, item: Item): void {
    const line = this.#lines.get(name);
    if (line === undefined) this.#lines.set(name, [item]);
    else line.push(item);
    this.#size += 1;
  }

  /** Up to `most` items: of each name as many as an equal share lets it, and more where others leave room. */
  take(most: number): Item[] {
    const taken: Item[] = [];
    while (taken.length < most && this.#size > 0) {
      const share = Math.max(1, Math.floor((most - taken.length) / this.#lines.size));
      for (const [name, line] of [...this.#lines]) {
        const part = line.splice(0, Math.min(share, most - taken.length));
        taken.push(...part);
        this.#size -= part.length;
        this.#lines.delete(name);
        // Behind the others: whose turn was cut short is not first again.
        if (line.length > 0) this.#lines.set(name, line);
        if (taken.length >= most) break;
      }
    }
    return taken;
  }
}
