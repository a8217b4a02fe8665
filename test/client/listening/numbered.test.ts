import { expect, test } from 'vitest';
import { follow, toAutomaton } from '../../../client/listening/recogniser/automaton.ts';
import { parseJsgf } from '../../../client/listening/recogniser/parse-jsgf.ts';
import { numberedOf } from '../../../client/listening/recogniser/rivals.ts';
import { standsFor } from '../../../client/listening/visit-hearing.ts';

const networkOf = (rule: string) => toAutomaton(parseJsgf(`#JSGF V1.0;\ngrammar test;\npublic <one> = ${rule};\n`));

test('of what can be said only the sentences with a number in them are left', () => {
  const network = numberedOf(
    networkOf('give me a minute | [suction line] (fifty | sixty) [two] [degrees] | stop'),
    standsFor,
  );
  const isIn = (text: string): boolean => network !== undefined && follow(network, text).whole;
  expect(['fifty', 'suction line fifty two', 'sixty two degrees'].map(isIn)).toEqual([true, true, true]);
  expect(['give me a minute', 'stop', 'suction line', 'degrees', 'two degrees'].map(isIn)).toEqual(
    Array(5).fill(false),
  );
});

test('of orders alone nothing is left', () => {
  expect(numberedOf(networkOf('give me a minute | stop'), standsFor)).toBeUndefined();
});
