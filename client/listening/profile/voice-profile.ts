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
}

interface Adaptable {
  readonly pronunciations: Pronunciations;
  readonly gates: Readonly<Record<SpeechModel['id'], Gate>>;
}

/** The parts of an ear as they are for that person. */
export function adapted<Parts extends Adaptable>(parts: Parts, profile: VoiceProfile | undefined): Parts {
  if (profile === undefined) return parts;
  const pronunciations: Record<string, readonly string[]> = { ...parts.pronunciations };
  for (const [word, forms] of Object.entries(profile.pronunciations)) {
    pronunciations[word] = [...(pronunciations[word] ?? []), ...forms];
  }
  const gate = { ...parts.gates[profile.model], mean: profile.mean };
  return { ...parts, pronunciations, gates: { ...parts.gates, [profile.model]: gate } };
}
