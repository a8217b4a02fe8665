import { readFileSync } from 'node:fs';
import { Simulation } from 'eecircuit-engine';
import { Settled } from '../../client/diagnosis/circuit/settle.ts';
import { diagnosisFrom } from '../../client/diagnosis/make-diagnosis.ts';
import { seededRandom } from '../../client/diagnosis/random.ts';
import { buildTable, settleMoment } from '../../client/diagnosis/table/build-table.ts';
import type { FaultTable } from '../../client/diagnosis/table/fault-table.ts';
import { drawUnit } from '../../client/diagnosis/unit/draw-unit.ts';
import type { UnitProfile } from '../../grammar/vocabulary/unit-profile.ts';
import { runRound } from '../simulator/quality.ts';
import { ngspiceNetlist } from '../standards/ngspice-netlist.ts';
import { type Bench, type Figure, median, quantile } from './figures.ts';

const library: UnitProfile = JSON.parse(readFileSync('fixtures/units/library.json', 'utf8'));

function timed(times: number, work: () => void): number[] {
  return Array.from({ length: times }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
}

function tableBytes(table: FaultTable): number {
  const arrays = table.columns.flatMap((c) => (c ? [c.start, ...Object.values(c.column)] : []));
  return arrays.reduce((sum: number, a) => sum + (ArrayBuffer.isView(a) ? a.byteLength : 0), 0);
}

/** One solve of the whole circuit, ours against ngspice's, on the same machine in the same run. */
async function solveFigures(): Promise<Figure[]> {
  const work = { cooling: new Settled(), idle: new Settled(), dead: new Settled() };
  const { cooling, unit } = settleMoment(drawUnit(library, seededRandom(1)), work);
  const ours = timed(2000, () => cooling.solve(unit, cooling.state)).slice(200);
  const simulation = new Simulation();
  await simulation.start();
  const netlist = ngspiceNetlist(cooling.values);
  const theirs: number[] = [];
  for (let i = 0; i < 20; i += 1) {
    simulation.setNetList(netlist);
    const start = performance.now();
    await simulation.runSim();
    theirs.push(performance.now() - start);
  }
  const ratio = median(theirs) / median(ours);
  return [
    {
      name: 'one solve of the circuit, median',
      value: median(ours),
      unit: 'ms',
      against: `ngspice with its netlist read ${median(theirs).toFixed(1)} ms: ${Math.round(ratio)} times`,
    },
  ];
}

/** The diagnosis: options cases=96 designs=4. */
export const bench: Bench = async (options, progress) => {
  const number = (name: string, standard: number) => Number(options.get(name) ?? standard);
  progress('table');
  const builds = timed(5, () => buildTable(library));
  const table = buildTable(library);
  const first = timed(30, () => diagnosisFrom(table).assess([], [])).slice(10);
  progress('circuit against ngspice');
  const solves = await solveFigures();
  const designs = number('designs', 4);
  progress('steps of whole visits');
  // A visit's first steps run code that was never run before: a short round first, so that steady figures are shown.
  runRound({ wrong: 'matched', designs: 1, casesEach: 12, faults: 1, seed: 10, misread: 0.02 });
  const casesEach = Math.ceil(number('cases', 96) / designs);
  const {
    stepMilliseconds: steps,
    diagnosis,
    chart,
  } = runRound({
    wrong: 'matched',
    designs,
    casesEach,
    faults: 1,
    seed: 11,
    misread: 0.02,
  });
  return [
    { name: 'table of one profile, median', value: median(builds), unit: 'ms', against: 'aim ≤ 2000' },
    { name: 'table in memory', value: tableBytes(table) / 1e6, unit: 'MB' },
    ...solves,
    { name: 'first answer, nothing read yet', value: median(first), unit: 'ms' },
    { name: 'step (update and next test), median', value: median(steps), unit: 'ms' },
    { name: 'step, p95', value: quantile(steps, 0.95), unit: 'ms', against: 'aim ≤ 5' },
    {
      name: `${diagnosis.cases} hidden faults: right`,
      value: 100 * diagnosis.right,
      unit: '%',
      against: `chart ${(100 * chart.right).toFixed(1)} %`,
    },
    {
      name: 'tests to a verdict, mean',
      value: diagnosis.meanTests,
      unit: '',
      against: `chart ${chart.meanTests.toFixed(1)}`,
    },
    {
      name: 'minutes to a verdict, mean',
      value: diagnosis.meanMinutes,
      unit: 'min',
      against: `chart ${chart.meanMinutes.toFixed(1)}`,
    },
  ];
};
