/** The module's own package carries no types. */
declare module '@jitsi/rnnoise-wasm/dist/rnnoise.js' {
  const createModule: (options: {
    /** Where its WebAssembly is. */
    locateFile(name: string): string;
  }) => Promise<import('../sound/denoiser.ts').NoiseModule>;
  export default createModule;
}
