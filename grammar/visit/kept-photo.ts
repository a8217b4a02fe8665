/** What a photo shows. */
export const PHOTO_SUBJECTS = ['plate', 'wiring', 'other'] as const;
export type PhotoSubject = (typeof PHOTO_SUBJECTS)[number];

/** A photo that was kept beside the record: sealed, by the SHA-256 of its sealed bytes in hex. */
export interface KeptPhoto {
  readonly of: PhotoSubject;
  readonly sha256: string;
}
