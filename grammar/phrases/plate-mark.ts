import type { Meaning } from './meaning.ts';

export type PlateMark = Extract<Meaning, { kind: 'nameplate' }>;

/** Model and serial number as they were said or written, and what else was said with them. */
export interface PlateMarks {
  readonly marks: readonly PlateMark[];
  readonly rest: string;
}
