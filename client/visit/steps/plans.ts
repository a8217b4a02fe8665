import type { RankedTest } from '../../../grammar/visit/inputs.ts';
import type { PlaceId } from '../../../grammar/vocabulary/places.ts';
import type { PointId } from '../../../grammar/vocabulary/points.ts';
import { POINTS_BY_ID } from '../../../grammar/vocabulary/points.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import type { LookId } from '../../diagnosis/measuring/look-tests.ts';
import type { ActionDone, Step } from '../chart/context.ts';
import { CAPACITOR_ZONES } from '../rules/isolation.ts';
import { LOOKS } from './looks.ts';
import { PLATE_PLAN } from './plate-steps.ts';

/** The split is judged only after this long running, in minutes (CEC RA3.2.2: at least 15 minutes). */
export const SPLIT_AFTER_MINUTES = 15;

const NO_NEEDS: RankedTest['needs'] = { power: 'any', call: 'any', bench: false };
const RUNNING: RankedTest['needs'] = { power: 'on', call: 'cooling', bench: false };

function reading(
  id: string,
  source: Step['source'],
  quantity: RankedTest['quantity'],
  at: readonly PointId[],
  needs = NO_NEEDS,
): Step {
  if (quantity === 'observation') throw new Error(`${id} is a look, not a reading`);
  return { id, source, ask: { kind: 'reading', quantity, at }, needs, hazards: [], zone: zoneOf(at) };
}

function asked(id: string, done: ActionDone, source: 'arrive' | 'close'): Step {
  const optional = source === 'arrive' ? { optional: true as const } : {};
  return { id, source, ask: { kind: 'action', done }, needs: NO_NEEDS, hazards: [], zone: 'none', ...optional };
}

/** Asked on arrival, in this order; each may be passed, and the optional ones pass by themselves. */
export const ARRIVE_PLAN: readonly Step[] = [
  asked('arrive.consent', 'consent-asked', 'arrive'),
  { ...asked('arrive.sound', 'sound-agreed', 'arrive'), withMicrophone: true },
  ...PLATE_PLAN,
  asked('arrive.meter', 'meter-named', 'arrive'),
  reading('arrive.outdoor-air', 'arrive', 'temperature', ['outdoor-air']),
  reading('arrive.return-air', 'arrive', 'temperature', ['return-air']),
  {
    id: 'arrive.call',
    source: 'arrive',
    ask: { kind: 'look', answers: ['thermostat-calling', 'thermostat-not-calling', 'thermostat-blank'] },
    needs: NO_NEEDS,
    hazards: [],
    zone: 'none',
  },
  {
    id: 'arrive.fan',
    source: 'arrive',
    ask: { kind: 'look', answers: ['fan-not-turning', 'fan-turning', 'fan-hums'] },
    needs: NO_NEEDS,
    hazards: [],
    zone: 'none',
    whileFed: true,
  },
];

/** After the repair: power back by steps, then the same things again beside the first ones. */
export const PROVE_PLAN: readonly Step[] = [
  {
    id: 'prove.fan-turning',
    source: 'prove',
    ask: { kind: 'look', answers: ['fan-turning', 'fan-not-turning'] },
    needs: RUNNING,
    hazards: [],
    zone: 'none',
  },
  { ...reading('prove.compressor-amps', 'prove', 'current', ['compressor'], RUNNING), withClamps: true },
  { ...reading('prove.fan-amps', 'prove', 'current', ['fan-motor'], RUNNING), withClamps: true },
  {
    ...reading('prove.return-air', 'prove', 'temperature', ['return-air'], RUNNING),
    afterMinutes: SPLIT_AFTER_MINUTES,
  },
  {
    ...reading('prove.supply-air', 'prove', 'temperature', ['supply-air'], RUNNING),
    afterMinutes: SPLIT_AFTER_MINUTES,
  },
  ...(
    [
      ['prove.suction-pressure', 'pressure', 'suction-port'],
      ['prove.suction-line', 'temperature', 'suction-line'],
      ['prove.liquid-pressure', 'pressure', 'liquid-port'],
      ['prove.liquid-line', 'temperature', 'liquid-line'],
    ] as const
  ).map(
    ([id, quantity, place]): Step => ({
      ...reading(id, 'prove', quantity, [place], RUNNING),
      afterMinutes: SPLIT_AFTER_MINUTES,
      withGauges: true,
    }),
  ),
];

/** Asked when nothing is left to prove; "finish the visit" closes at any time and names what is open. */
export const CLOSE_PLAN: readonly Step[] = [
  asked('energy.covers-on', 'covers-on', 'close'),
  asked('close.thermostat', 'thermostat-agreed', 'close'),
  asked('close.recommend', 'recommended', 'close'),
  asked('close.customer', 'customer-signed', 'close'),
  asked('close.technician', 'technician-signed', 'close'),
];

/** A step that asks for an action. */
export function actionStep(done: ActionDone, zone: ZoneId | 'none', needs: RankedTest['needs'] = NO_NEEDS): Step {
  const source = done === 'part-fitted' ? 'repair' : done === 'visit-finished' ? 'close' : 'energy';
  const elsewhere = zone === 'outdoor-load' || zone === 'none' ? '' : `@${zone}`;
  return { id: `${source}.${done}${elsewhere}`, source, ask: { kind: 'action', done }, needs, hazards: [], zone };
}

/** A winding to its shell, read dead before power returns. @param since numbers the trip that asks for it */
export function windingStep(at: readonly [PointId, PointId], since: number): Step {
  const needs: RankedTest['needs'] = { power: 'off', call: 'any', bench: false };
  return {
    id: `energy.winding-${at[0]}-${since}`,
    source: 'energy',
    ask: { kind: 'reading', quantity: 'resistance', at },
    needs,
    hazards: [],
    zone: 'outdoor-load',
  };
}

/** A test of the planner's, as a step. */
export function testStep(test: RankedTest): Step {
  const { id, quantity, at, needs, hazards } = test;
  const ask: Step['ask'] =
    quantity === 'observation' ? { kind: 'look', answers: test.answers ?? [] } : { kind: 'reading', quantity, at };
  return { id, test: id, source: 'planner', ask, needs, hazards, zone: zoneOfTest(test) };
}

/** Where hands, probes or eyes are for a test. */
export function zoneOfTest({ id, quantity, at, needs }: RankedTest): ZoneId | 'none' {
  if (quantity === 'observation') return LOOKS[id as LookId].zone;
  const zone = needs.bench ? benchZone(at) : zoneOf(at);
  // A clamp goes around a lead and touches no section.
  const isClamped = quantity === 'current' && (CAPACITOR_ZONES as readonly (ZoneId | 'none')[]).includes(zone);
  return isClamped ? 'outdoor-load' : zone;
}

/** Parts in the outdoor unit, whichever circuit they belong to: hands that take one out are beside its line volts. */
const OUTDOORS: readonly (PlaceId | undefined)[] = ['condenser', 'contactor', 'capacitor', 'compressor', 'fan-motor'];

/** A part is taken out where its load side is: a pulled fuse, and whatever sits in the outdoor unit, with that dead. */
function benchZone(at: readonly PointId[]): ZoneId | 'none' {
  const outdoor = at.some(
    (id) => POINTS_BY_ID[id].zone === 'outdoor-load' || OUTDOORS.includes(POINTS_BY_ID[id].place),
  );
  return outdoor ? 'outdoor-load' : zoneOf(at);
}

/** The zone that probes at these places meet: a capacitor section where one is touched, else the first with a zone. */
export function zoneOf(at: readonly PointId[]): ZoneId | 'none' {
  const zones = at.map((id) => POINTS_BY_ID[id].zone).filter((zone) => zone !== 'none');
  return zones.find((zone) => (CAPACITOR_ZONES as readonly ZoneId[]).includes(zone)) ?? zones[0] ?? 'none';
}
