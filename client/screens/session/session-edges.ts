import type { Expectation } from '../../../grammar/phrases/meaning.ts';
import type { TakenOver } from '../../../grammar/visit/messages.ts';
import { type TakenVisit, withTaken } from '../../record/browser/lease-database.ts';
import type { TabNews } from '../../record/browser/tab-news.ts';
import type { VisitPart } from '../../record/browser/visit-keys.ts';
import type { OutboxState } from '../../record/outbox.ts';
import type { VisitRecord } from '../../record/visit-record.ts';
import type { PageMouthState } from '../../speaking/browser/page-mouth.ts';
import type { Glance } from '../glance/glance.ts';
import type { Beginning } from '../worker/visit-messages.ts';
import type { HeldInput } from './held-inputs.ts';
import type { HearingState } from './page-hearing.ts';

/** All that the technician's page shows of a running visit. A new object for every change. */
export interface SessionState {
  readonly glance: Glance;
  readonly expectation: Expectation;
  readonly outbox: OutboxState;
  readonly ear: HearingState;
  readonly mouth: PageMouthState;
  /** Nothing more can be written: the visit stands until this is mended and taken up again. */
  readonly problem: string | undefined;
  /** Something is being taken, spoken or worked out. */
  readonly busy: boolean;
  /** How much of the unit's table is built, 0…1, while the diagnosis waits for it. */
  readonly building: number | undefined;
  /** What was given before the visit was taken up, and its record does not have. */
  readonly left: readonly HeldInput[];
  /** Set where another device carries the visit on: nothing more is taken here. */
  readonly elsewhere: TakenOver | undefined;
}

/** Where a session writes. */
export interface SessionEdges {
  readonly record: VisitRecord;
  /** Tells other tabs of this browser whenever the record grows. */
  readonly news: TabNews;
  /** Whose part of the visit is written here. */
  readonly part: VisitPart;
  /** Set where this device took the visit over. */
  readonly taken: TakenVisit | undefined;
  /** Another device carries the visit on: to be kept, so that it is not taken up here again. */
  readonly left: (by: TakenOver) => Promise<void>;
}

export type Opening = Extract<Beginning, { as: 'opened' }>['opening'];

/** What the visit is as it stands: before it was taken over here, and since. */
export async function readAll({ record, taken }: Pick<SessionEdges, 'record' | 'taken'>): Promise<readonly string[]> {
  return withTaken(await record.read(), taken).map(({ body }) => body);
}
