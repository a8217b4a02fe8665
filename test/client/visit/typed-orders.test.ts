import { describe, expect, it } from 'vitest';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import type { EnergyState, ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { ARRIVAL, LIBRARY_UNIT, TO_PROVEN_DEAD, TypedVisit } from './typed-visit.ts';

/**
 * Orders as they are typed at the wrong moment, and what each must get: of every kind that the rules of conduct name,
 * and none of them taken in silence. Common practice; NFPA 70E 120.5, 29 CFR 1910.333(b), EPA 40 CFR 82 subpart F.
 */
type Gets =
  /** Said at once that the zone is not proven dead, and kept as an open item. */
  | 'told unproven'
  /** Not taken: the value stands in the record as refused. */
  | 'refused'
  /** Taken, and warned of at once. */
  | 'warned'
  /** Asked back before anything is made of it. */
  | 'asked'
  /** No zone is proven dead or reads dead behind it, and that is said. */
  | 'proof ended'
  /** Kept for the supervisor. */
  | 'waits'
  /** Said what is missing; nothing is called dead. */
  | 'told what is missing';

const LOCKED = TO_PROVEN_DEAD.slice(0, 4);
const OPENED = [...TO_PROVEN_DEAD, 'I opened the system'];
const TRIPPED = ['the breaker is tripped'];

interface Situation {
  readonly lines: readonly string[];
  readonly role?: 'technician' | 'trainee';
}
const SITUATIONS = {
  'a live unit': { lines: [...ARRIVAL, 'leg one to ground one eighteen'] },
  'a unit reported off and locked': { lines: LOCKED },
  'a unit proven dead': { lines: TO_PROVEN_DEAD },
  'a unit proven dead, a wire off': { lines: [...TO_PROVEN_DEAD, 'lifted the brown wire from fan'] },
  'a unit proven dead, a jumper on': { lines: [...TO_PROVEN_DEAD, 'put a jumper across leg one and T one'] },
  'an opened refrigerant circuit': { lines: OPENED },
  'a circuit in vacuum': { lines: [...OPENED, 'system is in a vacuum'] },
  'a tripped breaker': { lines: TRIPPED },
  'a grounded winding': {
    lines: [...TO_PROVEN_DEAD, 'the breaker is tripped', 'compressor common to shell zero ohms'],
  },
  'a trainee alone': { lines: ARRIVAL, role: 'trainee' },
} as const satisfies Readonly<Record<string, Situation>>;

const ORDERS: readonly (readonly [keyof typeof SITUATIONS, string, Gets])[] = [
  // a: reported work
  ['a live unit', 'lifted the brown wire from fan', 'told unproven'],
  ['a live unit', 'took the capacitor out', 'told unproven'],
  ['a live unit', 'pulled the contactor', 'told unproven'],
  ['a live unit', 'fitted a forty five over five dual capacitor four forty volt', 'told unproven'],
  ['a live unit', 'put a jumper across leg one and T one', 'told unproven'],
  ['a live unit', 'compressor terminal cover is off', 'told unproven'],
  ['a live unit', 'tightened the lugs', 'told unproven'],
  ['a live unit', 'fan common to fan run twelve ohms', 'refused'],
  ['a live unit', 'herm section forty four microfarads', 'refused'],
  ['a unit reported off and locked', 'lifted the brown wire from fan', 'told unproven'],
  ['a unit reported off and locked', 'fan section five point one microfarads', 'refused'],
  // b: one breath
  ['a unit proven dead', 'outdoor disconnect is back in, lifted the brown wire from fan', 'told unproven'],
  ['a unit proven dead', 'outdoor disconnect is back in, fan section five microfarads', 'refused'],
  // c, d: the proof
  ['a live unit', 'meter two forty zero zero zero zero zero zero meter two forty', 'told what is missing'],
  ['a unit reported off and locked', 'meter two forty zero zero zero meter two forty', 'told what is missing'],
  [
    'a unit reported off and locked',
    'meter two forty leg one zero leg one zero leg one zero meter two forty',
    'told what is missing',
  ],
  ['a unit reported off and locked', 'meter zero zero zero zero zero zero zero meter zero', 'told what is missing'],
  // f: power may be back
  ['a unit proven dead', 'power is back on', 'proof ended'],
  ['a unit proven dead', 'it is live', 'proof ended'],
  ['a unit proven dead', 'the lock is off', 'proof ended'],
  ['a unit proven dead', 'I hear the compressor', 'proof ended'],
  ['a unit proven dead', 'somebody flipped it', 'proof ended'],
  ['a unit proven dead', 'I got a shock', 'proof ended'],
  ['a unit proven dead', 'outdoor disconnect is back in', 'proof ended'],
  ['a unit proven dead', 'outdoor fan is turning', 'proof ended'],
  ['a unit proven dead', 'the contactor just pulled in by itself', 'proof ended'],
  // g: voltage
  ['a unit proven dead', 'T one to ground one eighteen', 'proof ended'],
  ['a unit reported off and locked', 'leg one to leg two two forty', 'warned'],
  ['a unit reported off and locked', 'meter two forty zero zero one eighteen zero zero zero meter two forty', 'warned'],
  // h: d.c.
  ['a live unit', 'fan section zero volts d c', 'asked'],
  // j: after a trip
  ['a tripped breaker', 'panel breaker is back on', 'warned'],
  ['a grounded winding', 'panel breaker is back on', 'warned'],
  // k: overcurrent
  ['a unit proven dead', 'fitted a ninety amp breaker', 'asked'],
  // l: refrigerant
  ['an opened refrigerant circuit', 'outdoor disconnect is back in', 'warned'],
  ['an opened refrigerant circuit', 'thermostat is calling', 'warned'],
  ['an opened refrigerant circuit', 'compressor is running', 'warned'],
  ['an opened refrigerant circuit', 'vacuum four hundred microns', 'told what is missing'],
  ['a circuit in vacuum', 'compressor is running', 'warned'],
  ['a circuit in vacuum', 'compressor common to shell five hundred megohms', 'refused'],
  // m: flame
  ['a live unit', 'brazing the joint', 'warned'],
  ['an opened refrigerant circuit', 'the torch is lit', 'warned'],
  // n: charge
  ['a unit proven dead', 'herm section thirty seven volts d c', 'warned'],
  // o: bench
  ['a live unit', 'compressor common to compressor run two ohms on the bench', 'refused'],
  // p: a trainee alone
  ['a trainee alone', 'leg one to ground one eighteen', 'waits'],
  ['a trainee alone', 'compressor amps eleven point two', 'waits'],
  // q: power returning
  ['a unit proven dead, a wire off', 'outdoor disconnect is back in', 'warned'],
  ['a unit proven dead, a jumper on', 'outdoor disconnect is back in', 'warned'],
  ['a unit proven dead, a wire off', 'panel breaker is back on', 'warned'],
  // r: by hand
  ['a live unit', 'pressed the contactor by hand', 'warned'],
  ['a live unit', 'bypassed the high pressure switch', 'warned'],
  ['a live unit', 'compressor is too hot to touch', 'warned'],
  ['a live unit', 'jumped high switch side one to high switch side two', 'warned'],
  // i: a pull-out under load
  ['a live unit', 'compressor is running and outdoor disconnect is pulled', 'warned'],
  // closing
  ['a unit proven dead, a wire off', 'finish the visit', 'told what is missing'],
  ['a unit proven dead, a jumper on', 'finish the visit', 'told what is missing'],
  ['a unit proven dead', 'finish the visit', 'told what is missing'],
  ['a live unit', 'pressed the contactor by hand, finish the visit', 'warned'],
];

interface Followed {
  readonly events: readonly VisitEvent[];
  readonly said: readonly { readonly kind: string; readonly text: string }[];
  readonly energy: Readonly<Record<ZoneId, EnergyState>>;
}

async function follow({ lines, role }: Situation, order: string): Promise<Followed> {
  const visit = await TypedVisit.open(LIBRARY_UNIT, role ?? 'technician');
  await visit.type(...lines);
  const before = visit.bodies.length;
  const told = visit.mouth.said.length;
  await visit.type(order);
  return { events: visit.events().slice(before), said: visit.mouth.said.slice(told), energy: visit.run.context.energy };
}

const OUTDOORS: readonly ZoneId[] = ['outdoor-load', 'capacitor-herm', 'capacitor-fan'];

function gets({ events, said, energy }: Followed, what: Gets): boolean {
  const happened = (type: VisitEvent['type']) => events.some((event) => event.type === type);
  const warned = said.some(({ kind }) => kind === 'warning') || said.some(({ kind }) => kind === 'caution');
  const isDead = OUTDOORS.some((zone) => ['reads-dead', 'proven-dead'].includes(energy[zone]));
  switch (what) {
    case 'told unproven':
      return happened('work.unproven') && said.some(({ text }) => /not proven dead/i.test(text));
    case 'refused':
      return happened('reading.refused') && !happened('reading.logged') && warned;
    case 'warned':
      return warned;
    case 'asked':
      return (happened('question.asked') || said.some(({ kind }) => kind === 'question')) && !happened('part.fitted');
    case 'proof ended':
      return !isDead && said.length > 0;
    case 'waits':
      return !happened('reading.logged') && said.length > 0;
    case 'told what is missing':
      return (
        said.length > 0 &&
        !happened('visit.closed') &&
        events.every((event) => event.type !== 'energy.changed' || event.to !== 'proven-dead')
      );
  }
}

describe('an order typed at the wrong moment', () => {
  it.each(ORDERS)('%s: "%s" is %s', async (situation, order, what) => {
    const followed = await follow(SITUATIONS[situation], order);
    const heard = followed.said.map(({ kind, text }) => `${kind}: ${text}`).join('\n');
    expect(gets(followed, what), heard).toBe(true);
  });

  it('is of every kind that the rules name', () => {
    expect(ORDERS.length).toBeGreaterThanOrEqual(57);
    expect(new Set(ORDERS.map(([, , what]) => what)).size).toBe(7);
  });
});
