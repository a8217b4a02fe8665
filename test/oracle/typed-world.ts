import { readFileSync } from 'node:fs';
import type { Assessment } from '../../client/diagnosis/diagnosis.ts';
import type { Mouth, Prompt } from '../../client/speaking/mouth.ts';
import { type Clock, type VisitEdges, VisitRun } from '../../client/visit/run/visit-run.ts';
import { understand } from '../../grammar/phrases/understand.ts';
import type { VisitEvent } from '../../grammar/visit/events.ts';
import type { InputTime } from '../../grammar/visit/inputs.ts';
import type { UnitProfile } from '../../grammar/vocabulary/unit-profile.ts';

const LIBRARY = JSON.parse(
  readFileSync(new URL('../../fixtures/units/library.json', import.meta.url), 'utf8'),
) as UnitProfile;

/** Units by the name that `@unit` gives them. */
const UNITS: Readonly<Record<string, UnitProfile>> = {
  library: LIBRARY,
  flammable: { ...LIBRARY, id: 'flammable', refrigerant: 'R-454B' },
  'hard-start': { ...LIBRARY, id: 'hard-start', hardStart: true },
};

const MS_A_MINUTE = 60_000;
const MS_A_LOOK = 700;

/** A clock whose wall time can be set, and that can sleep: then the wall goes on and its timers stand. */
class MovedClock implements Clock {
  #mono = 0;
  #wallAhead = 0;
  #timers: { readonly due: number; readonly call: () => void }[] = [];
  static readonly START = Date.parse('2026-06-15T14:00:00Z');

  now(): InputTime {
    this.#mono += MS_A_LOOK;
    return { at: new Date(MovedClock.START + this.#mono + this.#wallAhead).toISOString(), mono: this.#mono };
  }

  after(minutes: number, call: () => void): void {
    this.#timers.push({ due: this.#mono + minutes * MS_A_MINUTE, call });
  }

  setWall(minutes: number): void {
    this.#wallAhead += minutes * MS_A_MINUTE;
  }

  forgetTimers(): void {
    this.#timers = [];
  }

  /** Goes on to the next timer within so many minutes and fires it; returns what is left. */
  step(minutes: number): number {
    const end = this.#mono + minutes * MS_A_MINUTE;
    this.#timers.sort((a, b) => a.due - b.due);
    const next = this.#timers[0];
    if (next === undefined || next.due > end) {
      this.#mono = end;
      return 0;
    }
    this.#timers.shift();
    this.#mono = Math.max(this.#mono, next.due);
    next.call();
    return (end - this.#mono) / MS_A_MINUTE;
  }
}

class KeptMouth implements Mouth {
  said: Prompt[] = [];

  async speak(prompt: Prompt): Promise<'spoken'> {
    this.said.push(prompt);
    return 'spoken';
  }

  hush(): void {}
}

/** The conduct stands above the diagnosis: one that has nothing to ask leaves the talk to what is said. */
const NOTHING_TO_ASK = async (): Promise<Assessment> => ({
  version: 'none',
  forSeq: 0,
  suspects: [],
  next: [],
  hazards: [],
  done: false,
});

/** What came of one line: the events of its turn, in order, and all that was said. */
export interface Turn {
  readonly line: string;
  readonly events: readonly VisitEvent[];
  readonly said: readonly Prompt[];
  readonly reloaded: boolean;
}

/** A visit in a world that can be moved: real grammar, real machine, invented clock, mouth and store. */
export class TypedWorld {
  readonly unit: UnitProfile;
  readonly role: 'technician' | 'trainee';
  readonly #bodies: string[] = [];
  readonly #clock = new MovedClock();
  #mouth = new KeptMouth();
  #run!: VisitRun;
  #taken = 0;
  #count = 0;

  /** @param setting lines "@unit NAME" and "@trainee" that the history begins with */
  constructor(setting: readonly string[]) {
    const named = setting.find((line) => line.startsWith('@unit '))?.slice('@unit '.length) ?? 'library';
    this.unit = UNITS[named] ?? LIBRARY;
    this.role = setting.includes('@trainee') ? 'trainee' : 'technician';
  }

  async open(): Promise<Turn> {
    this.#run = VisitRun.open(this.#edges(), {
      type: 'opened.visit',
      visit: 'walked',
      site: 'reading room',
      complaint: 'does not cool',
      role: this.role,
      unit: this.unit,
      software: 'test',
    });
    return this.#turn('', false);
  }

  async do(line: string): Promise<Turn> {
    const [order, amount] = line.split(' ');
    const minutes = Number(amount);
    switch (order) {
      case '@wait':
        for (let left = minutes; left > 0; ) {
          left = this.#clock.step(left);
          await this.#run.settled();
        }
        return this.#turn(line, false);
      case '@clock':
      case '@sleep':
        this.#clock.setWall(minutes);
        return this.#turn(line, false);
      case '@away':
      case '@reload':
        this.#clock.forgetTimers();
        if (order === '@away') this.#clock.step(minutes);
        this.#mouth = new KeptMouth();
        this.#run = await VisitRun.restore(this.#edges(), [...this.#bodies]);
        return this.#turn(line, true);
      case '@noise':
        for (let times = 0; times < minutes; times += 1) this.#hear('mumble', false);
        return this.#turn(line, false);
      case '@supervisor':
        this.#run.take({ type: 'supervisor.acknowledged', supervisor: 'the supervisor' });
        return this.#turn(line, false);
      default:
        if (line.startsWith('@')) throw new Error(`no such order: ${line}`);
        this.#hear(line, true);
        return this.#turn(line, false);
    }
  }

  #hear(text: string, accepted: boolean): void {
    this.#count += 1;
    this.#run.hear({
      id: `w${this.#count}`,
      ear: 'typed',
      text,
      alternatives: [],
      confidence: accepted ? 1 : 0,
      accepted,
    });
  }

  async #turn(line: string, reloaded: boolean): Promise<Turn> {
    await this.#run.settled();
    const events = this.#bodies.slice(this.#taken).map((body) => JSON.parse(body) as VisitEvent);
    this.#taken = this.#bodies.length;
    return { line, events, said: this.#mouth.said.splice(0), reloaded };
  }

  #edges(): VisitEdges {
    return {
      understand,
      diagnose: NOTHING_TO_ASK,
      mouth: this.#mouth,
      clock: this.#clock,
      append: async (bodies) => {
        this.#bodies.push(...bodies);
      },
    };
  }
}
