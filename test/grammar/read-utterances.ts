import { readdirSync, readFileSync } from 'node:fs';
import type { Expectation, Meaning, Understanding } from '../../grammar/phrases/meaning.ts';
import type { Reading } from '../../grammar/vocabulary/measurement.ts';

/** One line of the fixtures: what was said, what the visit waited for, and what it means. */
export interface Utterance {
  readonly where: string;
  readonly text: string;
  readonly expectation: Expectation | undefined;
  readonly verdict: Understanding['verdict'];
  readonly reason: string | undefined;
  /** The meaning in the fixtures' short form; empty where any will do. */
  readonly meaning: string;
}

const FOLDER = new URL('../../fixtures/utterances/', import.meta.url);
const REASONS = [
  'empty',
  'too-long',
  'outside-grammar',
  'no-place',
  'several-places-fit',
  'several-values-fit',
  'needed-repair',
  'implausible',
  'teen-or-ty',
  'not-english',
];

/** Every line of fixtures/utterances, or of another folder. @throws Error naming the line that cannot be read. */
export function readUtterances(folder: URL = FOLDER): Utterance[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith('.txt'))
    .sort()
    .flatMap((name) => readFile(name, readFileSync(new URL(name, folder), 'utf8')));
}

function readFile(name: string, content: string): Utterance[] {
  const found: Utterance[] = [];
  let expectation: { -readonly [K in keyof Expectation]: Expectation[K] } = { readings: [] };
  content.split('\n').forEach((line, index) => {
    const where = `${name}:${index + 1}`;
    if (line.trim() === '' || line.startsWith('#')) return;
    if (line.startsWith('@')) {
      expectation = waitFor(expectation, line);
      return;
    }
    const cut = line.lastIndexOf(' => ');
    if (cut < 0) throw new Error(`${where}: no "=>"`);
    const text = line.slice(0, cut);
    const said = line
      .slice(cut + 4)
      .trim()
      .split(' ');
    const verdict = said[0] === 'asked' || said[0] === 'rejected' ? said.shift()! : 'logged';
    const reason = REASONS.includes(said[0] ?? '') ? said.shift() : undefined;
    const waits = expectation.readings.length > 0 || expectation.question || expectation.latest;
    found.push({
      where,
      text,
      expectation: waits ? expectation : undefined,
      verdict: verdict as Understanding['verdict'],
      reason,
      meaning: said.join(' '),
    });
  });
  return found;
}

type Waiting = { -readonly [K in keyof Expectation]: Expectation[K] };

/** "@expect voltage L1 ground; voltage L2 ground", "@question teen-or-ty 115 150", "@latest voltage L1 ground 120 V". */
function waitFor(before: Waiting, line: string): Waiting {
  const [what, ...rest] = line.split(' ');
  const { question, options, latest, readings } = before;
  const none = rest[0] === 'none';
  if (what === '@expect') {
    const wanted = none
      ? []
      : rest
          .join(' ')
          .split('; ')
          .map((one) => {
            const [quantity, ...at] = one.split(' ');
            return { quantity, at } as Expectation['readings'][number];
          });
    return { ...before, readings: wanted };
  }
  if (what === '@question') {
    const kept = latest === undefined ? { readings } : { readings, latest };
    if (none) return kept;
    const numbers = rest.slice(1).map(Number);
    return {
      ...kept,
      question: rest[0] as NonNullable<typeof question>,
      ...(numbers.length > 0 && { options: numbers }),
    };
  }
  const kept = { readings, ...(question && { question }), ...(options && { options }) };
  if (none) return kept;
  const [quantity, ...others] = rest;
  const unit = others.pop();
  const value = Number(others.pop());
  return { ...kept, latest: { quantity, at: others, value, unit } as Reading };
}

/** A meaning in the short form of the fixtures. */
export function short(meaning: Meaning): string {
  switch (meaning.kind) {
    case 'reading':
      return shortReading(meaning.reading);
    case 'value':
      return ['value', meaning.value, meaning.unit].filter((part) => part !== undefined).join(' ');
    case 'several':
      return meaning.parts.map(short).join(' + ');
    case 'command': {
      const { at, value, unit } = meaning.correction ?? {};
      if (meaning.correction === undefined) return `order ${meaning.command}`;
      return ['correct', ...(at ? ['at', ...at] : []), ...(value !== undefined ? ['value', value] : []), unit]
        .filter((part) => part !== undefined)
        .join(' ');
    }
    case 'report':
      return shortReport(meaning.report);
    case 'nameplate':
      return ['nameplate', meaning.field, meaning.value, meaning.unit].filter((part) => part !== undefined).join(' ');
    case 'part':
      return ['part', meaning.part, ...Object.entries(meaning.ratings).map(([name, value]) => `${name}=${value}`)].join(
        ' ',
      );
    case 'wire': {
      const { action, colour, size, from, to } = meaning.wire;
      return ['wire', action, colour, size, from && `from ${from}`, to && `to ${to}`].filter(Boolean).join(' ');
    }
    case 'note':
      return `note ${meaning.text}`;
    case 'unclear':
      return 'unclear';
  }
}

function shortReading(reading: Reading): string {
  return [
    reading.quantity,
    ...reading.at,
    reading.value,
    reading.unit,
    reading.gauge ? 'gauge' : undefined,
    reading.range ? `range ${reading.range.low} ${reading.range.high}` : undefined,
    reading.peak ? 'peak' : undefined,
    reading.tone ? 'tone' : undefined,
    reading.bench ? 'bench' : undefined,
  ]
    .filter((part) => part !== undefined)
    .join(' ');
}

function shortReport(report: Extract<Meaning, { kind: 'report' }>['report']): string {
  switch (report.type) {
    case 'energy':
      return `energy ${report.device} ${report.place} ${report.state}`;
    case 'absence-of-voltage':
      return ['absence', report.zone, report.before, ...report.values, report.after].join(' ');
    case 'meter-proof':
      return `meter ${report.value}`;
    case 'discharged':
      return `discharged ${report.zone}`;
    case 'observation':
      return `seen ${report.observation}`;
    case 'injury':
      return 'injury';
  }
}

/** How an understanding compares with the line: right, asked where it could have been taken, or wrong. */
export function compare(line: Utterance, understood: Understanding): 'right' | 'asked' | 'wrong' {
  const meant = short(understood.meaning);
  const sameMeaning = line.meaning === '' || line.meaning === meant;
  const sameReason = line.reason === undefined || line.reason === understood.reason;
  if (understood.verdict === line.verdict && sameMeaning && sameReason) return 'right';
  return understood.verdict === 'logged' ? 'wrong' : 'asked';
}
