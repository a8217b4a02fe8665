import { Chance } from './chance.ts';
import { MetredYard } from './meter.ts';
import type { Trouble } from './trouble.ts';
import { TROUBLES } from './troubles.ts';
import { type Design, drawYard } from './yard.ts';

/** What is wrong, and how deep. */
export interface Wrong {
  readonly trouble: Trouble;
  readonly depth: number;
}

/** A visit's yard with what is wrong with it; the same numbers give the same yard, also after a repair. */
export interface YardCase {
  readonly design: Design;
  readonly seed: number;
  readonly wrongs: readonly Wrong[];
}

/** The yard with what is still wrong. */
export function yardOf({ design, seed }: Pick<YardCase, 'design' | 'seed'>, left: readonly Wrong[]): MetredYard {
  const yard = drawYard(design, new Chance(seed));
  for (const { trouble, depth } of left) trouble.put(yard, depth, new Chance(seed + 5));
  return new MetredYard(yard, new Chance(seed + 11));
}

/** Whether anybody would have called: it stands, trips, hardly cools, runs without being asked, or wears itself out. */
function isNoticed(unit: MetredYard): boolean {
  const { state, loop, trips } = unit.stood;
  if (trips !== 'no' || !state.compressor || !state.fan || !state.blower || !loop) return true;
  const { yard } = unit;
  if (yard.loop.reversed || yard.welded[0] || (yard.welded[1] && yard.design.poles === 2)) return true;
  if (loop.capacity < 0.86 || loop.boils < 30 || loop.superheat < 1 || loop.condenses > yard.weather.outdoors + 32)
    return true;
  // A heavy bill, a warm lug, a weak part found on the yearly look.
  return yard.herm < 0.85 * yard.design.herm || loop.liquidPsi > yard.switchSet.high * 0.8;
}

/** Deep and shallow are likelier than the middle; barely is rarest. */
const depthOf = (chance: Chance) => (chance.yes(0.5) ? Math.max(chance.next(), chance.next()) : chance.next());

/** Draws a case that somebody would call for. */
export function drawYardCase(design: Design, seed: number, where: 'inside' | 'outside', count: 1 | 2): YardCase {
  const chance = new Chance(seed + 3);
  const pool = TROUBLES.filter((t) => (t.family === 'outside') === (where === 'outside') && (t.fits?.(design) ?? true));
  const weighted = pool.map((t) => [t, t.often ?? 1] as const);
  for (;;) {
    const first = chance.weighted(weighted);
    const others = weighted.filter(
      ([t]) => t.family !== first.family && !t.called.some((c) => first.called.includes(c)),
    );
    const troubles = count === 1 ? [first] : [first, chance.weighted(others)];
    const wrongs = troubles.map((trouble) => ({ trouble, depth: depthOf(chance) }));
    if (wrongs.every((wrong) => isNoticed(yardOf({ design, seed }, [wrong])))) return { design, seed, wrongs };
  }
}
