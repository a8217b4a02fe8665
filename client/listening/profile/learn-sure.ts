import { follow } from '../recogniser/automaton.ts';
import { type Gate, marginOf } from '../recogniser/gate.ts';
import type { GrammarDecoder } from '../recogniser/grammar-decoder.ts';
import { PHONE_LOOP } from '../recogniser/phone-loop.ts';
import type { HeardAloud } from './as-heard.ts';

/** One sentence heard by the grammar it belongs to. */
export interface Tried {
  readonly margin: number;
  readonly right: boolean;
}

/** Fewer right ones tell nothing. */
const FEWEST = 10;
/** So many of the right ones may be given a second look all the same. */
const LOOKED_TWICE = 0.1;
/** A voice is believed from nowhere so near to where it was once heard wrongly. */
const CLEAR_OF_WRONG = 0.5;

/**
 * From which margin on a person's sentences are taken at the first look: as low as nine in ten of their own right ones
 * lie, above all that was heard wrongly, never below what is doubtful in anybody's mouth, never higher than for others.
 */
export function sureOf(gate: Gate, tried: readonly Tried[]): number {
  const right = tried.filter((one) => one.right).map(({ margin }) => margin);
  if (right.length < FEWEST) return gate.sure;
  const low = right.sort((a, b) => a - b)[Math.floor(LOOKED_TWICE * right.length)]!;
  const wrong = tried.filter((one) => !one.right).map(({ margin }) => margin + CLEAR_OF_WRONG);
  return Math.min(gate.sure, Math.max(gate.doubt, low, ...wrong));
}

/**
 * What a grammar makes of the sentences that are its own.
 * @param decoder is left with the phone loop as its network
 * @throws ListeningError `grammar-unknown-word`, `grammar-broken`
 */
export function triedBy(
  decoder: GrammarDecoder,
  jsgf: string,
  mean: readonly number[],
  said: readonly HeardAloud[],
): readonly Tried[] {
  decoder.setGrammar(jsgf);
  const { network } = decoder;
  const own = said.filter(({ words }) => network !== undefined && follow(network, words).whole);
  const decoded = (sound: Float32Array) => {
    decoder.begin(mean);
    decoder.feed(sound);
    return decoder.end();
  };
  const found = own.map(({ sound }) => decoded(sound));
  decoder.setNetwork(PHONE_LOOP);
  return own.flatMap(({ words, sound, speechFrames }, index) => {
    const { text, score } = found[index]!;
    const margin = marginOf(score, decoded(sound).score, speechFrames);
    return text === '' ? [] : [{ margin, right: text === words }];
  });
}
