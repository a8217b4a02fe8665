import type { IsolationPlace } from '../../grammar/vocabulary/isolation-places.ts';
import type { ObservationId } from '../../grammar/vocabulary/observations.ts';
import { POINTS_BY_ID, type PointId } from '../../grammar/vocabulary/points.ts';
import type { QuantityId, UnitCode, Value } from '../../grammar/vocabulary/quantities.ts';
import type { TestId } from '../../grammar/vocabulary/tests.ts';
import { USUAL_UNITS } from '../../grammar/vocabulary/units.ts';
import { ZONES, type ZoneId } from '../../grammar/vocabulary/zones.ts';
import type { TestModel } from '../diagnosis/measuring/test-model.ts';
import { TEST_IDS, TEST_MODELS } from '../diagnosis/measuring/test-models.ts';
import { pairsOf } from '../visit/rules/proof-plan.ts';
import type { AskedTest, MeteredPlant } from './plant/answer-test.ts';
import { Dice } from './plant/dice.ts';
import { type ForeignCase, type Hidden, unitOf } from './plant/hidden-case.ts';
import { OPEN, type Plant } from './plant/plant.ts';

/** What an instrument shows, in the unit of its quantity. */
export interface Shown {
  readonly value: Value;
  readonly unit: UnitCode;
}

/** A reading that somebody takes: what, where, and whether the part is out of the circuit for it. */
export interface Taking {
  readonly quantity: QuantityId;
  readonly at: readonly PointId[];
  readonly bench: boolean;
}

const FUNCTIONS: Readonly<Partial<Record<QuantityId, string>>> = {
  voltage: 'volts',
  current: 'amps',
  resistance: 'ohms',
  insulation: 'ohms',
  capacitance: 'microfarads',
  temperature: 'temperature',
  'wet-bulb': 'temperature',
  pressure: 'pressure',
};

const SECTIONS = ['capacitor-herm', 'capacitor-fan', 'capacitor-start'] as const;
type Section = (typeof SECTIONS)[number];
/** A section keeps a charge in about one unit of three that is switched off (ours): a run winding beside it bleeds most. */
const KEEPS_CHARGE = 0.35;
/** Microns and psi of a circuit that was evacuated and of one under nitrogen, as a tight one shows them (common practice). */
const OF_A_TIGHT_CIRCUIT = { vacuum: 350, pressure: 150 } as const;

/**
 * A unit of the third simulator with its switches, its thermostat and what hands have opened: what meets probes, eyes
 * and fingers. It knows what is so, and nothing of the visit.
 */
export class SimulatedUnit {
  readonly #kase: ForeignCase;
  readonly #dice: Dice;
  #left: readonly Hidden[];
  #metered: MeteredPlant;
  #contacts: Plant['contacts'];
  #closed: Record<IsolationPlace, boolean> = { outdoor: true, panel: true, 'air-handler': true };
  #call: 'cooling' | 'none' = 'cooling';
  #charge: Partial<Record<Section, number>> = {};
  /** What stands open that a hand was at: wires lifted, parts out, leads off. */
  readonly open = new Set<string>();

  constructor(kase: ForeignCase) {
    this.#kase = kase;
    this.#left = kase.hidden;
    this.#dice = new Dice(kase.seed + 41);
    this.#metered = unitOf(kase.build, kase.seed, kase.hidden);
    this.#contacts = { ...this.#metered.plant.contacts };
  }

  get plant(): Plant {
    return this.#metered.plant;
  }

  /** What is still wrong with it. */
  get left(): readonly Hidden[] {
    return this.#left;
  }

  get call(): 'cooling' | 'none' {
    return this.#call;
  }

  setCall(call: 'cooling' | 'none'): void {
    this.#call = call;
  }

  isClosed(place: IsolationPlace): boolean {
    return this.#closed[place];
  }

  /** Throws a switch. A breaker that had tripped is reset by it; what must blow again blows. */
  throw(place: IsolationPlace, closed: boolean): void {
    const { plant } = this.#metered;
    if (this.#closed[place] && !closed) {
      // What a switch that is opened leaves behind in the capacitors.
      for (const section of SECTIONS) {
        const isThere = section !== 'capacitor-start' || this.#kase.build.hardStart;
        const keeps = this.#dice.yes(KEEPS_CHARGE);
        if (place !== 'air-handler' && isThere)
          this.#charge[section] = keeps ? this.#dice.span(35, 320) : this.#dice.span(0, 1.2);
      }
    }
    if (closed && place === 'panel' && plant.seen.delete('breaker-tripped')) {
      this.#contacts.breaker1 = 0.005;
      this.#contacts.breaker2 = 0.005;
    }
    this.#closed[place] = closed;
    this.#set();
  }

  #set(): void {
    const { plant } = this.#metered;
    plant.disconnectOut = !this.#closed.outdoor;
    const now = { ...plant.contacts };
    for (const [place, names] of [
      ['panel', ['breaker1', 'breaker2']],
      ['air-handler', ['handlerBreaker1', 'handlerBreaker2']],
    ] as const)
      for (const name of names)
        now[name] = this.#closed[place] && !isTripped(place, plant) ? this.#contacts[name] : OPEN;
    Object.assign(plant.contacts, now);
    this.#metered.disturbed();
  }

  /** Leads what is charged over a resistor. */
  discharge(section: ZoneId): void {
    if (section in this.#charge || (SECTIONS as readonly ZoneId[]).includes(section))
      this.#charge[section as Section] = this.#dice.span(0, 0.4);
  }

  /** Volts d.c. that a section holds; what is fed has none of its own. */
  chargeOf(section: ZoneId): number {
    return this.isFed('outdoor-load') ? 0 : (this.#charge[section as Section] ?? 0);
  }

  /** Mends one of the hidden causes. @returns whether there was such a one */
  mend(isMended: (hidden: Hidden) => boolean): boolean {
    const cured = this.#left.filter(isMended);
    if (cured.length === 0) return false;
    this.#leave(this.#left.filter((one) => !cured.includes(one)));
    return true;
  }

  /** What was said to be mended was not: it is wrong with it as before. */
  unmend(before: readonly Hidden[]): void {
    this.#leave(before);
  }

  #leave(left: readonly Hidden[]): void {
    this.#left = left;
    this.#metered = unitOf(this.#kase.build, this.#kase.seed, this.#left);
    this.#contacts = { ...this.#metered.plant.contacts };
    this.#set();
  }

  /** A fuse or breaker that was renewed is whole, until it meets what blew it. */
  renew(part: 'fuse' | 'breaker' | 'control-fuse'): void {
    const names = {
      fuse: ['fuse1', 'fuse2'],
      breaker: ['breaker1', 'breaker2'],
      'control-fuse': ['controlFuse'],
    } as const;
    const { contacts } = this.#metered.plant;
    for (const name of names[part]) {
      contacts[name] = 0.01;
      this.#contacts[name] = 0.01;
    }
    this.#set();
  }

  /** The most volts a.c. that fingers or probes at these points meet, against ground and each other. */
  voltsAt(points: readonly PointId[]): number {
    const pairs = points.flatMap((one, i) => [
      [one, 'ground'] as const,
      ...points.slice(i + 1).map((two) => [one, two] as const),
    ]);
    return Math.max(0, ...pairs.map(([one, two]) => this.#volts(one, two)));
  }

  /** Volts a.c. between two places; 0 where there is one. */
  voltsBetween([one, two]: readonly PointId[]): number {
    return one === undefined || two === undefined ? 0 : this.#volts(one, two);
  }

  /** The most volts a.c. between the conductors of a zone, and to ground. */
  voltsIn(zone: ZoneId): number {
    return Math.max(0, ...pairsOf(zone).map(([one, two]) => this.#volts(one, two)));
  }

  /** Whether its switches are in, whatever comes through them. */
  isSwitchedOn(zone: ZoneId): boolean {
    if (zone === 'air-handler' || zone === 'control') return this.#closed['air-handler'];
    return this.#closed.panel && (zone === 'disconnect-line' || this.#closed.outdoor);
  }

  /** Whether enough stands there to hurt or to run something: more than any ghost. */
  isFed(zone: ZoneId): boolean {
    return this.voltsIn(zone) > 15;
  }

  /** Zones that hold a dangerous voltage now; 24 volts hurt nobody. */
  get dangerous(): readonly ZoneId[] {
    return ZONES.filter((zone) => zone !== 'control' && this.voltsIn(zone) > 30);
  }

  #volts(one: PointId, two: PointId): number {
    if (one === two) return 0;
    const seen = this.#metered.answer(this.#asked('volts', `${one}-${two}`, [one, two], false));
    return typeof seen === 'number' ? seen : 0;
  }

  #asked(fn: string, id: string, at: readonly PointId[], bench: boolean): AskedTest {
    const [from, to] = at;
    const needs = { power: 'any', call: this.#call, bench };
    return {
      ...{ id, function: fn, needs, place: '', minutes: 0 },
      ...(from === undefined ? {} : { from }),
      ...(to === undefined ? {} : { to }),
    };
  }

  /** What the instrument shows; undefined where this unit has no such place. */
  read({ quantity, at, bench }: Taking): Shown | undefined {
    const unit = USUAL_UNITS[quantity];
    if (quantity === 'voltage-dc') return { value: this.#chargeAt(at), unit };
    if (quantity === 'vacuum') return { value: OF_A_TIGHT_CIRCUIT.vacuum, unit };
    if (quantity === 'pressure' && at[0] === 'system') return { value: OF_A_TIGHT_CIRCUIT.pressure, unit };
    const fn = FUNCTIONS[quantity];
    const test = testAt(quantity, at);
    // Thermometers and gauges show what the balance knows; a meter reads between any two terminals.
    if (fn === undefined || ((fn === 'temperature' || fn === 'pressure') && test === undefined)) return undefined;
    const value = this.#metered.answer(this.#asked(fn, test ?? at.join('-'), at, bench));
    return value === undefined || (typeof value === 'string' && value !== 'open')
      ? undefined
      : { value: value as Value, unit };
  }

  #chargeAt(at: readonly PointId[]): number {
    const zone = at
      .map((point) => POINTS_BY_ID[point].zone)
      .find((one) => (SECTIONS as readonly string[]).includes(one));
    return zone === undefined || zone === 'none' ? 0 : Math.round(this.chargeOf(zone) * 10) / 10;
  }

  /** What is seen of a look, one of its answers. */
  see(look: string, answers: readonly ObservationId[]): ObservationId {
    const call = look === 'look-no-call' || look === 'look-contactor-no-call' ? 'none' : this.#call;
    const seen = this.#metered.answer({
      ...this.#asked('look', look, [], false),
      answers,
      needs: { power: 'any', call, bench: false },
    });
    return answers.find((answer) => answer === seen) ?? answers[1] ?? answers[0]!;
  }
}

const isTripped = (place: IsolationPlace, { seen }: Plant): boolean => place === 'panel' && seen.has('breaker-tripped');

/** The test that a reading belongs to, by place alone: the meter knows no circumstances. */
function testAt(quantity: QuantityId, at: readonly PointId[]): TestId | undefined {
  const places = [...at].sort().join();
  return TEST_IDS.find((id) => {
    const one: TestModel = TEST_MODELS[id];
    return one.quantity === quantity && [...one.at].sort().join() === places;
  });
}
