/** Sound that was kept of what was said: by the SHA-256 of its file in hex, and how long it lasts in milliseconds. */
export interface KeptSound {
  readonly sha256: string;
  readonly ms: number;
  /**
   * The file is sealed by the key of its visit and device, and sent to the server; the hash is that of the sealed bytes.
   * Records of earlier versions kept it open, on the device that heard it alone.
   */
  readonly sealed?: true;
}
