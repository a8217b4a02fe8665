/** A visit as the server lists it. Times in milliseconds since 1970. */
export interface ListedVisit {
  readonly visit: string;
  readonly openedAt: number;
  readonly lastReceivedAt: number;
  readonly events: number;
  readonly said?: number;
  readonly closed: boolean;
  readonly role: string;
  readonly site: string;
  readonly complaint: string;
  readonly model: string;
  readonly serial: string;
  readonly technician: string;
  readonly finding?: string;
  readonly certainty?: number;
  readonly likeliest?: string;
  readonly parts: readonly string[];
  readonly works: readonly string[];
  readonly cautionsOpen: number;
  readonly unproven: number;
  readonly cools?: string;
  readonly minutes: number;
  /** Visits at the same unit in the 90 days before. */
  readonly before: number;
}
