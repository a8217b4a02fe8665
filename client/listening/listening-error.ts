import type { EarFault } from './ear.ts';

/** What each fault of hearing says: what is wrong, and what to do next. `{detail}` is filled in by whoever met it. */
const SENTENCES: Readonly<Record<EarFault, string>> = {
  'no-microphone': 'No microphone was found: plug one in, or type and touch instead.',
  'permission-refused': 'The microphone may not be used: allow it in the settings, or type and touch instead.',
  'model-missing':
    'The recogniser could not be loaded ({detail}): check the folder of the model, or install the packages again with "npm ci".',
  'grammar-unknown-word': 'The recogniser has no pronunciation for {detail}: add one to the pronunciations, or reword.',
  'grammar-broken': 'The grammar could not be read ({detail}): give one JSGF grammar with a public rule.',
  'file-not-found': '{detail} could not be opened: check the path.',
  'not-a-wav': '{detail} is not a WAV file: convert it with "sox IN -r 16000 -c 1 -b 16 OUT.wav".',
  'wav-not-supported': '{detail}; PCM of 8 to 192 kHz is taken: convert it with "sox IN -r 16000 -c 1 -b 16 OUT.wav".',
  'wav-empty': '{detail} holds no sound: record it again.',
  'wav-cut-short': '{detail} was cut short ({missing} of its sound is missing): copy or record it again.',
  'nothing-heard': 'No speech was heard in {detail}: speak nearer to the microphone, or type and touch instead.',
  'device-lost': 'The microphone is gone: plug it in again, or type and touch instead.',
  'recogniser-missing': 'This browser has no recogniser of its own: choose the offline one under More, Sound.',
  'recogniser-refused': 'The browser does not let its recogniser be used: choose the offline one under More, Sound.',
  'recogniser-unreachable':
    'The browser’s recogniser cannot reach its service: choose the offline one under More, Sound.',
  'recogniser-silent': 'The browser’s recogniser does not answer: choose the offline one under More, Sound.',
  'language-missing':
    'The browser has no English of its own on this device: let it send the sound away, or choose the offline recogniser.',
};

/** A fault of hearing with its sentence as the message. */
export class ListeningError extends Error {
  readonly fault: EarFault;

  constructor(fault: EarFault, fill: Readonly<Record<string, string>> = {}) {
    super(SENTENCES[fault].replace(/\{(\w+)\}/g, (_, name: string) => fill[name] ?? ''));
    this.name = 'ListeningError';
    this.fault = fault;
  }
}
