/** A complex number: real and imaginary part. */
export type Cx = readonly [re: number, im: number];

export const cx = {
  add: (a: Cx, b: Cx): Cx => [a[0] + b[0], a[1] + b[1]],
  less: (a: Cx, b: Cx): Cx => [a[0] - b[0], a[1] - b[1]],
  times: (a: Cx, b: Cx): Cx => [a[0] * b[0] - a[1] * b[1], a[0] * b[1] + a[1] * b[0]],
  over: (a: Cx, b: Cx): Cx => {
    const size = b[0] * b[0] + b[1] * b[1];
    return [(a[0] * b[0] + a[1] * b[1]) / size, (a[1] * b[0] - a[0] * b[1]) / size];
  },
  size: (a: Cx): number => Math.hypot(a[0], a[1]),
};

/** What drives a branch beyond its impedance: volts of its own, or a share of the volts between two other nodes. */
export interface Drive {
  readonly volts?: Cx;
  readonly from?: { readonly plus: string; readonly minus: string; readonly gain: Cx };
  /** Whether what flows is drawn where the drive comes from, as a transformer does. */
  readonly drawn?: boolean;
}

interface Branch {
  readonly name: string;
  readonly a: string;
  readonly b: string;
  readonly ohms: Cx;
  readonly drive: Drive;
}

/** Siemens from every node to earth: nothing floats for good. */
const LEAK = 2e-9;

/** What a mesh settles to. */
export interface Solved {
  /** Volts of a node to earth; nothing where there is no such node. */
  readonly at: (node: string) => Cx | undefined;
  /** Amps through a branch from its first to its second end; none where it is open. */
  readonly through: (branch: string) => Cx;
}

/**
 * A network of branches that each keep their own current as an unknown (sparse tableau: Kirchhoff's laws beside one
 * branch equation each), so that an ideal source needs no resistance and a short needs none either.
 */
export class Mesh {
  private readonly branches: Branch[] = [];

  /** @param ohms infinite: the branch is open and left out */
  join(name: string, a: string, b: string, ohms: Cx | number, drive: Drive = {}): void {
    const impedance: Cx = typeof ohms === 'number' ? [ohms, 0] : ohms;
    if (Number.isFinite(impedance[0]) && Number.isFinite(impedance[1]))
      this.branches.push({ name, a, b, ohms: impedance, drive });
  }

  solve(): Solved {
    const nodes = [...new Set(this.branches.flatMap(({ a, b }) => [a, b]))].filter((n) => n !== 'earth');
    const place = new Map(nodes.map((node, i) => [node, i]));
    const size = nodes.length + this.branches.length;
    const rows = Array.from({ length: size }, () => new Float64Array(2 * (size + 1)));
    const put = (row: number, column: number | undefined, [re, im]: Cx) => {
      if (column === undefined) return;
      rows[row]![2 * column]! += re;
      rows[row]![2 * column + 1]! += im;
    };
    for (const i of nodes.keys()) put(i, i, [LEAK, 0]);
    this.branches.forEach(({ a, b, ohms, drive }, k) => {
      const own = nodes.length + k;
      const [from, to] = [place.get(a), place.get(b)];
      if (from !== undefined) put(from, own, [1, 0]);
      if (to !== undefined) put(to, own, [-1, 0]);
      put(own, from, [1, 0]);
      put(own, to, [-1, 0]);
      put(own, own, [-ohms[0], -ohms[1]]);
      if (drive.volts) put(own, size, drive.volts);
      if (drive.from) {
        const { plus, minus, gain } = drive.from;
        put(own, place.get(plus), [-gain[0], -gain[1]]);
        put(own, place.get(minus), gain);
        // A transformer takes from its primary what it gives, turned by its ratio.
        if (drive.drawn) {
          const [p, m] = [place.get(plus), place.get(minus)];
          if (p !== undefined) put(p, own, [-gain[0], gain[1]]);
          if (m !== undefined) put(m, own, [gain[0], -gain[1]]);
        }
      }
    });
    const x = eliminate(rows, size);
    const number = new Map(this.branches.map(({ name }, k) => [name, nodes.length + k]));
    return {
      at: (node) => (node === 'earth' ? [0, 0] : place.has(node) ? x[place.get(node)!] : undefined),
      through: (branch) => (number.has(branch) ? x[number.get(branch)!]! : [0, 0]),
    };
  }
}

/** Gauss with the largest pivot of the column; zeros are stepped over. The right side stands in the last column. */
function eliminate(rows: Float64Array[], size: number): Cx[] {
  for (let k = 0; k < size; k += 1) {
    let best = k;
    for (let i = k + 1; i < size; i += 1) if (magnitude(rows[i]!, k) > magnitude(rows[best]!, k)) best = i;
    [rows[k], rows[best]] = [rows[best]!, rows[k]!];
    const pivot = rows[k]!;
    for (let i = k + 1; i < size; i += 1) {
      const row = rows[i]!;
      if (row[2 * k] === 0 && row[2 * k + 1] === 0) continue;
      const [re, im] = cx.over([row[2 * k]!, row[2 * k + 1]!], [pivot[2 * k]!, pivot[2 * k + 1]!]);
      for (let j = k; j <= size; j += 1) {
        const [pr, pi] = [pivot[2 * j]!, pivot[2 * j + 1]!];
        if (pr === 0 && pi === 0) continue;
        row[2 * j]! -= re * pr - im * pi;
        row[2 * j + 1]! -= re * pi + im * pr;
      }
    }
  }
  const x: Cx[] = Array.from({ length: size }, () => [0, 0]);
  for (let k = size - 1; k >= 0; k -= 1) {
    const row = rows[k]!;
    let rest: Cx = [row[2 * size]!, row[2 * size + 1]!];
    for (let j = k + 1; j < size; j += 1) rest = cx.less(rest, cx.times([row[2 * j]!, row[2 * j + 1]!], x[j]!));
    x[k] = cx.over(rest, [row[2 * k]!, row[2 * k + 1]!]);
  }
  return x;
}

const magnitude = (row: Float64Array, k: number): number => Math.abs(row[2 * k]!) + Math.abs(row[2 * k + 1]!);
