import { visitMachine } from '../visit/chart/machine.ts';
import { phaseChart } from '../visit/chart/phase-chart.ts';
import { conductorChart, sectionChart } from '../visit/chart/zone-energy.ts';
import { drawChart } from './draw-chart.ts';
import { runTool } from './run-tool.ts';
import type { Tool } from './tool.ts';

const TOOL = {
  name: 'chart',
  purpose: 'prints the statecharts of a visit as a Mermaid stateDiagram-v2.',
  usage: [''],
  options: {},
  notes: ['They are drawn from the machines that run (client/visit/chart).'],
  examples: ['npm run -s chart > visit.mmd'],
  exits: '0; 2 when used wrongly.',
} as const satisfies Tool;

await runTool(TOOL, () => void process.stdout.write(drawChart(visitMachine, phaseChart, conductorChart, sectionChart)));
