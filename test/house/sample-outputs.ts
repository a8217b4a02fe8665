import { readdirSync } from 'node:fs';
import { join, relative } from 'node:path';
import { PROJECT_ROOT } from '../browser/project-root.ts';

/**
 * A sample of a tool's output in a text: a block fenced as `text` (the formatter rewrites JSON that is called so) right
 * after a comment that names the command,
 *
 *     <!-- output of: npm run -s parse <<< "what next" -->
 *     <!-- first 5 lines of: npm run -s phrases -->
 *     <!-- lines 10 to 14 of: npm run -s record -- fixtures/visits/library/events.jsonl -->
 *
 * What differs from run to run, and by that does not count, stands in `withoutChance`.
 */
export interface Sample {
  readonly command: string;
  /** The lines shown, counted from 1. */
  readonly from: number;
  readonly to: number;
  /** What stands in the block, and where in the text. */
  readonly shown: string;
  readonly start: number;
  readonly end: number;
}

const ANY_MARKER = /^<!-- [^>]*? of: .*-->$/gm;
const MARKER =
  /^<!-- (?:output|first (?<first>\d+) lines|lines (?<from>\d+) to (?<to>\d+)) of: (?<command>.+) -->\n```text\n(?<shown>[\s\S]*?)^```$/gm;
const CHART = /(?<=^<!-- chart -->\n```mermaid\n)[\s\S]*?(?=^```\n<!-- \/chart -->$)/m;

/** The samples of a text, in order. @throws Error at a comment that names a command and has no block, or an unknown form */
export function samplesIn(text: string): readonly Sample[] {
  const samples = [...text.matchAll(MARKER)].map((match) => {
    const { first, from, to, command = '', shown = '' } = match.groups ?? {};
    const end = match.index + match[0].length - '```'.length;
    return {
      command,
      from: Number(from ?? 1),
      to: Number(to ?? first ?? Number.POSITIVE_INFINITY),
      shown,
      start: end - shown.length,
      end,
    };
  });
  const markers = [...text.matchAll(ANY_MARKER)].map(([marker]) => marker);
  if (markers.length !== samples.length)
    throw new Error(
      `${markers.length} samples are announced, ${samples.length} have a block \`\`\`text right after:\n${markers.join('\n')}`,
    );
  return samples;
}

/** The lines of an output that a sample shows. */
export function excerpt(output: string, { from, to }: Sample): string {
  const lines = output.replace(/\n$/, '').split('\n');
  return `${lines.slice(from - 1, Math.min(to, lines.length)).join('\n')}\n`;
}

/** What no two runs or machines have alike. */
const CHANCE: readonly (readonly [RegExp, string])[] = [
  // How long something took.
  [/\b\d+ ms\b/g, '0 ms'],
  [/"(ms|realTimeFactor)":[\d.]+/g, '"$1":0'],
  // The moment, in milliseconds since 1970; what a visit of the demo is called after it.
  [/\b\d{13}\b/g, '0'],
  [/"clockOffsetMs":-?\d+/g, '"clockOffsetMs":0'],
  [/\b([a-z-]+)-[a-z0-9]{8}\b(?=\.jsonl)/g, '$1'],
  // The port of a server, and the key it made for itself.
  [/(127\.0\.0\.1):\d+/g, '$1'],
  [/"receiptKey":"[\w-]{43}"/g, '"receiptKey":""'],
  // Hashes: they change with any event before them.
  [/\b[0-9a-f]{64}\b/g, 'hash'],
  // Whether this machine has a 16 kHz model, and the pages are built.
  [/^Ear: .*/gm, 'Ear:'],
];

/** A text without what differs from run to run: two outputs are the same where these are. */
export function withoutChance(text: string): string {
  return CHANCE.reduce((rest, [pattern, put]) => rest.replace(pattern, put), text);
}

/** Every text that may hold samples, as paths from the top level. */
export function textsWithSamples(): readonly string[] {
  const inner = ['client', 'server', 'grammar', 'test', 'fixtures'].flatMap((folder) =>
    readdirSync(join(PROJECT_ROOT, folder), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && entry.name === 'README.md')
      .map((entry) => relative(PROJECT_ROOT, join(entry.parentPath, entry.name))),
  );
  return ['README.md', 'DEVELOPERS.md', ...inner.sort()];
}

/** The chart that stands in a text between its two marks; undefined where there is none. */
export function chartIn(text: string): string | undefined {
  return CHART.exec(text)?.[0];
}

/** The text with another chart between the two marks. */
export function withChart(text: string, chart: string): string {
  return text.replace(CHART, () => chart);
}
