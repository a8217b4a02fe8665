import { visitMachine } from '../visit/chart/machine.ts';
import { drawChart } from './draw-chart.ts';
import { runTool } from './run-tool.ts';
import type { Tool } from './tool.ts';

const TOOL = {
  name: 'chart',
  purpose: 'prints the statechart of a visit as a Mermaid stateDiagram-v2.',
  usage: [''],
  options: {},
  notes: ['It is drawn from the machine that runs (client/visit/chart/machine.ts).'],
  examples: ['npm run -s chart > visit.mmd'],
  exits: '0; 2 when used wrongly.',
} as const satisfies Tool;

await runTool(TOOL, () => void process.stdout.write(drawChart(visitMachine)));
