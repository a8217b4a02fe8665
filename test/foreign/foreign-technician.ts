import type { Answer, AskedTest, MeteredPlant } from '../../client/practice/plant/answer-test.ts';
import type { Dice } from '../../client/practice/plant/dice.ts';

/** How the one with the probes errs. Shares of 1. */
export interface Conduct {
  /** A reading goes wrong; the next one with the same instrument goes wrong with it. */
  readonly misread: number;
  /** A whole visit on wrong terminals: legs, windings or capacitor sections exchanged. */
  readonly swaps: number;
  /** A test is passed over. */
  readonly skips: number;
  /** A place cannot be reached on this visit. */
  readonly outOfReach: number;
}

export const CAREFUL: Conduct = { misread: 0, swaps: 0, skips: 0, outOfReach: 0 };
export const UNFRIENDLY: Conduct = { misread: 0.02, swaps: 0.04, skips: 0.03, outOfReach: 0.08 };

/** Terminals that are taken for each other. */
const EXCHANGES: readonly (readonly (readonly [string, string])[])[] = [
  [
    ['L1', 'L2'],
    ['T1', 'T2'],
    ['fuse-1-line', 'fuse-2-line'],
    ['fuse-1-load', 'fuse-2-load'],
    ['disconnect-load-1', 'disconnect-load-2'],
    ['disconnect-line-1', 'disconnect-line-2'],
    ['breaker-1', 'breaker-2'],
  ],
  [['comp-R', 'comp-S']],
  [['comp-C', 'comp-R']],
  [['fan-R', 'fan-S']],
  [['cap-HERM', 'cap-FAN']],
  [['Y@condenser', 'R@condenser']],
];

/** The one who is told a test and answers: a number, a word, or that it is skipped. */
export class ForeignTechnician {
  private readonly unit: MeteredPlant;
  private readonly dice: Dice;
  private readonly conduct: Conduct;
  private readonly exchanged: ReadonlyMap<string, string>;
  private readonly closedPlace: string | undefined;
  private wrongStill: string | undefined;

  constructor(unit: MeteredPlant, conduct: Conduct, dice: Dice) {
    this.unit = unit;
    this.dice = dice;
    this.conduct = conduct;
    const pairs = dice.yes(conduct.swaps) ? dice.pick(EXCHANGES) : [];
    this.exchanged = new Map(pairs.flatMap(([a, b]) => [[a, b] as const, [b, a] as const]));
    this.closedPlace = dice.yes(conduct.outOfReach)
      ? dice.pick(['panel', 'thermostat', 'disconnect', 'air-handler'])
      : undefined;
  }

  /** Whether anything was not as it should have been on this visit. */
  get errs(): boolean {
    return this.exchanged.size > 0;
  }

  /** What is typed for a test: a reading, or that there is none. */
  does(test: AskedTest): { readonly reading: number | string } | { readonly skip: true } {
    if (test.place === this.closedPlace || this.dice.yes(this.conduct.skips)) return { skip: true };
    const answer = this.unit.answer(this.atTerminals(test));
    if (answer === undefined) return { skip: true };
    const wrong = this.wrongStill === test.function || this.dice.yes(this.conduct.misread);
    // The slip that made one reading wrong makes the next of its kind wrong too, and is then noticed.
    this.wrongStill = wrong && this.wrongStill === undefined ? test.function : undefined;
    return { reading: wrong ? this.misread(test, answer) : answer };
  }

  private atTerminals(test: AskedTest): AskedTest {
    const other = (point: string | undefined) =>
      point === undefined ? undefined : (this.exchanged.get(point) ?? point);
    const from = other(test.from);
    const to = other(test.to);
    return { ...test, ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) };
  }

  private misread(test: AskedTest, answer: Exclude<Answer, undefined>): number | string {
    if (test.answers) return this.dice.pick(test.answers);
    if (test.function === 'ohms') return answer === 'open' ? this.dice.pick([0.2, 1.4]) : 'open';
    if (typeof answer !== 'number') return answer;
    if (test.function === 'temperature' || test.function === 'pressure')
      return Math.round(answer * this.dice.span(0.85, 1.15));
    return this.dice.pick([
      0.1,
      Math.round(answer * 10) / 100,
      Math.round(answer * this.dice.span(0.5, 1.4) * 10) / 10,
    ]);
  }
}
