import { readdirSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { wordsToNumbers } from 'words-to-numbers';
import { compare, readUtterances, type Utterance } from '../../fixtures/utterances/read-utterances.ts';
import { toJsgf } from '../../grammar/export/jsgf.ts';
import { ENGLISH } from '../../grammar/phrases/languages/english/english.ts';
import { RULES } from '../../grammar/phrases/languages/english/rules/utterance-rules.ts';
import { Network } from '../../grammar/phrases/network.ts';
import { makeUnderstand, type Understand } from '../../grammar/phrases/understand.ts';
import { isOfPeople, unheard } from '../grammar/export/heard-lines.ts';
import { type Bench, type Figure, median, quantile } from './figures.ts';
import { type Outcome, outcomeOf, readSaid } from './said-lines.ts';

/** Aims of the language. */
const AIMS = { parse: 0.3, build: 50, memory: 5, right: 99, heard: 90 } as const;

const time = (work: () => void): number => {
  const start = performance.now();
  work();
  return performance.now() - start;
};

/** Bytes in use, typed arrays too, after everything that can be freed was freed. */
function heldBytes(): number {
  setFlagsFromString('--expose-gc');
  (runInNewContext('gc') as () => void)();
  const { heapUsed, arrayBuffers } = process.memoryUsage();
  return heapUsed + arrayBuffers;
}

/** What one writes without a grammar: a general number-words parser, then a regular expression by hand. */
const BY_HAND =
  /^(?<place>(?:leg|line|l|t) ?[12](?: to (?:ground|(?:leg|line|l|t) ?[12]))?|[a-z ]+?)(?: (?:is|reads|at))? (?<value>-?\d+(?:\.\d+)?) ?(?<unit>[a-z ]+)?$/;
function byHand(text: string): { place: string; value: number } | undefined {
  const found = BY_HAND.exec(String(wordsToNumbers(text.toLowerCase())))?.groups;
  return found === undefined ? undefined : { place: found['place']!, value: Number(found['value']) };
}

/** Milliseconds of each line: the median of its rounds, so that what else the machine does weighs little. */
function measure<Line>(lines: readonly Line[], rounds: number, parse: (line: Line) => void): number[] {
  const times = lines.map((): number[] => []);
  for (let round = 0; round < rounds; round += 1)
    for (const [index, line] of lines.entries()) times[index]!.push(time(() => parse(line)));
  return times.map(median);
}

function buildFigures(): Figure[] {
  const networks = Array.from({ length: 15 }, () => time(() => new Network(RULES, 'utterance', ENGLISH)));
  return [
    { name: 'network built, median', value: median(networks), unit: 'ms', against: `limit ${AIMS.build} ms` },
    { name: 'network built, first', value: networks[0]!, unit: 'ms', against: `limit ${AIMS.build} ms` },
  ];
}

/** Of a second instance: what the compiler keeps of the code is not the network's. */
function memoryFigures(lines: readonly Utterance[]): Figure[] {
  const first = makeUnderstand();
  for (const line of lines) first(line.text, line.expectation);
  const before = heldBytes();
  const understand = makeUnderstand();
  understand('leg one to ground one eighteen');
  const built = (heldBytes() - before) / 1e6;
  for (const line of lines) understand(line.text, line.expectation);
  const used = (heldBytes() - before) / 1e6;
  // Used again, so that nothing of either is freed before it is counted.
  first('what next');
  understand('what next');
  return [
    { name: 'memory held: network, first sentence', value: built, unit: 'MB', against: `limit ${AIMS.memory} MB` },
    {
      name: 'memory held: after every line of the fixtures',
      value: used,
      unit: 'MB',
      against: `limit ${AIMS.memory} MB`,
    },
  ];
}

function speedFigures(lines: readonly Utterance[], rounds: number): Figure[] {
  const understand = makeUnderstand();
  const cold = measure(lines, 1, (line) => understand(line.text, line.expectation));
  const ours = measure(lines, rounds, (line) => understand(line.text, line.expectation));
  measure(lines, 1, (line) => byHand(line.text));
  const theirs = measure(lines, rounds, (line) => byHand(line.text));
  const mended = lines.map((line) => ({
    ...line,
    text: line.text.replace(/(?<= )(to|section|is|at|air) /, 'banana '),
  }));
  const broken = mended.filter((line, index) => line.text !== lines[index]!.text);
  const repaired = measure(broken, Math.max(1, rounds / 2), (line) => understand(line.text, line.expectation));
  const peer = `words-to-numbers and a regular expression: ${median(theirs).toFixed(3)} / ${quantile(theirs, 0.95).toFixed(3)} ms (median / p95)`;
  return [
    { name: 'utterance understood, median', value: median(ours), unit: 'ms', against: peer },
    {
      name: 'utterance understood, p95',
      value: quantile(ours, 0.95),
      unit: 'ms',
      against: `aim ${AIMS.parse} ms; ${ratio(ours, theirs)}`,
    },
    { name: 'utterance understood, longest', value: Math.max(...ours), unit: 'ms', against: 'limit 50 ms' },
    { name: 'first time it is said, p95', value: quantile(cold, 0.95), unit: 'ms', against: 'limit 50 ms' },
    { name: 'with a strange word in it, p95', value: quantile(repaired, 0.95), unit: 'ms', against: 'limit 50 ms' },
  ];
}

const ratio = (ours: readonly number[], theirs: readonly number[]): string =>
  `${(quantile(ours, 0.95) / quantile(theirs, 0.95)).toFixed(1)} × the peer`;

function qualityFigures(lines: readonly Utterance[], understand: Understand): Figure[] {
  const count = { right: 0, asked: 0, wrong: 0 };
  const bins = Array.from({ length: 10 }, () => ({ said: 0, right: 0, count: 0 }));
  for (const line of lines) {
    const understood = understand(line.text, line.expectation);
    const outcome = compare(line, understood);
    count[outcome] += 1;
    const bin = bins[Math.min(9, Math.floor(understood.confidence * 10))]!;
    bin.said += understood.confidence;
    bin.right += outcome === 'right' ? 1 : 0;
    bin.count += 1;
  }
  const readings = lines.filter((line) => /^[a-z-]+ .* \S+$/.test(line.meaning) && line.verdict === 'logged');
  const peerRight = readings.filter((line) =>
    line.meaning.split(' ').includes(String(byHand(line.text)?.value)),
  ).length;
  const share = (part: number, of: number): number => (100 * part) / of;
  return [
    {
      name: `of ${lines.length} written utterances right`,
      value: share(count.right, lines.length),
      unit: '%',
      against: `aim ${AIMS.right} %`,
    },
    { name: 'asked where they could have been taken', value: share(count.asked, lines.length), unit: '%' },
    { name: 'logged as something else', value: count.wrong, unit: '', against: 'limit 0' },
    {
      name: 'value found by words-to-numbers and a regular expression',
      value: share(peerRight, readings.length),
      unit: '%',
      against: 'of the lines to be logged, place and unit not counted',
    },
  ];
}

function recogniserFigures(): Figure[] {
  const expected = { readings: [{ quantity: 'voltage', at: ['L1', 'ground'] }] } as const;
  const narrow = Array.from({ length: 20 }, () => time(() => toJsgf(expected, { scope: 'expected' })));
  const whole = Array.from({ length: 20 }, () => time(() => toJsgf(undefined, { scope: 'all' })));
  return [
    { name: 'recogniser grammar for one expected reading, written', value: median(narrow), unit: 'ms' },
    { name: 'recogniser grammar for everything, written', value: median(whole), unit: 'ms' },
  ];
}

/** How much of what the matcher takes of people's lines the recogniser may hear at all. */
function heardFigures(lines: readonly Utterance[]): Figure[] {
  const ofPeople = lines.filter(isOfPeople);
  const inside = 1 - unheard(ofPeople).length / ofPeople.length;
  return [
    {
      name: `of ${ofPeople.length} lines of people that are logged, inside the recogniser's grammar`,
      value: 100 * inside,
      unit: '%',
      against: `aim ${AIMS.heard} %`,
    },
    { name: 'recogniser grammar for everything', value: toJsgf(undefined, { scope: 'all' }).length / 1000, unit: 'kB' },
  ];
}

const OUTCOMES: Readonly<Record<Outcome, { readonly says: string; readonly against?: string }>> = {
  right: { says: 'logged right', against: 'aim ≥ 85 %' },
  'asked-right': { says: 'asked with the right guess', against: 'aim ≤ 8 %' },
  'asked-wrong': { says: 'asked with a wrong one', against: 'aim ≤ 2 %' },
  'not-understood': { says: 'not understood' },
  wrong: { says: 'logged wrong', against: 'aim 0' },
};

/** What becomes of the lines of a file, how fast, and which of those that are logged right the ear may hear. */
function saidFigures(path: string, progress: (text: string) => void): Figure[] {
  const understand = makeUnderstand();
  const lines = readSaid(path);
  const told = lines.map((line) => ({ line, outcome: outcomeOf(line, understand(line.text, line.expectation)) }));
  const readings = told.filter(({ line }) => line.meant !== '-');
  const others = told.filter(({ line }) => line.meant === '-');
  for (const { line, outcome } of told)
    if (outcome !== 'right') progress(`${outcome}${line.soft ? ' (soft)' : ''}: ${line.text}`);
  const soft = readings.filter(({ line, outcome }) => line.soft && outcome !== 'wrong' && outcome !== 'right').length;
  // Dictation is kept behind its heading, whatever its words are.
  const logged = readings.filter(({ line, outcome }) => outcome === 'right' && line.meant !== 'N');
  const unheardLines = unheard(logged.map(({ line }) => line));
  const outside = unheardLines.length;
  for (const { text } of unheardLines) progress(`outside the recogniser's grammar: ${text}`);
  const times = measure(lines, 10, (line) => understand(line.text, line.expectation));
  const written = readUtterances(pathToFileURL('fixtures/utterances/'));
  const ofFixtures = measure(written, 10, (line) => understand(line.text, line.expectation));
  const beside = (of: number): string => `the lines of the fixtures: ${quantile(ofFixtures, of).toFixed(3)} ms`;
  return [
    ...Object.entries(OUTCOMES).map(([name, { says, against }]) => ({
      name: `of ${readings.length} lines: ${says}`,
      value: (100 * readings.filter(({ outcome }) => outcome === name).length) / readings.length,
      unit: '%',
      ...(against && { against }),
    })),
    { name: 'asked or not understood where that is right as well', value: soft, unit: 'lines' },
    {
      name: `of ${others.length} lines that are none: logged`,
      value: others.filter(({ outcome }) => outcome === 'wrong').length,
      unit: '',
      against: 'aim 0',
    },
    {
      name: `of ${logged.length} logged right, inside the recogniser's grammar`,
      value: (100 * (logged.length - outside)) / logged.length,
      unit: '%',
      against: `aim ${AIMS.heard} %`,
    },
    { name: 'of these lines understood, median', value: median(times), unit: 'ms', against: beside(0.5) },
    { name: 'of these lines understood, p95', value: quantile(times, 0.95), unit: 'ms', against: beside(0.95) },
  ];
}

/** The files of lines of the fixtures, each in a line of figures: right, and asked with the right guess. */
function ownLinesFigures(understand: Understand): Figure[] {
  const folder = 'fixtures/said';
  return readdirSync(folder).flatMap((name) => {
    const lines = readSaid(`${folder}/${name}`);
    const outcomes = lines.map((line) => outcomeOf(line, understand(line.text, line.expectation)));
    const share = (...which: readonly Outcome[]): number =>
      (100 * outcomes.filter((one) => which.includes(one)).length) / lines.length;
    const about = `of ${lines.length} ${name.replace('.tsv', '')}`;
    return [
      { name: `${about}: logged right`, value: share('right'), unit: '%' },
      {
        name: `${about}: logged or asked right`,
        value: share('right', 'asked-right'),
        unit: '%',
        against: 'aim ≥ 85 %',
      },
      { name: `${about}: logged wrong`, value: share('wrong'), unit: '%', against: 'aim 0' },
    ];
  });
}

/** The language: options rounds=10, said=FILE. */
export const bench: Bench = async (options, progress) => {
  const said = options.get('said');
  if (said !== undefined) return saidFigures(said, progress);
  const lines = readUtterances(pathToFileURL('fixtures/utterances/'));
  progress('memory');
  const memory = memoryFigures(lines);
  progress('network');
  const build = buildFigures();
  progress('speed');
  const speed = speedFigures(lines, Number(options.get('rounds') ?? 10));
  return [
    ...speed,
    ...build,
    ...memory,
    ...qualityFigures(lines, makeUnderstand()),
    ...recogniserFigures(),
    ...heardFigures(lines),
    ...ownLinesFigures(makeUnderstand()),
  ];
};
