import { BACK_EMFS, BRANCHES, NODES, nodeNumber, TRANSFORMER } from './topology.ts';

/**
 * Which entries of the nodal matrix can ever be non-zero, fill-in included, and the order of elimination that keeps
 * them few (minimum degree). Worked out once: the topology never changes, only its values.
 */
export interface SparsePattern {
  readonly size: number;
  /** Node (1…) → row, in order of elimination. Earth has row −1. */
  readonly rowOf: Int16Array;
  /** For each row, the later rows or columns that its elimination touches. */
  readonly later: readonly Int16Array[];
}

/** Pairs of nodes that share a matrix entry. */
function couplings(): [number, number][] {
  const pairs: [number, number][] = BRANCHES.map((b) => [nodeNumber(b.from), nodeNumber(b.to)]);
  const clique = (names: readonly number[]) => {
    for (const a of names) for (const b of names) if (a < b) pairs.push([a, b]);
  };
  for (const emf of BACK_EMFS) {
    const branch = BRANCHES.find((b) => b.id === emf.branch)!;
    clique([branch.from, branch.to, emf.plus, emf.minus].map(nodeNumber));
  }
  clique([...TRANSFORMER.primary, ...TRANSFORMER.secondary].map(nodeNumber));
  return pairs;
}

/** Minimum-degree order with fill-in; ties go to the lower node number so that the pattern never changes by chance. */
export function findPattern(): SparsePattern {
  const neighbours = NODES.map(() => new Set<number>());
  for (const [a, b] of couplings()) {
    if (a === 0 || b === 0 || a === b) continue;
    neighbours[a]!.add(b);
    neighbours[b]!.add(a);
  }
  const rowOf = new Int16Array(NODES.length).fill(-1);
  const order: number[] = [];
  const touched: number[][] = [];
  const left = new Set(NODES.keys());
  left.delete(0);
  while (left.size > 0) {
    const pivot = [...left].reduce((best, node) => (neighbours[node]!.size < neighbours[best]!.size ? node : best));
    left.delete(pivot);
    rowOf[pivot] = order.length;
    order.push(pivot);
    const around = [...neighbours[pivot]!];
    touched.push(around);
    for (const a of around) {
      neighbours[a]!.delete(pivot);
      for (const b of around) if (a !== b) neighbours[a]!.add(b);
    }
  }
  const later = touched.map((nodes) => Int16Array.from(nodes, (node) => rowOf[node]!).sort());
  return { size: order.length, rowOf, later };
}
