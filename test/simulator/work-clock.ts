import type { Asked } from './instrument.ts';

/** A test with where it is done and how long the work itself takes. */
export interface Job extends Asked {
  readonly place: string;
  readonly minutes: number;
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

/**
 * Minutes of a visit, counted the same way for whoever chooses the tests: the work, the walk, making power and call
 * ready, the outdoor panel once, the gauges once (common practice, our figures).
 */
export class WorkClock {
  minutes = 0;
  tests = 0;
  private last = '';
  private place = 'thermostat';
  private power = 'on';
  private call = 'cooling';
  private panelOff = false;
  private gaugesOn = false;

  count(job: Job): void {
    this.tests += 1;
    // The probes are still in place: reading once more takes a moment.
    if (this.last === job.id) {
      this.minutes += 0.4;
      return;
    }
    this.last = job.id;
    this.minutes += job.minutes + this.walk(job.place) + this.ready(job);
    if (job.place === 'outdoor' && !OUTSIDE.has(job.id) && !this.panelOff) {
      this.minutes += 1;
      this.panelOff = true;
    }
    if (job.function === 'pressure' && !this.gaugesOn) {
      this.minutes += 2.5;
      this.gaugesOn = true;
    }
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

  private ready(job: Job): number {
    let minutes = 0;
    const { power, call } = job.needs;
    if (power !== 'any' && power !== this.power) {
      minutes += power === 'off' ? 2 : 1;
      this.power = power;
    }
    if (power === 'on' && call !== 'any' && call !== this.call) {
      minutes += 1;
      this.call = call;
    }
    return minutes;
  }
}
