import { existsSync, mkdtempSync, symlinkSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { performance } from 'node:perf_hooks';
import createNoiseModule from '@jitsi/rnnoise-wasm/dist/rnnoise-sync.js';
import createSpeechModule from 'soundswallower';
import { openGrammarHearing } from '../grammar-hearing.ts';
import type { Hearing } from '../hearing.ts';
import { ListeningError } from '../listening-error.ts';
import type { SpeechModel, SpeechModule } from '../recogniser/speech-module.ts';
import { WIDEBAND_FEATURES } from '../recogniser/wideband-features.ts';
import type { NoiseModule } from '../sound/denoiser.ts';
import { openVisitHearing, type VisitHearingParts } from '../visit-hearing.ts';

const require = createRequire(import.meta.url);
const BUNDLED = join(dirname(require.resolve('soundswallower')), 'model', 'en-us');

const BUNDLED_MODEL: SpeechModel = { id: 'bundled', folder: BUNDLED };

export interface HearingOptions {
  /** JSGF to hear by instead of the grammar of a visit. */
  readonly grammar?: string;
  /** Folder of a wideband model (Debian's pocketsphinx-en-us: /usr/share/pocketsphinx/model/en-us/en-us). */
  readonly model?: string;
  /** With a wideband model: whether the bundled one is asked as well, and what they do not agree on is doubted. */
  readonly both?: boolean;
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
  model,
  both,
  now,
}: Omit<HearingOptions, 'grammar'>): Promise<VisitHearingParts> {
  return {
    speech: (await createSpeechModule()) as unknown as SpeechModule,
    model: model === undefined ? BUNDLED_MODEL : widebandModel(model),
    ...(model !== undefined && both === true && { second: BUNDLED_MODEL }),
    rnnoise: await loadNoiseModule(),
    now: now ?? (() => performance.now()),
  };
}

/** The model's own files beside the description that the recogniser reads; the dictionary is the bundled one. */
function widebandModel(folder: string): SpeechModel {
  const files = ['mdef', 'means', 'variances', 'sendump', 'transition_matrices', 'noisedict'];
  const missing = files.filter((file) => !existsSync(join(folder, file)));
  if (missing.length > 0) {
    throw new ListeningError('model-missing', { detail: `${folder} has no ${missing.join(', ')}` });
  }
  const beside = mkdtempSync(join(tmpdir(), 'readback-model-'));
  for (const file of files) {
    symlinkSync(resolve(folder, file), join(beside, file === 'noisedict' ? 'noisedict.txt' : file));
  }
  writeFileSync(join(beside, 'feat_params.json'), JSON.stringify(WIDEBAND_FEATURES));
  return { id: 'wideband', folder: beside, dictionary: join(BUNDLED, 'dict.txt') };
}

async function loadNoiseModule(): Promise<NoiseModule> {
  const module = createNoiseModule();
  await module.ready.catch((error: unknown) => {
    throw new ListeningError('model-missing', { detail: String(error) });
  });
  return module;
}
