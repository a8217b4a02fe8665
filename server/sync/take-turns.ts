/** So many of a name are taken together where there are many names: each costs a look-up and an answer of its own. */
const QUANTUM = 16;

/**
 * A queue in which names take turns: who brings much waits behind nobody's little. Who comes anew goes before those that
 * were cut short, who keep half of each batch (as the flow queues of RFC 8290, 4.2). Order holds within a name.
 */
export class TakeTurns<Item> {
  /** Names that brought something since they were last empty. */
  readonly #fresh = new Map<string, Item[]>();
  /** Names whose turn was cut short, the one that waits longest first. */
  readonly #cutShort = new Map<string, Item[]>();
  #size = 0;

  get size(): number {
    return this.#size;
  }

  add(name: string, item: Item): void {
    const line = this.#cutShort.get(name) ?? this.#fresh.get(name);
    if (line === undefined) this.#fresh.set(name, [item]);
    else line.push(item);
    this.#size += 1;
  }

  /** Up to `most` items: of each name an equal share or a handful, and more where others leave room. */
  take(most: number): Item[] {
    const taken: Item[] = [];
    if (this.#cutShort.size > 0) this.#serve(this.#fresh, Math.ceil(most / 2), taken);
    this.#serve(this.#cutShort.size > 0 ? this.#cutShort : this.#fresh, most, taken);
    while (taken.length < most && this.#size > 0) {
      this.#serve(this.#fresh, most, taken);
      this.#serve(this.#cutShort, most, taken);
    }
    return taken;
  }

  /** One turn for each of the lines, until `upTo` are taken. */
  #serve(lines: Map<string, Item[]>, upTo: number, taken: Item[]): void {
    const share = Math.max(QUANTUM, Math.floor((upTo - taken.length) / lines.size));
    for (const [name, line] of [...lines]) {
      if (taken.length >= upTo) return;
      const part = line.splice(0, Math.min(share, upTo - taken.length));
      taken.push(...part);
      this.#size -= part.length;
      lines.delete(name);
      if (line.length > 0) this.#cutShort.set(name, line);
    }
  }
}
