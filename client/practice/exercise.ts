import type { Expectation, Meaning, ReadAt, Understanding } from '../../grammar/phrases/meaning.ts';
import type { VisitEvent } from '../../grammar/visit/events.ts';
import type { CommandId } from '../../grammar/vocabulary/commands.ts';
import type { PointId } from '../../grammar/vocabulary/points.ts';
import type { DialId } from '../../grammar/vocabulary/practice-orders.ts';
import type { TestId } from '../../grammar/vocabulary/tests.ts';
import type { Suspect } from '../diagnosis/diagnosis.ts';
import type { LookId } from '../diagnosis/measuring/look-tests.ts';
import type { Mouth } from '../speaking/mouth.ts';
import type { VisitContext } from '../visit/chart/context.ts';
import { type Clock, type EarUtterance, type VisitEdges, VisitRun } from '../visit/run/visit-run.ts';
import { bestTest } from '../visit/steps/choose-step.ts';
import { EXERCISE, STOP_WORDS } from '../words/practice/exercise-words.ts';
import { TOLD } from '../words/practice/performed-words.ts';
import { countDone, countMeterProof, countSwitched, countTold, switchedNow } from './act-minutes.ts';
import type { AskedDiagnosis } from './ask-diagnosis.ts';
import { nextHint } from './choose-hint.ts';
import { dialFor } from './choose-taking.ts';
import { ClockWatch } from './clock-watch.ts';
import { DISCHARGED } from './discharged.ts';
import type { Ending, ExerciseDeed, Hypothesis, LoggedDeed } from './exercise-log.ts';
import { type DrawnExercise, nameOf } from './exercise-plan.ts';
import { type ExerciseLine, ExerciseVoice } from './exercise-voice.ts';
import { followDone, followWords } from './exercise-world.ts';
import { repairBegun, stopsRecorded } from './heed-record.ts';
import { againstWords, isOfHands, proofStage, type Stop } from './judge-safety.ts';
import { lookFor, Probing } from './probing.ts';
import type { Order, SaidPlace } from './read-order.ts';
import { placesOf, readSaid } from './read-said.ts';
import { SimulatedUnit } from './simulated-unit.ts';
import type { WorkClock } from './work-clock.ts';

export interface ExerciseEdges {
  readonly diagnosis: AskedDiagnosis;
  readonly understand: VisitEdges['understand'];
  readonly mouth: Mouth;
  readonly clock: Clock;
  /** The record of the visit; never the record of a real one. */
  readonly append: VisitEdges['append'];
  readonly tell: (line: ExerciseLine) => void;
  /** Has minutes pass at once, and calls back what is due on the way. */
  readonly letPass: (minutes: number, settled: () => Promise<void>) => Promise<void>;
  readonly software: string;
}

/**
 * An exercise: a visit as on any day, at a unit that is simulated. What the trainee says goes to the visit; the unit
 * answers in the meter's own digits, and its answer enters the visit as if it had been spoken.
 */
export class Exercise {
  readonly drawn: DrawnExercise;
  readonly unit: SimulatedUnit;
  readonly run: VisitRun;
  readonly log: LoggedDeed[] = [];
  readonly #edges: ExerciseEdges;
  readonly #probing: Probing;
  readonly #watch: ClockWatch;
  readonly #voice: ExerciseVoice;
  #events = 0;
  /** Recorded and not yet followed by the unit. */
  #recorded: VisitEvent[] = [];
  /** What was hidden before each repair, by its number. */
  readonly #leftBefore = new Map<number, SimulatedUnit['left']>();
  #disproved = false;
  #halted = false;
  #typed = 0;

  private constructor(drawn: DrawnExercise, edges: ExerciseEdges) {
    this.drawn = drawn;
    this.#edges = edges;
    this.unit = new SimulatedUnit(drawn.kase);
    this.#voice = new ExerciseVoice(edges.mouth, edges.tell);
    const { diagnosis, understand, clock } = edges;
    this.run = VisitRun.open(
      {
        ...{ understand, clock },
        diagnose: (_unit, evidence, parked) => diagnosis.assess(evidence, parked),
        mouth: this.#voice.mouth,
        append: (bodies) => {
          this.#events += bodies.length;
          this.#recorded.push(...bodies.map((body) => JSON.parse(body) as VisitEvent));
          return edges.append(bodies);
        },
      },
      {
        ...{
          type: 'opened.visit',
          visit: `exercise-${nameOf(drawn.plan)}`,
          site: 'practice',
          complaint: 'does not cool',
        },
        ...{ role: 'technician', unit: drawn.profile, software: edges.software, exercise: nameOf(drawn.plan) },
      },
    );
    this.#watch = new ClockWatch(clock, this.run);
    this.#probing = new Probing({
      ...{ run: this.run, unit: this.unit, diagnosis },
      tell: (text) => this.#voice.tell('exercise', text),
      show: (by, text) => this.#voice.show(by, text),
      note: (deed) => this.#note(deed),
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
  get dial(): DialId {
    return this.#probing.dial;
  }
  get probes(): readonly PointId[] {
    return this.#probing.probes;
  }
  get hypothesis(): Hypothesis | undefined {
    return this.#probing.hypothesis;
  }
  /** What the work came to, in minutes and tests. */
  get work(): WorkClock {
    return this.#probing.work;
  }
  /** What an ear is to expect: a suspect is most surely heard by its number, and a number where one is expected. */
  get heardNext(): Expectation {
    return this.#probing.asks ? { readings: [{ quantity: 'voltage', at: ['L1', 'ground'] }] } : this.expectation;
  }
  /** The suspects among whom one is asked for; undefined where none is. */
  get asked(): readonly Suspect[] | undefined {
    return this.#probing.asks ? this.suspects : undefined;
  }
  get suspects(): readonly Suspect[] {
    return this.#probing.suspects;
  }
  get halted(): boolean {
    return this.#halted;
  }
  /** The last split that was judged behind a repair speaks against it. */
  get disproved(): boolean {
    return this.#disproved;
  }
  get ended(): Ending | undefined {
    const last = this.log.findLast((deed) => deed.type === 'ended');
    return last?.type === 'ended' ? last.how : undefined;
  }

  #note(deed: ExerciseDeed): void {
    this.log.push({ ...deed, minutes: this.work.minutes, events: this.#events });
  }

  /** A typed sentence. */
  say(text: string): Promise<void> {
    this.#typed += 1;
    return this.hear({
      id: `said-${this.#typed}-${this.#events}`,
      ear: 'typed',
      text,
      alternatives: [],
      confidence: 1,
      accepted: true,
    });
  }

  /** What an ear heard. Resolves when all that follows from it has happened. */
  async hear(heard: EarUtterance): Promise<void> {
    if (this.ended !== undefined) return this.#voice.tell('exercise', EXERCISE.over);
    await this.#watch.heed();
    if (!heard.accepted) {
      if (this.#probing.asks) return this.#voice.tell('exercise', EXERCISE.noSuchSuspect);
      return this.#pass(() => this.run.hear(heard));
    }
    const how = { alternatives: heard.alternatives, typed: heard.ear === 'typed', doubtful: heard.doubtful ?? false };
    const said = await readSaid(heard, this.#probing.asks, async (text) =>
      this.#edges.understand(text, this.expectation, how),
    );
    if ('order' in said) return this.order(said.order);
    if ('probes' in said) {
      this.place(said.probes);
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
    if (this.#halted) return this.#goOn(meaning);
    const places = placesOf(understanding);
    if (places !== undefined) {
      const bench = beside.bench === true || (meaning.kind === 'reading' && meaning.reading.bench === true);
      return this.#probing.goTo(places, bench, beside.dial);
    }
    if (meaning.kind === 'several' && meaning.parts.some(({ kind }) => kind === 'reading'))
      return this.#voice.tell('exercise', EXERCISE.oneAtATime);
    if (meaning.kind === 'report') {
      const { report } = meaning;
      if (report.type === 'absence-of-voltage') return this.#voice.tell('exercise', EXERCISE.oneAtATime);
      if (report.type === 'meter-proof') return this.#proveMeter();
      if (report.type === 'observation') {
        const look = lookFor(report.observation);
        if (look !== undefined) return this.#probing.lookAt(look);
      }
    }
    if (meaning.kind === 'command' && meaning.command === 'what-next' && this.#isLed()) return this.#hint();
    if (verdict !== 'rejected') {
      this.#noteRepair(meaning, heard);
      const before = switchedNow(this.unit);
      const { stop, mended } = followWords(meaning, heard, this.unit, this.context);
      if (stop !== undefined) return this.#stop(againstWords(stop, this.log));
      countSwitched(this.work, before, this.unit);
      if (verdict === 'logged') countTold(this.work, meaning);
      if (mended !== undefined) this.#note(mended);
    }
    await this.#pass(pass, meaning);
  }

  #noteRepair(meaning: Meaning, what: string): void {
    const begun = repairBegun(meaning);
    // A filter is changed on any visit.
    if (begun === undefined || (begun.kind === 'part' && begun.part === 'filter')) return;
    this.#note({ type: 'repair-begun', what, found: this.context.finding !== undefined });
  }

  /** The unit follows what was recorded; what was warned of and done all the same is counted. */
  #heedRecord(meaning?: Meaning): void {
    const events = this.#recorded;
    this.#recorded = [];
    for (const event of events) {
      if (event.type === 'input.taken') continue;
      if ((event.type === 'part.withdrawn' || event.type === 'work.withdrawn') && event.number !== undefined)
        this.#takeBack(event.number);
      if (event.type === 'split.judged') this.#disproved = event.word === 'does not fit';
      countDone(this.work, event);
      const before = this.unit.left;
      const mended = followDone(event, this.unit);
      if (mended === undefined) continue;
      if (mended.number !== undefined) this.#leftBefore.set(mended.number, before);
      this.#disproved = false;
      this.#note(mended);
    }
    if (this.ended !== undefined || this.#halted) return;
    const stop = stopsRecorded(events, meaning, this.unit, this.context, this.log);
    if (stop !== undefined) this.#stop(stop);
  }

  /** What was told fitted or done was not: what it had cured is there again. */
  #takeBack(number: number): void {
    const before = this.#leftBefore.get(number);
    this.#leftBefore.delete(number);
    this.#note({ type: 'taken-back', number });
    if (before !== undefined && before.length > this.unit.left.length) this.unit.unmend(before);
  }

  /** To the visit as it was said; then what waited for a caution is done. */
  async #pass(pass: () => void, meaning?: Meaning): Promise<void> {
    pass();
    await this.run.settled();
    this.#heedRecord(meaning);
    this.#watchTime();
    if (this.ended !== undefined) return;
    if (this.context.phase === 'closed') return this.#end('closed');
    await this.#probing.goOn();
  }

  #utter(meaning: Meaning, words: string): void {
    const understanding: Understanding = { heard: words, verdict: 'logged', meaning, confidence: 1 };
    const id = `unit-${this.#events}`;
    this.run.take({
      type: 'heard.utterance',
      utterance: { id, ear: 'typed', accepted: true, confidence: 1, understanding },
    });
  }

  async order(order: Order): Promise<void> {
    if (this.ended !== undefined) return;
    // Who was held does nothing before it is taken note of.
    if (this.#halted && order.order !== 'give-up') return this.#voice.tell('exercise', EXERCISE.goOn);
    await this.#watch.heed();
    switch (order.order) {
      case 'dial':
        this.#probing.dial = order.dial;
        return this.#voice.tell('exercise', EXERCISE.dial(order.dial));
      case 'look':
        return this.#probing.lookAt(order.look as LookId);
      case 'suspect':
        return this.#probing.suspect(order.suspect);
      case 'meter-on-source':
        return this.#proveMeter();
      case 'read':
        return this.#probing.read();
      case 'wait':
        this.#voice.tell('exercise', EXERCISE.passed(order.minutes));
        this.work.act('waiting', order.minutes);
        await this.#edges.letPass(order.minutes, () => this.run.settled());
        return this.#watchTime();
      case 'discharged':
        return this.enter(DISCHARGED, TOLD.discharged);
      case 'hint':
        return this.#isLed() ? this.#hint() : this.#pass(() => this.run.touch('what-next'));
      case 'give-up':
        this.#voice.tell('exercise', EXERCISE.gaveUp);
        return this.#end('given-up');
    }
  }

  /** Puts the probes on the drawing; words that follow say where they are believed to be. */
  place(at: readonly PointId[]): void {
    this.#probing.probes = at;
  }

  /** Whether the trainee leads: nothing of the plan, of a proof or of a repair is asked. */
  #isLed(): boolean {
    const { step, phase } = this.context;
    return (step === undefined || step.source === 'planner') && (phase === 'testing' || phase === 'arrive');
  }

  /** Takes a probe to one terminal of the drawing, or off it. */
  put(point: PointId): void {
    this.#probing.put(point);
  }

  /** Takes one reading at a place that is named by its points. */
  async measure(read: ReadAt, bench = false): Promise<void> {
    if (this.ended !== undefined) return;
    if (this.#halted) return this.#voice.tell('exercise', EXERCISE.goOn);
    await this.#watch.heed();
    await this.#probing.goTo([read], bench, dialFor(read.quantity));
  }

  /** Has the visit lead to a test, as if its search had chosen it: what must come before it is asked first. */
  async goToTest(test: TestId): Promise<void> {
    await this.#probing.leadTo(test);
  }

  /** The meter on a source that is known to be live. */
  async #proveMeter(): Promise<void> {
    const volts = Math.round(this.drawn.kase.build.legVolts * 2);
    this.#voice.show('meter', EXERCISE.meter(volts, 'V'));
    countMeterProof(this.work);
    await this.#pass(() =>
      this.#utter({ kind: 'report', report: { type: 'meter-proof', value: volts } }, EXERCISE.onSource(volts)),
    );
  }

  #hint(): void {
    const test = bestTest(this.context);
    const given = this.log.filter(({ type }) => type === 'hinted').length;
    if (given >= (this.drawn.plan.hints ?? Number.POSITIVE_INFINITY))
      return this.#voice.tell('exercise', EXERCISE.noMoreHints);
    if (test === undefined) return this.#voice.tell('exercise', EXERCISE.noHint);
    const hint = nextHint(test, this.log);
    this.#note(hint);
    this.#voice.tell('hint', hint.words);
  }

  /** Harm ends the exercise; a near miss holds it until the trainee goes on, and nothing was done. */
  #stop(stop: Stop): void {
    this.#probing.forget();
    const stage = isOfHands(stop.error) ? { stage: proofStage(stop.zone, this.unit, this.context) } : {};
    this.#note({ type: 'stopped-for', ...stop, ...stage });
    const words = STOP_WORDS[stop.error](stop);
    if (stop.weight === 'harm') {
      this.#voice.tell('stop', `${words} ${EXERCISE.ends}`);
      return this.#end('stopped');
    }
    this.#halted = true;
    this.#voice.tell('stop', `${words} ${EXERCISE.goOn}`);
  }

  #goOn(meaning: Meaning): void {
    const goesOn = meaning.kind === 'command' && ['go-on', 'got-it', 'yes', 'done', 'live'].includes(meaning.command);
    if (!goesOn) return this.#voice.tell('exercise', EXERCISE.goOn);
    this.#halted = false;
    this.#voice.show('exercise', EXERCISE.goesOn);
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
