import type { Chance } from './chance.ts';
import type { MetredYard, Question, Reading } from './meter.ts';

/** How somebody works. Shares of 1; habits last a whole visit. */
export interface Manner {
  /** A probe misses its metal: nothing is read, and mostly not a second time. */
  readonly misses: number;
  /** A comma slips. */
  readonly slips: number;
  /** What was seen first is said again of what was to be seen next: nobody looked. */
  readonly assumes: number;
  /** A number is given from memory of sound units: nobody measured. */
  readonly invents: number;
  /** A test is too far, too hot or too late. */
  readonly declines: number;
  /** Only one side of the house is open today. */
  readonly lockedOut: number;
  /** Legs are counted from the other side. */
  readonly mirrors: number;
}

export const STEADY: Manner = { misses: 0, slips: 0, assumes: 0, invents: 0, declines: 0, lockedOut: 0, mirrors: 0 };
export const HURRIED: Manner = {
  misses: 0.012,
  slips: 0.006,
  assumes: 0.015,
  invents: 0.006,
  declines: 0.03,
  lockedOut: 0.08,
  mirrors: 0.03,
};

/** What whoever does not measure says of a sound unit (common practice). */
const INVENTED: Readonly<Record<string, number>> = {
  volts: 240,
  amps: 10,
  ohms: 1.5,
  microfarads: 40,
  temperature: 75,
  pressure: 125,
};

/** Somebody with a meter, in a manner of his own. */
export class Visitor {
  private readonly unit: MetredYard;
  private readonly manner: Manner;
  private readonly chance: Chance;
  private readonly mirrored: boolean;
  private readonly locked: string | undefined;
  private readonly missed = new Set<string>();

  constructor(unit: MetredYard, manner: Manner, chance: Chance) {
    this.unit = unit;
    this.manner = manner;
    this.chance = chance;
    this.mirrored = chance.yes(manner.mirrors);
    this.locked = chance.yes(manner.lockedOut) ? chance.pick(['panel', 'thermostat', 'air-handler']) : undefined;
  }

  does(asked: Question): { readonly reading: Reading } | { readonly skip: true } {
    const { chance, manner } = this;
    if (asked.place === this.locked || chance.yes(manner.declines)) return { skip: true };
    const true_ = this.unit.answer(this.mirrored ? mirror(asked) : asked);
    if (true_ === undefined) return { skip: true };
    if (asked.answers) return { reading: chance.yes(manner.assumes) ? chance.pick(asked.answers) : true_ };
    // Who missed once misses the same place again, more often than not.
    if (this.missed.has(asked.id) ? chance.yes(0.5) : chance.yes(manner.misses)) {
      this.missed.add(asked.id);
      return {
        reading:
          asked.function === 'ohms' ? 'open' : asked.function === 'volts' ? 0.2 : asked.function === 'amps' ? 0 : true_,
      };
    }
    if (chance.yes(manner.invents)) return { reading: INVENTED[asked.function]! };
    const comma = asked.function === 'ohms' || asked.function === 'volts' || asked.function === 'microfarads';
    if (comma && typeof true_ === 'number' && chance.yes(manner.slips)) return { reading: Math.round(true_) / 10 };
    return { reading: true_ };
  }
}

/** The same place of the other leg, where there is one. */
function mirror(asked: Question): Question {
  const other = (point: string | undefined) =>
    point === undefined || !/^(L|T|fuse|breaker|disconnect|service)/.test(point)
      ? point
      : point.replace(/[12]/, (n) => (n === '1' ? '2' : '1'));
  const [from, to] = [other(asked.from), other(asked.to)];
  return { ...asked, ...(from ? { from } : {}), ...(to ? { to } : {}) };
}
