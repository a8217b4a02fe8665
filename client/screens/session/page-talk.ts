import type { Expectation } from '../../../grammar/phrases/meaning.ts';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import type { Ear, Utterance } from '../../listening/ear.ts';
import type { SaidAloud } from '../../listening/profile/as-heard.ts';
import type { PlaceMeasured } from '../../listening/sound/judge-place.ts';
import { OfflineVoice } from '../../speaking/browser/offline-voice.ts';
import { PageMouth, type PageMouthState } from '../../speaking/browser/page-mouth.ts';
import type { Mouth } from '../../speaking/mouth.ts';
import type { ReadAloud } from '../../words/talk/read-aloud-words.ts';
import { type HearingState, PageHearing } from './page-hearing.ts';
import { PageSounds, speakingManner } from './page-sounds.ts';
import { type ReadAloudTalk, readAloud } from './read-aloud.ts';
import { type CheckStep, checkSound } from './sound-check.ts';

/** The quiet window after own speech, in milliseconds: the room's echo and the speaker's own delay. Our choice. */
const ECHO_MS = 300;

/** What a talk tells whoever has it. */
interface TalkEdges {
  readonly changed: () => void;
  /** What is being spoken gives way, and what waits behind it is not spoken. */
  readonly hush: () => void;
  readonly onUtterance: (utterance: Utterance) => void;
  readonly onFault: Parameters<Ear['start']>[0]['onFault'];
}

/** The ear, the mouth and the sounds of a page, and what is done with them beside the visit. */
export class PageTalk {
  readonly #edges: TalkEdges;
  readonly #sounds = new PageSounds();
  readonly #mouth: PageMouth;
  readonly #ear: PageHearing;
  #expectation: Expectation = { readings: [] };
  #givesSound = false;
  #echo: ReturnType<typeof setTimeout> | undefined;

  constructor(edges: TalkEdges) {
    this.#edges = edges;
    this.#ear = new PageHearing(edges.changed, () => {
      edges.hush();
      this.#sounds.play('ready');
    });
    this.#mouth = new PageMouth(
      globalThis.speechSynthesis,
      (state) => {
        this.#heed(state);
        edges.changed();
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
  }

  get mouth(): Mouth {
    return this.#mouth;
  }

  state(): { readonly ear: HearingState; readonly mouth: PageMouthState } {
    return { ear: this.#ear.state(), mouth: this.#mouth.state() };
  }

  /** What is likely said now, and whether each utterance brings its sound along. */
  expect(expectation: Expectation, givesSound: boolean): void {
    this.#expectation = expectation;
    this.#givesSound = givesSound;
    this.#ear.expect(expectation);
    this.#ear.giveSound(givesSound);
  }

  /** The sign for what has just come into the record. */
  tell(events: readonly VisitEvent[]): void {
    this.#sounds.tell(events);
  }

  /** Called from a tap or key, so that the browser lets the page listen and speak. */
  async startEar(): Promise<void> {
    this.#mouth.prime();
    this.#sounds.prime();
    this.#ear.expect(this.#expectation);
    await this.#ear.start({ onUtterance: this.#edges.onUtterance, onFault: this.#edges.onFault });
  }

  /** A key that is held to talk went down or came up. */
  holdToTalk(down: boolean): void {
    this.#ear.hold(down);
  }

  stopEar(): Promise<void> {
    return this.#ear.stop();
  }

  /** Measures the place and a test number; nothing that is said meanwhile reaches the visit. */
  async checkSound(tell: (step: CheckStep) => void): Promise<PlaceMeasured | undefined> {
    await this.#startIfOff();
    this.#edges.hush();
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
      this.#ear.expect(this.#expectation);
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
    await this.#startIfOff();
    const port = this.#ear.sound();
    if (port === undefined) return 'impossible';
    port.close();
    this.#edges.hush();
    const said: Utterance[] = [];
    this.#ear.divert((utterance) => said.push(utterance));
    this.#ear.giveSound(true);
    try {
      const parts = { expect: (expectation: Expectation) => this.#ear.expect(expectation), said };
      return (await readAloud(parts, sentences, talk)) ?? 'unheard';
    } finally {
      this.#ear.divert(undefined);
      this.expect(this.#expectation, this.#givesSound);
    }
  }

  async end(): Promise<void> {
    await this.#ear.stop();
    this.#mouth.hush(true);
    this.#sounds.end();
  }

  async #startIfOff(): Promise<void> {
    if (['off', 'failed'].includes(this.#ear.state().ear)) await this.startEar();
  }

  /** While a voice sounds, and until its echo is gone, only the urgent words are heeded; what is only shown is silent. */
  #heed({ voice, speaking }: PageMouthState): void {
    clearTimeout(this.#echo);
    if (voice !== undefined && speaking !== undefined) this.#ear.heed('urgent', speaking.text);
    else this.#echo = setTimeout(() => this.#ear.heed('everything'), voice === undefined ? 0 : ECHO_MS);
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
