/** Sound that was kept of what was dictated: by the SHA-256 of its file in hex, and how long it lasts in milliseconds. */
export interface KeptSound {
  readonly sha256: string;
  readonly ms: number;
}
