/** Chance for this room: a counter stirred by multiplication and shifts (splitmix32, public domain). */
export class Chance {
  private state: number;

  constructor(seed: number) {
    this.state = seed | 0;
  }

  /** 0 ≤ x < 1 */
  next(): number {
    this.state = (this.state + 0x9e3779b9) | 0;
    let z = this.state;
    z = Math.imul(z ^ (z >>> 16), 0x21f0aaad);
    z = Math.imul(z ^ (z >>> 15), 0x735a2d97);
    return ((z ^ (z >>> 15)) >>> 0) / 4294967296;
  }

  span(low: number, high: number): number {
    return low + (high - low) * this.next();
  }

  /** Normal, with a heavy tail: one draw in twenty scatters three times as wide. */
  around(mean: number, deviation: number): number {
    const wide = this.next() < 0.05 ? 3 : 1;
    const radius = Math.sqrt(-2 * Math.log(1 - this.next()));
    return mean + wide * deviation * radius * Math.cos(2 * Math.PI * this.next());
  }

  yes(share: number): boolean {
    return this.next() < share;
  }

  pick<T>(items: readonly T[]): T {
    return items[Math.floor(this.next() * items.length)]!;
  }

  weighted<T>(items: readonly (readonly [T, number])[]): T {
    const total = items.reduce((sum, [, weight]) => sum + weight, 0);
    let left = this.next() * total;
    for (const [item, weight] of items) {
      left -= weight;
      if (left < 0) return item;
    }
    return items.at(-1)![0];
  }
}
