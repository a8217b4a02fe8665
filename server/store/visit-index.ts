/** One visit as a list and the fleet tell of it: made of its record, and made anew whenever that has grown. */
export interface VisitBrief {
  readonly visit: string;
  /** By the device's own wall clock, in milliseconds since 1970: a claim. */
  readonly openedAt: number;
  /** By the server's clock. */
  readonly lastReceivedAt: number;
  /** Events that are held, over all streams. */
  readonly events: number;
  /** Events that its devices said they have, where that is more: it is not complete. */
  readonly said?: number;
  /** The device that opened it. */
  readonly device: string;
  readonly closed: boolean;
  readonly role: string;
  readonly site: string;
  readonly complaint: string;
  readonly model: string;
  readonly serial: string;
  /** Year of manufacture, where the plate or the opening told it. */
  readonly made?: number;
  /** As the technician signed; empty before. */
  readonly technician: string;
  /** The fault that was stated, or none. */
  readonly finding?: string;
  /** The probability with which it was stated; without a finding that of the likeliest suspect. */
  readonly certainty?: number;
  /** The likeliest suspect, where nothing was stated. */
  readonly likeliest?: string;
  /** Fitted, by their ids; and what was mended without a part. */
  readonly parts: readonly string[];
  readonly works: readonly string[];
  /** Cautions that were given and not acknowledged. */
  readonly cautionsOpen: number;
  /** Times that hands were told in a zone that was not proven dead. */
  readonly unproven: number;
  /** How the air's temperature difference was judged, where it was. */
  readonly cools?: string;
  /** From the first event to the last, by the device's running clock. */
  readonly minutes: number;
  /** Each step that was asked, and how long until the next one. */
  readonly steps: readonly { readonly step: string; readonly minutes: number }[];
  /** What was heard, and then not taken: asked back or not understood. */
  readonly misheard: readonly string[];
  /** Places whose reading was set right. */
  readonly setRight: readonly string[];
  /** All words by which it can be found. */
  readonly words: string;
}

/** What is told of a visit in a list; steps and words stay where they are. */
export type ListedBrief = Omit<VisitBrief, 'steps' | 'misheard' | 'setRight' | 'words'> & {
  /** Visits at the same unit in the days before it: by its serial number, else by its site. */
  readonly before: number;
};

export type VisitState = 'running' | 'closed' | 'not-complete';

/** Which visits are asked for. Missing: any. */
export interface BriefFilter {
  /** Words that all stand in it, each from its beginning on. */
  readonly words?: string;
  readonly state?: VisitState;
  /** A fault, or `none`. */
  readonly finding?: string;
  readonly part?: string;
  /** Opened at or after, and before, in milliseconds since 1970. */
  readonly from?: number;
  readonly until?: number;
  /** As signed, or by the devices of a person. */
  readonly technician?: string;
  readonly devices?: readonly string[];
  readonly unproven?: boolean;
  readonly cautionsOpen?: boolean;
  readonly repeated?: boolean;
}

export interface BriefPage {
  readonly limit: number;
  readonly offset: number;
}

/** What a filter may be set to, each with how many visits have it. */
export interface BriefChoices {
  readonly findings: readonly { readonly value: string; readonly visits: number }[];
  readonly parts: readonly { readonly value: string; readonly visits: number }[];
  readonly technicians: readonly { readonly value: string; readonly visits: number }[];
}

/** A visit counts as a repeat call where the unit was visited within so many days before. Our choice. */
export const REPEAT_WITHIN_DAYS = 90;

/**
 * Where briefs of visits are kept and looked through. It is derived from the record and may be thrown away: whoever
 * lost it makes it anew. Every method takes the company and answers for that company alone.
 */
export interface VisitIndex {
  put(company: string, brief: VisitBrief): Promise<void>;
  /** Takes the brief of a visit away, so that nothing of its words is left where it is kept. */
  forget(company: string, visit: string): Promise<void>;
  /** How many events the brief of each visit was made of, and where it was. */
  held(): Promise<
    readonly { readonly company: string; readonly visit: string; readonly events: number; readonly site: string }[]
  >;
  /** Newest activity first. */
  list(
    company: string,
    filter: BriefFilter,
    page: BriefPage,
  ): Promise<{ readonly visits: readonly ListedBrief[]; readonly total: number }>;
  choices(company: string): Promise<BriefChoices>;
  /** Other visits to the unit of one visit, the latest first. */
  atSameUnit(company: string, visit: string): Promise<readonly ListedBrief[]>;
  /** Briefs in the order of their names, beyond `after`: for what goes over all. */
  all(company: string, page: { readonly after: string; readonly limit: number }): Promise<readonly VisitBrief[]>;
  close(): Promise<void>;
}
