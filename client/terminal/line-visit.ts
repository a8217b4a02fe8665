import { understand } from '../../grammar/phrases/understand.ts';
import type { Phase, VisitEvent } from '../../grammar/visit/events.ts';
import type { InputTime } from '../../grammar/visit/inputs.ts';
import type { EnergyState, ZoneId } from '../../grammar/vocabulary/zones.ts';
import type { Prompt } from '../speaking/mouth.ts';
import { openAtClose } from '../visit/intake/close-visit.ts';
import type { SteppedClock } from '../visit/run/stepped-clock.ts';
import { type EarUtterance, type VisitEdges, VisitRun } from '../visit/run/visit-run.ts';
import { stepWords } from '../visit/steps/ask-step.ts';
import { VISIT_LINES } from '../words/terminal/visit-lines.ts';
import type { KeptVisit } from './kept-visit.ts';
import { letPass } from './let-pass.ts';
import { PrintedMouth } from './printed-mouth.ts';
import { readWorldLine, type WorldMove } from './read-world-line.ts';

/** Where a visit stands. */
export interface Standing {
  readonly energy: Readonly<Record<ZoneId, EnergyState>>;
  readonly phase: Phase;
  readonly step: { readonly id: string; readonly words: string } | null;
  /** How many questions wait for their answer. */
  readonly questions: number;
  /** What a close would name as open; of a closed visit, what its close named. */
  readonly open: readonly string[];
}

/** What is told of a visit as its lines are taken, in order. */
export type Told =
  /** A line was read; lines are counted from 1. */
  | { readonly input: { readonly line: number; readonly text: string } }
  /** It was not taken, and changed nothing. */
  | { readonly refused: string }
  /** It stands in the record. */
  | { readonly event: VisitEvent }
  | { readonly say: Pick<Prompt, 'kind' | 'text'> }
  | { readonly now: Standing };

export type Opening = Parameters<typeof VisitRun.open>[1];

export interface LineVisitEdges {
  readonly kept: KeptVisit;
  readonly clock: SteppedClock;
  readonly diagnose: VisitEdges['diagnose'];
  readonly tell: (told: Told) => void;
}

/** What was heard stands in an event up to twice, as JSON; the event must fit a frame on its way to a server. */
const MOST_BYTES = 20_000;

/**
 * A visit on typed lines: each an utterance or, beginning with "@", a move of the world around the visit. Everything
 * that follows from a line has been told when it is taken.
 */
export class LineVisit {
  readonly #edges: LineVisitEdges;
  readonly #run: VisitRun;
  readonly #past: Past;

  private constructor(edges: LineVisitEdges, run: VisitRun, past: Past) {
    this.#edges = edges;
    this.#run = run;
    this.#past = past;
  }

  /** Opens a visit in an empty record. */
  static async open(edges: LineVisitEdges, opening: Opening): Promise<LineVisit> {
    const past = new Past();
    return LineVisit.#settled(new LineVisit(edges, VisitRun.open(visitEdges(edges, past), opening), past));
  }

  /** Takes up the visit that the record holds. @throws {SyntaxError} when a body is not JSON */
  static async resume(edges: LineVisitEdges): Promise<LineVisit> {
    const bodies = await edges.kept.read();
    const past = new Past();
    for (const body of bodies) past.take(JSON.parse(body) as VisitEvent);
    if (past.last !== undefined) edges.clock.beginAnew(past.last);
    return LineVisit.#settled(new LineVisit(edges, await VisitRun.restore(visitEdges(edges, past), bodies), past));
  }

  static async #settled(visit: LineVisit): Promise<LineVisit> {
    await visit.#run.settled();
    return visit;
  }

  get closed(): boolean {
    return this.#run.context.phase === 'closed';
  }

  get standing(): Standing {
    const { context } = this.#run;
    const { energy, phase, step, questions } = context;
    return {
      energy,
      phase,
      step: step === undefined ? null : { id: step.id, words: stepWords(step, context) },
      questions: questions.length,
      open: this.closed ? this.#past.namedAtClose : openAtClose(context),
    };
  }

  /** Takes a line; the visit that stands after it is another object where the line was "@reload". */
  async take(line: number, text: string): Promise<LineVisit> {
    const { tell } = this.#edges;
    tell({ input: { line, text } });
    const after = await this.#follow(text.trim());
    tell({ now: after.standing });
    return after;
  }

  async #follow(text: string): Promise<LineVisit> {
    const { tell } = this.#edges;
    const bytes = Buffer.byteLength(JSON.stringify(text));
    if (bytes > MOST_BYTES) {
      tell({ refused: VISIT_LINES.tooLong(bytes, MOST_BYTES) });
      return this;
    }
    if (!text.startsWith('@')) {
      this.#hear({ ear: 'typed', text, accepted: true, confidence: 1 });
      await this.#run.settled();
      return this;
    }
    const world = readWorldLine(text);
    if ('refused' in world) {
      tell({ refused: world.refused });
      return this;
    }
    return this.#move(world);
  }

  async #move(world: WorldMove): Promise<LineVisit> {
    const { clock } = this.#edges;
    switch (world.move) {
      case 'reload':
        return LineVisit.resume(this.#edges);
      case 'wait':
        await letPass(this.#run, clock, world.minutes);
        return this;
      case 'clock':
      case 'sleep':
        clock.jumpWall(world.minutes);
        return this;
      case 'noise':
        // Noise is decoded to short words, and the worst of them is a consent.
        for (let time = 0; time < world.times; time += 1) {
          this.#hear({ ear: 'offline', text: 'yes', accepted: false, confidence: 0.1 });
          await this.#run.settled();
        }
        return this;
      case 'key':
        this.#run.touch(world.command);
        break;
      case 'supervisor':
        this.#run.take({ type: 'supervisor.acknowledged', supervisor: world.name, from: 'own-device' });
        break;
      default:
        world satisfies never;
    }
    await this.#run.settled();
    return this;
  }

  #hear(heard: Pick<EarUtterance, 'ear' | 'text' | 'accepted' | 'confidence'>): void {
    this.#run.hear({ id: `typed-${this.#past.events}`, alternatives: [], ...heard });
  }
}

/** What the record told so far that the visit itself does not hold. */
class Past {
  events = 0;
  last: InputTime | undefined;
  namedAtClose: readonly string[] = [];

  take(event: VisitEvent): void {
    this.events += 1;
    this.last = event.type === 'input.taken' ? event.input.time : event.time;
    if (event.type === 'visit.closed') this.namedAtClose = event.summary.openItems;
  }
}

function visitEdges({ kept, clock, diagnose, tell }: LineVisitEdges, past: Past): VisitEdges {
  return {
    understand,
    diagnose,
    clock,
    mouth: new PrintedMouth(({ kind, text }) => tell({ say: { kind, text } })),
    append: async (bodies) => {
      await kept.append(bodies);
      for (const body of bodies) {
        const event = JSON.parse(body) as VisitEvent;
        past.take(event);
        tell({ event });
      }
    },
  };
}
