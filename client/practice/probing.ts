import type { Meaning, ReadAt } from '../../grammar/phrases/meaning.ts';
import { samePlaces } from '../../grammar/visit/judge-reading.ts';
import { openQuestion } from '../../grammar/visit/standing.ts';
import type { ObservationId } from '../../grammar/vocabulary/observations.ts';
import { POINTS_BY_ID, type PointId } from '../../grammar/vocabulary/points.ts';
import type { DialId } from '../../grammar/vocabulary/practice-orders.ts';
import type { TestId } from '../../grammar/vocabulary/tests.ts';
import type { Suspect } from '../diagnosis/diagnosis.ts';
import { LOOK_TESTS, type LookId } from '../diagnosis/measuring/look-tests.ts';
import { TEST_MODELS } from '../diagnosis/measuring/test-models.ts';
import type { VisitContext } from '../visit/chart/context.ts';
import { evidenceOf } from '../visit/rules/evidence-of.ts';
import { zonesAt } from '../visit/rules/zones-at.ts';
import type { VisitRun } from '../visit/run/visit-run.ts';
import { isHeldBack } from '../visit/steps/answers-caution.ts';
import { stepWords } from '../visit/steps/ask-step.ts';
import { zonesToProve } from '../visit/steps/choose-step.ts';
import { LOOKS } from '../visit/steps/looks.ts';
import { testStep } from '../visit/steps/plans.ts';
import { EXERCISE } from '../words/practice/exercise-words.ts';
import { observationWords } from '../words/things/observation-words.ts';
import { countReading } from './act-minutes.ts';
import type { AskedDiagnosis } from './ask-diagnosis.ts';
import { type Attempt, attemptWords, isSame } from './attempt.ts';
import { rankedTest } from './choose-hint.ts';
import { chooseTaking, dialAt, takingBetween } from './choose-taking.ts';
import type { ExerciseDeed, Hypothesis, TestMade } from './exercise-log.ts';
import { type Stop, stopsHands, stopsReading } from './judge-safety.ts';
import { lookNow } from './look-named.ts';
import { besideAsked, isOwnChoice, isSearching } from './own-choice.ts';
import type { SimulatedUnit, Taking } from './simulated-unit.ts';
import { leadingOf, untold } from './weigh-test.ts';
import { WorkClock } from './work-clock.ts';

/** What probing needs of the exercise around it. */
export interface ProbingEdges {
  readonly run: VisitRun;
  readonly unit: SimulatedUnit;
  readonly diagnosis: AskedDiagnosis;
  /** Said aloud by the exercise. */
  readonly tell: (text: string) => void;
  /** What the meter or the eyes show. */
  readonly show: (by: 'meter' | 'eyes', text: string) => void;
  readonly note: (deed: ExerciseDeed) => void;
  /** Ends or holds the exercise. */
  readonly stop: (stop: Stop) => void;
  /** Enters the record of the visit as if it had been spoken. */
  readonly utter: (meaning: Meaning, words: string) => void;
  /** Minutes of work have passed. */
  readonly worked: () => void;
}

/**
 * The trainee's meter and eyes: where the probes stand, whom the next test is made for, and each test from the place
 * that is named to what it showed. A test waits for its suspect, then for what the visit has to say before it.
 */
export class Probing {
  readonly work = new WorkClock('told');
  dial: DialId = 'volts';
  #probes: readonly PointId[] = [];
  /** They were put there and nothing was read since: another place that is named does not take them away. */
  #stay = false;
  /** The place that was named elsewhere, where it was said that they stay. */
  #toldOf: readonly PointId[] = [];
  #hypothesis: Hypothesis | undefined;
  #pending: { readonly attempt: Attempt; readonly waits: 'hypothesis' | 'caution' } | undefined;
  readonly #edges: ProbingEdges;

  constructor(edges: ProbingEdges) {
    this.#edges = edges;
  }

  get #context(): VisitContext {
    return this.#edges.run.context;
  }
  /** Where the probes were put by touch, or by "probes on". They stay there until they are moved or read. */
  get probes(): readonly PointId[] {
    return this.#probes;
  }
  set probes(at: readonly PointId[]) {
    [this.#probes, this.#stay, this.#toldOf] = [at, at.length > 0, []];
  }
  get hypothesis(): Hypothesis | undefined {
    return this.#hypothesis;
  }
  get suspects(): readonly Suspect[] {
    return leadingOf(this.#context.assessment?.suspects ?? []);
  }
  /** Whether a suspect is asked for. */
  get asks(): boolean {
    return this.#pending?.waits === 'hypothesis';
  }

  /** What waited is not done any more. */
  forget(): void {
    this.#pending = undefined;
  }

  /** Whom the next test is made for: by name, or by the number in the list. */
  async suspect(suspect: Hypothesis | number): Promise<void> {
    const fault = typeof suspect === 'number' ? this.suspects[suspect - 1]?.fault : suspect;
    if (fault === undefined) return this.#edges.tell(EXERCISE.noSuchSuspect);
    this.#hypothesis = fault;
    if (fault !== 'none-yet') this.#edges.note({ type: 'suspected', suspect: fault });
    this.#edges.tell(EXERCISE.suspectTaken(fault));
    if (this.#pending?.waits === 'hypothesis') await this.#guard(this.#pending.attempt);
  }

  /** Has the visit lead to a test, as if its search had chosen it: what must come before it is asked first. */
  async leadTo(test: TestId): Promise<void> {
    const { run } = this.#edges;
    run.take({ type: 'went.to-test', test: rankedTest(test, run.context) });
    await run.settled();
  }

  /** Takes a probe to a terminal of the drawing, or off it. Two are all there are: with a third place it begins anew. */
  put(point: PointId): void {
    if (this.probes.includes(point)) this.probes = this.probes.filter((one) => one !== point);
    else this.probes = this.probes.length < 2 ? [...this.probes, point] : [point];
    // One alone is on its way.
    this.#stay = this.probes.length === 2;
  }

  /** Reads what the probes stand on. */
  async read(): Promise<void> {
    if (this.probes.length < 2) return this.#edges.tell(EXERCISE.noProbes);
    this.#stay = false;
    await this.#attempt(takingBetween(this.probes, this.dial, false), this.probes);
  }

  /**
   * The probes go to a place that was named. Where they were put elsewhere they stay, which is said, and nothing is
   * read; who names the same place again has them read where they stand.
   */
  async goTo(of: readonly ReadAt[], bench: boolean, told?: DialId): Promise<void> {
    if (told !== undefined) this.dial = told;
    const dial = told ?? dialAt(of, this.dial, this.#context.step?.ask, this.#edges.unit);
    const named = chooseTaking(of, dial, bench);
    const stays = this.#stay && this.probes.length === named.at.length;
    const stood = stays ? this.probes : named.at;
    if (!samePlaces(stood, named.at) && !samePlaces(this.#toldOf, named.at)) {
      this.#toldOf = named.at;
      return this.#edges.tell(EXERCISE.probesStay(stood, named.at));
    }
    const beside = besideAsked(stood, named, this.#edges.run);
    if (beside !== undefined) this.#edges.note(beside);
    this.probes = [];
    await this.#attempt({ ...named, at: stood }, named.at);
  }

  async #attempt(taking: Taking, said: readonly PointId[]): Promise<void> {
    const { quantity, bench } = taking;
    const { unit, diagnosis, stop } = this.#edges;
    const zone = said.map((point) => POINTS_BY_ID[point].zone).find((one) => one !== 'none') ?? 'outdoor-load';
    const power = unit.isSwitchedOn(zone) ? 'on' : 'off';
    const test = await diagnosis.testFor({ quantity, at: said, power, call: unit.call, bench });
    const zones =
      bench && test !== undefined ? zonesToProve(testStep(rankedTest(test, this.#context))) : zonesAt(taking.at);
    const held = stopsReading(taking, zones, EXERCISE.measuring(said, quantity), unit, this.#context);
    if (held !== undefined) return stop(held);
    // A charge is read because it was led off.
    const chosen = quantity !== 'voltage-dc' && isOwnChoice(test, said, this.#edges.run);
    await this.#ask({ test, chosen, leads: test !== undefined && chosen && this.#mayLead(), taking, said });
  }

  async lookAt(named: LookId): Promise<void> {
    const { unit, stop } = this.#edges;
    const look = lookNow(named, unit.call);
    const { zone } = LOOKS[look];
    const byHand = look.endsWith('-by-hand') && zone !== 'none';
    const held = byHand ? stopsHands([zone], EXERCISE.looking(look), unit, this.#context) : undefined;
    if (held !== undefined) return stop(held);
    const chosen = isSearching(this.#context) && isOwnChoice(look, [], this.#edges.run);
    await this.#ask({ test: look, chosen, leads: chosen, taking: look, said: [] });
  }

  /** A proof that is under way is not left for a test. */
  #mayLead(): boolean {
    return isSearching(this.#context) && this.#context.step?.source !== 'energy';
  }

  /** What stood asked when something else was begun: a suspect, a caution, a step of arrival. */
  #noteLeftOpen(attempt: Attempt): void {
    const { step } = this.#context;
    if (this.#pending !== undefined && isSame(this.#pending.attempt, attempt)) return;
    if (this.#pending !== undefined) this.#edges.note({ type: 'left-open', what: attemptWords(this.#pending.attempt) });
    else if (attempt.chosen && step?.source === 'arrive')
      this.#edges.note({ type: 'left-open', what: stepWords(step, this.#context) });
  }

  async #ask(attempt: Attempt): Promise<void> {
    this.#noteLeftOpen(attempt);
    if (!attempt.chosen || this.#hypothesis !== undefined || this.suspects.length === 0) return this.#guard(attempt);
    this.#pending = { attempt, waits: 'hypothesis' };
    this.#edges.tell(EXERCISE.whichSuspect(this.suspects.map(({ fault }) => fault)));
  }

  /** Through the visit's own guards: what is due before it is said, and waited for. */
  async #guard(attempt: Attempt): Promise<void> {
    this.#pending = undefined;
    if (this.#wasCautioned(attempt)) return this.#make(attempt);
    if (attempt.leads && attempt.test !== undefined) await this.leadTo(attempt.test);
    const isKept = attempt.leads && openQuestion(this.#context) !== undefined;
    if (this.#context.caution === undefined && !isKept) return this.#make(attempt);
    this.#pending = { attempt, waits: 'caution' };
    // What keeps it back is asked once more: a place is no answer to it.
    const [open] = this.#context.questions;
    if (isKept && open !== undefined) this.#edges.tell(open.words);
  }

  /** Its caution was heard in the breath that asked for it: whoever does it then has acknowledged it, as on any visit. */
  #wasCautioned({ test, said }: Attempt): boolean {
    const { step, caution } = this.#context;
    if (step === undefined || caution === undefined || isHeldBack({ step, caution })) return false;
    return step.ask.kind === 'reading' ? samePlaces(step.ask.at, said) : step.test !== undefined && step.test === test;
  }

  /** Does what waited for a caution or a question, where neither stands any more. */
  async goOn(): Promise<void> {
    const context = this.#context;
    if (this.#pending?.waits !== 'caution' || context.caution !== undefined || openQuestion(context) !== undefined)
      return;
    const { attempt } = this.#pending;
    // A question that stood open kept the visit from leading there.
    if (attempt.leads && context.step?.test !== attempt.test) await this.#guard(attempt);
    else await this.#make(attempt);
  }

  async #make(attempt: Attempt): Promise<void> {
    this.#pending = undefined;
    const { test, chosen, taking, said } = attempt;
    const { run, diagnosis, tell } = this.#edges;
    const { assessment } = this.#context;
    const evidence = evidenceOf(this.#context);
    const shown = this.#show(taking);
    if (shown === undefined) return tell(EXERCISE.noSuchPlace);
    if (typeof taking !== 'string' && !samePlaces(taking.at, said))
      this.#edges.note({ type: 'probes-elsewhere', said, stood: taking.at });
    const weighed = !chosen
      ? undefined
      : test === undefined
        ? untold(assessment)
        : await diagnosis.weigh(test, evidence, assessment);
    if (test !== undefined) this.work.count({ ...TEST_MODELS[test], id: test });
    else if (typeof taking !== 'string') countReading(this.work, taking.quantity, taking.at);
    this.#record(taking, said, shown);
    await run.settled();
    if (weighed !== undefined)
      this.#account({
        ...{
          type: 'tested',
          ...(test === undefined ? {} : { test }),
          what: attemptWords(attempt),
          shown,
          taking: typeof taking === 'string' ? 'look' : taking,
        },
        hypothesis: this.#hypothesis ?? 'none-yet',
        before: leadingOf(assessment?.suspects ?? []),
        after: this.suspects,
        ...weighed,
      });
    this.#edges.worked();
  }

  #record(taking: Attempt['taking'], said: readonly PointId[], shown: TestMade['shown']): void {
    const { utter } = this.#edges;
    if (typeof shown === 'string') {
      const observation = shown as ObservationId;
      return utter({ kind: 'report', report: { type: 'observation', observation } }, observationWords(observation));
    }
    const { quantity, bench } = taking as Taking;
    const reading = {
      ...{ quantity, at: said, ...shown },
      ...(bench ? { bench: true as const } : {}),
      ...(quantity === 'pressure' ? { gauge: true as const } : {}),
    };
    utter({ kind: 'reading', reading }, EXERCISE.heard(said, quantity, shown.value, shown.unit));
  }

  #account(made: TestMade): void {
    this.#edges.note(made);
    this.#hypothesis = undefined;
    if (made.redundant) this.#edges.tell(made.test === undefined ? EXERCISE.tellsOfNobody : EXERCISE.toldNothing);
  }

  #show(taking: Attempt['taking']): ReturnType<SimulatedUnit['read']> | ObservationId {
    const { unit, show } = this.#edges;
    if (typeof taking === 'string') {
      const seen = unit.see(taking, LOOK_TESTS[taking].measure.answers);
      show('eyes', observationWords(seen));
      return seen;
    }
    const shown = unit.read(taking);
    if (shown !== undefined) show('meter', EXERCISE.meter(shown.value, shown.unit));
    return shown;
  }
}
