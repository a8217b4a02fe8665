import type { Promised } from './promised.ts';

/** What the tests of one file came to. */
export interface Outcome {
  readonly passed: number;
  readonly of: number;
}

export interface Measured {
  readonly name: string;
  readonly value: number | string;
}

const BEGIN = '<!-- promises: made by npm run promises -->';
const END = '<!-- end of promises -->';

/** The table of promises: each with its tests, what they measured, and whether it is kept. */
export function promisesPage(
  promises: readonly Promised[],
  outcome: ReadonlyMap<string, Outcome>,
  measured: readonly Measured[],
  run: 'short' | 'long',
) {
  const rows = promises.map(({ promise, tests, figures }) => {
    const ran = tests.map((file) => outcome.get(file));
    const passed = sum(ran.map((one) => one?.passed ?? 0));
    const of = sum(ran.map((one) => one?.of ?? 0));
    const kept = ran.every((one) => one !== undefined && one.of > 0 && one.passed === one.of);
    const shown = figures.flatMap((name) => {
      const found = measured.findLast((one) => one.name === name);
      return found === undefined ? [] : [`${name}: ${shownValue(found.value)}`];
    });
    return {
      kept,
      cells: [
        promise,
        tests.map((file) => `\`${file}\``).join(' '),
        [`${passed} of ${of} tests`, ...shown].join('; '),
        kept ? 'kept' : '**not kept**',
      ],
    };
  });
  const table = [
    `As the ${run} run measured it; \`READBACK_RUN=long npm run promises\` tries each more often.`,
    '',
    '| promise | tested by | measured | |',
    '| --- | --- | --- | --- |',
    ...rows.map(({ cells }) => `| ${cells.join(' | ')} |`),
  ].join('\n');
  return {
    text: table,
    kept: rows.every(({ kept }) => kept),
    /** The same text with the table in its place. */
    into: (readme: string): string => {
      const [from, to] = [readme.indexOf(BEGIN), readme.indexOf(END)];
      if (from < 0 || to < from) throw new Error(`server/README.md has no place for the promises (${BEGIN})`);
      return `${readme.slice(0, from + BEGIN.length)}\n\n${table}\n\n${readme.slice(to)}`;
    },
  };
}

const sum = (numbers: readonly number[]) => numbers.reduce((all, one) => all + one, 0);
const shownValue = (value: number | string) => (typeof value === 'number' ? value.toLocaleString('en-US') : value);
