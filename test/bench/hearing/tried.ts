import type { Hearing } from '../../../client/listening/hearing.ts';
import type { HeardSpeech } from '../../../client/listening/hearing-parts.ts';
import { type Figure, quantile } from '../figures.ts';
import { shareOf, written } from './tally.ts';

/** What became of a sound: taken and right, asked, taken and wrong, or not believed. */
export type Outcome = 'right' | 'asked' | 'wrong' | 'rejected';

/** One sound, and what became of it. */
export interface Tried {
  readonly name: string;
  readonly text: string;
  readonly outcome: Outcome;
  /** Whether the best words were right, whatever the gate or the other model said to them. */
  readonly wordsRight: boolean;
  /** Score against the phone loop: what the gate is calibrated on. */
  readonly margin: number;
  readonly verdictMs: number;
  /** Of it, what was computed behind the pause that ended the sentence. */
  readonly behindPauseMs: number;
  readonly realTimeFactor: number;
  /** Whether one pass was enough. */
  readonly pass: 'first' | 'second' | 'none';
}

/**
 * What became of all that was heard in one sound. Words with another sentence beside them are asked. One utterance that
 * is taken and wrong makes the whole sound wrong, even if a right one follows.
 */
export function triedFrom(name: string, heard: readonly HeardSpeech[], isRight: (text: string) => boolean): Tried {
  const taken = heard.filter(({ accepted, alternatives }) => accepted && alternatives.length === 0);
  const wrong = taken.find(({ text }) => !isRight(text));
  const right = heard.find(({ text }) => isRight(text));
  const best = wrong ?? right ?? heard.find(({ accepted }) => accepted) ?? heard[0];
  const outcome =
    wrong !== undefined
      ? 'wrong'
      : taken.length > 0
        ? 'right'
        : heard.some(({ accepted }) => accepted)
          ? 'asked'
          : 'rejected';
  return { name, outcome, wordsRight: right !== undefined, ...timesOf(best) };
}

export function timesOf(heard: HeardSpeech | undefined): Omit<Tried, 'name' | 'outcome' | 'wordsRight'> {
  return {
    text: heard?.text ?? '',
    margin: heard?.margin ?? Number.NEGATIVE_INFINITY,
    verdictMs: heard?.verdictMs ?? Number.NaN,
    behindPauseMs: heard?.behindPauseMs ?? Number.NaN,
    realTimeFactor: heard?.realTimeFactor ?? Number.NaN,
    pass: heard === undefined ? 'none' : heard.looks > 1 ? 'second' : 'first',
  };
}

/** How many came to each outcome. */
export function outcomes(name: string, tried: readonly Tried[]): Figure[] {
  const share = (outcome: Outcome, shown: string, against = ''): Figure =>
    shareFigure(`${name}: ${shown}`, tried.filter((one) => one.outcome === outcome).length, tried.length, against);
  return [
    share('right', 'taken and right'),
    share('asked', 'asked'),
    share('wrong', 'taken and wrong'),
    share('rejected', 'rejected'),
  ];
}

/** Verdict times by pass, and how much computing a second of sound costs. */
export function times(name: string, tried: readonly Tried[]): Figure[] {
  const figures: Figure[] = [];
  for (const [pass, aim] of [
    ['first', 'aim ≤ 450'],
    ['second', 'aim ≤ 1200'],
  ] as const) {
    const ofPass = tried.filter((one) => one.pass === pass);
    if (ofPass.length === 0) continue;
    const verdicts = ofPass.map(({ verdictMs }) => verdictMs);
    const behind = ofPass.map(({ behindPauseMs }) => behindPauseMs);
    const of = `${name}: end of speech to verdict, ${pass} pass`;
    figures.push(
      {
        name: `${of}, p50`,
        value: quantile(verdicts, 0.5),
        unit: 'ms',
        against: `${verdicts.length} of ${tried.length}`,
      },
      { name: `${of}, p95`, value: quantile(verdicts, 0.95), unit: 'ms', against: aim },
      { name: `${of}, without the pause, p50`, value: quantile(behind, 0.5), unit: 'ms', against: 'aim ≤ 450' },
      { name: `${of}, without the pause, p95`, value: quantile(behind, 0.95), unit: 'ms', against: 'aim ≤ 900' },
    );
  }
  const factors = tried.map((one) => one.realTimeFactor).filter(Number.isFinite);
  figures.push({
    name: `${name}: real-time factor, p50`,
    value: quantile(factors, 0.5),
    unit: '×',
    against: 'limit 1',
  });
  return figures;
}

/** Where the gate's cuts are to be looked for. */
export function margins(name: string, tried: readonly Tried[]): Figure[] {
  const found = tried.map(({ margin }) => Math.max(-99, margin));
  return [0.02, 0.5, 0.98].map((share) => ({
    name: `${name}: margin at ${share}`,
    value: quantile(found, share),
    unit: '/frame',
  }));
}

export function shareFigure(name: string, count: number, of: number, against = ''): Figure {
  const share = shareOf(count, of);
  return { name, value: share.percent, unit: '%', against: [written(share), against].filter(Boolean).join('; ') };
}

/** What the whole of the sound cost, silence between the sentences included. */
export const loadFigure = (name: string, { load }: Pick<Hearing, 'load'>): Figure => ({
  name: `${name}: processor time for a second of sound`,
  value: load,
  unit: 's',
  against: 'aim ≤ 0.35',
});
