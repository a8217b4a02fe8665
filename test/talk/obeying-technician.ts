import { Dice } from '../../client/practice/plant/dice.ts';
import type { Step, VisitContext } from '../../client/visit/chart/context.ts';
import { observationWords } from '../../client/words/things/observation-words.ts';
import type { Phase } from '../../grammar/visit/events.ts';
import { openQuestion } from '../../grammar/visit/standing.ts';
import type { FaultId } from '../../grammar/vocabulary/faults.ts';
import { POINTS_BY_ID, type PointId } from '../../grammar/vocabulary/points.ts';
import type { QuantityId } from '../../grammar/vocabulary/quantities.ts';
import type { ZoneId } from '../../grammar/vocabulary/zones.ts';
import { TypedVisit } from '../client/visit/typed-visit.ts';
import { profileFor } from '../simulator/draw-case.ts';
import { drawHiddenUnit, type HiddenUnit, type Ratings } from '../simulator/hidden-unit.ts';
import { hideFault } from '../simulator/hide-fault.ts';
import { type Asked, Instrument } from '../simulator/instrument.ts';
import { repairLine } from './repair-lines.ts';

/** Something that was asked where it could not be done, or once more where nothing had changed. */
export interface Fault {
  readonly kind:
    | 'asked while live'
    | 'asked without power'
    | 'asked with the other call'
    | 'asked again'
    | 'back and forth'
    | 'stuck';
  readonly step: string;
}

export interface ObeyedVisit {
  readonly hidden: FaultId;
  readonly found: FaultId | undefined;
  readonly closed: boolean;
  readonly faults: readonly Fault[];
  /** What was typed and said, in order. */
  readonly lines: readonly { readonly who: 'technician' | string; readonly text: string }[];
}

const MOST_LINES = 160;
/** A switch or a call that is asked so often with nothing read between is asked back and forth. */
const BACK_AND_FORTH = 3;
/** How a technician answers what is asked. */
export interface Manner {
  /** Says a word to each caution before its step is answered; else the answer alone does. */
  readonly acks?: boolean;
  /** The share of what is asked that is passed, or cannot be reached. */
  readonly passes?: number;
}
/** Where time must pass with nothing to be said. */
const WAITING: readonly Phase[] = ['repair', 'prove'];

/**
 * A visit by a technician who does what is asked, says what the meter shows in the fewest words, and nothing else. The
 * unit is one of the simulator's own with a fault hidden in it; switches and thermostat are as the technician left them.
 */
export async function obey(hidden: FaultId, ratings: Ratings, seed: number, manner: Manner = {}): Promise<ObeyedVisit> {
  return new ObeyingTechnician(hidden, ratings, seed, manner).work();
}

type Power = 'on' | 'off';
const SWITCHED: readonly string[] = ['power-on', 'power-off', 'breaker-off', 'call-on', 'call-off'];

class ObeyingTechnician {
  readonly #hidden: FaultId;
  readonly #ratings: Ratings;
  readonly #seed: number;
  readonly #dice: Dice;
  readonly #manner: Manner;
  readonly #whims: Dice;
  #switched: string[] = [];
  #instrument: Instrument;
  #visit!: TypedVisit;
  readonly #lines: { who: string; text: string }[] = [];
  readonly #faults: Fault[] = [];
  readonly #asked = new Map<string, number>();
  #told = 0;
  #call: 'cooling' | 'none' = 'cooling';
  #disconnect: Power = 'on';
  #breaker: Power = 'on';
  #handler: Power = 'on';
  #last: number | 'open' | undefined;
  #gaveUp = false;

  constructor(hidden: FaultId, ratings: Ratings, seed: number, manner: Manner) {
    this.#manner = manner;
    this.#whims = new Dice(seed * 17 + 3);
    this.#hidden = hidden;
    this.#ratings = ratings;
    this.#seed = seed;
    this.#dice = new Dice(seed + 1);
    this.#instrument = new Instrument(this.#unit([hidden]), this.#dice, 0);
  }

  #unit(faults: readonly FaultId[]): HiddenUnit {
    const unit = drawHiddenUnit(this.#ratings, new Dice(this.#seed * 31 + 7), 1);
    for (const fault of faults) hideFault(unit, fault, new Dice(this.#seed * 131 + fault.length));
    return unit;
  }

  async work(): Promise<ObeyedVisit> {
    this.#visit = await TypedVisit.open(profileFor(this.#ratings, `obeyed-${this.#seed}`, 'matched'));
    let idle = 0;
    while (this.#typed() < MOST_LINES && this.#context.phase !== 'closed' && idle < 6 && !this.#gaveUp) {
      this.#hear();
      const line = this.#answer();
      if (line !== undefined) {
        idle = 0;
        this.#lines.push({ who: 'technician', text: line });
        await this.#visit.type(line);
        continue;
      }
      idle += 1;
      await this.#visit.later(5);
    }
    this.#hear();
    if (this.#context.phase !== 'closed')
      this.#faults.push({ kind: 'stuck', step: this.#context.step?.id ?? 'nothing' });
    return {
      hidden: this.#hidden,
      found: this.#context.finding?.fault,
      closed: this.#context.phase === 'closed',
      faults: this.#faults,
      lines: this.#lines,
    };
  }

  get #context(): VisitContext {
    return this.#visit.run.context;
  }

  #typed(): number {
    return this.#lines.filter(({ who }) => who === 'technician').length;
  }

  /** Listens to what was said since. */
  #hear(): void {
    const { said } = this.#visit.mouth;
    for (const { kind, text } of said.slice(this.#told)) this.#lines.push({ who: kind, text });
    this.#told = said.length;
  }

  /** The shortest words that answer what is asked now; undefined where nothing is, and time is let pass. */
  #answer(): string | undefined {
    const { caution, step } = this.#context;
    if (openQuestion(this.#context) !== undefined) return this.#answerQuestion();
    if (caution !== undefined && (this.#manner.acks === true || !caution.withStep)) return 'live';
    if (this.#context.closeRefused.length > 0) return 'note that it could not be done today for want of time';
    if (step === undefined && this.#lines.at(-1)?.text.endsWith('or finish the visit.') === true)
      return 'finish the visit';
    if (step === undefined) return WAITING.includes(this.#context.phase) ? undefined : 'finish the visit';
    this.#judge(step);
    if (this.#isPassed(step)) return this.#whims.yes(0.5) ? 'pass' : "can't reach it";
    this.#follow(step);
    switch (step.ask.kind) {
      case 'action':
        return this.#act(step);
      case 'look':
        return observationWords(this.#see(step) as never);
      case 'reading':
        return this.#read(step, step.ask.quantity, step.ask.at);
    }
  }

  /** What ends the visit is not passed, nor what only waits. */
  #isPassed({ ask }: Step): boolean {
    const { passes = 0 } = this.#manner;
    if (passes === 0 || (ask.kind === 'action' && ask.done === 'visit-finished')) return false;
    return this.#whims.yes(passes);
  }

  /** Switches and calls since something was read last. */
  #follow(step: Step): void {
    const isSwitch = step.ask.kind === 'action' && SWITCHED.includes(step.ask.done);
    if (!isSwitch) {
      if (step.ask.kind !== 'action') this.#switched = [];
      return;
    }
    this.#switched.push(step.id);
    if (this.#switched.filter((id) => id === step.id).length === BACK_AND_FORTH)
      this.#faults.push({ kind: 'back and forth', step: step.id });
  }

  #answerQuestion(): string {
    const question = openQuestion(this.#context);
    if (question?.kind === 'teen-or-ty') {
      const [one, other] = question.options;
      const shown = Number(this.#last ?? one);
      return String(Math.abs(one - shown) <= Math.abs(other - shown) ? one : other);
    }
    const wantsReason = question?.kind === 'confirm-meaning' && question.wants === 'reason';
    return wantsReason ? 'note that it is the size that stood in the holder before' : 'yes';
  }

  #feeds(zone: ZoneId | 'none'): Power {
    switch (zone) {
      case 'disconnect-line':
        return this.#breaker;
      case 'air-handler':
      case 'control':
        return this.#handler;
      default:
        return this.#disconnect === 'on' && this.#breaker === 'on' ? 'on' : 'off';
    }
  }

  /** Whether this can be done as things stand, and was not done just so before. */
  #judge(step: Step): void {
    // A value that cannot be is measured again.
    if (this.#lines.at(-1)?.who === 'question') return;
    const { needs, zone } = step;
    const power = this.#feeds(zone);
    const fault = (kind: Fault['kind']) => this.#faults.push({ kind, step: step.id });
    if (step.ask.kind !== 'action') {
      if ((needs.power === 'off' || needs.bench) && power === 'on') fault('asked while live');
      if (needs.power === 'on' && power === 'off') fault('asked without power');
      if (needs.call !== 'any' && needs.call !== this.#call && needs.power === 'on') fault('asked with the other call');
    }
    const state = [step.id, this.#context.phase, this.#call, this.#disconnect, this.#breaker, this.#handler].join(' ');
    const times = (this.#asked.get(state) ?? 0) + 1;
    this.#asked.set(state, times);
    // A finding's one reading is read once more, and a reading that is asked back is confirmed.
    if (times > 2) fault('asked again');
    if (times > 6) this.#gaveUp = true;
  }

  #act(step: Step): string {
    if (step.ask.kind !== 'action') throw new Error('not an action');
    const indoors = step.zone === 'air-handler' || step.zone === 'control';
    switch (step.ask.done) {
      case 'call-on':
        this.#call = 'cooling';
        return 'thermostat is calling';
      case 'call-off':
        this.#call = 'none';
        return 'thermostat is not calling';
      case 'power-off':
        if (indoors) this.#handler = 'off';
        else if (step.zone === 'disconnect-line') this.#breaker = 'off';
        else this.#disconnect = 'off';
        return indoors
          ? 'air handler switch is off and locked'
          : step.zone === 'disconnect-line'
            ? 'breaker at the panel is off and locked'
            : 'outdoor disconnect is pulled and locked';
      case 'breaker-off':
        this.#breaker = 'off';
        return 'breaker at the panel is off and locked';
      case 'power-on':
        if (indoors) this.#handler = 'on';
        else if (step.zone === 'disconnect-line') this.#breaker = 'on';
        else {
          this.#disconnect = 'on';
          this.#breaker = 'on';
        }
        return indoors
          ? 'air handler switch is back on'
          : step.zone === 'disconnect-line'
            ? 'breaker at the panel is back on'
            : 'outdoor disconnect is back in';
      case 'absence-proved':
        return step.zone === 'control' ? '25' : '240';
      case 'capacitors-discharged':
        return '0';
      case 'part-fitted': {
        const line = repairLine(this.#context.finding?.fault ?? this.#hidden, this.#ratings);
        this.#instrument = new Instrument(
          this.#unit(this.#context.finding?.fault === this.#hidden ? [] : [this.#hidden]),
          this.#dice,
          0,
        );
        return line;
      }
      case 'wires-landed':
        return 'all wires are landed';
      case 'covers-on':
        return 'covers are on';
      case 'consent-asked':
        return 'customer agrees';
      case 'meter-named':
        return 'meter is cat three';
      case 'sound-agreed':
        return 'keep no sound';
      case 'nameplate-read':
        return 'nameplate is unreadable';
      case 'leak-searched':
        return 'leak search found nothing';
      case 'vacuum-isolated':
        return 'pump is valved off';
      case 'thermostat-agreed':
        return 'thermostat is set as agreed';
      case 'recommended':
        return 'nothing to recommend';
      case 'technician-signed':
        return 'technician signs';
      case 'customer-signed':
        return 'customer not present';
      case 'visit-finished':
        return 'finish the visit';
      case 'meter-again':
        return step.zone === 'control' ? '25' : '240';
      case 'disconnect-locked':
        this.#disconnect = 'off';
        return 'outdoor disconnect is pulled and locked';
      case 'source-opened':
        this.#breaker = 'off';
        return 'breaker at the panel is off and locked';
      case 'charge-left':
      case 'tug-tested':
      case 'clamps-placed':
        return 'done';
    }
  }

  #see(step: Step): string {
    if (step.ask.kind !== 'look') throw new Error('not a look');
    const { answers } = step.ask;
    const needs = { power: step.needs.power, call: this.#call, bench: step.needs.bench };
    // The simulator knows looks by all their answers.
    const whole = answers.includes('fan-turning') ? [...new Set([...answers, 'fan-hums'])] : answers;
    const seen = this.#instrument.answer({ id: step.id, function: 'look', answers: whole, needs });
    return (answers as readonly unknown[]).includes(seen) ? String(seen) : String(answers[1] ?? answers[0]);
  }

  #read(step: Step, quantity: QuantityId, at: readonly PointId[]): string {
    // A weight is not said without its units.
    if (quantity === 'mass')
      return step.id.endsWith('recovered') ? 'recovered 5 pounds 10 ounces' : 'added 6 pounds 4 ounces';
    const value = this.#meter(step, quantity, at);
    this.#last = value;
    return String(value);
  }

  #meter(step: Step, quantity: QuantityId, at: readonly PointId[]): number | 'open' {
    const zone = step.zone === 'none' ? 'outdoor-load' : step.zone;
    if (quantity === 'voltage-dc') return 0;
    const zones = [zone, ...at.flatMap((id) => POINTS_BY_ID[id].zone)].filter((one) => one !== 'none');
    if (quantity === 'voltage' && zones.every((one) => this.#feeds(one) === 'off')) return 0;
    if (quantity === 'vacuum') return 350;
    if (quantity === 'pressure' && at[0] === 'system') return 150;
    const [from, to] = at;
    const asked: Asked = {
      id: step.id,
      function: FUNCTION[quantity] ?? 'temperature',
      ...(from === undefined ? {} : { from }),
      ...(to === undefined ? {} : { to }),
      quantity,
      needs: { power: step.needs.power, call: this.#call, bench: step.needs.bench },
    };
    return this.#instrument.answer(asked) as number | 'open';
  }
}

const FUNCTION: Readonly<Partial<Record<QuantityId, string>>> = {
  voltage: 'volts',
  current: 'amps',
  resistance: 'ohms',
  capacitance: 'microfarads',
  temperature: 'temperature',
  'wet-bulb': 'temperature',
  pressure: 'pressure',
};

/** A transcript for people. */
export function printed({ lines }: ObeyedVisit): string {
  return lines.map(({ who, text }) => `${who.padEnd(11)}${text}`).join('\n');
}
