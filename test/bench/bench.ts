import { mkdir, writeFile } from 'node:fs/promises';
import { cpus } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { wrongUse } from '../../client/terminal/read-arguments.ts';
import { runTool } from '../../client/terminal/run-tool.ts';
import type { Given, Tool } from '../../client/terminal/tool.ts';
import { BENCHES } from './benches.ts';
import type { Bench, Figure } from './figures.ts';

const TOOL = {
  name: 'bench',
  purpose: 'measures speed, memory and quality, each beside a limit or a peer of the same run.',
  usage: ['-- NAME [OPTION=VALUE …]'],
  words: true,
  options: {},
  notes: [
    ...Object.entries(BENCHES).flatMap(([name, { says, options }]) => [
      `${name}: ${says}`,
      ...Object.entries(options).map(([option, about]) => `  ${`${option}=`.padEnd(12)}${about}`),
    ]),
    'The figures are also written to test-results/bench-NAME.json.',
  ],
  examples: ['npm run -s bench -- language', 'npm run -s bench -- hearing sets=orders,speed half=report'],
  exits: '0; 2 when used wrongly.',
} satisfies Tool;

/** Measures, prints a table and writes test-results/bench-NAME.json. */
async function main({ words: [name, ...words] }: Given<typeof TOOL>): Promise<void> {
  const known = Object.keys(BENCHES).join(', ');
  if (name === undefined) throw wrongUse(TOOL, `No bench is named (${known})`);
  const about = Object.hasOwn(BENCHES, name) ? BENCHES[name] : undefined;
  if (about === undefined) throw wrongUse(TOOL, `The bench "${name}" is not one of ${known}`);
  const options = new Map(words.map((word) => word.split('=', 2) as [string, string]));
  for (const [option, value] of options) {
    if (value === undefined || !Object.hasOwn(about.options, option))
      throw wrongUse(TOOL, `The bench ${name} has no option "${option}" with a value`);
  }
  const { bench } = (await import(new URL(`./${name}.bench.js`, import.meta.url).href)) as { bench: Bench };
  const figures = await bench(options, (text) => process.stderr.write(`… ${text}\n`));
  process.stdout.write(`${name}: Node ${process.version}, ${cpus().length} × ${cpus()[0]?.model.trim()}\n`);
  for (const figure of figures) process.stdout.write(`${line(figure)}\n`);
  const results = fileURLToPath(new URL('../../../test-results', import.meta.url));
  await mkdir(results, { recursive: true });
  await writeFile(join(results, `bench-${name}.json`), `${JSON.stringify(figures, null, 2)}\n`);
}

function line({ name, value, unit, against }: Figure): string {
  const shown = Math.abs(value) >= 100 ? Math.round(value).toLocaleString('en') : Number(value.toPrecision(3));
  return `  ${name.padEnd(58)} ${String(shown).padStart(10)} ${unit.padEnd(9)} ${against ?? ''}`.trimEnd();
}

await runTool(TOOL, main);
