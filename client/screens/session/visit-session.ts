import type { PhraseNow } from '../../../grammar/export/find-phrases.ts';
import type { Meaning } from '../../../grammar/phrases/meaning.ts';
import type { PhotoSubject } from '../../../grammar/visit/kept-photo.ts';
import type { KeptSound } from '../../../grammar/visit/kept-sound.ts';
import type { TakenOver } from '../../../grammar/visit/messages.ts';
import { lastTimeOf, readBodies } from '../../../grammar/visit/read-bodies.ts';
import type { CommandId } from '../../../grammar/vocabulary/commands.ts';
import type { UnitChoice } from '../../../grammar/vocabulary/unit-choice.ts';
import type { Utterance } from '../../listening/ear.ts';
import { handInFiles } from '../../record/browser/hand-in.ts';
import { keepFile } from '../../record/browser/kept-files.ts';
import type { TakenVisit } from '../../record/browser/lease-database.ts';
import { onReachable } from '../../record/browser/link-edge.ts';
import type { TabNews } from '../../record/browser/tab-news.ts';
import type { VisitPart } from '../../record/browser/visit-keys.ts';
import { inTurn } from '../../record/in-turn.ts';
import type { VisitRecord } from '../../record/visit-record.ts';
import type { Clock, VisitEdges } from '../../visit/run/visit-run.ts';
import { PHOTO } from '../../words/shown/photo-words.ts';
import { HAND_OVER } from '../../words/talk/hand-over-words.ts';
import type { Beginning } from '../worker/visit-messages.ts';
import { DiagnosisLink } from './diagnosis-link.ts';
import { HeardSoundKeeper } from './heard-sound-keeper.ts';
import { type HeldInput, HeldInputs } from './held-inputs.ts';
import { PageClock } from './page-clock.ts';
import { PageGrammar } from './page-grammar.ts';
import { PageTalk } from './page-talk.ts';
import { RunLink } from './run-link.ts';
import { type Opening, readAll, type SessionEdges, type SessionState } from './session-edges.ts';
import { shrinkPhoto } from './shrink-photo.ts';

/**
 * One visit running for a page: the visit itself in its worker, with its edges here (talk, diagnosis, grammar, log with
 * outbox), and the state that the page shows.
 */
export class VisitSession {
  readonly talk: PageTalk;
  readonly #held: HeldInputs;
  readonly #record: VisitRecord;
  readonly #taken: TakenVisit | undefined;
  readonly #heardSounds: HeardSoundKeeper;
  readonly #part: VisitPart;
  /** What is heard comes in its order, though a sound takes its time to be kept. */
  readonly #arrive = inTurn();
  readonly #news: TabNews;
  readonly #forgetNetwork: () => void;
  readonly #diagnosis = new DiagnosisLink((share) => {
    this.#building = share < 1 ? share : undefined;
    this.#changed();
  });
  readonly #grammar = new PageGrammar();
  readonly #listeners = new Set<() => void>();
  #run: RunLink | undefined;
  #problem: string | undefined;
  #elsewhere: TakenOver | undefined;
  #state: SessionState | undefined;
  /** A page that is loaded again begins elsewhere: what it is given must not pass for what an earlier one was. */
  #given = Math.random();
  #busy = 0;
  #building: number | undefined;

  private constructor({ record, news, part, taken, left }: SessionEdges) {
    this.#taken = taken;
    this.#part = part;
    this.#held = new HeldInputs(part.visit);
    this.#heardSounds = new HeardSoundKeeper(part, () => record.settled());
    this.#record = record;
    this.#news = news;
    this.talk = new PageTalk({
      changed: () => this.#changed(),
      hush: () => this.#hush(false),
      onUtterance: (utterance) => void this.#arrive(() => this.#hearSpoken(utterance)),
      onFault: (fault, sentence) =>
        this.#work((run) => run.take({ type: 'edge.failed', edge: 'ear', fault, sentence })),
    });
    record.subscribe(() => this.#changed());
    record.onTold((message) => {
      if (message.kind === 'taken-over') return void left(message).finally(() => this.#leave(message));
      const { supervisor, vouched } = message;
      this.#work((run) => run.take({ type: 'supervisor.acknowledged', supervisor, from: 'own-device', vouched }));
    });
    this.#forgetNetwork = onReachable(() => {
      record.retryNow();
      void handInFiles().catch(() => undefined);
    });
  }

  /** Begins a visit in an empty record. */
  static open(edges: SessionEdges, opening: Opening): Promise<VisitSession> {
    return VisitSession.#begun(edges, { as: 'opened', opening });
  }

  /** Takes a visit over from another device. */
  static takeOver(edges: SessionEdges, { bodies, taking }: TakenVisit): Promise<VisitSession> {
    return VisitSession.#begun(edges, { as: 'taken-over', bodies, taking });
  }

  /** Takes up the visit that stands in the record. */
  static async resume(edges: SessionEdges): Promise<VisitSession> {
    const { taken } = edges;
    // The program ended between the lease and the first word.
    if (taken !== undefined && (await edges.record.read()).length <= taken.own)
      return VisitSession.takeOver(edges, taken);
    const bodies = await readAll(edges);
    const session = new VisitSession(edges);
    const events = readBodies(bodies);
    session.#held.takenUp(events);
    void session.#heardSounds.settle(events).catch(() => undefined);
    await session.#begin({ as: 'restored', bodies });
    return session;
  }

  static async #begun(edges: SessionEdges, beginning: Beginning): Promise<VisitSession> {
    const session = new VisitSession(edges);
    await session.#begin(beginning);
    return session;
  }

  /** After what hindered writing was mended: takes the visit up from its record. */
  async takeUpAgain(): Promise<void> {
    this.#run?.end();
    const bodies = await readAll({ record: this.#record, taken: this.#taken });
    this.#held.takenUp(readBodies(bodies));
    this.#problem = undefined;
    await this.#begin({ as: 'restored', bodies }).catch((error: unknown) => this.#stop(sentenceOf(error)));
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  /** The same object until something changes. */
  readonly state = (): SessionState => {
    this.#state ??= this.#makeState();
    return this.#state;
  };

  /**
   * Takes a typed sentence, as if it had been said.
   * @param back the line of what is left that it was, put back into the field
   */
  type(text: string, back: string): void {
    const id = this.#nextId();
    this.#held.hold({ id, by: 'line', words: text });
    this.#held.drop([back]);
    this.#hear({ id, ear: 'typed', text, alternatives: [], confidence: 1, accepted: true });
  }

  /** Holds what is not given yet, in place of what was held under its name; what is empty no longer. */
  hold(input: HeldInput): void {
    if (input.words === '') this.dropHeld([input.id]);
    else this.#held.hold(input);
  }

  /** These are given, or not wanted. */
  dropHeld(ids: readonly string[]): void {
    this.#held.drop(ids);
    this.#changed();
  }

  /** Takes what was entered by touch: it needs no understanding. `words` stand in the record as what was heard. */
  enter(meaning: Meaning, words: string): void {
    const id = this.#nextId();
    this.#held.hold({ id, by: 'touch', words });
    this.#work((run) =>
      run.take({
        type: 'heard.utterance',
        utterance: {
          id,
          ear: 'typed',
          accepted: true,
          confidence: 1,
          understanding: { heard: words, verdict: 'logged', meaning, confidence: 1 },
        },
      }),
    );
  }

  touch(command: CommandId): void {
    if (command === 'stop') this.#hush(true);
    this.#work((run) => run.touch(command));
  }

  /** Writes words over those of a dictation, by the number of its event. */
  writeOver(of: number, text: string): void {
    this.#work((run) => run.take({ type: 'wrote.words', of, text }));
  }

  /** A number without a unit is in these from now on; what was read stays as it was. */
  chooseUnits(units: UnitChoice): void {
    this.#work((run) => run.take({ type: 'chose.units', units }));
  }

  /**
   * Keeps a photo beside the record; it is on the disk before the record speaks of it.
   * @returns why it is not kept, in a sentence; undefined where it is
   */
  async keepPhoto(of: PhotoSubject, file: Blob): Promise<string | undefined> {
    const photo = await shrinkPhoto(file).catch(() => undefined);
    if (photo === undefined) return PHOTO.unreadable;
    try {
      const sha256 = await keepFile(this.#part, photo, { kind: 'photo', media: 'image/jpeg' });
      this.#work((run) => run.take({ type: 'took.photo', of, sha256 }));
      return undefined;
    } catch {
      return PHOTO.noRoom;
    }
  }

  /** What may be said now, what is asked first. */
  phrases(): Promise<readonly PhraseNow[]> {
    return this.#grammar.phrasesAt(this.state().expectation);
  }

  acknowledgeAsSupervisor(supervisor: string): void {
    this.#work((run) => run.take({ type: 'supervisor.acknowledged', supervisor, from: 'this-device' }));
  }

  retryNow(): void {
    this.#record.retryNow();
  }

  async end(): Promise<void> {
    await this.talk.end();
    this.#run?.end();
    this.#diagnosis.end();
    this.#grammar.end();
    this.#forgetNetwork();
    this.#news.close();
    await this.#record.close();
  }

  /** Another device carries the visit on: nothing more is said, heard or taken here. */
  #leave(by: TakenOver): void {
    if (this.#elsewhere !== undefined) return;
    this.#elsewhere = by;
    void this.talk.stopEar();
    this.#hush(true);
    void this.talk.mouth.speak({ id: 'taken-over', kind: 'warning', text: HAND_OVER.carriedOnElsewhere(by.name) });
    this.#changed();
  }

  async #begin(beginning: Beginning): Promise<void> {
    const bodies = beginning.as === 'opened' ? [] : beginning.bodies;
    const clock = new PageClock(lastTimeOf(readBodies(bodies).at(-1)));
    const run = await RunLink.begin(this.#edges(clock), beginning, (sentence) => this.#stop(sentence));
    this.#run = run;
    const { expectation, glance } = run.shown;
    this.talk.expect(expectation, glance.keeping !== 'none');
    run.onView((shown) => {
      this.talk.tell(shown.events);
      this.talk.expect(shown.expectation, shown.glance.keeping !== 'none');
      this.#changed();
    });
    this.#work(() => undefined);
  }

  #hush(evenCaution: boolean): void {
    if (this.#run === undefined) this.talk.mouth.hush(evenCaution);
    else this.#run.hush(evenCaution);
  }

  /** Gives the run something to do, and shows that it is at it until everything that follows has come about. */
  #work(give: (run: RunLink) => void): void {
    const run = this.#run;
    if (run === undefined || this.#elsewhere !== undefined) return;
    give(run);
    this.#busy += 1;
    this.#changed();
    const done = () => {
      this.#busy -= 1;
      this.#changed();
    };
    run.settled().then(done, (error: unknown) => {
      // Whatever stopped the run must be seen: where it was the record, #append has said so already.
      this.#problem ??= sentenceOf(error);
      done();
    });
  }

  #edges(clock: Clock): VisitEdges {
    return {
      clock,
      understand: (text, expectation, options) => this.#grammar.understand(text, expectation, options),
      diagnose: (unit, evidence, parked) => this.#diagnosis.ask(unit, evidence, parked),
      mouth: this.talk.mouth,
      append: (bodies) => this.#append(bodies),
    };
  }

  async #append(bodies: readonly string[]): Promise<void> {
    try {
      await this.#record.append(bodies);
    } catch (error) {
      this.#stop(sentenceOf(error));
      throw error;
    }
    const events = readBodies(bodies);
    this.#held.recorded(events);
    this.#news.tellGrown();
    // What cannot be sent now is sent later: by this page, another, or none.
    void this.#heardSounds.named(events).catch(() => undefined);
  }

  /** Nothing more can be taken until it is taken up again. */
  #stop(sentence: string): void {
    this.#problem = sentence;
    this.talk.mouth.hush(true);
    this.#changed();
  }

  #hear(
    utterance: Pick<Utterance, 'id' | 'ear' | 'text' | 'alternatives' | 'confidence' | 'accepted'> & {
      verdictMs?: number;
      sound?: KeptSound;
    },
  ): void {
    const began = performance.now() - (utterance.verdictMs ?? 0);
    this.#work((run) => {
      const forget = run.onView(() => {
        forget();
        // Last loud sample to verdict, for whoever looks into the browser's own timings; the bench reads it too.
        performance.measure('readback.heard', { start: Math.max(0, began), end: performance.now() });
      });
      run.hear(utterance);
    });
  }

  /** Brings its sound where that may be kept, which is on the disk before it is heard. */
  async #hearSpoken(utterance: Utterance): Promise<void> {
    const keeping = this.#run?.shown.glance.keeping ?? 'none';
    const sound = await this.#heardSounds.keep(utterance, keeping);
    const { samples: _samples, ...heard } = utterance;
    this.#hear(sound === undefined ? heard : { ...heard, sound });
  }

  #nextId(): string {
    this.#given += 1;
    return `typed-${this.#given}`;
  }

  #changed(): void {
    this.#state = undefined;
    for (const listener of this.#listeners) listener();
  }

  #makeState(): SessionState {
    if (this.#run === undefined) throw new Error('the session has not begun');
    const { glance, expectation } = this.#run.shown;
    return {
      ...this.talk.state(),
      glance,
      expectation,
      outbox: this.#record.state(),
      problem: this.#problem,
      busy: this.#busy > 0,
      building: this.#building,
      elsewhere: this.#elsewhere,
      left: this.#held.left,
    };
  }
}

const sentenceOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));
