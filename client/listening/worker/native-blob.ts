/** Stands in the bundle where the recogniser imports its stand-in for Blob. */
export const Blob = globalThis.Blob;
