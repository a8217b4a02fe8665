import type { Meaning } from '../../../grammar/phrases/meaning.ts';
import { understand } from '../../../grammar/phrases/understand.ts';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import { diagnosisFrom } from '../../diagnosis/make-diagnosis.ts';
import { type Debrief, debriefOf } from '../../practice/debrief.ts';
import { Exercise } from '../../practice/exercise.ts';
import { type ExercisePlan, takeDrawn } from '../../practice/exercise-plan.ts';
import type { ExerciseLine } from '../../practice/exercise-voice.ts';
import type { Order } from '../../practice/read-order.ts';
import { OfflineVoice } from '../../speaking/browser/offline-voice.ts';
import { PageMouth } from '../../speaking/browser/page-mouth.ts';
import { PageClock } from '../session/page-clock.ts';
import { type HearingState, PageHearing } from '../session/page-hearing.ts';
import { PageSounds, speakingManner } from '../session/page-sounds.ts';
import type { PlannerRun, PracticeNews, PracticeQuestion } from '../worker/practice-messages.ts';
import { keepExercise } from './kept-exercises.ts';

/** One line of the talk; `you`: what the trainee said or touched. */
export interface TalkLine {
  readonly by: ExerciseLine['by'] | 'you';
  readonly text: string;
}

export interface PracticeState {
  readonly stage: 'drawing' | 'running' | 'looking-back' | 'debrief' | 'failed';
  /** How much of the unit's table is built, 0…1. */
  readonly building: number;
  readonly lines: readonly TalkLine[];
  readonly ear: HearingState;
  readonly busy: boolean;
  readonly sentence: string | undefined;
  readonly looked: Looked | undefined;
}

/** Both runs, with the records of their visits. */
export interface Looked {
  readonly debrief: Debrief;
  readonly trainee: readonly VisitEvent[];
  readonly planner: readonly VisitEvent[];
}

/** After own speech so long is not listened: the room's echo. As on a visit. */
const ECHO_MS = 300;
/** Talk that is kept on the screen. */
const MOST_LINES = 60;

/** An exercise running in a page: ear, voice, clock and worker around it. It writes no record of a visit. */
export class PracticeSession {
  readonly plan: ExercisePlan;
  readonly #worker = new Worker(new URL('../worker/practice-worker.ts', import.meta.url), { type: 'module' });
  readonly #listeners = new Set<() => void>();
  readonly #sounds = new PageSounds();
  readonly #bodies: string[] = [];
  readonly #clock = new PageClock();
  readonly #mouth: PageMouth;
  readonly #ear: PageHearing;
  #exercise: Exercise | undefined;
  #echo: ReturnType<typeof setTimeout> | undefined;
  #turns: Promise<unknown> = Promise.resolve();
  #state: PracticeState;

  constructor(plan: ExercisePlan) {
    this.plan = plan;
    this.#ear = new PageHearing(
      () => this.#change({}),
      () => this.#mouth.hush(false),
    );
    this.#mouth = new PageMouth(
      globalThis.speechSynthesis,
      ({ voice, speaking }) => {
        clearTimeout(this.#echo);
        if (voice !== undefined && speaking !== undefined) this.#ear.heed('urgent', speaking.text);
        else this.#echo = setTimeout(() => this.#ear.heed('everything'), voice === undefined ? 0 : ECHO_MS);
      },
      { loadVoice: () => OfflineVoice.load(() => this.#sounds.context()), manner: () => speakingManner() },
    );
    this.#state = {
      ...{ stage: 'drawing', building: 0, lines: [], busy: false, sentence: undefined, looked: undefined },
      ear: this.#ear.state(),
    };
    this.#worker.onmessage = ({ data }: MessageEvent<PracticeNews>) => void this.#heed(data);
    this.#worker.onerror = ({ message }) => this.#change({ stage: 'failed', sentence: message });
    this.#ask({ draw: plan });
  }

  get exercise(): Exercise | undefined {
    return this.#exercise;
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  /** The same object until something changes. */
  readonly state = (): PracticeState => this.#state;

  /** Takes a typed sentence, as if it had been said. */
  say(text: string): void {
    this.#do(text, (exercise) => exercise.say(text));
  }

  order(order: Order, words: string): void {
    this.#do(words, (exercise) => exercise.order(order));
  }

  enter(meaning: Meaning, words: string): void {
    this.#do(words, (exercise) => exercise.enter(meaning, words));
  }

  /** Does something with the exercise; what the trainee did stands in the talk by these words. */
  do(words: string, give: (exercise: Exercise) => Promise<void> | void): void {
    this.#do(words, give);
  }

  /** Called from a tap or key, so that the browser lets the page listen and speak. */
  async toggleEar(): Promise<void> {
    if (!['off', 'failed'].includes(this.#ear.state().ear)) return this.#ear.stop();
    this.#mouth.prime();
    this.#sounds.prime();
    if (this.#exercise !== undefined) this.#ear.expect(this.#exercise.heardNext);
    await this.#ear.start({
      onUtterance: (heard) => this.#do(heard.accepted ? heard.text : '', (exercise) => exercise.hear(heard)),
      onFault: (_fault, sentence) => this.#line({ by: 'exercise', text: sentence }),
    });
  }

  async end(): Promise<void> {
    await this.#ear.stop();
    this.#mouth.hush(true);
    this.#worker.terminate();
    this.#sounds.end();
  }

  #ask(question: PracticeQuestion): void {
    this.#worker.postMessage(question);
  }

  async #heed(news: PracticeNews): Promise<void> {
    if ('building' in news) return this.#change({ building: news.building });
    if ('sentence' in news) return this.#change({ stage: 'failed', sentence: news.sentence });
    if ('run' in news) return this.#lookBack(news.run);
    try {
      this.#exercise = await Exercise.begin(takeDrawn(this.plan, news.drawn), {
        ...{
          understand,
          diagnosis: diagnosisFrom(news.table),
          mouth: this.#mouth,
          clock: this.#clock,
          software: __VERSION__,
        },
        append: async (bodies) => void this.#bodies.push(...bodies),
        tell: (line) => this.#line(line),
      });
      this.#change({ stage: 'running' });
    } catch (error) {
      this.#fail(error);
    }
  }

  #do(words: string, give: (exercise: Exercise) => Promise<void> | void): void {
    const exercise = this.#exercise;
    if (exercise === undefined || this.#state.stage !== 'running') return;
    this.#turns = this.#turns
      .then(async () => {
        if (words !== '') this.#line({ by: 'you', text: words });
        this.#change({ busy: true });
        await give(exercise);
        this.#ear.expect(exercise.heardNext);
        if (exercise.ended !== undefined) this.#ended();
        this.#change({ busy: false });
      })
      .catch((error: unknown) => this.#fail(error));
  }

  #ended(): void {
    if (this.#state.stage !== 'running') return;
    void this.#ear.stop();
    this.#change({ stage: 'looking-back' });
    this.#ask({ plan: 'run', software: __VERSION__ });
  }

  #lookBack({ back, events }: PlannerRun): void {
    if (this.#exercise === undefined) return;
    const debrief = debriefOf(this.#exercise, back);
    const { log: _log, ...trainee } = debrief.trainee;
    void keepExercise({ at: new Date().toISOString(), plan: this.plan, trainee, plannerMinutes: back.counts.minutes });
    const own = this.#bodies.map((body) => JSON.parse(body) as VisitEvent);
    this.#change({ stage: 'debrief', looked: { debrief, trainee: own, planner: events } });
  }

  #fail(error: unknown): void {
    this.#change({ stage: 'failed', sentence: error instanceof Error ? error.message : String(error) });
  }

  #line(line: TalkLine): void {
    this.#change({ lines: [...this.#state.lines, line].slice(-MOST_LINES) });
  }

  #change(change: Partial<PracticeState>): void {
    this.#state = { ...this.#state, ...change, ear: this.#ear.state() };
    for (const listener of this.#listeners) listener();
  }
}
