import { readFileSync } from 'node:fs';
import type { Mouth, Prompt } from '../../../client/speaking/mouth.ts';
import { SteppedClock } from '../../../client/visit/run/stepped-clock.ts';
import { type VisitEdges, VisitRun } from '../../../client/visit/run/visit-run.ts';
import { understand } from '../../../grammar/phrases/understand.ts';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import type { UnitChoice } from '../../../grammar/vocabulary/unit-choice.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import { diagnosisOf } from '../../made-diagnosis.ts';

export const LIBRARY_UNIT = JSON.parse(readFileSync('fixtures/units/library.json', 'utf8')) as UnitProfile;

/** As in a visit, but over tables that are built once for all tests. */
const diagnose: VisitEdges['diagnose'] = async (unit, evidence, parked) => diagnosisOf(unit).assess(evidence, parked);

/** A mouth for tests: says at once, or cuts the next prompts of a kind as told. */
export class TestMouth implements Mouth {
  readonly said: Prompt[] = [];
  cutNext = 0;

  async speak(prompt: Prompt): Promise<'spoken' | 'cut'> {
    this.said.push(prompt);
    if (prompt.kind === 'caution' && this.cutNext > 0) {
      this.cutNext -= 1;
      return 'cut';
    }
    return 'spoken';
  }

  hush(): void {}

  last(): string {
    return this.said.at(-1)?.text ?? '';
  }
}

/** A visit run on typed lines with the real grammar, machine and diagnosis; its record is kept in memory. */
export class TypedVisit {
  readonly mouth = new TestMouth();
  readonly clock = new SteppedClock(Date.parse('2026-06-15T14:00:00Z'));
  readonly bodies: string[] = [];
  run!: VisitRun;
  #count = 0;

  static async open(
    unit: UnitProfile = LIBRARY_UNIT,
    role: 'technician' | 'trainee' = 'technician',
    units?: UnitChoice,
  ): Promise<TypedVisit> {
    const visit = new TypedVisit();
    visit.run = VisitRun.open(visit.edges(), {
      type: 'opened.visit',
      visit: 'test-visit',
      site: 'reading room',
      complaint: 'does not cool',
      role,
      unit,
      software: 'test',
      ...(units === undefined ? {} : { units }),
    });
    await visit.run.settled();
    return visit;
  }

  edges(): VisitEdges {
    return {
      understand,
      diagnose,
      mouth: this.mouth,
      clock: this.clock,
      append: async (bodies) => {
        this.bodies.push(...bodies);
      },
    };
  }

  /** Types lines one after another; returns what was said after the last. */
  async type(...lines: readonly string[]): Promise<string> {
    for (const text of lines) {
      this.#count += 1;
      const id = `t${this.#count}`;
      this.run.hear({ id, ear: 'typed', text, alternatives: [], confidence: 1, accepted: true });
      await this.run.settled();
    }
    return this.mouth.last();
  }

  /** The same, as the offline ear hears it: a teen may be a ty. */
  async hear(text: string): Promise<string> {
    this.#count += 1;
    this.run.hear({ id: `t${this.#count}`, ear: 'offline', text, alternatives: [], confidence: 1, accepted: true });
    await this.run.settled();
    return this.mouth.last();
  }

  /** Says that it is still off, where that is asked of what was not understood. */
  async saysStillOff(): Promise<void> {
    if (this.run.context.questions.some(({ question }) => question.kind === 'still-off')) await this.type('still off');
  }

  async later(minutes: number): Promise<void> {
    let left = minutes;
    while (left > 0) {
      left = this.clock.step(left);
      await this.run.settled();
    }
  }

  events(): readonly VisitEvent[] {
    return this.bodies.map((body) => JSON.parse(body) as VisitEvent);
  }

  of<T extends VisitEvent['type']>(type: T): readonly Extract<VisitEvent, { type: T }>[] {
    return this.events().filter((event): event is Extract<VisitEvent, { type: T }> => event.type === type);
  }
}

/** On arrival, up to the planner's first test. */
export const ARRIVAL = [
  'outdoor air ninety four degrees',
  'return air eighty degrees',
  'thermostat is calling',
  'outdoor fan is not turning',
] as const;

/** On arrival at a dead unit: the planner's next test is a live one, and its caution is spoken behind the standing rules. */
export const TO_LIVE_STEP = [...ARRIVAL, 'compressor is not running'] as const;

/** From a running unit to proven dead at the outdoor unit, cautions acknowledged. */
export const TO_PROVEN_DEAD = [
  'leg one to ground one eighteen',
  'thermostat is not calling',
  'outdoor disconnect is pulled and locked',
  'live',
  'meter two forty zero zero zero zero zero zero meter two forty',
  'live',
  'herm section zero volts d c',
  'fan section zero volts d c',
] as const;

/** Each winding read to its shell, and none of them grounded. */
export const WINDINGS_SOUND = [
  'compressor common to shell open',
  'compressor run to shell open',
  'compressor start to shell open',
  'fan motor to ground open',
] as const;

/** A weak fan section, asked for as a test and once more before the part is condemned. */
export const WEAK_FAN = [
  'fan section one point one microfarads on the bench',
  'fan section one point two microfarads on the bench',
] as const;

/** The repair and its proof, up to the split. */
export const REPAIR_AND_PROOF = [
  ...WEAK_FAN,
  'fitted a forty five over five dual capacitor four forty volt',
  'covers are on',
  'live',
  'outdoor disconnect is back in',
  'thermostat is calling',
  'outdoor fan is turning',
  'compressor amps eleven point two',
  'live',
  'fan amps point nine',
] as const;

export const LIBRARY_VISIT = [
  ...ARRIVAL,
  'compressor runs then trips',
  ...TO_PROVEN_DEAD,
  ...REPAIR_AND_PROOF,
] as const;
