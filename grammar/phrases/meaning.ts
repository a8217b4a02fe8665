import type { AnswerId } from '../vocabulary/answers.ts';
import type { CommandId } from '../vocabulary/commands.ts';
import type { CoverId, CoverState } from '../vocabulary/covers.ts';
import type { DeedId } from '../vocabulary/deeds.ts';
import type { SwitchingDevice, SwitchPlace } from '../vocabulary/devices.ts';
import type { Focus } from '../vocabulary/focuses.ts';
import type { DictatedAs, JobItemId } from '../vocabulary/job-items.ts';
import type { Reading } from '../vocabulary/measurement.ts';
import type { NameplateFieldId } from '../vocabulary/nameplate.ts';
import type { ObservationId } from '../vocabulary/observations.ts';
import type { PartId } from '../vocabulary/parts.ts';
import type { PointId } from '../vocabulary/points.ts';
import type { UnitCode, Value } from '../vocabulary/quantities.ts';
import type { UnitChoice } from '../vocabulary/unit-choice.ts';
import type { WorkId } from '../vocabulary/works.ts';
import type { ZoneId } from '../vocabulary/zones.ts';

export type { SwitchingDevice, SwitchPlace };

export type Report =
  | {
      readonly type: 'energy';
      readonly device: SwitchingDevice;
      readonly place: SwitchPlace;
      /** `locked` means open and locked. */
      readonly state: 'open' | 'closed' | 'locked' | 'unlocked';
    }
  /** Meter on a known live source, every pair and conductor to ground, the same source again, in one breath. Volts. */
  | {
      readonly type: 'absence-of-voltage';
      readonly zone: ZoneId;
      readonly before: number;
      readonly values: readonly number[];
      /** Where each value was read, as long as `values`: empty for one without a place. Absent where no place was named. */
      readonly at?: readonly (readonly PointId[])[];
      readonly after: number;
    }
  | { readonly type: 'meter-proof'; readonly value: number }
  | { readonly type: 'discharged'; readonly zone: ZoneId }
  /** `as`: in the words it was said in, where the table's name says more or other. */
  | { readonly type: 'observation'; readonly observation: ObservationId; readonly as?: string }
  | { readonly type: 'job-item'; readonly item: JobItemId }
  /** A part taken out of the unit or put back; a part that was fitted anew is a meaning of its own. */
  | { readonly type: 'part-moved'; readonly part: PartId; readonly to: 'out' | 'in' }
  | { readonly type: 'cover'; readonly cover: CoverId; readonly state: CoverState }
  | { readonly type: 'deed'; readonly deed: DeedId }
  | { readonly type: 'injury' };

/** What a technician may set right in the latest reading: another value, another place, or both. */
export interface Correction {
  readonly value?: Value;
  readonly unit?: UnitCode;
  readonly at?: readonly PointId[];
}

/** What is read, and where. */
export interface ReadAt {
  readonly quantity: Reading['quantity'];
  readonly at: readonly PointId[];
}

/** What an order is about, where it names it. */
export interface OrderDetails {
  readonly correction?: Correction;
  /** The readings that are asked after. */
  readonly of?: readonly ReadAt[];
  /** Where the search is to go on. */
  readonly focus?: Focus;
  /** Only until something else is said. */
  readonly moment?: true;
}

/** What was meant. Plain data, apart from how it was matched. */
export type Meaning =
  | { readonly kind: 'reading'; readonly reading: Reading }
  /** A value with nothing to say where it was read: it binds only when exactly one reading is expected. */
  | { readonly kind: 'value'; readonly value: Value; readonly unit?: UnitCode; readonly digits?: true }
  | { readonly kind: 'several'; readonly parts: readonly Meaning[] }
  | ({ readonly kind: 'command'; readonly command: CommandId } & OrderDetails)
  | { readonly kind: 'report'; readonly report: Report }
  | { readonly kind: 'nameplate'; readonly field: string; readonly value: number | string; readonly unit?: UnitCode }
  | { readonly kind: 'part'; readonly part: PartId; readonly ratings: Readonly<Record<string, number | string>> }
  /** Something mended without a part. */
  | { readonly kind: 'work'; readonly work: WorkId }
  | {
      readonly kind: 'wire';
      readonly wire: {
        readonly colour?: string;
        readonly size?: string;
        readonly from?: string;
        readonly to?: string;
        readonly action: 'lifted' | 'landed' | 'jumper-on' | 'jumper-off';
      };
    }
  | { readonly kind: 'note'; readonly text: string }
  /** Words under a heading of their own: what is recommended, or who signs. */
  | { readonly kind: 'dictated'; readonly as: DictatedAs; readonly text: string }
  /** The lone-worker check is asked for. Minutes; `every` until it is cancelled, else once. */
  | { readonly kind: 'check-on-me'; readonly minutes: number; readonly every: boolean }
  /** `at`: the place that was named, where only its value is missing. */
  | {
      readonly kind: 'unclear';
      readonly reason: UnclearReason;
      readonly alternatives: readonly string[];
      readonly at?: readonly PointId[];
      /** What may be read at a place that was named alone. */
      readonly of?: readonly ReadAt[];
      /** What was told of a switch, where only its place is missing. */
      readonly state?: 'open' | 'locked';
    };

/** Why an utterance was not taken as one thing. */
export type UnclearReason =
  | 'empty'
  | 'too-long'
  | 'outside-grammar'
  | 'no-place'
  /** A place was named and its value not yet: it is asked for. */
  | 'no-value'
  /** A unit that is not known, or that measures something else than what is read there. */
  | 'other-unit'
  | 'several-places-fit'
  | 'several-values-fit'
  | 'needed-repair'
  | 'badly-heard'
  | 'implausible'
  | 'teen-or-ty'
  | 'not-english';

export type Verdict = 'logged' | 'asked' | 'rejected';

/** One utterance understood: its meaning, how sure, and whether it may be logged as it stands or must be asked. */
export interface Understanding {
  readonly heard: string;
  readonly verdict: Verdict;
  readonly meaning: Meaning;
  /** 0…1, calibrated share of such utterances that are right. */
  readonly confidence: number;
  /** Words that were changed (`taken` another), skipped (`taken` empty) or supplied (`heard` empty) to make it fit. */
  readonly repaired?: readonly { readonly heard: string; readonly taken: string }[];
  /** Why it is asked. */
  readonly reason?: UnclearReason;
  /** For a teen/ty doubt: the other value. */
  readonly twin?: number;
  /** Other meanings, best first. */
  readonly others?: readonly Meaning[];
}

/** What a short answer says where it is given. */
export interface AnswerMeant {
  readonly answer: AnswerId;
  readonly means: Meaning;
}

/** What the visit expects now; it raises its own paths in matcher and recogniser, and binds a bare value. */
export interface Expectation {
  /** Readings expected now, the likeliest first. */
  readonly readings: readonly ReadAt[];
  /** Readings that come next in the same series: their names mean them, a bare value none of them. */
  readonly besides?: readonly ReadAt[];
  /** The meter is to be read on a known live source: a bare number of volts is that. */
  readonly meter?: true;
  /** Fields of the nameplate that are asked for: a bare answer is the first that it can be. */
  readonly plate?: readonly NameplateFieldId[];
  /** Short answers to what is asked, and what each of them says there. */
  readonly answers?: readonly AnswerMeant[];
  /** A question that stands open. */
  readonly question?: 'teen-or-ty' | 'confirm' | 'acknowledge' | 'which-place' | 'what-value' | 'which-switch';
  /** The reading that was taken last: "same on the other" means it. */
  readonly latest?: Reading;
  /** The values between which a teen/ty question asks. */
  readonly options?: readonly number[];
  /** The value whose place is asked for. */
  readonly placeless?: { readonly value: Value; readonly unit?: UnitCode };
  /** What was told of the switch whose place is asked for. */
  readonly switched?: 'open' | 'locked' | 'closed';
  /** It was typed: letters are not misheard, and a teen is no ty. */
  readonly typed?: true;
  /** The units that a number without one is in; the usual ones where absent. A unit that is said wins over them. */
  readonly units?: UnitChoice;
}
