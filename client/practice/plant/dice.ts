/** A die of its own for the simulator: xorshift128 (G. Marsaglia, "Xorshift RNGs", 2003). */
export class Dice {
  private readonly s: Uint32Array;

  constructor(seed: number) {
    this.s = Uint32Array.from([seed ^ 0x9e3779b9, seed * 2654435761, 362436069, 521288629]);
    for (let i = 0; i < 20; i += 1) this.roll();
  }

  /** 0 ≤ x < 1 */
  roll(): number {
    const s = this.s;
    const t = s[0]! ^ (s[0]! << 11);
    s[0] = s[1]!;
    s[1] = s[2]!;
    s[2] = s[3]!;
    s[3] = s[3]! ^ (s[3]! >>> 19) ^ t ^ (t >>> 8);
    return s[3]! / 4294967296;
  }

  span(low: number, high: number): number {
    return low + (high - low) * this.roll();
  }

  /** Leans to the middle: the mean of two. */
  leaning(low: number, high: number): number {
    return low + ((high - low) * (this.roll() + this.roll())) / 2;
  }

  /** Roughly normal: twelve rolls. */
  around(mean: number, deviation: number): number {
    let sum = -6;
    for (let i = 0; i < 12; i += 1) sum += this.roll();
    return mean + deviation * sum;
  }

  yes(chance: number): boolean {
    return this.roll() < chance;
  }

  pick<T>(items: readonly T[]): T {
    return items[Math.floor(this.roll() * items.length)]!;
  }

  /** Picks by weight. */
  weighted<T>(items: readonly (readonly [T, number])[]): T {
    let left = this.roll() * items.reduce((sum, [, w]) => sum + w, 0);
    for (const [item, w] of items) {
      left -= w;
      if (left < 0) return item;
    }
    return items.at(-1)![0];
  }
}
