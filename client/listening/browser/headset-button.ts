/** Some seconds long: browsers give the button of a headset to what has sounded for a while. */
const SECONDS = 6;
const RATE = 8_000;

/**
 * The button of a headset, by the W3C's Media Session: browsers give it to a page that plays something, so a silence is
 * played round and round while it is wanted. Every press counts, whatever the headset takes it for.
 */
export class HeadsetButton {
  readonly #silence = new Audio(URL.createObjectURL(silence()));
  readonly #actions: readonly MediaSessionAction[] = ['play', 'pause', 'stop'];

  /** To be made in a tap or a key: browsers let a page sound only after one. */
  constructor(pressed: () => void) {
    const session = navigator.mediaSession;
    this.#silence.loop = true;
    for (const action of this.#actions) {
      session?.setActionHandler(action, () => {
        pressed();
        void this.#play();
      });
    }
    void this.#play();
  }

  end(): void {
    for (const action of this.#actions) navigator.mediaSession?.setActionHandler(action, null);
    this.#silence.pause();
    URL.revokeObjectURL(this.#silence.src);
  }

  async #play(): Promise<void> {
    // Refused without a tap: the key on the screen is still there.
    await this.#silence.play().catch(() => undefined);
    if (navigator.mediaSession !== undefined) navigator.mediaSession.playbackState = 'playing';
  }
}

/** WAVE, mono, 8-bit PCM, where 128 is silence. */
function silence(): Blob {
  const samples = SECONDS * RATE;
  const bytes = new Uint8Array(44 + samples).fill(128);
  const view = new DataView(bytes.buffer);
  const words: readonly [number, string][] = [
    [0, 'RIFF'],
    [8, 'WAVEfmt '],
    [36, 'data'],
  ];
  for (const [at, word] of words) for (const [i, letter] of [...word].entries()) bytes[at + i] = letter.charCodeAt(0);
  view.setUint32(4, 36 + samples, true);
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true);
  view.setUint16(22, 1, true);
  view.setUint32(24, RATE, true);
  view.setUint32(28, RATE, true);
  view.setUint16(32, 1, true);
  view.setUint16(34, 8, true);
  view.setUint32(40, samples, true);
  return new Blob([bytes], { type: 'audio/wav' });
}
