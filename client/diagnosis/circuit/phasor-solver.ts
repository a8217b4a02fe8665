import type { CircuitValues } from './circuit-values.ts';
import { findPattern } from './sparse-pattern.ts';
import { BACK_EMFS, BRANCHES, branchNumber, GMIN, NODES, nodeNumber, TRANSFORMER } from './topology.ts';

const pattern = findPattern();
const size = pattern.size;
const rowsOf = (from: number, to: number) => [pattern.rowOf[from]!, pattern.rowOf[to]!] as const;
const branchRows = BRANCHES.map((b) => rowsOf(nodeNumber(b.from), nodeNumber(b.to)));
const emfRows = BACK_EMFS.map((emf) => ({
  branch: branchNumber(emf.branch),
  at: branchRows[branchNumber(emf.branch)]!,
  across: rowsOf(nodeNumber(emf.plus), nodeNumber(emf.minus)),
}));
const primaryRows = rowsOf(nodeNumber(TRANSFORMER.primary[0]), nodeNumber(TRANSFORMER.primary[1]));
const secondaryRows = rowsOf(nodeNumber(TRANSFORMER.secondary[0]), nodeNumber(TRANSFORMER.secondary[1]));

/**
 * Complex phasor nodal analysis over the fixed topology: LU on typed arrays along the sparse pattern, no pivoting
 * (every row is diagonally dominant but for the back-emf terms, which are far from cancelling it). A conductor that
 * floats hangs on the leak alone, a billionth of a siemens beside a hundred: so the diagonal is never added up. Each row
 * keeps what it has to earth, and a pivot is that less the rest of its row (Grassmann, Taksar and Heyman, 1985). One
 * instance is a workspace: `load` factors the circuit, then `solve` and `thevenin` answer for it.
 */
export class PhasorSolver {
  private readonly re = new Float64Array(size * size);
  private readonly im = new Float64Array(size * size);
  /** What each row has to earth: the sum of its entries. */
  private readonly earthRe = new Float64Array(size);
  private readonly earthIm = new Float64Array(size);
  private readonly xr = new Float64Array(size);
  private readonly xi = new Float64Array(size);

  /** Stamps and factors the circuit. */
  load(values: CircuitValues): void {
    this.re.fill(0);
    this.im.fill(0);
    this.earthRe.fill(GMIN);
    this.earthIm.fill(0);
    for (let b = 0; b < branchRows.length; b += 1) {
      const [i, j] = branchRows[b]!;
      this.stamp(i, j, i, j, values.re[b]!, values.im[b]!);
    }
    for (let e = 0; e < emfRows.length; e += 1) this.stampEmf(values, e);
    this.stampTransformer(values);
    this.factor();
  }

  /** Node voltages (order of NODES) for the circuit's own sources. */
  solve(values: CircuitValues, outRe: Float64Array, outIm: Float64Array): void {
    for (let node = 1; node < NODES.length; node += 1) {
      const row = pattern.rowOf[node]!;
      this.xr[row] = values.sourceRe[node]!;
      this.xi[row] = values.sourceIm[node]!;
    }
    this.substitute();
    outRe[0] = 0;
    outIm[0] = 0;
    for (let node = 1; node < NODES.length; node += 1) {
      outRe[node] = this.xr[pattern.rowOf[node]!]!;
      outIm[node] = this.xi[pattern.rowOf[node]!]!;
    }
  }

  /** Complex impedance seen between two nodes, in ohms, all independent sources at rest. */
  thevenin(from: number, to: number): readonly [number, number] {
    this.xr.fill(0);
    this.xi.fill(0);
    const i = pattern.rowOf[from]!;
    const j = pattern.rowOf[to]!;
    if (i >= 0) this.xr[i] = 1;
    if (j >= 0) this.xr[j] = -1;
    this.substitute();
    const re = (i >= 0 ? this.xr[i]! : 0) - (j >= 0 ? this.xr[j]! : 0);
    const im = (i >= 0 ? this.xi[i]! : 0) - (j >= 0 ? this.xi[j]! : 0);
    return [re, im];
  }

  /** Adds a transadmittance: current out of i into j, controlled by V_k − V_l. */
  private stamp(i: number, j: number, k: number, l: number, re: number, im: number): void {
    this.add(i, k, re, im);
    this.add(i, l, -re, -im);
    this.add(j, k, -re, -im);
    this.add(j, l, re, im);
    // Between two conductors the entries of a row cancel; against earth one of them is missing.
    const open = (k < 0 ? 0 : 1) - (l < 0 ? 0 : 1);
    if (open === 0) return;
    this.addEarth(i, open * re, open * im);
    this.addEarth(j, -open * re, -open * im);
  }

  private add(row: number, column: number, re: number, im: number): void {
    if (row < 0 || column < 0 || row === column) return;
    const at = row * size + column;
    this.re[at] = this.re[at]! + re;
    this.im[at] = this.im[at]! + im;
  }

  private addEarth(row: number, re: number, im: number): void {
    if (row < 0) return;
    this.earthRe[row] = this.earthRe[row]! + re;
    this.earthIm[row] = this.earthIm[row]! + im;
  }

  private stampEmf(values: CircuitValues, e: number): void {
    const { branch, at, across } = emfRows[e]!;
    const gr = values.gainRe[e]!;
    const gi = values.gainIm[e]!;
    if (gr === 0 && gi === 0) return;
    const yr = values.re[branch]!;
    const yi = values.im[branch]!;
    this.stamp(at[0], at[1], across[0], across[1], -(yr * gr - yi * gi), -(yr * gi + yi * gr));
  }

  private stampTransformer(values: CircuitValues): void {
    const { transformerRatio: n, transformerRe: yr, transformerIm: yi } = values;
    const [p, q] = primaryRows;
    const [s, t] = secondaryRows;
    this.stamp(p, q, p, q, n * n * yr, n * n * yi);
    this.stamp(p, q, s, t, -n * yr, -n * yi);
    this.stamp(s, t, p, q, -n * yr, -n * yi);
    this.stamp(s, t, s, t, yr, yi);
  }

  private factor(): void {
    const { re, im, earthRe, earthIm } = this;
    for (let p = 0; p < size; p += 1) {
      const later = pattern.later[p]!;
      let dr = earthRe[p]!;
      let di = earthIm[p]!;
      for (let b = 0; b < later.length; b += 1) {
        dr -= re[p * size + later[b]!]!;
        di -= im[p * size + later[b]!]!;
      }
      re[p * size + p] = dr;
      im[p * size + p] = di;
      const d = dr * dr + di * di;
      for (let a = 0; a < later.length; a += 1) {
        const i = later[a]!;
        const row = i * size;
        const ar = re[row + p]!;
        const ai = im[row + p]!;
        if (ar === 0 && ai === 0) continue;
        const fr = (ar * dr + ai * di) / d;
        const fi = (ai * dr - ar * di) / d;
        re[row + p] = fr;
        im[row + p] = fi;
        earthRe[i] = earthRe[i]! - (fr * earthRe[p]! - fi * earthIm[p]!);
        earthIm[i] = earthIm[i]! - (fr * earthIm[p]! + fi * earthRe[p]!);
        for (let b = 0; b < later.length; b += 1) {
          const column = later[b]!;
          if (column === i) continue;
          const ur = re[p * size + column]!;
          const ui = im[p * size + column]!;
          re[row + column] = re[row + column]! - (fr * ur - fi * ui);
          im[row + column] = im[row + column]! - (fr * ui + fi * ur);
        }
      }
    }
  }

  private substitute(): void {
    const { re, im, xr, xi } = this;
    for (let p = 0; p < size; p += 1) {
      const br = xr[p]!;
      const bi = xi[p]!;
      if (br === 0 && bi === 0) continue;
      for (const row of pattern.later[p]!) {
        const fr = re[row * size + p]!;
        const fi = im[row * size + p]!;
        xr[row] = xr[row]! - (fr * br - fi * bi);
        xi[row] = xi[row]! - (fr * bi + fi * br);
      }
    }
    for (let p = size - 1; p >= 0; p -= 1) {
      let sr = xr[p]!;
      let si = xi[p]!;
      for (const column of pattern.later[p]!) {
        const ur = re[p * size + column]!;
        const ui = im[p * size + column]!;
        sr -= ur * xr[column]! - ui * xi[column]!;
        si -= ur * xi[column]! + ui * xr[column]!;
      }
      const dr = re[p * size + p]!;
      const di = im[p * size + p]!;
      const d = dr * dr + di * di;
      xr[p] = (sr * dr + si * di) / d;
      xi[p] = (si * dr - sr * di) / d;
    }
  }
}
