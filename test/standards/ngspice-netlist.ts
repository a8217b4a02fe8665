import type { CircuitValues } from '../../client/diagnosis/circuit/circuit-values.ts';
import { BACK_EMFS, BRANCHES, GMIN, NODES, TRANSFORMER } from '../../client/diagnosis/circuit/topology.ts';

const OMEGA = 2 * Math.PI * 60;
const n = (value: number) => value.toExponential(15);
const node = (name: string) => (name === 'earth' ? '0' : `n${(NODES as readonly string[]).indexOf(name)}`);

/** An impedance as resistor and inductor or capacitor in series, at 60 Hz. `tail` is the node behind an inner source. */
function impedance(id: string, from: string, to: string, re: number, im: number): string[] {
  const d = re * re + im * im;
  const r = re / d;
  const x = -im / d;
  if (Math.abs(x) < 1e-15 * Math.abs(r)) return [`R${id} ${from} ${to} ${n(r)}`];
  const part = x > 0 ? `L${id} m${id} ${to} ${n(x / OMEGA)}` : `C${id} m${id} ${to} ${n(-1 / (OMEGA * x))}`;
  return [r === 0 ? part.replace(`m${id}`, from) : `R${id} ${from} m${id} ${n(r)}`, ...(r === 0 ? [] : [part])];
}

/**
 * The same circuit in ngspice's own words: every branch an R with L or C, each back-emf a pair of controlled sources
 * (the quarter turn made by one ampere for each volt through an inductor of 1 Ω), the transformer an ideal pair, the
 * service Norton sources, and the same leak to earth at every node.
 */
export function ngspiceNetlist(values: CircuitValues): string {
  const lines = ['diagnosis circuit'];
  BRANCHES.forEach((branch, b) => {
    const [re, im] = [values.re[b]!, values.im[b]!];
    if (re === 0 && im === 0) return;
    const e = BACK_EMFS.findIndex((emf) => emf.branch === branch.id);
    const [gr, gi] = e < 0 ? [0, 0] : [values.gainRe[e]!, values.gainIm[e]!];
    const end = gr === 0 && gi === 0 ? node(branch.to) : `z${b}`;
    lines.push(...impedance(`b${b}`, node(branch.from), end, re, im));
    if (end === node(branch.to)) return;
    const { plus, minus } = BACK_EMFS[e]!;
    const across = `${node(plus)} ${node(minus)}`;
    // In-phase part, then the quarter turn: q carries j·(V_plus − V_minus).
    lines.push(`Gq${b} 0 q${b} ${across} 1`, `Lq${b} q${b} 0 ${n(1 / OMEGA)}`);
    lines.push(`Ea${b} z${b} y${b} ${across} ${n(gr)}`, `Eb${b} y${b} ${node(branch.to)} q${b} 0 ${n(gi)}`);
  });
  const [p, q] = TRANSFORMER.primary.map(node);
  const [s, t] = TRANSFORMER.secondary.map(node);
  if (values.transformerRe !== 0) {
    lines.push(`Et xs ${t} ${p} ${q} ${n(values.transformerRatio)}`, `Vt xs xr 0`);
    lines.push(`Ft ${p} ${q} Vt ${n(values.transformerRatio)}`);
    lines.push(...impedance('t', 'xr', s!, values.transformerRe, values.transformerIm));
  }
  NODES.forEach((name, i) => {
    if (i === 0) return;
    lines.push(`Rg${i} ${node(name)} 0 ${n(1 / GMIN)}`);
    const [re, im] = [values.sourceRe[i]!, values.sourceIm[i]!];
    if (re === 0 && im === 0) return;
    lines.push(`I${i} 0 ${node(name)} ac ${n(Math.hypot(re, im))} ${n((Math.atan2(im, re) * 180) / Math.PI)}`);
  });
  // ngspice's own leak stays out: ours stands in the list.
  lines.push('.options gmin=1e-18 reltol=1e-9 abstol=1e-15 vntol=1e-12', '.ac lin 1 60 60', '.end');
  return lines.join('\n');
}
