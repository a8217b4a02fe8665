import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { performance } from 'node:perf_hooks';
import createNoiseModule from '@jitsi/rnnoise-wasm/dist/rnnoise-sync.js';
import createSpeechModule from 'soundswallower';
import { openGrammarHearing } from '../grammar-hearing.ts';
import type { Hearing } from '../hearing.ts';
import { ListeningError } from '../listening-error.ts';
import type { VoiceProfile } from '../profile/voice-profile.ts';
import type { ModelChoice, SpeechModel, SpeechModule } from '../recogniser/speech-module.ts';
import type { NoiseModule } from '../sound/denoiser.ts';
import { openVisitHearing, type VisitHearingParts } from '../visit-hearing.ts';
import { layOutWideband, widebandFolder } from './wideband-model.ts';

const require = createRequire(import.meta.url);
const BUNDLED = join(dirname(require.resolve('soundswallower')), 'model', 'en-us');

const BUNDLED_MODEL: SpeechModel = { id: 'bundled', folder: BUNDLED };

export interface HearingOptions {
  /** JSGF to hear by instead of the grammar of a visit. */
  readonly grammar?: string;
  /** Both where left out. */
  readonly models?: ModelChoice;
  /** Folder of another 16 kHz model than that of the package. */
  readonly model?: string;
  /** What was learnt of the voice that is to be heard. */
  readonly profile?: VoiceProfile;
  /** What computing is timed by, in milliseconds; the clock on the wall where left out. */
  readonly now?: () => number;
}

/** Loads recogniser, model and noise gate from their packages. @throws ListeningError `model-missing`, `grammar-broken` */
export async function loadHearing({ grammar, ...options }: HearingOptions = {}): Promise<Hearing> {
  const parts = await loadHearingParts(options);
  return grammar === undefined ? await openVisitHearing(parts) : await openGrammarHearing(parts, grammar);
}

/** Recogniser, model and noise gate, not yet put together. @throws ListeningError `model-missing` */
export async function loadHearingParts({
  models = 'both',
  model,
  profile,
  now,
}: Omit<HearingOptions, 'grammar'>): Promise<VisitHearingParts> {
  return {
    speech: (await createSpeechModule()) as unknown as SpeechModule,
    model: models === 'bundled' ? BUNDLED_MODEL : widebandModel(model ?? widebandFolder()),
    ...(models === 'both' && { second: BUNDLED_MODEL }),
    ...(profile !== undefined && { profile }),
    rnnoise: await loadNoiseModule(),
    now: now ?? (() => performance.now()),
  };
}

/** The dictionary is the bundled one: the model has none of its own. */
const widebandModel = (folder: string): SpeechModel => ({
  id: 'wideband',
  folder: layOutWideband(folder),
  dictionary: join(BUNDLED, 'dict.txt'),
});

async function loadNoiseModule(): Promise<NoiseModule> {
  const module = createNoiseModule();
  await module.ready.catch((error: unknown) => {
    throw new ListeningError('model-missing', { detail: String(error) });
  });
  return module;
}
