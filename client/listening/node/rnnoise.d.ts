declare module '@jitsi/rnnoise-wasm/dist/rnnoise-sync.js' {
  import type { NoiseModule } from '../sound/denoiser.ts';

  const create: () => NoiseModule & { readonly ready: Promise<unknown> };
  export default create;
}
