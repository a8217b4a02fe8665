import { initialTransition, type SnapshotFrom, transition } from 'xstate';
import type { Expectation, Understanding } from '../../../grammar/phrases/meaning.ts';
import type { UnderstandOptions } from '../../../grammar/phrases/understand.ts';
import type { VisitEvent, VisitOutcome } from '../../../grammar/visit/events.ts';
import {
  type InputTime,
  MS_A_MINUTE,
  type RankedSuspects,
  type TimerId,
  type VisitInput,
} from '../../../grammar/visit/inputs.ts';
import { inTodaysNames } from '../../../grammar/visit/older-events.ts';
import type { CommandId } from '../../../grammar/vocabulary/commands.ts';
import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import type { Assessment, Evidence, NextTest } from '../../diagnosis/diagnosis.ts';
import type { Mouth, Prompt } from '../../speaking/mouth.ts';
import type { VisitContext } from '../chart/context.ts';
import { emptyContext, visitMachine } from '../chart/machine.ts';
import type { Effect } from '../chart/turn.ts';
import { IN_PROOF } from '../rules/isolation.ts';
import { minutesToStand } from '../rules/refrigerant-work.ts';
import { expectationOf } from '../steps/expectation.ts';

/** What the ear delivers, as far as the visit needs it. */
export interface EarUtterance {
  readonly id: string;
  readonly ear: 'offline' | 'browser' | 'wav' | 'typed';
  readonly text: string;
  readonly alternatives: readonly string[];
  readonly confidence: number;
  readonly accepted: boolean;
  readonly doubtful?: boolean;
}

/** The only place where time is read. */
export interface Clock {
  now(): InputTime;
  /** Calls back once after so many minutes of this clock. */
  after(minutes: number, callback: () => void): void;
}

/** The edges of a visit: all that differs between browser, terminal and tests. */
export interface VisitEdges {
  readonly understand: (text: string, expectation: Expectation, options: UnderstandOptions) => Understanding;
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

type Snapshot = SnapshotFrom<typeof visitMachine>;
type Untimed<T> = T extends VisitInput ? Omit<T, 'time'> : never;

/** The suspects kept with each ranking in the record; the rest is a tail of small probabilities. */
const KEPT_SUSPECTS = 8;
const KEPT_TESTS = 4;
const KEPT_TESTS_DEAD = 3;

/**
 * One running visit. Inputs are taken one after another: moved through the statechart, written to the record with all
 * that came of them in one batch, and only then spoken or asked. Whatever happens at the edges comes back as an input.
 */
export class VisitRun {
  #snapshot: Snapshot;
  readonly #edges: VisitEdges;
  readonly #listeners = new Set<(view: VisitView) => void>();
  #turns: Promise<void> = Promise.resolve();
  #speech: Promise<void> = Promise.resolve();
  #pending = 0;
  #idle: (() => void)[] = [];
  #failure: unknown;

  private constructor(edges: VisitEdges, snapshot: Snapshot) {
    this.#edges = edges;
    this.#snapshot = snapshot;
  }

  /** Opens a new visit: its first input is on its way when this returns. */
  static open(edges: VisitEdges, opening: Untimed<Extract<VisitInput, { type: 'opened.visit' }>>): VisitRun {
    const run = new VisitRun(edges, newSnapshot());
    run.take(opening);
    return run;
  }

  /**
   * Takes up a visit from the bodies of its record: folds the logged inputs with their effects discarded, completes
   * the batch of the last one if the record was cut inside it, and asks and says again what stood open.
   * @throws {SyntaxError} when a body is not JSON.
   */
  static async restore(edges: VisitEdges, bodies: readonly string[]): Promise<VisitRun> {
    const folded = foldInputs(bodies);
    const run = new VisitRun(edges, folded.snapshot);
    if (folded.missing.length > 0) await edges.append(folded.missing);
    const said = run.context.lastPrompt?.id;
    await run.#lapseQuietProof();
    run.#takeUp(said);
    return run;
  }

  get context(): VisitContext {
    return this.#snapshot.context;
  }

  get expectation(): Expectation {
    return expectationOf(this.#snapshot.context);
  }

  /** The states of all regions, for tests and for people who debug. */
  get value(): Snapshot['value'] {
    return this.#snapshot.value;
  }

  onView(listener: (view: VisitView) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Takes what an ear heard; it is understood when its turn comes, with what is expected then. */
  hear(heard: EarUtterance): void {
    this.#enqueue(() => ({
      type: 'heard.utterance',
      time: this.#edges.clock.now(),
      utterance: {
        id: heard.id,
        ear: heard.ear,
        accepted: heard.accepted,
        confidence: heard.confidence,
        understanding: this.#edges.understand(heard.text, this.expectation, {
          alternatives: heard.alternatives,
          typed: heard.ear === 'typed',
          doubtful: heard.doubtful ?? false,
        }),
      },
    }));
  }

  touch(command: CommandId): void {
    this.take({ type: 'touched.command', command });
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

  #enqueue(make: () => VisitInput): void {
    this.#begin();
    this.#turns = this.#turns.then(() => this.#turn(make)).finally(() => this.#end());
  }

  async #turn(make: () => VisitInput): Promise<void> {
    if (this.#failure !== undefined) return;
    try {
      const input = make();
      const [next, actions] = transition(visitMachine, this.#snapshot, input);
      const effects = actions as readonly Effect[];
      const events = eventsOf(input, effects);
      await this.#edges.append(events.map((event) => JSON.stringify(event)));
      this.#snapshot = next;
      for (const effect of effects) this.#carryOut(effect);
      for (const listener of this.#listeners)
        listener({ events, context: next.context, expectation: this.expectation });
    } catch (error) {
      this.#failure = error;
    }
  }

  #carryOut(effect: Effect): void {
    switch (effect.type) {
      case 'record':
        return;
      case 'say':
        return this.#speak(effect.params.prompt);
      case 'hush':
        return this.#edges.mouth.hush(effect.params.evenCaution);
      case 'ask diagnosis':
        return this.#diagnose(effect.params.forNumber);
      case 'start timer':
        return this.#startTimer(effect.params.timer, effect.params.minutes);
      default:
        effect satisfies never;
    }
  }

  #speak(prompt: Prompt): void {
    this.#begin();
    this.#speech = this.#speech
      .then(() => this.#edges.mouth.speak(prompt))
      .then((outcome) => {
        if (prompt.kind === 'caution') this.take({ type: 'mouth.finished', prompt: prompt.id, outcome });
      })
      .finally(() => this.#end());
  }

  #diagnose(forNumber: number): void {
    this.#begin();
    const { unit, evidence, parked } = this.#snapshot.context;
    const passed = parked.flatMap((item) => item.test ?? []);
    this.#edges
      .diagnose(unit, evidence, passed)
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

  /** After a pause the proof is looked at first: one that has been quiet too long lapses before anything is said. */
  async #lapseQuietProof(): Promise<void> {
    const { energy } = this.#snapshot.context;
    if (!Object.values(energy).some((state) => IN_PROOF.includes(state))) return;
    this.take({ type: 'timer.elapsed', timer: 'quiet' });
    await this.#turns;
  }

  /** After a restore: what was being spoken is spoken again (unless a lapsed proof spoke since), what was being worked out is asked again. */
  #takeUp(said: string | undefined): void {
    const { context } = this.#snapshot;
    if (context.phase === 'closed') return;
    if (context.assessment?.forSeq !== context.evidenceNumber && context.askedFor === context.evidenceNumber) {
      this.#diagnose(context.evidenceNumber);
    }
    const { caution, lastPrompt, runningSince } = context;
    if (caution !== undefined && lastPrompt?.id === caution.prompt) this.#speak({ ...lastPrompt, kind: 'caution' });
    else if (lastPrompt !== undefined && lastPrompt.id === said) this.#speak({ ...lastPrompt, kind: 'answer' });
    if (runningSince !== undefined && context.phase === 'prove') this.#startTimer('split-reminder', 5);
    const standing = minutesToStand(context);
    if (standing > 0) this.#startTimer('refrigerant', standing);
    if (context.check !== undefined) {
      const left = (context.check.due - this.#edges.clock.now().mono) / MS_A_MINUTE;
      this.#startTimer('check', Math.max(0, left));
    }
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

function newSnapshot(): Snapshot {
  return initialTransition(visitMachine, emptyContext())[0];
}

/** The events of one batch: the input itself, then what came of it, all with the input's time. */
function eventsOf(input: VisitInput, effects: readonly Effect[]): readonly VisitEvent[] {
  const outcomes = effects.filter((effect) => effect.type === 'record').map((effect) => effect.params.event);
  return [{ type: 'input.taken', input }, ...outcomes.map((event: VisitOutcome) => ({ ...event, time: input.time }))];
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

/** Folds the logged inputs, and finds which events of the last batch the record lacks. */
function foldInputs(bodies: readonly string[]): { readonly snapshot: Snapshot; readonly missing: readonly string[] } {
  let snapshot = newSnapshot();
  let lastBatch: readonly string[] = [];
  let lastStart = 0;
  bodies.forEach((body, index) => {
    const event = inTodaysNames(JSON.parse(body) as VisitEvent);
    if (event.type !== 'input.taken') return;
    const [next, actions] = transition(visitMachine, snapshot, event.input);
    lastBatch = eventsOf(event.input, actions as readonly Effect[]).map((one) => JSON.stringify(one));
    lastStart = index;
    snapshot = next;
  });
  return { snapshot, missing: lastBatch.slice(bodies.length - lastStart) };
}
