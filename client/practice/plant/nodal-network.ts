import { minus, type Phasor, times } from './phasor.ts';

/** A node is named by its point; `ground` is the reference. */
type Node = string;

/** Leak of every node to ground, siemens: a floating conductor has some potential, as everything in a damp cabinet. */
const LEAK = 1e-10;

/**
 * A linear network in the node-voltage method: admittances, current sources and coupled pairs are stamped, then one
 * Gaussian elimination with row exchange that passes by the zeros.
 */
export class NodalNetwork {
  private readonly index = new Map<Node, number>();
  private readonly entries: (readonly [row: number, column: number, re: number, im: number])[] = [];
  private readonly injected: (readonly [row: number, current: Phasor])[] = [];

  /** Whether anything is connected there. */
  has(node: Node): boolean {
    return node === 'ground' || this.index.has(node);
  }

  /** @param y siemens */
  admittance(a: Node, b: Node, y: Phasor): void {
    this.stamp(a, a, y);
    this.stamp(b, b, y);
    this.stamp(a, b, [-y[0], -y[1]]);
    this.stamp(b, a, [-y[0], -y[1]]);
  }

  /** A current of `y` times the voltage from c to d, drawn from a and delivered to b. */
  transfer(a: Node, b: Node, c: Node, d: Node, y: Phasor): void {
    const back: Phasor = [-y[0], -y[1]];
    this.stamp(a, c, y);
    this.stamp(a, d, back);
    this.stamp(b, c, back);
    this.stamp(b, d, y);
  }

  /** A current that flows out of a source into `to`, amperes. */
  inject(from: Node, to: Node, current: Phasor): void {
    const f = this.at(from);
    const t = this.at(to);
    if (t >= 0) this.injected.push([t, current]);
    if (f >= 0) this.injected.push([f, [-current[0], -current[1]]]);
  }

  private at(node: Node): number {
    if (node === 'ground') return -1;
    const known = this.index.get(node);
    if (known !== undefined) return known;
    this.index.set(node, this.index.size);
    return this.index.size - 1;
  }

  private stamp(row: Node, column: Node, y: Phasor): void {
    const r = this.at(row);
    const c = this.at(column);
    if (r >= 0 && c >= 0) this.entries.push([r, c, y[0], y[1]]);
  }

  /** The voltage of any two nodes against each other, volts. */
  solve(): (a: Node, b: Node) => Phasor {
    const n = this.index.size;
    const re = Array.from({ length: n }, () => new Float64Array(n + 1));
    const im = Array.from({ length: n }, () => new Float64Array(n + 1));
    for (const [r, c, x, y] of this.entries) {
      re[r]![c]! += x;
      im[r]![c]! += y;
    }
    for (let i = 0; i < n; i += 1) re[i]![i]! += LEAK;
    for (const [r, [x, y]] of this.injected) {
      re[r]![n]! += x;
      im[r]![n]! += y;
    }
    const volts = eliminate(re, im);
    const of = (node: Node): Phasor => {
      const i = this.index.get(node);
      return i === undefined ? [0, 0] : volts[i]!;
    };
    return (a, b) => minus(of(a), of(b));
  }
}

function eliminate(re: Float64Array[], im: Float64Array[]): Phasor[] {
  const n = re.length;
  for (let k = 0; k < n; k += 1) {
    let best = k;
    for (let i = k + 1; i < n; i += 1) {
      if (Math.hypot(re[i]![k]!, im[i]![k]!) > 10 * Math.hypot(re[best]![k]!, im[best]![k]!)) best = i;
    }
    [re[k], re[best]] = [re[best]!, re[k]!];
    [im[k], im[best]] = [im[best]!, im[k]!];
    const [pr, pi] = [re[k]!, im[k]!];
    const d = pr[k]! * pr[k]! + pi[k]! * pi[k]!;
    const filled: number[] = [];
    for (let j = k; j <= n; j += 1) if (pr[j] !== 0 || pi[j] !== 0) filled.push(j);
    for (let i = k + 1; i < n; i += 1) {
      const [rr, ri] = [re[i]!, im[i]!];
      if (rr[k] === 0 && ri[k] === 0) continue;
      const fr = (rr[k]! * pr[k]! + ri[k]! * pi[k]!) / d;
      const fi = (ri[k]! * pr[k]! - rr[k]! * pi[k]!) / d;
      for (const j of filled) {
        rr[j]! -= fr * pr[j]! - fi * pi[j]!;
        ri[j]! -= fr * pi[j]! + fi * pr[j]!;
      }
    }
  }
  const x: Phasor[] = new Array<Phasor>(n);
  for (let k = n - 1; k >= 0; k -= 1) {
    let sum: Phasor = [re[k]![n]!, im[k]![n]!];
    for (let j = k + 1; j < n; j += 1) {
      if (re[k]![j] !== 0 || im[k]![j] !== 0) sum = minus(sum, times([re[k]![j]!, im[k]![j]!], x[j]!));
    }
    const d = re[k]![k]! ** 2 + im[k]![k]! ** 2;
    x[k] = [(sum[0] * re[k]![k]! + sum[1] * im[k]![k]!) / d, (sum[1] * re[k]![k]! - sum[0] * im[k]![k]!) / d];
  }
  return x;
}
