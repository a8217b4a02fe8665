export interface VoiceOrder {
  readonly number: number;
  readonly text: string;
  readonly rate: number;
}

export type VoiceNews =
  | { readonly news: 'ready' }
  /** It cannot be had: what stood in the way. */
  | { readonly news: 'failed'; readonly detail: string }
  /** 16 kHz, mono, -1…1; empty where it could not be said. */
  | { readonly news: 'said'; readonly number: number; readonly samples: Float32Array<ArrayBuffer> };
