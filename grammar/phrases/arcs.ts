import type { Tag } from './tag.ts';

/** What an arc passes over: a word, any word, a whole rule, or nothing at a price. */
export type Over =
  | { readonly word: string }
  | { readonly any: true }
  | { readonly call: string }
  | { readonly cost: number; readonly tag?: Tag };

export interface Arc {
  readonly to: number;
  readonly over: Over;
}

/** The arcs of all states in two flat lists, each thing that is passed over once: as objects they weigh ten times as much. */
export class Arcs {
  readonly states: number;
  /** Where the arcs of each state begin in the lists; one more than there are states. */
  private readonly begins: Int32Array;
  private readonly to: Int32Array;
  private readonly over: Uint16Array;
  private readonly overs: readonly Over[];

  constructor(byState: readonly (readonly Arc[])[]) {
    const all = byState.flat();
    this.overs = [...new Set(all.map((arc) => arc.over))];
    const places = new Map(this.overs.map((over, place) => [over, place]));
    this.states = byState.length;
    this.begins = new Int32Array(byState.length + 1);
    byState.forEach((arcs, state) => {
      this.begins[state + 1] = this.begins[state]! + arcs.length;
    });
    this.to = Int32Array.from(all, (arc) => arc.to);
    this.over = Uint16Array.from(all, (arc) => places.get(arc.over)!);
  }

  /** The arcs that leave a state, in the order they were laid. */
  leaving(state: number): Arc[] {
    const arcs: Arc[] = [];
    for (let at = this.begins[state]!; at < this.begins[state + 1]!; at += 1) {
      arcs.push({ to: this.to[at]!, over: this.overs[this.over[at]!]! });
    }
    return arcs;
  }
}
