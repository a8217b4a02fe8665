import type { ServerMessage } from '../../grammar/visit/messages.ts';

export interface VisitName {
  readonly company: string;
  readonly visit: string;
}

/** What a server is told by the others. */
export interface PeerEars {
  /** Visits have grown; which, is not known where `all` is said. */
  grown(visits: readonly VisitName[] | 'all'): void;
  /** Somebody may have lost what they were let in by. */
  changed(): void;
  /** Says a message to the devices that write a visit here; how many those are. */
  say(visit: VisitName, message: ServerMessage): number;
}

/** Other server processes on the same record. What they are told is a hint: it may be lost or come twice. */
export interface Peers {
  grown(visits: readonly VisitName[]): void;
  changed(): void;
  /** Has the others say it; how many devices heard. */
  say(visit: VisitName, message: ServerMessage): Promise<number>;
  /** Begins to hear the others. */
  listen(ears: PeerEars): Promise<void>;
  close(): Promise<void>;
}

/** A server that has its record for itself. */
export const ALONE: Peers = {
  grown: () => undefined,
  changed: () => undefined,
  say: async () => 0,
  listen: async () => undefined,
  close: async () => undefined,
};
