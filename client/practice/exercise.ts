import type { Expectation, Meaning, ReadAt, Understanding } from '../../grammar/phrases/meaning.ts';
import { openQuestion } from '../../grammar/visit/standing.ts';
import type { CommandId } from '../../grammar/vocabulary/commands.ts';
import type { ObservationId } from '../../grammar/vocabulary/observations.ts';
import { POINTS_BY_ID, type PointId } from '../../grammar/vocabulary/points.ts';
import type { DialId } from '../../grammar/vocabulary/practice-orders.ts';
import type { TestId } from '../../grammar/vocabulary/tests.ts';
import type { Diagnosis, Suspect } from '../diagnosis/diagnosis.ts';
import { LOOK_TESTS, type LookId } from '../diagnosis/measuring/look-tests.ts';
import { TEST_MODELS } from '../diagnosis/measuring/test-models.ts';
import type { Mouth, Prompt } from '../speaking/mouth.ts';
import type { VisitContext } from '../visit/chart/context.ts';
import { evidenceOf } from '../visit/rules/evidence-of.ts';
import { zonesAt } from '../visit/rules/zones-at.ts';
import { type Clock, type EarUtterance, type VisitEdges, VisitRun } from '../visit/run/visit-run.ts';
import { bestTest, zonesToProve } from '../visit/steps/choose-step.ts';
import { LOOKS } from '../visit/steps/looks.ts';
import { testStep } from '../visit/steps/plans.ts';
import { EXERCISE, STOP_WORDS } from '../words/practice/exercise-words.ts';
import { observationWords } from '../words/things/observation-words.ts';
import { hintWords, mostLevel, rankedTest } from './choose-hint.ts';
import { chooseTaking, dialFor, takingBetween } from './choose-taking.ts';
import type { Ending, ExerciseDeed, HintLevel, Hypothesis, LoggedDeed, TestMade } from './exercise-log.ts';
import { type DrawnExercise, nameOf } from './exercise-plan.ts';
import { followWords } from './exercise-world.ts';
import { type Stop, stopsHands, stopsReading } from './judge-safety.ts';
import { type Order, readOrder, type SaidPlace, splitPlace, suspectIn } from './read-order.ts';
import { SimulatedUnit, type Taking } from './simulated-unit.ts';
import { leadingOf, weighTest } from './weigh-test.ts';
import { WorkClock } from './work-clock.ts';

/** What an exercise tells: what the visit says, and what the unit and the exercise say themselves. */
export interface ExerciseLine {
  readonly by: 'visit' | 'meter' | 'eyes' | 'exercise' | 'stop' | 'hint';
  readonly text: string;
}

export interface ExerciseEdges {
  readonly diagnosis: Diagnosis;
  readonly understand: VisitEdges['understand'];
  readonly mouth: Mouth;
  readonly clock: Clock;
  /** The record of the visit; never the record of a real one. */
  readonly append: VisitEdges['append'];
  readonly tell: (line: ExerciseLine) => void;
  readonly software: string;
}

/** What is about to be measured or looked at: it waits for a suspect to be named, or for a caution. */
interface Attempt {
  readonly test: TestId | undefined;
  /** A test that the search is led by: not one that the plan of the visit asks for. */
  readonly chosen: boolean;
  readonly taking: Taking | LookId;
  /** Where the words put it, which goes into the record. */
  readonly said: readonly PointId[];
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
  readonly work = new WorkClock();
  readonly #edges: ExerciseEdges;
  #events = 0;
  #dial: DialId = 'volts';
  #probes: readonly PointId[] = [];
  #hypothesis: Hypothesis | undefined;
  #pending: { readonly attempt: Attempt; readonly waits: 'hypothesis' | 'caution' } | undefined;
  #halted = false;
  #streak = 0;
  #hinted: { readonly test: TestId; readonly level: HintLevel } | undefined;
  #said = 0;
  #speech: Promise<unknown> = Promise.resolve();

  private constructor(drawn: DrawnExercise, edges: ExerciseEdges) {
    this.drawn = drawn;
    this.#edges = edges;
    this.unit = new SimulatedUnit(drawn.kase);
    const { diagnosis, understand, clock } = edges;
    this.run = VisitRun.open(
      {
        ...{ understand, clock },
        diagnose: async (_unit, evidence, parked) => diagnosis.assess(evidence, parked),
        mouth: { speak: (prompt) => this.#speak(prompt), hush: (evenCaution) => edges.mouth.hush(evenCaution) },
        append: (bodies) => {
          this.#events += bodies.length;
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
    return this.#dial;
  }
  get probes(): readonly PointId[] {
    return this.#probes;
  }
  get hypothesis(): Hypothesis | undefined {
    return this.#hypothesis;
  }
  /** What an ear is to expect: a suspect is most surely heard by its number, and a number where one is expected. */
  get heardNext(): Expectation {
    const isAsked = this.#pending?.waits === 'hypothesis';
    return isAsked ? { readings: [{ quantity: 'voltage', at: ['L1', 'ground'] }] } : this.expectation;
  }
  /** The suspects among whom one is asked for; undefined where none is. */
  get asked(): readonly Suspect[] | undefined {
    return this.#pending?.waits === 'hypothesis' ? this.suspects : undefined;
  }
  get suspects(): readonly Suspect[] {
    return leadingOf(this.context.assessment?.suspects ?? []);
  }
  get halted(): boolean {
    return this.#halted;
  }
  get ended(): Ending | undefined {
    const last = this.log.findLast((deed) => deed.type === 'ended');
    return last?.type === 'ended' ? last.how : undefined;
  }

  #speak: Mouth['speak'] = (prompt) => {
    this.#edges.tell({ by: 'visit', text: prompt.text });
    return this.#aloud(prompt);
  };

  /** One after another, whoever speaks. */
  #aloud(prompt: Prompt): Promise<'spoken' | 'cut'> {
    const spoken = this.#speech.catch(() => undefined).then(() => this.#edges.mouth.speak(prompt));
    this.#speech = spoken;
    return spoken;
  }

  /** Words of the exercise's own, spoken behind what is being spoken. */
  #tell(by: ExerciseLine['by'], text: string): void {
    this.#edges.tell({ by, text });
    this.#said += 1;
    this.#aloud({ id: `exercise-${this.#said}`, kind: 'answer', text }).catch(() => undefined);
  }

  #note(deed: ExerciseDeed): void {
    this.log.push({ ...deed, minutes: this.work.minutes, events: this.#events });
  }

  /** A typed sentence. */
  say(text: string): Promise<void> {
    return this.hear({
      id: `said-${this.#said}-${this.#events}`,
      ear: 'typed',
      text,
      alternatives: [],
      confidence: 1,
      accepted: true,
    });
  }

  /** What an ear heard. Resolves when all that follows from it has happened. */
  async hear(heard: EarUtterance): Promise<void> {
    if (this.ended !== undefined) return this.#tell('exercise', EXERCISE.over);
    const order = heard.accepted ? readOrder(heard.text) : undefined;
    if (order !== undefined) return this.order(order);
    const said = splitPlace(heard.text);
    const how = { alternatives: heard.alternatives, typed: heard.ear === 'typed', doubtful: heard.doubtful ?? false };
    const understood = async (text: string) => this.#edges.understand(text, this.expectation, how);
    // What was said beside a place belongs to it only where a place is left.
    const place = said.place === heard.text ? undefined : await understood(said.place);
    const isPlace = place !== undefined && placesOf(place) !== undefined;
    const understanding = isPlace ? place : await understood(heard.text);
    if (this.#pending?.waits === 'hypothesis' && heard.accepted) {
      const suspect =
        suspectIn(heard.text) ??
        (understanding.meaning.kind === 'value' ? Number(understanding.meaning.value) : undefined);
      if (suspect !== undefined) return this.order({ order: 'suspect', suspect });
      if (understanding.meaning.kind === 'command' && NOBODY.includes(understanding.meaning.command))
        return this.order({ order: 'suspect', suspect: 'none-yet' });
    }
    if (!heard.accepted) {
      if (this.#pending?.waits === 'hypothesis') return this.#tell('exercise', EXERCISE.noSuchSuspect);
      return this.#pass(() => this.run.hear(heard));
    }
    await this.#take(understanding, isPlace ? said : {}, () => this.run.hear(heard));
  }

  /** What was entered by touch. @param words stand in the record as what was heard */
  async enter(meaning: Meaning, words: string): Promise<void> {
    if (this.ended !== undefined) return;
    const understanding: Understanding = { heard: words, verdict: 'logged', meaning, confidence: 1 };
    await this.#take(understanding, {}, () => this.#utter(meaning, words));
  }

  async touch(command: CommandId): Promise<void> {
    await this.enter({ kind: 'command', command }, command);
  }

  async #take(understanding: Understanding, said: Partial<SaidPlace>, pass: () => void): Promise<void> {
    const { meaning, verdict, heard } = understanding;
    if (this.#halted) return this.#goOn(meaning);
    const places = placesOf(understanding);
    if (places !== undefined) {
      const bench = said.bench === true || (meaning.kind === 'reading' && meaning.reading.bench === true);
      return this.#goTo(places, bench, said.dial);
    }
    if (meaning.kind === 'several' && meaning.parts.some(({ kind }) => kind === 'reading'))
      return this.#tell('exercise', EXERCISE.oneAtATime);
    if (meaning.kind === 'report') {
      const { report } = meaning;
      if (report.type === 'absence-of-voltage') return this.#tell('exercise', EXERCISE.oneAtATime);
      if (report.type === 'meter-proof') return this.#proveMeter();
      if (report.type === 'observation') {
        const look = this.#lookFor(report.observation);
        if (look !== undefined) return this.#lookAt(look);
      }
    }
    if (meaning.kind === 'command' && meaning.command === 'what-next' && this.#isLed()) return this.#hint();
    if (verdict !== 'rejected') {
      const { stop, mended } = followWords(meaning, heard, this.unit, this.context);
      if (stop !== undefined) return this.#stop(stop);
      if (mended !== undefined) this.#note(mended);
    }
    await this.#pass(pass);
  }

  /** To the visit as it was said; then what waited for a caution is done. */
  async #pass(pass: () => void): Promise<void> {
    pass();
    await this.run.settled();
    if (this.context.phase === 'closed') return this.#end('closed');
    const { context } = this;
    if (this.#pending?.waits !== 'caution' || context.caution !== undefined || openQuestion(context) !== undefined)
      return;
    const { attempt } = this.#pending;
    // A question that stood open kept the visit from leading there.
    if (attempt.chosen && context.step?.test !== attempt.test) await this.#guard(attempt);
    else await this.#make(attempt);
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
    switch (order.order) {
      case 'dial':
        this.#dial = order.dial;
        return this.#tell('exercise', EXERCISE.dial(order.dial));
      case 'look':
        return this.#lookAt(order.look as LookId);
      case 'suspect':
        return this.#suspect(order.suspect);
      case 'meter-on-source':
        return this.#proveMeter();
      case 'read':
        if (this.#probes.length < 2) return this.#tell('exercise', EXERCISE.noProbes);
        return this.#attempt(takingBetween(this.#probes, this.#dial, false), this.#probes);
      case 'hint':
        return this.#isLed() ? this.#hint() : this.#pass(() => this.run.touch('what-next'));
      case 'give-up':
        this.#tell('exercise', EXERCISE.gaveUp);
        return this.#end('given-up');
    }
  }

  /** Puts the probes on the drawing; words that follow say where they are believed to be. */
  place(at: readonly PointId[]): void {
    this.#probes = at;
  }

  /** Whether the trainee leads: nothing of the plan, of a proof or of a repair is asked. */
  #isLed(): boolean {
    const { step, phase } = this.context;
    return (step === undefined || step.source === 'planner') && (phase === 'testing' || phase === 'arrive');
  }

  async #suspect(suspect: Hypothesis | number): Promise<void> {
    const among = this.suspects;
    const fault = typeof suspect === 'number' ? among[suspect - 1]?.fault : suspect;
    if (fault === undefined) return this.#tell('exercise', EXERCISE.noSuchSuspect);
    this.#hypothesis = fault;
    this.#tell('exercise', EXERCISE.suspectTaken(fault));
    if (this.#pending?.waits === 'hypothesis') await this.#guard(this.#pending.attempt);
  }

  /** Takes one reading at a place that is named by its points. */
  async measure(read: ReadAt, bench = false): Promise<void> {
    if (this.ended === undefined && !this.#halted) await this.#goTo([read], bench, dialFor(read.quantity));
  }

  /** Has the visit lead to a test, as if its search had chosen it: what must come before it is asked first. */
  async goToTest(test: TestId): Promise<void> {
    this.run.take({ type: 'went.to-test', test: rankedTest(test, this.context) });
    await this.run.settled();
  }

  /** The probes go to a place that was named, or stand elsewhere on the drawing. */
  async #goTo(of: readonly ReadAt[], bench: boolean, told?: DialId): Promise<void> {
    if (told !== undefined && told !== this.#dial) this.#dial = told;
    const named = chooseTaking(of, this.#dialAt(of, told), bench);
    const stood = this.#probes.length === named.at.length ? this.#probes : named.at;
    if ([...stood].sort().join() !== [...named.at].sort().join())
      this.#note({ type: 'probes-elsewhere', said: named.at, stood });
    this.#probes = [];
    await this.#attempt({ ...named, at: stood }, named.at);
  }

  /**
   * What the meter stands on at a place: as it was told for it, as the visit asks, as it was set. A meter on volts reads
   * what is live a.c., the charge of a section d.c., and is turned to what else is read there where nothing is.
   */
  #dialAt(of: readonly ReadAt[], told: DialId | undefined): DialId {
    if (told !== undefined) return told;
    const ask = this.context.step?.ask;
    if (ask?.kind === 'reading' && of.some(({ at }) => at.join() === ask.at.join()))
      return dialFor(ask.quantity) ?? this.#dial;
    const [first] = of;
    if (this.#dial !== 'volts' || first === undefined || of.some(({ quantity }) => quantity === 'voltage'))
      return this.#dial;
    if (this.unit.voltsAt(first.at) >= LIVE_FROM) return 'volts';
    return of.some(({ quantity }) => quantity === 'voltage-dc') ? 'volts-dc' : (dialFor(first.quantity) ?? 'volts');
  }

  async #attempt(taking: Taking, said: readonly PointId[]): Promise<void> {
    const { quantity, bench } = taking;
    const zone = said.map((point) => POINTS_BY_ID[point].zone).find((one) => one !== 'none') ?? 'outdoor-load';
    const power = this.unit.isSwitchedOn(zone) ? 'on' : 'off';
    const test = this.#edges.diagnosis.testFor({ quantity, at: said, power, call: this.unit.call, bench });
    const zones =
      bench && test !== undefined ? zonesToProve(testStep(rankedTest(test, this.context))) : zonesAt(taking.at);
    const stop = stopsReading(taking, zones, EXERCISE.measuring(said, quantity), this.unit, this.context);
    if (stop !== undefined) return this.#stop(stop);
    await this.#ask({ test, chosen: test !== undefined && this.#isChosen(test, said), taking, said });
  }

  #lookFor(observation: ObservationId): LookId | undefined {
    const ids = Object.keys(LOOK_TESTS) as LookId[];
    if (observation === 'thermostat-calling' || observation === 'thermostat-not-calling') return undefined;
    return ids.find((id) => (LOOK_TESTS[id].measure.answers as readonly ObservationId[]).includes(observation));
  }

  async #lookAt(named: LookId): Promise<void> {
    const idle = this.unit.call === 'none';
    const look = idle
      ? (({ 'look-compressor': 'look-no-call', 'look-contactor': 'look-contactor-no-call' } as const)[
          named as 'look-compressor'
        ] ?? named)
      : named;
    const { zone } = LOOKS[look];
    const byHand = look.endsWith('-by-hand') && zone !== 'none';
    const stop = byHand ? stopsHands([zone], EXERCISE.looking(look), this.unit, this.context) : undefined;
    if (stop !== undefined) return this.#stop(stop);
    await this.#ask({ test: look, chosen: this.#isChosen(look, []), taking: look, said: [] });
  }

  /** Not what the plan of the visit asks just now, nor what only sets the scene. */
  #isChosen(test: TestId, said: readonly PointId[]): boolean {
    const { step, phase } = this.context;
    if (phase !== 'testing' && phase !== 'arrive') return false;
    if (TEST_MODELS[test].measure.kind === 'condition') return false;
    if (step === undefined || step.source === 'planner') return true;
    if (step.source === 'energy') return false;
    return step.ask.kind === 'reading'
      ? step.ask.at.join() !== said.join()
      : step.ask.kind === 'action' || !isAnsweredBy(test, step.ask.answers);
  }

  async #ask(attempt: Attempt): Promise<void> {
    if (!attempt.chosen || this.#hypothesis !== undefined || this.suspects.length === 0) return this.#guard(attempt);
    this.#pending = { attempt, waits: 'hypothesis' };
    this.#tell('exercise', EXERCISE.whichSuspect(this.suspects.map(({ fault }) => fault)));
  }

  /** Through the visit's own guards: what is due before it is said, and waited for. */
  async #guard(attempt: Attempt): Promise<void> {
    this.#pending = undefined;
    if (attempt.chosen && attempt.test !== undefined) {
      this.run.take({ type: 'went.to-test', test: rankedTest(attempt.test, this.context) });
      await this.run.settled();
    }
    const { context } = this;
    const isKept = attempt.chosen && openQuestion(context) !== undefined;
    if (context.caution === undefined && !isKept) return this.#make(attempt);
    this.#pending = { attempt, waits: 'caution' };
  }

  async #make(attempt: Attempt): Promise<void> {
    this.#pending = undefined;
    const { test, chosen, taking, said } = attempt;
    const evidence = evidenceOf(this.context);
    const before = this.context.assessment?.suspects ?? [];
    const shown = this.#show(taking);
    if (shown === undefined) return this.#tell('exercise', EXERCISE.noSuchPlace);
    const weighed =
      chosen && test !== undefined
        ? weighTest(test, evidence, this.context.assessment, this.#edges.diagnosis)
        : undefined;
    if (test !== undefined) this.work.count({ ...TEST_MODELS[test], id: test });
    if (typeof shown === 'string')
      this.#utter({ kind: 'report', report: { type: 'observation', observation: shown } }, observationWords(shown));
    else {
      const { quantity, bench } = taking as Taking;
      const reading = {
        quantity,
        at: said,
        ...shown,
        ...(bench ? { bench: true as const } : {}),
        ...(quantity === 'pressure' ? { gauge: true as const } : {}),
      };
      this.#utter({ kind: 'reading', reading }, EXERCISE.heard(said, quantity, shown.value, shown.unit));
    }
    await this.run.settled();
    if (weighed !== undefined && test !== undefined)
      this.#account({
        type: 'tested',
        test,
        taking: typeof taking === 'string' ? 'look' : taking,
        shown,
        hypothesis: this.#hypothesis ?? 'none-yet',
        before: leadingOf(before),
        after: this.suspects,
        ...weighed,
      });
    this.#watchTime();
  }

  #account(made: TestMade): void {
    this.#note(made);
    this.#hypothesis = undefined;
    this.#streak = made.redundant ? 0 : this.#streak + 1;
    if (made.redundant) this.#tell('exercise', EXERCISE.toldNothing);
  }

  #show(taking: Attempt['taking']): ReturnType<SimulatedUnit['read']> | ObservationId {
    if (typeof taking === 'string') {
      const seen = this.unit.see(taking, LOOK_TESTS[taking].measure.answers);
      this.#edges.tell({ by: 'eyes', text: observationWords(seen) });
      return seen;
    }
    const shown = this.unit.read(taking);
    if (shown !== undefined) this.#edges.tell({ by: 'meter', text: EXERCISE.meter(shown.value, shown.unit) });
    return shown;
  }

  /** The meter on a source that is known to be live. */
  async #proveMeter(): Promise<void> {
    const volts = Math.round(this.drawn.kase.build.legVolts * 2);
    this.#edges.tell({ by: 'meter', text: EXERCISE.meter(volts, 'V') });
    await this.#pass(() =>
      this.#utter({ kind: 'report', report: { type: 'meter-proof', value: volts } }, EXERCISE.onSource(volts)),
    );
  }

  #hint(): void {
    const test = bestTest(this.context);
    const given = this.log.filter(({ type }) => type === 'hinted').length;
    if (given >= (this.drawn.plan.hints ?? Number.POSITIVE_INFINITY))
      return this.#tell('exercise', EXERCISE.noMoreHints);
    if (test === undefined) return this.#tell('exercise', EXERCISE.noHint);
    const next = this.#hinted?.test === test.id ? this.#hinted.level + 1 : 1;
    const level = Math.min(next, mostLevel(this.#streak)) as HintLevel;
    this.#hinted = { test: test.id, level };
    const words = hintWords(test, level);
    this.#note({ type: 'hinted', level, words });
    this.#tell('hint', words);
  }

  /** Harm ends the exercise; a near miss holds it until the trainee goes on, and nothing was done. */
  #stop(stop: Stop): void {
    this.#pending = undefined;
    this.#note({ type: 'stopped-for', ...stop });
    const words = STOP_WORDS[stop.error](stop);
    if (stop.weight === 'harm') {
      this.#tell('stop', words);
      return this.#end('stopped');
    }
    this.#halted = true;
    this.#tell('stop', `${words} ${EXERCISE.goOn}`);
  }

  #goOn(meaning: Meaning): void {
    const goesOn = meaning.kind === 'command' && ['go-on', 'got-it', 'yes', 'done', 'live'].includes(meaning.command);
    if (!goesOn) return this.#tell('exercise', EXERCISE.goOn);
    this.#halted = false;
    this.#edges.tell({ by: 'exercise', text: EXERCISE.goesOn });
  }

  #watchTime(): void {
    const { minutes } = this.drawn.plan;
    if (minutes === undefined || this.work.minutes <= minutes || this.ended !== undefined) return;
    this.#tell('exercise', EXERCISE.outOfTime(minutes));
    this.#end('out-of-time');
  }

  #end(how: Ending): void {
    this.#note({ type: 'ended', how });
  }
}

/** To the question for a suspect, what an ear hears that knows the words of a visit alone. */
const NOBODY: readonly CommandId[] = ['pass', 'unsure', 'no'];

/** Over any ghost: a.c. that a meter on volts is left on. */
const LIVE_FROM = 20;

/** The places that were named, with or without a number: the meter has its own. */
function placesOf({ meaning, reason }: Understanding): readonly ReadAt[] | undefined {
  if (meaning.kind === 'unclear' && reason === 'no-value') return meaning.of;
  return meaning.kind === 'reading' && isMetered(meaning.reading.quantity) ? [meaning.reading] : undefined;
}

/** What an instrument of the exercise shows; weights and times are told by the trainee. */
const isMetered = (quantity: string): boolean =>
  !['mass', 'time', 'airflow', 'humidity', 'static-pressure', 'difference', 'frequency'].includes(quantity);

function isAnsweredBy(test: TestId, answers: readonly ObservationId[]): boolean {
  const { measure } = TEST_MODELS[test];
  return measure.kind === 'look' && measure.answers.some((answer) => answers.includes(answer));
}
