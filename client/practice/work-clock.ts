/** A test with what it needs, where it is done and how long the work itself takes. */
export interface Job {
  readonly id: string;
  readonly function: string;
  readonly needs: { readonly power: string; readonly call: string; readonly bench: boolean };
  readonly place: string;
  readonly minutes: number;
  /** Minutes of these that are waited. */
  readonly wait?: number;
}

/** What is seen, felt or connected at the outdoor unit with its panel on. */
const OUTSIDE: ReadonlySet<string> = new Set([
  'look-outdoor-fan',
  'look-compressor',
  'look-no-call',
  'look-outdoor-coil',
  'look-oil',
  'look-fan-by-hand',
  'temperature-outdoor-air',
  'temperature-condenser-air-out',
  'temperature-suction-line',
  'temperature-liquid-line',
  'pressure-suction',
  'pressure-liquid',
  'pressure-standing',
]);

/** What minutes go to. A pressure at rest is mostly a wait. */
export type Spending =
  | 'walking'
  | 'power and proving dead'
  | 'call'
  | 'panel'
  | 'gauges'
  | 'once more'
  | 'waiting'
  | 'repairs'
  | 'looks'
  | 'volts and amps'
  | 'ohms and microfarads'
  | 'temperatures'
  | 'pressures';

const WORK: Readonly<Record<string, Spending>> = {
  look: 'looks',
  volts: 'volts and amps',
  amps: 'volts and amps',
  ohms: 'ohms and microfarads',
  microfarads: 'ohms and microfarads',
  temperature: 'temperatures',
  pressure: 'pressures',
};

/**
 * Minutes of a visit, counted the same way for whoever chooses the tests: the work, the walk, making power and call
 * ready, the outdoor panel once, the gauges once (common practice, our figures).
 */
export class WorkClock {
  minutes = 0;
  tests = 0;
  /** What the minutes went to. */
  readonly spent = new Map<Spending, number>();
  private last = '';
  private place = 'thermostat';
  private power = 'on';
  private call = 'cooling';
  private panelOff = false;
  private gaugesOn = false;
  private readonly acts: 'assumed' | 'told';

  /** @param acts `told`: power, call and proofs are counted as they are done, and none is assumed before a test */
  constructor(acts: 'assumed' | 'told' = 'assumed') {
    this.acts = acts;
  }

  /** Something that is no test: the walk there, and so many minutes. */
  act(what: Spending, minutes: number, place?: string): void {
    this.last = '';
    if (place !== undefined) this.spend('walking', this.walk(place));
    this.spend(what, minutes);
  }

  count(job: Job): void {
    this.tests += 1;
    // The probes are still in place: reading once more takes a moment.
    if (this.last === job.id) {
      this.spend('once more', 0.4);
      return;
    }
    this.last = job.id;
    const wait = job.id === 'pressure-standing' ? job.minutes : (job.wait ?? 0);
    this.spend('waiting', wait);
    this.spend(WORK[job.function]!, job.minutes - wait);
    this.spend('walking', this.walk(job.place));
    this.makeReady(job);
    if (job.place === 'outdoor' && !OUTSIDE.has(job.id) && !this.panelOff) {
      this.spend('panel', 1);
      this.panelOff = true;
    }
    if (job.function === 'pressure' && !this.gaugesOn) {
      this.spend('gauges', 2.5);
      this.gaugesOn = true;
    }
  }

  private spend(what: Spending, minutes: number): void {
    if (minutes === 0) return;
    this.minutes += minutes;
    this.spent.set(what, (this.spent.get(what) ?? 0) + minutes);
  }

  private walk(to: string): number {
    const from = this.place;
    this.place = to;
    if (from === to) return 0;
    const indoors = ['thermostat', 'air-handler'];
    const outside = ['outdoor', 'disconnect'];
    if (indoors.includes(from) && indoors.includes(to)) return 0.8;
    if (outside.includes(from) && outside.includes(to)) return 0.2;
    return 1.5;
  }

  private makeReady(job: Job): void {
    if (this.acts === 'told') return;
    const { power, call } = job.needs;
    if (power !== 'any' && power !== this.power) {
      this.spend('power and proving dead', power === 'off' ? 2 : 1);
      this.power = power;
    }
    if (power === 'on' && call !== 'any' && call !== this.call) {
      this.spend('call', 1);
      this.call = call;
    }
  }
}
