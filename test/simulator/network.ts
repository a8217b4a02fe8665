import { type Complex, cx, minus, over, plus, scale, size, times } from './complex.ts';

interface Link {
  readonly from: string;
  readonly to: string;
  /** Current from → to for each volt between `plus` and `minus`. */
  readonly plus: string;
  readonly minus: string;
  readonly admittance: Complex;
}

/**
 * A network by node names. Conductors that are joined by good metal are merged into one node first; what is left is
 * solved by Gauss elimination with row exchange on a full matrix. Nodes nobody ties to ground hang on a leak.
 */
export class Network {
  private readonly links: Link[] = [];
  private readonly feeds: { node: string; current: Complex }[] = [];
  private readonly joined = new Map<string, string>();
  private solved: Map<string, Complex> | undefined;

  /** Good metal between two nodes. */
  join(a: string, b: string): void {
    const ra = this.root(a);
    const rb = this.root(b);
    if (ra === rb) return;
    if (rb === 'ground') this.joined.set(ra, rb);
    else this.joined.set(rb, ra);
  }

  /** Joins when the ohms are next to nothing, links when they are something, does nothing when open. */
  path(a: string, b: string, ohms: number): void {
    if (ohms < 0.005) this.join(a, b);
    else if (Number.isFinite(ohms)) this.impedance(a, b, cx(ohms));
  }

  impedance(a: string, b: string, z: Complex): void {
    this.transfer(a, b, a, b, over(cx(1), z));
  }

  transfer(from: string, to: string, plusNode: string, minusNode: string, admittance: Complex): void {
    this.links.push({ from, to, plus: plusNode, minus: minusNode, admittance });
  }

  /** A source of voltage behind an impedance, from ground. */
  source(node: string, volts: Complex, z: Complex): void {
    this.impedance(node, 'ground', z);
    this.feeds.push({ node, current: over(volts, z) });
  }

  /** A source between two nodes. */
  sourceBetween(a: string, b: string, volts: Complex, z: Complex): void {
    this.impedance(a, b, z);
    this.feeds.push({ node: a, current: over(volts, z) }, { node: b, current: scale(over(volts, z), -1) });
  }

  private root(node: string): string {
    let at = node;
    while (this.joined.has(at)) at = this.joined.get(at)!;
    return at;
  }

  private names(): string[] {
    const all = new Set<string>();
    for (const link of this.links) for (const n of [link.from, link.to, link.plus, link.minus]) all.add(this.root(n));
    for (const feed of this.feeds) all.add(this.root(feed.node));
    all.delete('ground');
    return [...all];
  }

  private matrix(names: readonly string[]): Complex[][] {
    const row = new Map(names.map((name, i) => [name, i]));
    const m = names.map((_, i) => names.map((__, j) => (i === j ? cx(2e-9) : cx(0))));
    const put = (r: string, c: string, y: Complex) => {
      const i = row.get(this.root(r));
      const j = row.get(this.root(c));
      if (i !== undefined && j !== undefined) m[i]![j] = plus(m[i]![j]!, y);
    };
    for (const { from, to, plus: p, minus: n, admittance: y } of this.links) {
      put(from, p, y);
      put(from, n, scale(y, -1));
      put(to, p, scale(y, -1));
      put(to, n, y);
    }
    return m;
  }

  /** Node voltages for the right-hand side given by `feeds`. */
  private eliminate(feeds: readonly { node: string; current: Complex }[]): Map<string, Complex> {
    const names = this.names();
    const m = this.matrix(names);
    const rhs = names.map(() => cx(0));
    feeds.forEach(({ node, current }) => {
      const i = names.indexOf(this.root(node));
      if (i >= 0) rhs[i] = plus(rhs[i]!, current);
    });
    for (let p = 0; p < names.length; p += 1) {
      let best = p;
      for (let r = p + 1; r < names.length; r += 1) if (size(m[r]![p]!) > size(m[best]![p]!)) best = r;
      [m[p], m[best]] = [m[best]!, m[p]!];
      [rhs[p], rhs[best]] = [rhs[best]!, rhs[p]!];
      for (let r = p + 1; r < names.length; r += 1) {
        if (m[r]![p]!.re === 0 && m[r]![p]!.im === 0) continue;
        const f = over(m[r]![p]!, m[p]![p]!);
        for (let c = p; c < names.length; c += 1) m[r]![c] = minus(m[r]![c]!, times(f, m[p]![c]!));
        rhs[r] = minus(rhs[r]!, times(f, rhs[p]!));
      }
    }
    const volts: Complex[] = [];
    for (let p = names.length - 1; p >= 0; p -= 1) {
      let sum = rhs[p]!;
      for (let c = p + 1; c < names.length; c += 1) sum = minus(sum, times(m[p]![c]!, volts[c]!));
      volts[p] = over(sum, m[p]![p]!);
    }
    return new Map(names.map((name, i) => [name, volts[i]!]));
  }

  at(node: string): Complex {
    this.solved ??= this.eliminate(this.feeds);
    return this.solved.get(this.root(node)) ?? cx(0);
  }

  /** Volts between two nodes as a meter of so many ohms shows them: solved again with the meter in place. */
  metered(a: string, b: string, meterOhms: number): number {
    if (this.root(a) === this.root(b)) return 0;
    const loaded = new Network();
    loaded.links.push(...this.links, { from: a, to: b, plus: a, minus: b, admittance: cx(1 / meterOhms) });
    loaded.feeds.push(...this.feeds);
    for (const [k, v] of this.joined) loaded.joined.set(k, v);
    return size(minus(loaded.at(a), loaded.at(b)));
  }

  /** Ohms between two nodes, for a network of resistances without sources. */
  ohms(a: string, b: string): number {
    if (this.root(a) === this.root(b)) return 0;
    const feeds = [
      { node: a, current: cx(1) },
      { node: b, current: cx(-1) },
    ];
    const volts = this.eliminate(feeds);
    const known = (n: string) => n === 'ground' || volts.has(this.root(n));
    if (!known(a) || !known(b)) return Number.POSITIVE_INFINITY;
    const va = volts.get(this.root(a)) ?? cx(0);
    const vb = volts.get(this.root(b)) ?? cx(0);
    return size(minus(va, vb));
  }

  /** Amps of the links that leave a node towards another. */
  ampsBetween(a: string, b: string): number {
    let sum = cx(0);
    for (const { from, to, plus: p, minus: n, admittance } of this.links) {
      const forward = this.root(from) === this.root(a) && this.root(to) === this.root(b);
      const backward = this.root(to) === this.root(a) && this.root(from) === this.root(b);
      if (!forward && !backward) continue;
      const current = times(admittance, minus(this.at(p), this.at(n)));
      sum = plus(sum, scale(current, forward ? 1 : -1));
    }
    return size(sum);
  }
}
