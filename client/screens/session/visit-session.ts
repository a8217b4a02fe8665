import type { Expectation, Meaning } from '../../../grammar/phrases/meaning.ts';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import { type FoldedVisit, foldVisit } from '../../../grammar/visit/fold-visit.ts';
import type { PhotoSubject } from '../../../grammar/visit/kept-photo.ts';
import type { KeptSound } from '../../../grammar/visit/kept-sound.ts';
import type { TakenOver } from '../../../grammar/visit/messages.ts';
import { readBodies } from '../../../grammar/visit/read-bodies.ts';
import { keepsSound } from '../../../grammar/visit/standing.ts';
import type { CommandId } from '../../../grammar/vocabulary/commands.ts';
import type { UnitChoice } from '../../../grammar/vocabulary/unit-choice.ts';
import type { Utterance } from '../../listening/ear.ts';
import type { SaidAloud } from '../../listening/profile/as-heard.ts';
import type { PlaceMeasured } from '../../listening/sound/judge-place.ts';
import { handInFiles } from '../../record/browser/hand-in.ts';
import { keepFile } from '../../record/browser/kept-files.ts';
import { type TakenVisit, withTaken } from '../../record/browser/lease-database.ts';
import { onReachable } from '../../record/browser/link-edge.ts';
import type { TabNews } from '../../record/browser/tab-news.ts';
import type { VisitPart } from '../../record/browser/visit-keys.ts';
import { inTurn } from '../../record/in-turn.ts';
import type { OutboxState } from '../../record/outbox.ts';
import type { VisitRecord } from '../../record/visit-record.ts';
import { OfflineVoice } from '../../speaking/browser/offline-voice.ts';
import { PageMouth, type PageMouthState } from '../../speaking/browser/page-mouth.ts';
import type { VisitContext } from '../../visit/chart/context.ts';
import { type VisitEdges, VisitRun } from '../../visit/run/visit-run.ts';
import { PHOTO } from '../../words/shown/photo-words.ts';
import { SAY } from '../../words/talk/prompts.ts';
import type { ReadAloud } from '../../words/talk/read-aloud-words.ts';
import { DiagnosisLink } from './diagnosis-link.ts';
import { HeardSoundKeeper } from './heard-sound-keeper.ts';
import { PageClock } from './page-clock.ts';
import { type HearingState, PageHearing } from './page-hearing.ts';
import { PageSounds, speakingManner } from './page-sounds.ts';
import { type ReadAloudTalk, readAloud } from './read-aloud.ts';
import { shrinkPhoto } from './shrink-photo.ts';
import { type CheckStep, checkSound } from './sound-check.ts';
import { UnderstandLink } from './understand-link.ts';

/** All that the technician's page shows of a running visit. A new object for every change. */
export interface SessionState {
  readonly folded: FoldedVisit;
  readonly context: VisitContext;
  readonly outbox: OutboxState;
  readonly ear: HearingState;
  readonly mouth: PageMouthState;
  /** Nothing more can be written: the visit stands until this is mended and taken up again. */
  readonly problem: string | undefined;
  /** Something is being taken, spoken or worked out. */
  readonly busy: boolean;
  /** How much of the unit's table is built, 0…1, while the diagnosis waits for it. */
  readonly building: number | undefined;
  /** Set where another device carries the visit on: nothing more is taken here. */
  readonly elsewhere: TakenOver | undefined;
}

/** The quiet window after own speech, in milliseconds: the room's echo and the speaker's own delay. Our choice. */
const ECHO_MS = 300;

/** Where a session writes. */
export interface SessionEdges {
  readonly record: VisitRecord;
  /** Tells other tabs of this browser whenever the record grows. */
  readonly news: TabNews;
  /** Whose part of the visit is written here. */
  readonly part: VisitPart;
  /** Set where this device took the visit over. */
  readonly taken: TakenVisit | undefined;
  /** Another device carries the visit on: to be kept, so that it is not taken up here again. */
  readonly left: (by: TakenOver) => Promise<void>;
}

export type Opening = Parameters<typeof VisitRun.open>[1];

/**
 * One visit running in a page: the visit itself with its edges here (microphone or typing, voice, clock, log with
 * outbox), and the state that the page shows.
 */
export class VisitSession {
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
  readonly #understand = new UnderstandLink();
  readonly #sounds = new PageSounds();
  readonly #mouth: PageMouth;
  readonly #ear: PageHearing;
  readonly #clock: PageClock;
  readonly #listeners = new Set<() => void>();
  readonly #events: VisitEvent[];
  #run: VisitRun | undefined;
  #problem: string | undefined;
  #elsewhere: TakenOver | undefined;
  #state: SessionState | undefined;
  #typed = 0;
  #busy = 0;
  #building: number | undefined;
  #echo: ReturnType<typeof setTimeout> | undefined;

  private constructor(edges: SessionEdges, events: readonly VisitEvent[]) {
    const { record, news, part, taken, left } = edges;
    this.#taken = taken;
    this.#part = part;
    this.#heardSounds = new HeardSoundKeeper(part);
    this.#record = record;
    this.#news = news;
    this.#events = [...events];
    this.#clock = new PageClock(timeOf(events.at(-1)));
    this.#ear = new PageHearing(
      () => this.#changed(),
      () => {
        this.#hush(false);
        this.#sounds.play('ready');
      },
    );
    this.#mouth = new PageMouth(
      globalThis.speechSynthesis,
      (state) => {
        this.#heed(state);
        this.#changed();
      },
      {
        loadVoice: () =>
          OfflineVoice.load(
            () => this.#sounds.context(),
            (samples) => this.#ear.plays(samples),
          ),
        manner: () => speakingManner(),
      },
    );
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
  static open(edges: SessionEdges, opening: Opening): VisitSession {
    const session = new VisitSession(edges, []);
    session.#begin(VisitRun.open(session.#edges(), opening));
    return session;
  }

  /** Takes a visit over from another device. */
  static takeOver(edges: SessionEdges, { bodies, taking }: TakenVisit): VisitSession {
    const session = new VisitSession(edges, readBodies(bodies));
    session.#begin(VisitRun.takeOver(session.#edges(), bodies, taking));
    return session;
  }

  /** Takes up the visit that stands in the record. */
  static async resume(edges: SessionEdges): Promise<VisitSession> {
    const { taken } = edges;
    // The program ended between the lease and the first word.
    if (taken !== undefined && (await edges.record.read()).length <= taken.own)
      return VisitSession.takeOver(edges, taken);
    const bodies = await readAll(edges);
    const session = new VisitSession(edges, readBodies(bodies));
    void session.#heardSounds.settle(session.#events).catch(() => undefined);
    session.#begin(await VisitRun.restore(session.#edges(), bodies));
    return session;
  }

  /** After what hindered writing was mended: takes the visit up from its record. */
  async takeUpAgain(): Promise<void> {
    const bodies = await readAll({ record: this.#record, taken: this.#taken });
    this.#events.splice(0, this.#events.length, ...readBodies(bodies));
    this.#problem = undefined;
    this.#begin(await VisitRun.restore(this.#edges(), bodies));
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

  /** Takes a typed sentence, as if it had been said. */
  type(text: string): void {
    this.#hear({ id: this.#nextTyped(), ear: 'typed', text, alternatives: [], confidence: 1, accepted: true });
  }

  /** Takes what was entered by touch: it needs no understanding. `words` stand in the record as what was heard. */
  enter(meaning: Meaning, words: string): void {
    this.#work((run) =>
      run.take({
        type: 'heard.utterance',
        utterance: {
          id: this.#nextTyped(),
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

  acknowledgeAsSupervisor(supervisor: string): void {
    this.#work((run) => run.take({ type: 'supervisor.acknowledged', supervisor, from: 'this-device' }));
  }

  /** Called from a tap or key, so that the browser lets the page listen and speak. */
  async startEar(): Promise<void> {
    this.#mouth.prime();
    this.#sounds.prime();
    this.#ear.expect(this.#run?.expectation ?? { readings: [] });
    await this.#ear.start({
      onUtterance: (utterance) => void this.#arrive(() => this.#hearSpoken(utterance)),
      onFault: (fault, sentence) =>
        this.#work((run) => run.take({ type: 'edge.failed', edge: 'ear', fault, sentence })),
    });
  }

  /** A key that is held to talk went down or came up. */
  holdToTalk(down: boolean): void {
    this.#ear.hold(down);
  }

  /** Measures the place and a test number; nothing that is said meanwhile reaches the visit. */
  async checkSound(tell: (step: CheckStep) => void): Promise<PlaceMeasured | undefined> {
    if (['off', 'failed'].includes(this.#ear.state().ear)) await this.startEar();
    this.#hush(false);
    const said: Utterance[] = [];
    this.#ear.divert((utterance) => said.push(utterance));
    // Numbers come most surely where one is expected.
    this.#ear.expect({ readings: [{ quantity: 'voltage', at: ['L1', 'ground'] }] });
    try {
      return await checkSound(
        {
          sound: () => this.#ear.sound(),
          hearing: () => this.#ear.state().ear === 'hearing',
          speak: async (text) => {
            await this.#mouth.speak({ id: 'sound-check', kind: 'answer', text });
            return this.#mouth.state().voice !== undefined;
          },
          nextSaid: (withinMs) => nextSaid(said, withinMs),
        },
        tell,
      );
    } finally {
      this.#ear.divert(undefined);
      this.#ear.expect(this.#run?.expectation ?? { readings: [] });
    }
  }

  /**
   * Takes the sound of sentences that are read aloud; nothing of it reaches the visit, and none of it is kept.
   * @returns `impossible` where this ear keeps its sound to itself; `unheard` where nothing was said any more
   */
  async readAloud(
    sentences: readonly ReadAloud[],
    talk: ReadAloudTalk,
  ): Promise<readonly SaidAloud[] | 'impossible' | 'unheard'> {
    if (['off', 'failed'].includes(this.#ear.state().ear)) await this.startEar();
    const port = this.#ear.sound();
    if (port === undefined) return 'impossible';
    port.close();
    this.#hush(false);
    const said: Utterance[] = [];
    this.#ear.divert((utterance) => said.push(utterance));
    this.#ear.giveSound(true);
    try {
      const parts = { expect: (expectation: Expectation) => this.#ear.expect(expectation), said };
      return (await readAloud(parts, sentences, talk)) ?? 'unheard';
    } finally {
      this.#ear.divert(undefined);
      this.#ear.giveSound(this.#run !== undefined && keepsSound(this.#run.context));
      this.#ear.expect(this.#run?.expectation ?? { readings: [] });
    }
  }

  stopEar(): Promise<void> {
    return this.#ear.stop();
  }

  retryNow(): void {
    this.#record.retryNow();
  }

  async end(): Promise<void> {
    await this.#ear.stop();
    this.#mouth.hush(true);
    this.#diagnosis.end();
    this.#understand.end();
    this.#forgetNetwork();
    this.#sounds.end();
    this.#news.close();
    await this.#record.close();
  }

  /** Another device carries the visit on: nothing more is said, heard or taken here. */
  #leave(by: TakenOver): void {
    if (this.#elsewhere !== undefined) return;
    this.#elsewhere = by;
    void this.#ear.stop();
    this.#hush(true);
    void this.#mouth.speak({ id: 'taken-over', kind: 'warning', text: SAY.carriedOnElsewhere(by.name) });
    this.#changed();
  }

  #begin(run: VisitRun): void {
    this.#run = run;
    run.onView(({ expectation, events }) => {
      this.#sounds.tell(events);
      this.#ear.expect(expectation);
      this.#ear.giveSound(keepsSound(run.context));
      this.#changed();
    });
    this.#ear.giveSound(keepsSound(run.context));
    this.#work(() => undefined);
  }

  #hush(evenCaution: boolean): void {
    if (this.#run === undefined) this.#mouth.hush(evenCaution);
    else this.#run.hush(evenCaution);
  }

  /** Gives the run something to do, and shows that it is at it until everything that follows has come about. */
  #work(give: (run: VisitRun) => void): void {
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
      this.#problem ??= error instanceof Error ? error.message : String(error);
      done();
    });
  }

  #edges(): VisitEdges {
    return {
      understand: (text, expectation, options) => this.#understand.ask(text, expectation, options),
      diagnose: (unit, evidence, parked) => this.#diagnosis.ask(unit, evidence, parked),
      mouth: this.#mouth,
      clock: this.#clock,
      append: (bodies) => this.#append(bodies),
    };
  }

  async #append(bodies: readonly string[]): Promise<void> {
    try {
      await this.#record.append(bodies);
      this.#news.tellGrown();
      const events = readBodies(bodies);
      this.#events.push(...events);
      // What cannot be sent now is sent later: by this page, another, or none.
      void this.#heardSounds.named(events).catch(() => undefined);
    } catch (error) {
      this.#problem = error instanceof Error ? error.message : String(error);
      this.#mouth.hush(true);
      this.#changed();
      throw error;
    }
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
    const run = this.#run;
    const sound = run === undefined ? undefined : await this.#heardSounds.keep(utterance, run.context);
    const { samples: _samples, ...heard } = utterance;
    this.#hear(sound === undefined ? heard : { ...heard, sound });
  }

  /** While a voice sounds, and until its echo is gone, only the urgent words are heeded; what is only shown is silent. */
  #heed({ voice, speaking }: PageMouthState): void {
    clearTimeout(this.#echo);
    if (voice !== undefined && speaking !== undefined) this.#ear.heed('urgent', speaking.text);
    else this.#echo = setTimeout(() => this.#ear.heed('everything'), voice === undefined ? 0 : ECHO_MS);
  }

  #nextTyped(): string {
    this.#typed += 1;
    return `typed-${this.#events.length}-${this.#typed}`;
  }

  #changed(): void {
    this.#state = undefined;
    for (const listener of this.#listeners) listener();
  }

  #makeState(): SessionState {
    if (this.#run === undefined) throw new Error('the session has not begun');
    return {
      folded: foldVisit(this.#events),
      context: this.#run.context,
      outbox: this.#record.state(),
      ear: this.#ear.state(),
      mouth: this.#mouth.state(),
      problem: this.#problem,
      busy: this.#busy > 0,
      building: this.#building,
      elsewhere: this.#elsewhere,
    };
  }
}

/** The first of what is said from now on that was recognised; bystanders' talk is none. */
async function nextSaid(said: Utterance[], withinMs: number): Promise<string | undefined> {
  said.splice(0);
  const until = performance.now() + withinMs;
  while (performance.now() < until) {
    await new Promise((resolve) => setTimeout(resolve, 50));
    const heard = said.find(({ accepted }) => accepted);
    if (heard !== undefined) return heard.text;
  }
  return undefined;
}

function timeOf(event: VisitEvent | undefined) {
  return event === undefined ? undefined : event.type === 'input.taken' ? event.input.time : event.time;
}

/** What the visit is as it stands: before it was taken over here, and since. */
async function readAll({ record, taken }: Pick<SessionEdges, 'record' | 'taken'>): Promise<readonly string[]> {
  return withTaken(await record.read(), taken).map(({ body }) => body);
}
