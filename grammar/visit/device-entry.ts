import type { VisitEvent } from './events.ts';

/** One entry of a device's record of a visit. */
export interface DeviceEntry {
  readonly device: string;
  readonly epoch: number;
  readonly seq: number;
  /** Where it is known: a take-over has to name the same. */
  readonly hash?: string;
  readonly event: VisitEvent;
}
