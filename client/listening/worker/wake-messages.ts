/** What the wake word needs, all of it the user's own: base64 of the two files. */
export interface WakeParts {
  readonly key: string;
  readonly model: string;
  readonly keyword: string;
}

/** Load the engine, then take sound from the port: blocks of 16 kHz samples, -1…1. */
export interface WakeOrder {
  readonly parts: WakeParts;
  readonly port: MessagePort;
}

export type WakeNews =
  | { readonly news: 'ready' }
  | { readonly news: 'woken' }
  /** The engine's own words. */
  | { readonly news: 'failed'; readonly detail: string };
