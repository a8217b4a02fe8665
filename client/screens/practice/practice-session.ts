import type { Meaning } from '../../../grammar/phrases/meaning.ts';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import type { AskedDiagnosis } from '../../practice/ask-diagnosis.ts';
import { type Debrief, debriefOf } from '../../practice/debrief.ts';
import { Exercise } from '../../practice/exercise.ts';
import { type ExerciseInput, giveInput } from '../../practice/exercise-input.ts';
import { type ExercisePlan, takeDrawn } from '../../practice/exercise-plan.ts';
import type { ExerciseLine } from '../../practice/exercise-voice.ts';
import type { Order } from '../../practice/read-order.ts';
import { OfflineVoice } from '../../speaking/browser/offline-voice.ts';
import { PageMouth } from '../../speaking/browser/page-mouth.ts';
import type { Mouth } from '../../speaking/mouth.ts';
import { PRACTICE } from '../../words/practice/practice-page-words.ts';
import { PageGrammar } from '../session/page-grammar.ts';
import { type HearingState, PageHearing } from '../session/page-hearing.ts';
import { PageSounds, speakingManner } from '../session/page-sounds.ts';
import type { DiagnosisCall, PlannerRun, PracticeNews, PracticeQuestion } from '../worker/practice-messages.ts';
import { keepExercise } from './kept-exercises.ts';
import { type KeptRun, keepRun } from './kept-run.ts';
import { RetracedClock } from './retraced-clock.ts';

/** What was taken and waits for its turn. */
export interface Taken {
  readonly words: string;
  readonly input: ExerciseInput;
}

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
  /** How much of what was done is still being worked out. */
  readonly waiting: number;
  /** The earlier first. */
  readonly taken: readonly Taken[];
  readonly sentence: string | undefined;
  readonly looked: Looked | undefined;
}

/** Both runs, with the records of their visits. */
export interface Looked {
  readonly debrief: Debrief;
  readonly trainee: readonly VisitEvent[];
  readonly planner: readonly VisitEvent[];
}

type Unnumbered<T> = T extends unknown ? Omit<T, 'number'> : never;

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
  readonly #open = new Map<number, (answer: unknown) => void>();
  #calls = 0;
  readonly #grammar = new PageGrammar();
  readonly #clock: RetracedClock;
  readonly #mouth: PageMouth;
  readonly #ear: PageHearing;
  #kept: KeptRun;
  /** While it is gone through again: nothing is spoken. */
  #isRetracing = true;
  #exercise: Exercise | undefined;
  #echo: ReturnType<typeof setTimeout> | undefined;
  #turns: Promise<unknown> = Promise.resolve();
  #state: PracticeState;

  /** @param kept the same exercise before a reload: what was done in it is gone through again */
  constructor(plan: ExercisePlan, kept?: KeptRun) {
    this.plan = plan;
    this.#kept = kept ?? { plan, began: Date.now(), deeds: [], isDone: false };
    this.#clock = new RetracedClock(this.#kept.began);
    keepRun(this.#kept);
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
      ...{ stage: 'drawing', building: 0, lines: [], waiting: 0, taken: [], sentence: undefined, looked: undefined },
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
    this.give({ say: text }, text);
  }

  order(order: Order, words: string): void {
    this.give({ order }, words);
  }

  enter(meaning: Meaning, words: string): void {
    this.give({ enter: meaning, words }, words);
  }

  /** Does something in the exercise. @param words how it stands in the talk */
  give(input: ExerciseInput, words: string): void {
    if (this.#exercise === undefined || this.#state.stage !== 'running') return;
    const taken: Taken = { words, input };
    this.#change({ waiting: this.#state.waiting + 1, taken: [...this.#state.taken, taken] });
    this.#turns = this.#turns
      .then(async () => {
        this.#change({ taken: this.#state.taken.filter((one) => one !== taken) });
        if (this.#exercise?.ended !== undefined) return;
        const { mono } = this.#clock.now();
        this.#keep({ deeds: [...this.#kept.deeds, { mono, words, input }] });
        await this.#give(input, words);
      })
      .catch((error: unknown) => this.#fail(error))
      .finally(() => this.#change({ waiting: this.#state.waiting - 1 }));
  }

  /** Called from a tap or key, so that the browser lets the page listen and speak. */
  async toggleEar(): Promise<void> {
    if (!['off', 'failed'].includes(this.#ear.state().ear)) return this.#ear.stop();
    this.#mouth.prime();
    this.#sounds.prime();
    if (this.#exercise !== undefined) this.#ear.expect(this.#exercise.heardNext);
    await this.#ear.start({
      onUtterance: (heard) => this.give({ hear: heard }, heard.accepted ? heard.text : ''),
      onFault: (_fault, sentence) => this.#line({ by: 'exercise', text: sentence }),
    });
  }

  async end(): Promise<void> {
    await this.#ear.stop();
    this.#mouth.hush(true);
    this.#worker.terminate();
    this.#grammar.end();
    this.#sounds.end();
  }

  /** The diagnosis stays where the table of the unit was built. */
  readonly #diagnosis: AskedDiagnosis = {
    assess: (...given) => this.#call({ call: 'assess', given }),
    testFor: (...given) => this.#call({ call: 'testFor', given }),
    weigh: (...given) => this.#call({ call: 'weigh', given }),
  };

  #call<T>(call: Unnumbered<DiagnosisCall>): Promise<T> {
    this.#calls += 1;
    const number = this.#calls;
    return new Promise((resolve) => {
      this.#open.set(number, (answer) => {
        this.#open.delete(number);
        resolve(answer as T);
      });
      this.#ask({ ...call, number });
    });
  }

  #ask(question: PracticeQuestion): void {
    this.#worker.postMessage(question);
  }

  async #heed(news: PracticeNews): Promise<void> {
    if ('building' in news) return this.#change({ building: news.building });
    if ('sentence' in news) return this.#change({ stage: 'failed', sentence: news.sentence });
    if ('run' in news) return this.#lookBack(news.run);
    if ('answer' in news) return this.#open.get(news.number)?.(news.answer);
    try {
      this.#exercise = await Exercise.begin(takeDrawn(this.plan, news.drawn), {
        ...{
          understand: (text, expectation, options) => this.#grammar.understand(text, expectation, options),
          diagnosis: this.#diagnosis,
          mouth: this.#quietWhileRetracing(),
          clock: this.#clock,
          software: __VERSION__,
        },
        letPass: (minutes, settled) => this.#clock.letPass(minutes, settled),
        append: async (bodies) => void this.#bodies.push(...bodies),
        tell: (line) => this.#line(line),
      });
      await this.#retrace(this.#exercise);
      this.#change({ stage: 'running' });
      this.#watchEnd();
    } catch (error) {
      this.#fail(error);
    }
  }

  /** Does again what was done before a reload, each thing at its moment. */
  async #retrace(exercise: Exercise): Promise<void> {
    const settled = () => exercise.run.settled();
    for (const { mono, words, input } of this.#kept.deeds) {
      await this.#clock.moveTo(mono, settled);
      if (words !== '') this.#line({ by: 'you', text: words });
      await giveInput(exercise, input);
    }
    this.#isRetracing = false;
    this.#clock.goOn();
    if (this.#kept.deeds.length > 0) this.#line({ by: 'exercise', text: PRACTICE.wentOn });
  }

  #quietWhileRetracing(): Mouth {
    return {
      speak: async (prompt) => (this.#isRetracing ? 'spoken' : this.#mouth.speak(prompt)),
      hush: (evenCaution) => this.#mouth.hush(evenCaution),
    };
  }

  async #give(input: ExerciseInput, words: string): Promise<void> {
    const exercise = this.#exercise!;
    if (words !== '') this.#line({ by: 'you', text: words });
    await giveInput(exercise, input);
    this.#ear.expect(exercise.heardNext);
    this.#watchEnd();
  }

  #watchEnd(): void {
    if (this.#state.stage !== 'running' || this.#exercise?.ended === undefined) return;
    void this.#ear.stop();
    this.#change({ stage: 'looking-back' });
    this.#ask({ plan: 'run', software: __VERSION__ });
  }

  #keep(change: Partial<KeptRun>): void {
    this.#kept = { ...this.#kept, ...change };
    keepRun(this.#kept);
  }

  #lookBack({ back, events }: PlannerRun): void {
    if (this.#exercise === undefined) return;
    const debrief = debriefOf(this.#exercise, back);
    const { log: _log, ...trainee } = debrief.trainee;
    const { began, isDone } = this.#kept;
    const kept = { at: new Date().toISOString(), began, plan: this.plan, trainee, plannerMinutes: back.counts.minutes };
    if (!isDone) void keepExercise(kept);
    this.#keep({ isDone: true });
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
