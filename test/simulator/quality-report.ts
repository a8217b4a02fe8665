import { setImmediate } from 'node:timers/promises';
import { AIR_FAULTS } from '../../client/diagnosis/faults/air-faults.ts';
import { CONTROL_FAULTS } from '../../client/diagnosis/faults/control-faults.ts';
import { LINE_FAULTS } from '../../client/diagnosis/faults/line-faults.ts';
import { LOAD_FAULTS } from '../../client/diagnosis/faults/load-faults.ts';
import { familyOf } from '../../client/practice/plant/hidden-case.ts';
import { wrongUse } from '../../client/terminal/read-arguments.ts';
import { runTool } from '../../client/terminal/run-tool.ts';
import type { Given, Tool } from '../../client/terminal/tool.ts';
import { FOREIGN_ROUNDS, playForeignRound } from '../foreign/foreign-round.ts';
import type { ForeignOutcome } from '../foreign/interview.ts';
import { playYardRound, YARD_ROUNDS, type YardOutcome } from '../stranger/yard-round.ts';
import type { Wrong } from './draw-case.ts';
import { type Quality, type Round, runRound } from './quality.ts';
import { type Sat, sideBySide, surelyWrong } from './side-by-side.ts';

/**
 * What is wrong with the profile that the diagnosis is given; with a right one, `two` is a round of two faults and
 * `unread` one without misreads, `two-stage` one of units with a second stage.
 */
const ROUNDS = [
  'matched',
  'unread',
  'spread',
  'supply',
  'poles',
  'heater',
  'metering',
  'sparse',
  'two',
  'two-stage',
] as const;
/** A round, or all rounds of one simulator. */
const ONLY = [...ROUNDS, ...FOREIGN_ROUNDS, ...YARD_ROUNDS, 'second', 'foreign', 'stranger'] as const;

const TOOL = {
  name: 'diagnose:quality',
  purpose: 'judges the diagnosis on simulated units with hidden faults, beside a branching chart and a fixed order.',
  usage: ['[-- [--only NAME] [--cases N] [--foreign N] [--seed N] [--misread SHARE] [--failures]]'],
  options: {
    cases: { value: 'N', says: 'cases a round (100; of the third and fourth simulator 60)' },
    foreign: { value: 'N', says: 'cases a round of the third and fourth simulator, where they shall be others' },
    designs: { value: 'N', says: 'designs of units they are spread over (12)' },
    seed: { value: 'N', says: 'where chance begins (1)' },
    misread: { value: 'SHARE', says: 'share of readings that are misread (0.02)' },
    only: { value: 'NAME', says: 'one round, or all of one simulator: second, foreign, stranger; two-stage: of each' },
    failures: { says: 'prints every miss with its readings and the final ranking' },
  },
  notes: [
    `Rounds of the second simulator: ${ROUNDS.join(', ')}.`,
    `Rounds of the third: ${FOREIGN_ROUNDS.slice(0, 4).join(', ')},`,
    `${FOREIGN_ROUNDS.slice(4).join(', ')}.`,
    `Rounds of the fourth: ${YARD_ROUNDS.join(', ')}.`,
    'All rounds take some ten minutes; more cases take longer.',
    'Third and fourth are written apart from table, second simulator and each other, and speak the lines of diagnose;',
    'nothing is tuned on the fourth.',
  ],
  examples: [
    'npm run -s diagnose:quality -- --only matched --cases 60 --designs 4',
    'npm run -s diagnose:quality -- --only two --failures',
    'npm run -s diagnose:quality -- --only foreign --foreign 300 --seed 9',
  ],
  exits: '0; 2 when used wrongly.',
} as const satisfies Tool;

const TITLES = {
  matched: 'profile right, 2 % misread',
  unread: 'profile right, no misreads',
  two: 'two faults, repair and rerun',
  'two-stage': 'two-stage units, 2 % misread',
} as const;

const BY_ROOM = { power: LINE_FAULTS, motors: LOAD_FAULTS, control: CONTROL_FAULTS, cooling: AIR_FAULTS } as const;
const familyOfFault = (fault: string): string =>
  Object.entries(BY_ROOM).find(([, faults]) => fault in faults)?.[0] ?? 'outside';

const say = (text: string) => process.stdout.write(`${text}\n`);
const percent = (x: number) => `${(100 * x).toFixed(1)} %`.padStart(8);

function row(name: string, q: Quality): string {
  return [
    name.padEnd(18),
    percent(q.right),
    percent(q.confidentlyWrong),
    `${q.medianTests}`.padStart(6),
    q.meanTests.toFixed(1).padStart(6),
    q.medianMinutes.toFixed(1).padStart(8),
    q.meanMinutes.toFixed(1).padStart(8),
  ].join(' ');
}

/** A part fetched and fitted for nothing, the proof that fails, and the search begun anew (our figure). */
const WRONG_REPAIR_MINUTES = 60;
const minutesToTheEnd = (q: Quality): number => q.meanMinutes + (1 - q.right) * WRONG_REPAIR_MINUTES;

function report(title: string, round: Round, failures: boolean): void {
  say(`\n${title}: ${round.diagnosis.cases} cases`);
  say(`${''.padEnd(18)}    right   sure+wrong  tests  mean  minutes  mean`);
  say(row('diagnosis', round.diagnosis));
  say(row('branching chart', round.chart));
  say(row('fixed order', round.order));
  if (round.known !== undefined)
    say(
      `minutes of one who knows the fault, looks twice and reads its proof twice: ${(round.known.reduce((a, b) => a + b, 0) / round.known.length).toFixed(1)}`,
    );
  const saved = 1 - round.diagnosis.meanMinutes / round.chart.meanMinutes;
  say(`time saved against the chart: ${percent(saved)}`);
  const toTheEnd = [round.diagnosis, round.chart, round.order].map((q) => minutesToTheEnd(q).toFixed(1));
  say(`minutes with ${WRONG_REPAIR_MINUTES} more where it is wrong: ${toTheEnd.join(', ')}`);
  const calibration = round.calibration.map((b) => `${b.claimed.toFixed(2)}→${b.true.toFixed(2)} (${b.steps})`);
  say(`calibration, claimed→true: ${calibration.join('  ')}`);
  const steps = [...round.stepMilliseconds].sort((a, b) => a - b);
  say(
    `step: p50 ${steps[Math.floor(steps.length / 2)]?.toFixed(2)} ms, p95 ${steps[Math.floor(steps.length * 0.95)]?.toFixed(2)} ms`,
  );
  if (!failures) return;
  for (const o of round.outcomes.filter((x) => !x.right)) {
    const last = o.last.map((s) => `${s.fault} ${s.probability.toFixed(3)}`).join(', ');
    say(`  ${o.faults.join('+')} named ${o.named.join(',') || 'none'} [${last}]: ${o.asked.join(' ')}`);
  }
}

function numberOf(name: string, text: string | undefined, standard: number): number {
  const value = text === undefined ? standard : Number(text);
  if (!(value >= 0)) throw wrongUse(TOOL, `--${name} wants a number, not "${text}"`);
  return value;
}

const wants = (only: string | undefined, simulator: 'second' | 'foreign' | 'stranger', round: string): boolean =>
  only === undefined || only === simulator || only === round || (only === 'two-stage' && round.endsWith(only));

const depthsOf = (o: ForeignOutcome | YardOutcome) => ('depths' in o ? o.depths : o.severities);

interface Told {
  readonly title: string;
  readonly outcomes: readonly (ForeignOutcome | YardOutcome)[];
}

function tellApart(which: string, sitting: Told, failures: boolean): void {
  say(`\n${which} simulator, ${sitting.title}: ${sitting.outcomes.length} cases`);
  const refused = sitting.outcomes.flatMap((o) => o.refused);
  if (refused.length > 0) say(`  lines refused: ${refused.length}, such as ${refused[0]}`);
  if (!failures) return;
  for (const o of sitting.outcomes.filter((x) => !x.right)) {
    const hidden = o.causes.map((c, i) => `${c} at ${depthsOf(o)[i]!.toFixed(2)}`).join(' + ');
    say(
      `  ${surelyWrong(o) ? 'SURELY ' : ''}${hidden} named ${o.named.join(',')} ${o.probability.toFixed(2)}: ${o.asked.join(' ')}`,
    );
  }
}

async function main({ options }: Given<typeof TOOL>): Promise<void> {
  const { only, failures = false } = options;
  if (only !== undefined && !(ONLY as readonly string[]).includes(only))
    throw wrongUse(TOOL, `The round "${only}" is not one of ${ONLY.join(', ')}`);
  const designs = numberOf('designs', options.designs, 12);
  const seed = numberOf('seed', options.seed, 1);
  const base = {
    designs,
    casesEach: Math.ceil(numberOf('cases', options.cases, 100) / designs),
    seed,
    misread: numberOf('misread', options.misread, 0.02),
  };
  const sittings: Sat[] = [];
  for (const name of ROUNDS.filter((round) => wants(only, 'second', round))) {
    const two = name === 'two';
    const wrong: Wrong = two || name === 'unread' || name === 'two-stage' ? 'matched' : name;
    const title = TITLES[name as keyof typeof TITLES] ?? `profile wrong: ${name}`;
    const misread = name === 'unread' ? 0 : base.misread;
    const stages = name === 'two-stage' ? ({ stages: 2 } as const) : {};
    const round = runRound({ ...base, wrong, faults: two ? 2 : 1, misread, ...stages });
    report(title, round, failures);
    const ended = round.outcomes.map((o) => ({ ...o, family: familyOfFault(o.faults[0]!) }));
    sittings.push({ simulator: 'second', title, ended, charts: round.charts, known: round.known ?? [] });
    // A round holds the thread for a minute: only here is it noticed that the reader has gone.
    await setImmediate();
  }
  const cases = numberOf('foreign', options.foreign ?? options.cases, 60);
  const how = { cases, designs: Math.min(designs, cases), seed };
  for (const name of FOREIGN_ROUNDS.filter((round) => wants(only, 'foreign', round))) {
    const { title, outcomes, charts, known } = playForeignRound(name, how);
    tellApart('third', { title, outcomes }, failures);
    const ended = outcomes.map((o) => ({ ...o, family: familyOf(o.causes[0]!) ?? 'outside' }));
    sittings.push({ simulator: 'third', title, ended, charts, known });
    await setImmediate();
  }
  for (const name of YARD_ROUNDS.filter((round) => wants(only, 'stranger', round))) {
    const { title, outcomes, charts, known } = playYardRound(name, how);
    tellApart('fourth', { title, outcomes }, failures);
    sittings.push({ simulator: 'fourth', title, ended: outcomes, charts, known });
    await setImmediate();
  }
  say('');
  for (const line of sideBySide(sittings)) say(line);
}

await runTool(TOOL, main);
