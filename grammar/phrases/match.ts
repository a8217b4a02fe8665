import { joined, type Layer, type Network, overWord, type Place, type Step } from './network.ts';
import type { Tag } from './tag.ts';
import type { HeardWord } from './tokenise.ts';
import {
  apart,
  type Choice,
  COST,
  choicesFor,
  type Near,
  type PassedOver,
  passOver,
  type Taken,
} from './word-choices.ts';

/** One way through the network: every heard word with how it was taken, and the tags passed before each and at the end. */
export interface Path {
  readonly cost: number;
  readonly steps: readonly { readonly tags: readonly Tag[]; readonly taken?: Taken }[];
}

export interface MatchOptions {
  /** Words that sound near a heard one. Given: the matcher repairs; left out: only what was heard counts. */
  readonly near?: (heard: string) => readonly Near[];
  /** How many words may be changed, passed over or supplied. */
  readonly mostRepairs?: number;
  /** How many paths to keep in one state, and to give back. */
  readonly keep?: number;
}

interface Token {
  readonly place: Place;
  readonly layers: readonly Layer[];
  readonly cost: number;
  readonly back: Token | undefined;
  readonly tags: readonly Tag[];
  readonly taken: Taken | undefined;
  /** Words changed, passed over and supplied so far. */
  readonly repairs: number;
}

/** Tokens alive at once; beyond it only the cheapest go on. */
const BEAM = 300;
/** Tokens dearer than the cheapest by more are given up. */
const WIDTH = 5;

/**
 * The cheapest ways through the network for the heard words, best first; empty where there is none. Without
 * `options.near` only heard words, homophones and fillers are taken; with it, words may be repaired or passed over,
 * never number words.
 */
export function match(network: Network, words: readonly HeardWord[], options: MatchOptions = {}): Path[] {
  const forgiving = options.near !== undefined;
  const search = new Search(network, options.keep ?? (forgiving ? 4 : 12), forgiving ? (options.mostRepairs ?? 2) : 0);
  search.begin();
  const said = words.flatMap((heard) => apart(heard, network));
  for (const [at, word] of said.entries()) {
    if (
      !search.advance(
        word,
        choicesFor(word, said[at + 1], network, options.near),
        passOver(word, network.language, forgiving, [said[at - 1], said[at + 1]]),
      )
    )
      return [];
  }
  return search.paths();
}

/** The ways that are still open after each word, the cheapest few of each place. */
class Search {
  private alive: Token[] = [];
  private byPlace = new Map<number, Token[]>();
  private dearest = Number.POSITIVE_INFINITY;
  private readonly network: Network;
  private readonly keep: number;
  private readonly mostRepairs: number;

  constructor(network: Network, keep: number, mostRepairs: number) {
    this.network = network;
    this.keep = keep;
    this.mostRepairs = mostRepairs;
  }

  begin(): void {
    this.add(this.network.start, 0, undefined, [], undefined, 0);
    this.settle();
  }

  /** Takes one heard word in every way it can be taken; false where no way is left. */
  advance(heard: HeardWord, choices: readonly Choice[], passed: PassedOver | undefined): boolean {
    const tokens = this.alive;
    this.dearest = Number.POSITIVE_INFINITY;
    for (const token of tokens) {
      this.take(token, heard, choices);
      if (passed === undefined) continue;
      const cost = token.cost + COST[passed];
      const repairs = token.repairs + (passed === 'skipped' ? 1 : 0);
      this.add(token.place, cost, token, [], { how: passed, heard }, repairs, token.layers);
    }
    this.settle();
    return this.alive.length > 0;
  }

  /** The steps of a token over one word; joints are entered only where one of the choices can follow. */
  private take(token: Token, heard: HeardWord, choices: readonly Choice[]): void {
    for (const layer of token.layers) {
      const { follow } = layer;
      for (const choice of choices) {
        overWord(follow, choice.word, (step) =>
          this.step(token, layer, step, choice.cost, { how: choice.how, heard, word: choice.word }),
        );
      }
      for (const step of follow.anyWord) this.step(token, layer, step, 0, { how: 'word', heard, word: heard.text });
      for (const joint of follow.joints) {
        const begins = this.network.beginningsOf(joint.to);
        if (begins !== 'any' && !choices.some((choice) => begins.has(choice.word))) continue;
        this.take(this.at(token, layer, joint), heard, choices);
      }
    }
  }

  /** A token that has gone on to a joint without another word. */
  private at(from: Token, layer: Layer, joint: Step): Token {
    const place = this.network.landing(joint, layer);
    const layers = this.network.layersOf(place);
    const cost = from.cost + layer.cost + joint.cost;
    const { repairs } = from;
    return { place, layers, cost, back: from, tags: joined(layer.tags, joint.tags), taken: undefined, repairs };
  }

  paths(): Path[] {
    const ended: { token: Token; cost: number; tags: readonly Tag[] }[] = [];
    const collect = (token: Token): void => {
      for (const layer of token.layers) {
        const { follow, entry, cost, tags } = layer;
        // A joint may be passed to the end only where nothing needs to follow it.
        for (const joint of follow.joints) {
          if (this.network.beginningsOf(joint.to) === 'any') collect(this.at(token, layer, joint));
        }
        if (entry.outer !== undefined) continue;
        for (const end of follow.ends) {
          ended.push({ token, cost: token.cost + cost + end.cost, tags: joined(tags, end.tags) });
        }
      }
    };
    this.alive.forEach(collect);
    ended.sort((a, b) => a.cost - b.cost);
    return ended.slice(0, this.keep).map(({ token, cost, tags }) => ({ cost, steps: stepsOf(token, tags) }));
  }

  private step(from: Token, layer: Layer, step: Step, cost: number, taken: Taken | undefined, supplied = 0): void {
    const repairs = from.repairs + supplied + (taken?.how === 'near' ? 1 : 0);
    const whole = from.cost + layer.cost + step.cost + cost;
    if (whole > this.dearest || repairs > this.mostRepairs) return;
    const place = this.network.landing(step, layer);
    this.add(place, whole, from, joined(layer.tags, step.tags), taken, repairs);
  }

  /** Adds a token among the best of its place, and what it reaches without another word. */
  private add(
    place: Place,
    cost: number,
    back: Token | undefined,
    tags: readonly Tag[],
    taken: Taken | undefined,
    repairs: number,
    layers?: readonly Layer[],
  ): void {
    if (cost > this.dearest || repairs > this.mostRepairs) return;
    this.dearest = Math.min(this.dearest, cost + WIDTH);
    const here = this.roomAt(place, cost);
    if (here === undefined) return;
    const token: Token = { place, layers: layers ?? this.network.layersOf(place), cost, back, tags, taken, repairs };
    let at = here.length;
    while (at > 0 && here[at - 1]!.cost > cost) at -= 1;
    here.splice(at, 0, token);
    if (here.length > this.keep) here.pop();
    if (repairs >= this.mostRepairs) return;
    for (const layer of token.layers) {
      for (const step of layer.follow.swallowed) this.step(token, layer, step, 0, undefined, 1);
    }
  }

  /** The tokens of a place, cheapest first; undefined where there are enough of them that cost no more. */
  private roomAt(place: Place, cost: number): Token[] | undefined {
    const key = this.network.keyOf(place);
    const here = this.byPlace.get(key);
    if (here === undefined) {
      const fresh: Token[] = [];
      this.byPlace.set(key, fresh);
      return fresh;
    }
    return here.length >= this.keep && here.at(-1)!.cost <= cost ? undefined : here;
  }

  private settle(): void {
    const all: Token[] = [];
    for (const here of this.byPlace.values()) {
      for (const token of here) if (token.cost <= this.dearest) all.push(token);
    }
    this.alive = all.length <= BEAM ? all : all.sort((a, b) => a.cost - b.cost).slice(0, BEAM);
    this.byPlace = new Map();
  }
}

function stepsOf(token: Token, tags: readonly Tag[]): Path['steps'] {
  const steps: Path['steps'][number][] = [{ tags }];
  for (let at: Token | undefined = token; at?.back !== undefined; at = at.back) {
    steps.push(at.taken === undefined ? { tags: at.tags } : { tags: at.tags, taken: at.taken });
  }
  return steps.reverse();
}
