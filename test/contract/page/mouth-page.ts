import { EARCONS, type Earcon, playEarcon } from '../../../client/speaking/browser/earcons.ts';
import { OfflineVoice } from '../../../client/speaking/browser/offline-voice.ts';
import { PageMouth } from '../../../client/speaking/browser/page-mouth.ts';
import type { Prompt } from '../../../client/speaking/mouth.ts';

const RATE = 16_000;

/** A mouth in a real page, and an ear at its audio context, for a test that stands outside. */
const page = {
  mouth: undefined as PageMouth | undefined,
  context: new AudioContext(),
  states: [] as (string | undefined)[],

  async make(rate = 1): Promise<void> {
    await page.context.resume();
    const loadVoice = () => OfflineVoice.load(() => page.context);
    page.mouth = new PageMouth(undefined, ({ speaking }) => page.states.push(speaking?.text), {
      loadVoice,
      manner: () => ({ silent: false, rate }),
    });
    page.mouth.prime();
    while (page.mouth.state().voice === undefined) await new Promise((resolve) => setTimeout(resolve, 50));
  },

  outcome: undefined as string | undefined,
  speak(prompt: Prompt): void {
    page.outcome = undefined;
    page.mouth?.speak(prompt).then((how) => {
      page.outcome = how;
    });
  },

  /** How long a sentence sounds, in milliseconds: what was handed to the loudspeaker, whatever the machine is busy with. */
  async sounding(text: string): Promise<number> {
    const start = AudioBufferSourceNode.prototype.start;
    let seconds = 0;
    AudioBufferSourceNode.prototype.start = function (this: AudioBufferSourceNode, ...when) {
      seconds += (this.buffer?.duration ?? 0) / this.playbackRate.value;
      start.apply(this, when);
    };
    await page.mouth?.speak({ id: 'timed', kind: 'step', text });
    AudioBufferSourceNode.prototype.start = start;
    return seconds * 1000;
  },

  /** The energy of an earcon in steps of 20 ms, as it would sound. */
  async earcon(name: Earcon): Promise<number[]> {
    const context = new OfflineAudioContext(1, RATE / 2, RATE);
    playEarcon(context, name);
    const samples = (await context.startRendering()).getChannelData(0);
    return Array.from({ length: samples.length / 320 }, (_, step) =>
      Math.sqrt(samples.subarray(step * 320, step * 320 + 320).reduce((sum, x) => sum + x * x, 0) / 320),
    );
  },
  earcons: Object.keys(EARCONS) as Earcon[],
};

export type MouthPage = typeof page;
Object.assign(globalThis, { mouthPage: page });
