import type { ReadAt } from '../../grammar/phrases/meaning.ts';
import type { PointId } from '../../grammar/vocabulary/points.ts';
import type { DialId } from '../../grammar/vocabulary/practice-orders.ts';
import type { QuantityId } from '../../grammar/vocabulary/quantities.ts';
import { TEST_IDS, TEST_MODELS } from '../diagnosis/measuring/test-models.ts';
import type { Step } from '../visit/chart/context.ts';
import type { SimulatedUnit, Taking } from './simulated-unit.ts';

const BY_DIAL: Readonly<Record<DialId, QuantityId>> = {
  volts: 'voltage',
  'volts-dc': 'voltage-dc',
  ohms: 'resistance',
  microfarads: 'capacitance',
};

/** What the dial of one meter measures; clamp, thermometer and gauges are instruments of their own. */
const DIALLED: readonly QuantityId[] = Object.values(BY_DIAL);

export const dialFor = (quantity: QuantityId): DialId | undefined =>
  (Object.keys(BY_DIAL) as DialId[]).find((dial) => BY_DIAL[dial] === quantity);

/**
 * What is taken at a place that was named: by the dial, where one meter does it; else by the instrument of the place.
 * Ohms and microfarads are taken with the leads off where they are asked for so and in no other way.
 */
export function chooseTaking(of: readonly ReadAt[], dial: DialId, bench: boolean): Taking {
  const first = of[0]!;
  const chosen =
    of.find(({ quantity }) => quantity === BY_DIAL[dial]) ??
    (isDialled(first.quantity) ? { quantity: BY_DIAL[dial], at: first.at } : first);
  return { ...chosen, bench: bench || isOnlyOnBench(chosen) };
}

/** What two probes on the drawing take. */
export function takingBetween(at: readonly PointId[], dial: DialId, bench: boolean): Taking {
  const quantity = BY_DIAL[dial];
  return { quantity, at, bench: bench || isOnlyOnBench({ quantity, at }) };
}

const isDialled = (quantity: QuantityId): boolean => DIALLED.includes(quantity);

function isOnlyOnBench({ quantity, at }: ReadAt): boolean {
  const places = [...at].sort().join();
  const models = TEST_IDS.map((id) => TEST_MODELS[id]).filter(
    (one) => one.quantity === quantity && [...one.at].sort().join() === places,
  );
  return models.length > 0 && models.every(({ needs }) => needs.bench);
}

/** Over any ghost: a.c. that a meter on volts is left on. */
const LIVE_FROM = 20;

/**
 * What the meter stands on at a place: as the visit asks, else as it was set. A meter on volts reads what is live a.c.,
 * the charge of a section d.c., and is turned to what else is read there where nothing is.
 */
export function dialAt(
  of: readonly ReadAt[],
  set: DialId,
  ask: Step['ask'] | undefined,
  unit: Pick<SimulatedUnit, 'voltsAt'>,
): DialId {
  if (ask?.kind === 'reading' && of.some(({ at }) => at.join() === ask.at.join())) return dialFor(ask.quantity) ?? set;
  const [first] = of;
  if (set !== 'volts' || first === undefined || of.some(({ quantity }) => quantity === 'voltage')) return set;
  if (unit.voltsAt(first.at) >= LIVE_FROM) return 'volts';
  return of.some(({ quantity }) => quantity === 'voltage-dc') ? 'volts-dc' : (dialFor(first.quantity) ?? 'volts');
}
