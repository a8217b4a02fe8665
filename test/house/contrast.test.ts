import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { TOP } from './import-graph.ts';

const css = readFileSync(join(TOP, 'client/screens/theme.css'), 'utf8');
const guide = readFileSync(join(TOP, 'client/screens/README.md'), 'utf8');

/** The colours that a rule sets, by their variables. */
function coloursOf(rule: string): Readonly<Record<string, string>> {
  const start = css.indexOf(`${rule} {`);
  const block = css.slice(start, css.indexOf('}', start));
  return Object.fromEntries([...block.matchAll(/--([\w-]+):\s*(#[0-9a-f]{6})/g)].map((match) => match.slice(1, 3)));
}

const light = coloursOf(':root');
const LIGHTS = [
  light,
  { ...light, ...coloursOf(':root[data-light="dark"]') },
  { ...light, ...coloursOf(':root[data-light="sun"]') },
];

/** Contrast ratio by WCAG 2.2, definitions of "relative luminance" and "contrast ratio". */
function contrast(one: string, other: string): number {
  const [lighter = 0, darker = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (lighter + 0.05) / (darker + 0.05);
}

function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

const rows = [
  ...guide.matchAll(/^\| ([a-z ]+?)(?: on |, )([a-z ]+?) +\| +([\d.]+) +\| +([\d.]+) +\| +([\d.]+) +\|$/gm),
];

describe('the colours of the pages', () => {
  it('are black on white at 21 to 1, by the formula', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
    // A pair that is often given: #777777 on white.
    expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2);
  });

  it('have in each light the contrast that the guide tells', () => {
    expect(rows.length).toBeGreaterThanOrEqual(10);
    for (const [row, on = '', under = '', ...told] of rows) {
      const pair = on === 'on warm' ? ['on-warm', 'warm'] : [on, under].map((name) => name.trim().replaceAll(' ', '-'));
      const found = LIGHTS.map((colours) => contrast(colours[pair[0] ?? ''] ?? '', colours[pair[1] ?? ''] ?? ''));
      expect([row, ...found.map((ratio) => ratio.toFixed(1))]).toEqual([row, ...told]);
      expect(Math.min(...found)).toBeGreaterThanOrEqual(on === 'line' ? 3 : 7);
    }
  });
});
