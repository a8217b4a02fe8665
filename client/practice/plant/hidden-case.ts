import { MeteredPlant } from './answer-test.ts';
import { type Cause, drawSeverity } from './causes.ts';
import { CAUSES_OF_CONTROL } from './causes-of-control.ts';
import { CAUSES_OF_COOLING } from './causes-of-cooling.ts';
import { CAUSES_OF_MOTORS } from './causes-of-motors.ts';
import { CAUSES_OF_POWER } from './causes-of-power.ts';
import { CAUSES_OUTSIDE } from './causes-outside.ts';
import { Dice } from './dice.ts';
import { drawPlant } from './draw-plant.ts';
import type { Build } from './plant.ts';
import { blowerTurns } from './settle.ts';

const BY_FAMILY = {
  power: CAUSES_OF_POWER,
  motors: CAUSES_OF_MOTORS,
  control: CAUSES_OF_CONTROL,
  cooling: CAUSES_OF_COOLING,
  outside: CAUSES_OUTSIDE,
} as const;
export type Family = keyof typeof BY_FAMILY;
export const FAMILIES = Object.keys(BY_FAMILY) as Family[];

/** @param cause its id */
export function familyOf(cause: string): Family | undefined {
  return FAMILIES.find((family) => BY_FAMILY[family].some((c) => c.id === cause));
}

export const CAUSES_INSIDE: readonly Cause[] = [
  ...CAUSES_OF_POWER,
  ...CAUSES_OF_MOTORS,
  ...CAUSES_OF_CONTROL,
  ...CAUSES_OF_COOLING,
];

/** What is hidden in a unit, and how badly. */
export interface Hidden {
  readonly cause: Cause;
  readonly severity: number;
}

/** A unit with what is hidden in it. The same numbers give the same unit, also when one of its causes is repaired. */
export interface ForeignCase {
  readonly build: Build;
  readonly seed: number;
  readonly hidden: readonly Hidden[];
}

/** The unit with what is still wrong with it. */
export function unitOf(build: Build, seed: number, hidden: readonly Hidden[]): MeteredPlant {
  const plant = drawPlant(build, new Dice(seed));
  for (const { cause, severity } of hidden) cause.put(plant, severity, new Dice(seed + 7));
  return new MeteredPlant(plant, new Dice(seed + 13));
}

/** Whether somebody would call for it: no cooling, too little of it, or something that stands where it should turn. */
function complains(unit: MeteredPlant, sound: MeteredPlant): boolean {
  const { compressor, cycle, found } = unit.settled(true);
  const good = sound.settled(true).cycle;
  if (compressor !== 'running' || !cycle || !good) return true;
  if (cycle.capacity < 0.88 * good.capacity || unit.plant.cycle.reversed) return true;
  if (found.slip.fan > 0.3 || !blowerTurns(unit.plant, found)) return true;
  // What kills a compressor is found on a yearly visit.
  return (cycle.superheat < 1 && good.superheat > 4) || cycle.liquidPsi > 1.25 * good.liquidPsi;
}

/** Draws severities until somebody complains. @returns nothing where this unit does not mind */
function hide(build: Build, seed: number, causes: readonly Cause[], dice: Dice): ForeignCase | undefined {
  const sound = unitOf(build, seed, []);
  for (let attempt = 0; attempt < 8; attempt += 1) {
    const hidden = causes.map((cause) => ({ cause, severity: drawSeverity(dice) }));
    const each = hidden.every((h) => h.cause.quiet || complains(unitOf(build, seed, [h]), sound));
    if (each) return { build, seed, hidden };
  }
  return undefined;
}

/** A case of `count` causes that this build can have. @param where inside the list of faults, or outside it */
export function drawForeignCase(build: Build, seed: number, where: 'inside' | 'outside', count: 1 | 2): ForeignCase {
  return drawCaseOf(where === 'inside' ? CAUSES_INSIDE : CAUSES_OUTSIDE, build, seed, count);
}

export const causesOf = (family: Family): readonly Cause[] => BY_FAMILY[family];

/** A case of `count` of these causes, of those that this build can have. */
export function drawCaseOf(causes: readonly Cause[], build: Build, seed: number, count: 1 | 2): ForeignCase {
  const dice = new Dice(seed + 1);
  const pool = causes.filter((c) => c.fits?.(build) ?? true);
  const loud = pool.filter((c) => !c.quiet || count === 1);
  for (;;) {
    const first = pick(loud, dice);
    const rest = loud.filter((c) => !c.called.some((f) => first.called.includes(f)));
    const drawn = count === 1 ? [first] : [first, pick(rest, dice)];
    const kase = hide(build, seed, drawn, dice);
    if (kase) return kase;
  }
}

/** The same causes, as bad, in the same build on another day; where nobody would call for them then, as bad as it takes. */
export function drawAgain({ build, hidden }: ForeignCase, seed: number): ForeignCase | undefined {
  const sound = unitOf(build, seed, []);
  const isTold = hidden.every((one) => one.cause.quiet || complains(unitOf(build, seed, [one]), sound));
  const causes = hidden.map(({ cause }) => cause);
  return isTold ? { build, seed, hidden } : hide(build, seed, causes, new Dice(seed + 1));
}

/** Degrees Fahrenheit that this build takes off the air on that day with nothing wrong with it; undefined where it does not run. */
export function soundSplit(build: Build, seed: number): number | undefined {
  const unit = unitOf(build, seed, []);
  const { cycle } = unit.settled(true);
  return cycle === undefined ? undefined : unit.plant.cycle.returnF - cycle.supplyF;
}

const pick = (pool: readonly Cause[], dice: Dice): Cause => dice.weighted(pool.map((c) => [c, c.weight ?? 1] as const));
