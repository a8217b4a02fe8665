import { parseArgs } from 'node:util';
import type { Wrong } from './draw-case.ts';
import { type Quality, type Round, runRound } from './quality.ts';

const { values } = parseArgs({
  options: {
    cases: { type: 'string', default: '500' },
    designs: { type: 'string', default: '12' },
    seed: { type: 'string', default: '1' },
    misread: { type: 'string', default: '0.02' },
    only: { type: 'string' },
    failures: { type: 'boolean', default: false },
  },
});

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

function report(title: string, round: Round): void {
  say(`\n${title}: ${round.diagnosis.cases} cases`);
  say(`${''.padEnd(18)}    right   sure+wrong  tests  mean  minutes  mean`);
  say(row('diagnosis', round.diagnosis));
  say(row('branching chart', round.chart));
  say(row('fixed order', round.order));
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
  if (!values.failures) return;
  for (const o of round.outcomes.filter((x) => !x.right)) {
    const last = o.last.map((s) => `${s.fault} ${s.probability.toFixed(3)}`).join(', ');
    say(`  ${o.faults.join('+')} named ${o.named.join(',') || 'none'} [${last}]: ${o.asked.join(' ')}`);
  }
}

const designs = Number(values.designs);
const casesEach = Math.ceil(Number(values.cases) / designs);
const kinds: readonly Wrong[] = ['matched', 'spread', 'supply', 'poles', 'heater', 'metering', 'sparse'];
const base = { designs, casesEach, seed: Number(values.seed), misread: Number(values.misread) };
for (const wrong of kinds) {
  if (values.only && values.only !== wrong) continue;
  report(wrong === 'matched' ? 'profile right' : `profile wrong: ${wrong}`, runRound({ ...base, wrong, faults: 1 }));
}
if (!values.only || values.only === 'two') {
  report('two faults, repair and rerun', runRound({ ...base, wrong: 'matched', faults: 2 }));
}
