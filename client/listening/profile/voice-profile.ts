import type { Gate } from '../recogniser/gate.ts';
import type { Pronunciations } from '../recogniser/grammar-decoder.ts';
import type { SpeechModel } from '../recogniser/speech-module.ts';

/** What was learnt of one person's voice for one model. Kept on the device only. */
export interface VoiceProfile {
  readonly model: SpeechModel['id'];
  /** The mean cepstrum of the person's speech. */
  readonly mean: readonly number[];
  /** How the person says some words, beside how the dictionary has them. */
  readonly pronunciations: Pronunciations;
  /** The margin from which what is expected is taken without a second look. Not learnt at first. */
  readonly sure?: number;
  /** The loud part of what the person says into this microphone, in dBFS. Not learnt at first. */
  readonly voiceDb?: number;
}

interface Adaptable {
  readonly pronunciations: Pronunciations;
  readonly voiceDb?: number;
  readonly gates: Readonly<Record<SpeechModel['id'], Gate>>;
}

/** The parts of an ear as they are for that person. */
export function adapted<Parts extends Adaptable>(parts: Parts, profile: VoiceProfile | undefined): Parts {
  if (profile === undefined) return parts;
  const pronunciations: Record<string, readonly string[]> = { ...parts.pronunciations };
  for (const [word, forms] of Object.entries(profile.pronunciations)) {
    pronunciations[word] = [...(pronunciations[word] ?? []), ...forms];
  }
  const { model, mean, sure, voiceDb } = profile;
  const gate = { ...parts.gates[model], mean, ...(sure !== undefined && { sure }) };
  const known = { ...parts, pronunciations, gates: { ...parts.gates, [model]: gate } };
  return voiceDb === undefined ? known : { ...known, voiceDb };
}
