import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { expectationFrom } from '../../client/terminal/expectation-from.ts';
import { understand } from '../../grammar/phrases/understand.ts';
import { TOP } from './import-graph.ts';

const text = readFileSync(join(TOP, 'README.md'), 'utf8');
/** Each section's text by its heading, in order. */
const sections = new Map(
  text
    .split(/^## /m)
    .slice(1)
    .map((section) => [section.slice(0, section.indexOf('\n')), section.slice(section.indexOf('\n'))] as const),
);
const said = sections.get('What can I say') ?? '';

/** Rows of the table: sentence, kind of meaning, what it says; the points that the step asks for, where it names some. */
const sentences = [...said.matchAll(/^\| ([a-z][^|]*?) +\| ([a-z-]+) +\| ([^|]*?) +\|$/gm)]
  .map(([, sentence = '', kind = '', says = '']) => ({ sentence, kind, says, points: /`([^`]+)`/.exec(says)?.[1] }))
  .filter(({ sentence }) => sentence !== 'say');

/** The numbers that a row promises; "L1" is a name. */
const numbersIn = (says: string) => [...says.matchAll(/(?<![A-Z\d.])\d+(?:\.\d+)?/g)].map(([number]) => Number(number));

describe('what README says can be said', () => {
  it('is twenty sentences', () => {
    expect(sentences).toHaveLength(20);
  });

  it.each(sentences)('"$sentence" is logged as $kind', ({ sentence, kind, says, points }) => {
    const expectation = points === undefined ? undefined : expectationFrom(points);
    expect(expectation === undefined).toBe(points === undefined);
    const { verdict, meaning, repaired } = understand(sentence, expectation);
    expect({ verdict, kind: meaning.kind, repaired }).toEqual({ verdict: 'logged', kind, repaired: undefined });
    const meant = JSON.stringify(meaning).match(/\d+(?:\.\d+)?/g) ?? [];
    for (const number of numbersIn(says.replace(/`[^`]+`/, ''))) expect(meant.map(Number)).toContain(number);
  });

  it('needs the step where it says so', () => {
    for (const { sentence } of sentences.filter(({ points }) => points !== undefined))
      expect(understand(sentence).verdict).toBe('rejected');
  });

  it('is understood in the running text too', () => {
    const [, besides = ''] = said.split('\nBesides: ');
    const quoted = [...(besides.split('. `npm')[0] ?? '').matchAll(/"([^"]+)"/g)].map(([, sentence = '']) => sentence);
    expect(quoted.length).toBeGreaterThan(5);
    expect(quoted.filter((sentence) => understand(sentence).verdict !== 'logged')).toEqual([]);
  });
});

describe('the front page', () => {
  it('says in its first ten lines what this is and for whom', () => {
    const opening = text.split('\n').slice(0, 10).join('\n');
    expect(opening).toMatch(/hands-free logging agent/);
    expect(opening).toMatch(/It is for the \*\*technician\*\*/);
  });

  it('shows pictures that exist, described in words, each below 150 kB', () => {
    const pictures = [...text.matchAll(/!\[([^\]]+)\]\(([^)]+)\)/g)];
    expect(pictures).toHaveLength(3);
    for (const [, words = '', path = ''] of pictures) {
      expect(words.length).toBeGreaterThan(40);
      expect(statSync(join(TOP, path)).size).toBeLessThan(150_000);
    }
  });

  it('leads to files that exist', () => {
    const links = [...text.matchAll(/(?<!!)\[[^\]]+\]\(([^)#]+)\)/g)].map(([, path = '']) => path);
    expect(links.length).toBeGreaterThan(2);
    for (const path of links) expect(statSync(join(TOP, path)).isFile()).toBe(true);
  });

  it('ends with the licence, which package.json names too', () => {
    expect([...sections.keys()].at(-1)).toBe('Licence');
    expect(sections.get('Licence')).toMatch(/Copyright \(c\) 2026 the Readback contributors[\s\S]*WITHOUT WARRANTY/);
    expect(JSON.parse(readFileSync(join(TOP, 'package.json'), 'utf8')).license).toBe('MIT');
  });
});
