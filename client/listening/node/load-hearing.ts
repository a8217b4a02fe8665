import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { performance } from 'node:perf_hooks';
import createNoiseModule from '@jitsi/rnnoise-wasm/dist/rnnoise-sync.js';
import createSpeechModule from 'soundswallower';
import type { Hearing } from '../hearing.ts';
import { ListeningError } from '../listening-error.ts';
import type { SpeechModule } from '../recogniser/speech-module.ts';
import type { NoiseModule } from '../sound/denoiser.ts';
import { openVisitHearing } from '../visit-hearing.ts';

const require = createRequire(import.meta.url);

/** Loads recogniser, model and noise gate from their packages. @throws ListeningError `model-missing` */
export async function loadHearing(): Promise<Hearing> {
  const speech = (await createSpeechModule()) as unknown as SpeechModule;
  const model = { id: 'bundled', folder: join(dirname(require.resolve('soundswallower')), 'model', 'en-us') } as const;
  return await openVisitHearing({ speech, model, rnnoise: await loadNoiseModule(), now: () => performance.now() });
}

async function loadNoiseModule(): Promise<NoiseModule> {
  const module = createNoiseModule();
  await module.ready.catch((error: unknown) => {
    throw new ListeningError('model-missing', { detail: String(error) });
  });
  return module;
}
