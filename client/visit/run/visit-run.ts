import { transition } from 'xstate';
import type { Expectation, Understanding } from '../../../grammar/phrases/meaning.ts';
import type { UnderstandOptions } from '../../../grammar/phrases/understand.ts';
import type { VisitEvent, VisitOutcome } from '../../../grammar/visit/events.ts';
import type { VisitFacts } from '../../../grammar/visit/facts.ts';
import { factsOf } from '../../../grammar/visit/facts-of.ts';
import type { HeardUtterance, InputTime, RankedSuspects, TimerId, VisitInput } from '../../../grammar/visit/inputs.ts';
import { isWhole } from '../../../grammar/visit/is-whole.ts';
import type { KeptSound } from '../../../grammar/visit/kept-sound.ts';
import type { CommandId } from '../../../grammar/vocabulary/commands.ts';
import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import type { Assessment, Evidence, NextTest } from '../../diagnosis/diagnosis.ts';
import type { Mouth, Prompt } from '../../speaking/mouth.ts';
import { SAY } from '../../words/talk/prompts.ts';
import type { VisitContext } from '../chart/context.ts';
import { newVisit, type VisitSnapshot, visitMachine, visitOf } from '../chart/machine.ts';
import type { Effect } from '../chart/turn.ts';
import { evidenceOf } from '../rules/evidence-of.ts';
import { expectationOf, inUnits } from '../steps/expectation.ts';

/** What the ear delivers, as far as the visit needs it. */
export interface EarUtterance {
  readonly id: string;
  readonly ear: 'offline' | 'browser' | 'wav' | 'typed';
  readonly text: string;
  readonly alternatives: readonly string[];
  readonly confidence: number;
  readonly accepted: boolean;
  readonly doubtful?: boolean;
  /** Holds the words of the utterance before it too: that one was given, and then went on. */
  readonly continues?: true;
  /** Kept on this device already, before the record speaks of it. */
  readonly sound?: KeptSound;
}

/** The only place where time is read. */
export interface Clock {
  now(): InputTime;
  /** Calls back once after so many minutes of this clock. */
  after(minutes: number, callback: () => void): void;
}

/** The edges of a visit: all that differs between browser, terminal and tests. */
export interface VisitEdges {
  /** In this thread or another: the turn waits for it, and nothing overtakes. */
  readonly understand: (
    text: string,
    expectation: Expectation,
    options: UnderstandOptions,
  ) => Understanding | Promise<Understanding>;
  readonly diagnose: (
    unit: UnitProfile,
    evidence: readonly Evidence[],
    parked: readonly TestId[],
  ) => Promise<Assessment>;
  readonly mouth: Mouth;
  readonly clock: Clock;
  /** Resolves once every body is durable; rejects with none of them written. */
  readonly append: (bodies: readonly string[]) => Promise<unknown>;
}

/** What a listener is told after each input: the events it brought about and where the visit stands. */
export interface VisitView {
  readonly events: readonly VisitEvent[];
  readonly context: VisitContext;
  readonly expectation: Expectation;
}

/** An input as it is given; the clock adds its time. */
export type Untimed<T> = T extends VisitInput ? Omit<T, 'time'> : never;

/** Inputs that nobody gives. */
const OF_THE_PROGRAM: ReadonlySet<VisitInput['type']> = new Set([
  'timer.elapsed',
  'mouth.finished',
  'diagnosis.answered',
  'restored.visit',
  'edge.failed',
]);
/** What goes on belongs to what was expected before: its number has the place that the first part had. */
const GOES_ON: Expectation = { readings: [] };
/** The suspects kept with each ranking in the record; the rest is a tail of small probabilities. */
const KEPT_SUSPECTS = 8;
const KEPT_TESTS = 4;
const KEPT_TESTS_DEAD = 3;

/**
 * One running visit. Inputs are taken one after another: moved through the statechart, written to the record with all
 * that came of them in one batch, and only then spoken or asked. Whatever happens at the edges comes back as an input.
 */
export class VisitRun {
  #snapshot: VisitSnapshot;
  readonly #edges: VisitEdges;
  readonly #listeners = new Set<(view: VisitView) => void>();
  #turns: Promise<void> = Promise.resolve();
  #speech: Promise<void> = Promise.resolve();
  /** Given to be spoken and not over: the first of them is being spoken, the others wait for it. */
  readonly #unsaid = new Set<{ readonly prompt: Prompt; cut: boolean }>();
  #pending = 0;
  #idle: (() => void)[] = [];
  #failure: unknown;
  #isMouthGone = false;

  private constructor(edges: VisitEdges, snapshot: VisitSnapshot) {
    this.#edges = edges;
    this.#snapshot = snapshot;
  }

  /** Opens a new visit: its first input is on its way when this returns. */
  static open(edges: VisitEdges, opening: Untimed<Extract<VisitInput, { type: 'opened.visit' }>>): VisitRun {
    const run = new VisitRun(edges, newVisit());
    run.take(opening);
    return run;
  }

  /**
   * Takes up a visit from the bodies of its record: its facts are what its events say, the talk begins anew. What was
   * heard and nothing had come of is taken again; where the record broke off further on, it is asked for.
   * @throws {SyntaxError} when a body is not JSON.
   */
  static async restore(edges: VisitEdges, bodies: readonly string[]): Promise<VisitRun> {
    const { facts, opening, lost, cut } = readRecord(bodies);
    const run = new VisitRun(edges, visitOf(facts));
    if (opening !== undefined) run.take(opening);
    run.take({ type: 'restored.visit', ...(cut === undefined ? {} : { cut }) });
    if (lost !== undefined) run.take({ type: 'heard.utterance', utterance: lost });
    await run.#turns;
    return run;
  }

  /** Takes a visit over from another device: `bodies` are all that counts of it until then, in whole batches. */
  static takeOver(
    edges: VisitEdges,
    bodies: readonly string[],
    taking: Untimed<Extract<VisitInput, { type: 'took.over.visit' }>>,
  ): VisitRun {
    const run = new VisitRun(edges, visitOf(readRecord(bodies).facts));
    run.take(taking);
    return run;
  }

  get context(): VisitContext {
    return this.#snapshot.context;
  }

  get expectation(): Expectation {
    return expectationOf(this.#snapshot.context);
  }

  /** The states of all regions, for tests and for people who debug. */
  get value(): VisitSnapshot['value'] {
    return this.#snapshot.value;
  }

  onView(listener: (view: VisitView) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Takes what an ear heard; it is understood when its turn comes, with what is expected then. */
  hear(heard: EarUtterance): void {
    this.#enqueue(async () => ({
      type: 'heard.utterance',
      time: this.#edges.clock.now(),
      utterance: {
        id: heard.id,
        ear: heard.ear,
        // Of the rest of a number nothing is asked: what is not sure sets nothing right.
        accepted: heard.accepted && !(heard.continues === true && heard.doubtful === true),
        confidence: heard.confidence,
        ...(heard.sound === undefined ? {} : { sound: heard.sound }),
        ...(heard.continues === true ? { continues: true as const } : {}),
        understanding: await this.#edges.understand(
          heard.text,
          heard.continues === true ? { ...GOES_ON, ...inUnits(this.context) } : this.expectation,
          {
            alternatives: heard.alternatives,
            typed: heard.ear === 'typed',
            doubtful: heard.doubtful ?? false,
          },
        ),
      },
    }));
  }

  touch(command: CommandId): void {
    this.take({ type: 'touched.command', command });
  }

  /** Silence: cuts what is being spoken and drops what waits behind it; cautions only when `evenCaution`. */
  hush(evenCaution: boolean): void {
    for (const unsaid of this.#unsaid) unsaid.cut ||= evenCaution || unsaid.prompt.kind !== 'caution';
    this.#edges.mouth.hush(evenCaution);
  }

  /** Takes any other input; its time is read when its turn comes. */
  take(input: Untimed<VisitInput>): void {
    this.#enqueue(() => ({ ...input, time: this.#edges.clock.now() }) as VisitInput);
  }

  /** Resolves when nothing is being taken, spoken or worked out. Rejects if the record could not be written. */
  async settled(): Promise<void> {
    if (this.#pending > 0) await new Promise<void>((resolve) => this.#idle.push(resolve));
    if (this.#failure !== undefined) throw this.#failure;
  }

  #enqueue(make: () => VisitInput | Promise<VisitInput>): void {
    this.#begin();
    this.#turns = this.#turns.then(() => this.#turn(make)).finally(() => this.#end());
  }

  async #turn(make: () => VisitInput | Promise<VisitInput>): Promise<void> {
    if (this.#failure !== undefined) return;
    try {
      const input = await make();
      // What comes of the program itself ends with the visit: a closed record is not added to by a timer or a restart.
      if (this.#snapshot.matches('closed') && OF_THE_PROGRAM.has(input.type)) return this.#tell([]);
      const [next, actions] = transition(visitMachine, this.#snapshot, input);
      const effects = actions as readonly Effect[];
      const events = eventsOf(input, effects);
      await this.#edges.append(events.map((event) => JSON.stringify(event)));
      this.#snapshot = next;
      for (const effect of effects) this.#carryOut(effect);
      this.#tell(events);
    } catch (error) {
      this.#failure = error;
    }
  }

  #tell(events: readonly VisitEvent[]): void {
    for (const listener of this.#listeners) listener({ events, context: this.context, expectation: this.expectation });
  }

  #carryOut(effect: Effect): void {
    switch (effect.type) {
      case 'record':
        return;
      case 'say':
        return this.#speak(effect.params.prompt);
      case 'hush':
        return this.hush(effect.params.evenCaution);
      case 'ask diagnosis':
        return this.#diagnose(effect.params.forNumber);
      case 'start timer':
        return this.#startTimer(effect.params.timer, effect.params.minutes);
      default:
        effect satisfies never;
    }
  }

  #speak(prompt: Prompt): void {
    const unsaid = { prompt, cut: false };
    this.#unsaid.add(unsaid);
    this.#begin();
    this.#speech = this.#speech
      .then(() => (unsaid.cut ? 'cut' : this.#edges.mouth.speak(prompt)))
      .then((outcome) => {
        if (!unsaid.cut) this.#isMouthGone = false;
        if (prompt.kind === 'caution' || outcome === 'cut') {
          this.take({ type: 'mouth.finished', prompt: prompt.id, outcome });
        }
      })
      .catch(() => this.#mouthFailed())
      .finally(() => {
        this.#unsaid.delete(unsaid);
        this.#end();
      });
  }

  /** What cannot be spoken stands on the screen; that is said once, and whatever follows is tried again. */
  #mouthFailed(): void {
    if (this.#isMouthGone) return;
    this.#isMouthGone = true;
    this.take({ type: 'edge.failed', edge: 'mouth', fault: 'no-voice', sentence: SAY.noVoice });
  }

  #diagnose(forNumber: number): void {
    this.#begin();
    const { context } = this.#snapshot;
    const { unit, parked } = context;
    const passed = parked.flatMap((item) => item.test ?? []);
    this.#edges
      .diagnose(unit, evidenceOf(context), passed)
      .then((answer) => this.take({ type: 'diagnosis.answered', answer: kept(answer, forNumber) }))
      .catch((error: unknown) => {
        const sentence = error instanceof Error ? error.message : String(error);
        this.take({ type: 'edge.failed', edge: 'diagnosis', fault: 'no-answer', sentence });
      })
      .finally(() => this.#end());
  }

  #startTimer(timer: TimerId, minutes: number): void {
    this.#edges.clock.after(minutes, () => this.take({ type: 'timer.elapsed', timer }));
  }

  #begin(): void {
    this.#pending += 1;
  }

  #end(): void {
    this.#pending -= 1;
    if (this.#pending > 0) return;
    for (const resolve of this.#idle.splice(0)) resolve();
  }
}

/** The events of one batch: the input itself, then what came of it, all with the input's time. */
function eventsOf(input: VisitInput, effects: readonly Effect[]): readonly VisitEvent[] {
  const outcomes = effects.filter((effect) => effect.type === 'record').map((effect) => effect.params.event);
  return [
    { type: 'input.taken', input, outcomes: outcomes.length },
    ...outcomes.map((event: VisitOutcome) => ({ ...event, time: input.time })),
  ];
}

/** The part of an assessment that the record keeps, under the number it was asked for. */
function kept(answer: Assessment, forNumber: number): RankedSuspects {
  return {
    ...answer,
    forSeq: forNumber,
    suspects: answer.suspects.slice(0, KEPT_SUSPECTS),
    next: answer.next.filter((test, rank) => rank < KEPT_TESTS || isAmongFirst(test, answer.next)),
  };
}

/** The first few tests for power out are kept too: the technician may have switched off already. */
function isAmongFirst(test: NextTest, ranked: readonly NextTest[]): boolean {
  return test.needs.power !== 'on' && ranked.filter((one) => one.needs.power !== 'on').indexOf(test) < KEPT_TESTS_DEAD;
}

interface ReadRecord {
  readonly facts: VisitFacts;
  /** The opening of the visit, where nothing came of it. */
  readonly opening?: Extract<VisitInput, { type: 'opened.visit' }>;
  /** What was heard last, where nothing of what came of it is there. An order is given again by who gave it. */
  readonly lost?: HeardUtterance;
  /** What was heard last, where only a part of what came of it is there. */
  readonly cut?: string;
}

/** Folds a record into its facts, and sees whether it was cut inside the last batch. */
function readRecord(bodies: readonly string[]): ReadRecord {
  const events = bodies.map((body) => JSON.parse(body) as VisitEvent);
  const facts = factsOf(events);
  const start = events.findLastIndex((event) => event?.type === 'input.taken');
  const last = events[start];
  if (last?.type !== 'input.taken' || !isWhole(last)) return { facts };
  const there = events.length - start - 1;
  if (last.input.type === 'opened.visit' && there === 0) return { facts, opening: last.input };
  if (last.input.type !== 'heard.utterance') return { facts };
  const { utterance } = last.input;
  if (there >= (last.outcomes ?? 0)) return { facts };
  if (there > 0) return { facts, cut: utterance.understanding.heard };
  return utterance.understanding.meaning.kind === 'command' ? { facts } : { facts, lost: utterance };
}
