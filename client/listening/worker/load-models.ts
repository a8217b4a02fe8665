import createRnnoise from '@jitsi/rnnoise-wasm/dist/rnnoise.js';
import rnnoiseWasm from '@jitsi/rnnoise-wasm/dist/rnnoise.wasm?url';
import createSoundswallower from 'soundswallower';
import type { ModelChoice, SpeechModel, SpeechModule } from '../recogniser/speech-module.ts';
import type { VisitHearingParts } from '../visit-hearing.ts';
import { MODEL_FOLDERS } from './model-cache.ts';
import { modelFetch } from './model-fetch.ts';

declare const self: DedicatedWorkerGlobalScope;

/**
 * Recogniser, models and noise gate of a worker; `use` makes something of them, and loads what it needs of the models
 * meanwhile, from the cache or the server.
 */
export async function withModels<Made>(
  models: ModelChoice,
  use: (parts: VisitHearingParts) => Promise<Made>,
): Promise<Made> {
  const network = self.fetch.bind(self);
  // The recogniser asks for its model by the global fetch; it is given one that keeps what it fetched.
  self.fetch = modelFetch(network);
  try {
    const [speech, rnnoise] = await Promise.all([
      createSoundswallower() as unknown as Promise<SpeechModule>,
      createRnnoise({ locateFile: () => rnnoiseWasm }),
    ]);
    const model = models === 'bundled' ? MODELS.bundled : MODELS.wideband;
    const parts = { speech, model, rnnoise, now: () => performance.now() };
    return await use(models === 'both' ? { ...parts, second: MODELS.bundled } : parts);
  } finally {
    self.fetch = network;
  }
}

/** The wideband model has no dictionary of its own. */
const MODELS: Readonly<Record<SpeechModel['id'], SpeechModel>> = {
  bundled: { id: 'bundled', folder: MODEL_FOLDERS.bundled },
  wideband: { id: 'wideband', folder: MODEL_FOLDERS.wideband, dictionary: `${MODEL_FOLDERS.bundled}/dict.txt` },
};
