import type { Gate } from './gate.ts';
import type { SpeechModel } from './speech-module.ts';

/** Where each model's margins are cut. */
export const GATES: Readonly<Record<SpeechModel['id'], Gate>> = {
  bundled: { reject: -12, sure: -6, scale: 2 },
  wideband: { reject: -12, sure: -6, scale: 2 },
};
