import { mkdir, readdir, writeFile } from 'node:fs/promises';
import { cpus } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { Bench, Figure } from './figures.ts';

/** `npm run bench -- NAME [option=value …]`: measures, prints a table and writes test-results/bench-NAME.json. */
async function main([name, ...words]: readonly string[]): Promise<void> {
  const folder = fileURLToPath(new URL('.', import.meta.url));
  const names = (await readdir(folder))
    .filter((file) => file.endsWith('.bench.js'))
    .map((file) => file.replace('.bench.js', ''));
  if (name === undefined || !names.includes(name)) {
    process.stderr.write(`Name one of: ${names.sort().join(', ')} (npm run bench -- NAME [option=value …]).\n`);
    process.exitCode = 1;
    return;
  }
  const { bench } = (await import(pathToFileURL(join(folder, `${name}.bench.js`)).href)) as { bench: Bench };
  const options = new Map(words.map((word) => word.split('=', 2) as [string, string]));
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

await main(process.argv.slice(2));
