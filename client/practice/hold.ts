import type { Meaning } from '../../grammar/phrases/meaning.ts';
import type { VisitContext } from '../visit/chart/context.ts';
import { EXERCISE, STOP_WORDS } from '../words/practice/exercise-words.ts';
import type { Ending, ExerciseDeed } from './exercise-log.ts';
import type { ExerciseVoice } from './exercise-voice.ts';
import { isOfHands, proofStage, type Stop } from './judge-safety.ts';
import type { SimulatedUnit } from './simulated-unit.ts';

/** What a hold needs of the exercise around it. */
export interface HoldEdges {
  readonly unit: SimulatedUnit;
  readonly voice: ExerciseVoice;
  readonly note: (deed: ExerciseDeed) => void;
  readonly end: (how: Ending) => void;
}

/** Harm ends an exercise; a near miss holds it until the trainee goes on, and nothing was done. */
export class Hold {
  isOn = false;
  readonly #edges: HoldEdges;

  constructor(edges: HoldEdges) {
    this.#edges = edges;
  }

  /** Said, explained and noted. */
  stop(stop: Stop, context: VisitContext): void {
    const { unit, voice, note, end } = this.#edges;
    const stage = isOfHands(stop.error) ? { stage: proofStage(stop.zone, unit, context) } : {};
    note({ type: 'stopped-for', ...stop, ...stage });
    const words = STOP_WORDS[stop.error](stop);
    if (stop.weight === 'harm') {
      voice.tell('stop', `${words} ${EXERCISE.ends}`);
      return end('stopped');
    }
    this.isOn = true;
    voice.tell('stop', `${words} ${EXERCISE.goOn}`);
  }

  /** What was said while it held: going on goes on, and nothing else does. */
  hear(meaning: Meaning): void {
    const goesOn = meaning.kind === 'command' && ['go-on', 'got-it', 'yes', 'done', 'live'].includes(meaning.command);
    if (!goesOn) return this.remind();
    this.isOn = false;
    this.#edges.voice.show('exercise', EXERCISE.goesOn);
  }

  remind(): void {
    this.#edges.voice.tell('exercise', EXERCISE.goOn);
  }
}
