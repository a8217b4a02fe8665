import type { Expectation } from '../../../grammar/phrases/meaning.ts';

/** Something to read aloud so that an ear learns a voice, and what the ear expects while it is said. */
export interface ReadAloud {
  readonly words: string;
  readonly expects: Expectation;
}

/** A bare number is one where a voltage is expected. */
const NUMBER: Expectation = { readings: [{ quantity: 'voltage', at: ['L1', 'ground'] }] };
const ORDER: Expectation = { readings: [] };

const number = (words: string): ReadAloud => ({ words, expects: NUMBER });
const order = (words: string): ReadAloud => ({ words, expects: ORDER });

/**
 * Twenty numbers and ten orders, two numbers to an order. Each digit is said six times as a word of its own: three times to
 * learn from, and three times to hold that against; what is said less often is not learnt.
 */
export const READ_ALOUD: readonly ReadAloud[] = [
  number('one zero three'),
  number('four zero nine'),
  order('what is next'),
  number('one two four'),
  number('one five zero'),
  order('say that again'),
  number('two three five'),
  number('two six one'),
  order('take that back'),
  number('three four six'),
  number('three seven two'),
  order('tell me why'),
  number('four five seven'),
  number('four eight three'),
  order('thermostat is calling'),
  number('five six eight'),
  number('five nine four'),
  order('outdoor disconnect is pulled and locked'),
  number('six seven nine'),
  number('six zero five'),
  order('leg one to ground one eighteen'),
  number('seven eight zero'),
  number('seven one six'),
  order('outdoor fan is not turning'),
  number('eight nine one'),
  number('eight two seven'),
  order('supply air fifty eight degrees'),
  number('nine zero two'),
  number('nine three eight'),
  order('covers are on'),
];

/** So many of them, at least, tell something: with fewer no more than the mean of the voice is learnt. */
export const FEWEST_READ = 6;
