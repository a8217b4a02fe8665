import type { Expectation, Meaning, ReadAt, Understanding } from '../../grammar/phrases/meaning.ts';
import { openQuestion } from '../../grammar/visit/standing.ts';
import type { CommandId } from '../../grammar/vocabulary/commands.ts';
import type { Suspect } from '../diagnosis/diagnosis.ts';
import type { LookId } from '../diagnosis/measuring/look-tests.ts';
import type { VisitContext } from '../visit/chart/context.ts';
import type { EarUtterance, VisitRun } from '../visit/run/visit-run.ts';
import { EXERCISE } from '../words/practice/exercise-words.ts';
import { TOLD } from '../words/practice/performed-words.ts';
import { countMeterProof, countSwitched, countTold, switchedNow } from './act-minutes.ts';
import { askedNow } from './asked-now.ts';
import { hintNow, isLed } from './choose-hint.ts';
import { dialFor } from './choose-taking.ts';
import { ClockWatch } from './clock-watch.ts';
import { DISCHARGED } from './discharged.ts';
import type { ExerciseEdges } from './exercise-edges.ts';
import type { Ending, ExerciseDeed, LoggedDeed } from './exercise-log.ts';
import type { DrawnExercise } from './exercise-plan.ts';
import { ExerciseVoice } from './exercise-voice.ts';
import { followWords } from './exercise-world.ts';
import { stopsRecorded } from './heed-record.ts';
import { Hold } from './hold.ts';
import { againstWords, type Stop } from './judge-safety.ts';
import { lookFor } from './look-named.ts';
import { openVisit } from './open-visit.ts';
import { Probing } from './probing.ts';
import type { Order, SaidPlace } from './read-order.ts';
import { placesOf, readSaid } from './read-said.ts';
import { RecordFollower } from './record-follower.ts';
import { SimulatedUnit } from './simulated-unit.ts';
import type { WorkClock } from './work-clock.ts';

/**
 * An exercise: a visit as on any day, at a unit that is simulated. What the trainee says goes to the visit; the unit
 * answers in the meter's own digits, and its answer enters the visit as if it had been spoken.
 */
export class Exercise {
  readonly drawn: DrawnExercise;
  readonly unit: SimulatedUnit;
  readonly run: VisitRun;
  readonly log: LoggedDeed[] = [];
  /** The trainee's meter and eyes: where the probes stand, and whom the next test is made for. */
  readonly probing: Probing;
  readonly #edges: ExerciseEdges;
  readonly #watch: ClockWatch;
  readonly #voice: ExerciseVoice;
  readonly #record: RecordFollower;
  readonly #hold: Hold;
  #typed = 0;

  private constructor(drawn: DrawnExercise, edges: ExerciseEdges) {
    this.drawn = drawn;
    this.#edges = edges;
    this.unit = new SimulatedUnit(drawn.kase);
    this.#voice = new ExerciseVoice(edges.mouth, edges.tell);
    const note = (deed: ExerciseDeed) => this.#note(deed);
    this.#record = new RecordFollower(this.unit, note);
    this.#hold = new Hold({ unit: this.unit, voice: this.#voice, note, end: (how) => this.#end(how) });
    this.run = openVisit(drawn, {
      ...edges,
      mouth: this.#voice.mouth,
      append: (bodies) => {
        this.#record.take(bodies);
        return edges.append(bodies);
      },
    });
    this.#watch = new ClockWatch(edges.clock, this.run);
    this.probing = new Probing({
      ...{ run: this.run, unit: this.unit, diagnosis: edges.diagnosis },
      tell: (text) => this.#voice.tell('exercise', text),
      show: (by, text) => this.#voice.show(by, text),
      note,
      stop: (stop) => this.#stop(stop),
      utter: (meaning, words) => this.#utter(meaning, words),
      worked: () => {
        this.#heedRecord();
        this.#watchTime();
      },
    });
  }

  static async begin(drawn: DrawnExercise, edges: ExerciseEdges): Promise<Exercise> {
    const exercise = new Exercise(drawn, edges);
    await exercise.run.settled();
    return exercise;
  }

  get context(): VisitContext {
    return this.run.context;
  }
  get expectation(): Expectation {
    return this.run.expectation;
  }
  /** What the work came to, in minutes and tests. */
  get work(): WorkClock {
    return this.probing.work;
  }
  /** What an ear is to expect: a suspect is most surely heard by its number, and a number where one is expected. */
  get heardNext(): Expectation {
    return this.probing.asks ? { readings: [{ quantity: 'voltage', at: ['L1', 'ground'] }] } : this.expectation;
  }
  /** The suspects among whom one is asked for; undefined where none is. */
  get asked(): readonly Suspect[] | undefined {
    return this.probing.asks ? this.suspects : undefined;
  }
  get suspects(): readonly Suspect[] {
    return this.probing.suspects;
  }
  get halted(): boolean {
    return this.#hold.isOn;
  }
  /** The last split that was judged behind a repair speaks against it. */
  get disproved(): boolean {
    return this.#record.disproved;
  }
  get ended(): Ending | undefined {
    const last = this.log.findLast((deed) => deed.type === 'ended');
    return last?.type === 'ended' ? last.how : undefined;
  }

  #note(deed: ExerciseDeed): void {
    this.log.push({ ...deed, minutes: this.work.minutes, events: this.#record.events });
  }

  /** A typed sentence. */
  say(text: string): Promise<void> {
    this.#typed += 1;
    return this.hear({
      id: `said-${this.#typed}-${this.#record.events}`,
      ear: 'typed',
      text,
      alternatives: [],
      confidence: 1,
      accepted: true,
    });
  }

  /** What an ear heard. Resolves when all that follows from it has happened. Nothing accepted is met with silence. */
  async hear(heard: EarUtterance): Promise<void> {
    const { shown } = this.#voice;
    await this.#hear(heard);
    if (!heard.accepted || this.ended !== undefined || this.#voice.shown > shown) return;
    this.#voice.tell('exercise', askedNow(this).words || EXERCISE.lead);
  }

  async #hear(heard: EarUtterance): Promise<void> {
    if (this.ended !== undefined) return this.#voice.tell('exercise', EXERCISE.over);
    await this.#watch.heed();
    if (!heard.accepted) {
      if (this.probing.asks) return this.#voice.tell('exercise', EXERCISE.noSuchSuspect);
      return this.#pass(() => this.run.hear(heard));
    }
    const how = { alternatives: heard.alternatives, typed: heard.ear === 'typed', doubtful: heard.doubtful ?? false };
    const said = await readSaid(heard, this.probing.asks, async (text) =>
      this.#edges.understand(text, this.expectation, how),
    );
    if ('order' in said) return this.order(said.order);
    if ('probes' in said) {
      this.probing.probes = said.probes;
      return this.#voice.tell('exercise', EXERCISE.probesOn(said.probes));
    }
    await this.#take(said.understanding, said.beside, () => this.run.hear(heard));
  }

  /** What was entered by touch. @param words stand in the record as what was heard */
  async enter(meaning: Meaning, words: string): Promise<void> {
    if (this.ended !== undefined) return;
    await this.#watch.heed();
    const understanding: Understanding = { heard: words, verdict: 'logged', meaning, confidence: 1 };
    await this.#take(understanding, {}, () => this.#utter(meaning, words));
  }

  async touch(command: CommandId): Promise<void> {
    await this.enter({ kind: 'command', command }, command);
  }

  async #take(understanding: Understanding, beside: Partial<SaidPlace>, pass: () => void): Promise<void> {
    const { meaning, verdict, heard } = understanding;
    if (this.halted) return this.#hold.hear(meaning);
    if (verdict === 'rejected' && this.probing.asks) return this.#voice.tell('exercise', EXERCISE.noSuchSuspect);
    const places = placesOf(understanding);
    if (places !== undefined) {
      const bench = beside.bench === true || (meaning.kind === 'reading' && meaning.reading.bench === true);
      return this.probing.goTo(places, bench, beside.dial);
    }
    // No number waits for its place: the meter has another.
    if (meaning.kind === 'value' && openQuestion(this.context) === undefined)
      return this.#voice.tell('exercise', EXERCISE.meterSays);
    if (meaning.kind === 'several' && meaning.parts.some(({ kind }) => kind === 'reading'))
      return this.#voice.tell('exercise', EXERCISE.oneAtATime);
    if (meaning.kind === 'report') {
      const { report } = meaning;
      if (report.type === 'absence-of-voltage') return this.#voice.tell('exercise', EXERCISE.oneAtATime);
      if (report.type === 'meter-proof') return this.#proveMeter();
      const look = report.type === 'observation' ? lookFor(report.observation) : undefined;
      if (look !== undefined) return this.probing.lookAt(look);
    }
    if (meaning.kind === 'command' && meaning.command === 'what-next' && isLed(this.context)) return this.#hint();
    this.#record.hear(understanding, this.context);
    // What was not surely heard is asked about first: the unit follows what is recorded of it.
    if (verdict === 'logged') {
      const before = switchedNow(this.unit);
      const { stop, mended } = followWords(meaning, heard, this.unit, this.context);
      if (stop !== undefined) return this.#stop(againstWords(stop, this.log));
      countSwitched(this.work, before, this.unit);
      countTold(this.work, meaning);
      if (mended !== undefined) this.#note(mended);
    }
    await this.#pass(pass, meaning);
  }

  /** The unit follows what was recorded; what was warned of and done all the same is counted. */
  #heedRecord(meaning?: Meaning): void {
    const { events, said, stop: met } = this.#record.follow(this.work, this.context);
    if (this.ended !== undefined || this.halted) return;
    const stop = met ?? stopsRecorded({ events, said }, meaning, this.unit, this.context, this.log);
    if (stop !== undefined) this.#stop(stop);
  }

  /** To the visit as it was said; then what waited for a caution is done. */
  async #pass(pass: () => void, meaning?: Meaning): Promise<void> {
    pass();
    await this.run.settled();
    this.#heedRecord(meaning);
    this.#watchTime();
    if (this.ended !== undefined) return;
    if (this.context.phase === 'closed') return this.#end('closed');
    await this.probing.goOn();
  }

  #utter(meaning: Meaning, words: string): void {
    const understanding: Understanding = { heard: words, verdict: 'logged', meaning, confidence: 1 };
    const id = `unit-${this.#record.events}`;
    this.run.take({
      type: 'heard.utterance',
      utterance: { id, ear: 'typed', accepted: true, confidence: 1, understanding },
    });
  }

  async order(order: Order): Promise<void> {
    if (this.ended !== undefined) return;
    // Who was held does nothing before it is taken note of.
    if (this.halted && order.order !== 'give-up') return this.#hold.remind();
    await this.#watch.heed();
    switch (order.order) {
      case 'dial':
        this.probing.dial = order.dial;
        return this.#voice.tell('exercise', EXERCISE.dial(order.dial));
      case 'look':
        return this.probing.lookAt(order.look as LookId);
      case 'suspect':
        return this.probing.suspect(order.suspect);
      case 'meter-on-source':
        return this.#proveMeter();
      case 'read':
        return this.probing.read();
      case 'wait':
        this.#voice.tell('exercise', EXERCISE.passed(order.minutes));
        this.work.act('waiting', order.minutes);
        await this.#edges.letPass(order.minutes, () => this.run.settled());
        return this.#watchTime();
      case 'discharged':
        return this.enter(DISCHARGED, TOLD.discharged);
      case 'hint':
        return this.#hint();
      case 'give-up':
        this.#voice.tell('exercise', EXERCISE.gaveUp);
        return this.#end('given-up');
    }
  }

  /** Takes one reading at a place that is named by its points. */
  async measure(read: ReadAt, bench = false): Promise<void> {
    if (this.ended !== undefined) return;
    if (this.halted) return this.#hold.remind();
    await this.#watch.heed();
    await this.probing.goTo([read], bench, dialFor(read.quantity));
  }

  /** The meter on a source that is known to be live. */
  async #proveMeter(): Promise<void> {
    const volts = Math.round(this.drawn.kase.build.legVolts * 2);
    // What is read on a source is volts: nobody proves a meter on ohms.
    this.probing.dial = 'volts';
    this.#voice.show('meter', EXERCISE.meter(volts, 'V'));
    countMeterProof(this.work);
    await this.#pass(() =>
      this.#utter({ kind: 'report', report: { type: 'meter-proof', value: volts } }, EXERCISE.onSource(volts)),
    );
  }

  /** A hint where the trainee leads; else the visit says what it asks. */
  async #hint(): Promise<void> {
    if (!isLed(this.context) && openQuestion(this.context) === undefined)
      return this.#pass(() => this.run.touch('what-next'));
    const hint = hintNow(this.context, this.log, this.drawn.plan.hints);
    if (typeof hint === 'string') return this.#voice.tell('exercise', hint);
    this.#note(hint);
    this.#voice.tell('hint', hint.words);
  }

  #stop(stop: Stop): void {
    this.probing.forget();
    this.#hold.stop(stop, this.context);
  }

  #watchTime(): void {
    const { minutes } = this.drawn.plan;
    if (minutes === undefined || this.work.minutes <= minutes || this.ended !== undefined) return;
    this.#voice.tell('exercise', EXERCISE.outOfTime(minutes));
    this.#end('out-of-time');
  }

  #end(how: Ending): void {
    this.#note({ type: 'ended', how });
  }
}
