import type { Understanding } from '../phrases/meaning.ts';
import type { CommandId } from '../vocabulary/commands.ts';
import type { FaultId } from '../vocabulary/faults.ts';
import type { HazardId } from '../vocabulary/hazards.ts';
import type { ObservationId } from '../vocabulary/observations.ts';
import type { PointId } from '../vocabulary/points.ts';
import type { QuantityId, UnitCode, Value } from '../vocabulary/quantities.ts';
import type { TestId } from '../vocabulary/tests.ts';
import type { UnitChoice } from '../vocabulary/unit-choice.ts';
import type { UnitProfile } from '../vocabulary/unit-profile.ts';
import type { Hash } from './envelope.ts';
import type { KeptPhoto } from './kept-photo.ts';
import type { KeptSound } from './kept-sound.ts';
import type { Vouched } from './messages.ts';

/** The time of an input, read once at the clock edge. `mono` is milliseconds on a clock that never goes back. */
export interface InputTime {
  /** RFC 3339, UTC. */
  readonly at: string;
  readonly mono: number;
}

/** Of the input clock. */
export const MS_A_MINUTE = 60_000;

/** What the ear delivered, kept with the meaning it was given that day. */
export interface HeardUtterance {
  readonly id: string;
  readonly ear: 'offline' | 'browser' | 'wav' | 'typed';
  readonly accepted: boolean;
  readonly confidence: number;
  readonly understanding: Understanding;
  /** Holds the words of the utterance before it too: that one was taken, and then went on. */
  readonly continues?: true;
  /** Kept on the device that heard it, where that was agreed to. */
  readonly sound?: KeptSound;
}

/** A test that may follow, as the diagnosis ranked it. The same shape as client/diagnosis answers with. */
export interface RankedTest {
  readonly id: TestId;
  readonly function: 'volts' | 'ohms' | 'amps' | 'microfarads' | 'look' | 'temperature' | 'pressure';
  readonly quantity: QuantityId | 'observation';
  readonly at: readonly PointId[];
  readonly answers?: readonly ObservationId[];
  readonly needs: {
    readonly power: 'on' | 'off' | 'any';
    readonly call: 'cooling' | 'none' | 'any';
    readonly bench: boolean;
  };
  readonly minutes: number;
  /** Minutes of these to let pass before: what opened may close again by itself. */
  readonly wait?: number;
  readonly hazards: readonly HazardId[];
}

/** The diagnosis' answer as the visit keeps it: what was ranked that day, never computed again by a fold. */
export interface RankedSuspects {
  readonly version: string;
  /** The number of the evidence it was computed for; a stale answer is dropped. */
  readonly forSeq: number;
  readonly suspects: readonly { readonly fault: FaultId; readonly probability: number }[];
  readonly next: readonly RankedTest[];
  readonly hazards: readonly HazardId[];
  readonly contradiction?: readonly number[];
  readonly done: boolean;
  /** The leader rests on this one test, read once. */
  readonly confirm?: TestId;
  /** What proves the leader, and the tests that would have and could not be done: it is then found by exclusion. */
  readonly proof?: { readonly readings: readonly number[]; readonly unproved: readonly TestId[] };
  /** What the leading suspects would show at the first of `next`: shown to whoever asks why. */
  readonly expects?: readonly ({ readonly fault: FaultId } & (
    | { readonly expected: Value; readonly unit: UnitCode }
    | { readonly expected: ObservationId; readonly unit: 'observation' }
  ))[];
  /** Where nothing of the list is left: what the readings deny. */
  readonly excluded?: readonly FaultId[];
}

/** Timers the visit asks its clock edge for. */
export type TimerId = 'quiet' | 'proof' | 'split-reminder' | 'check' | 'refrigerant' | 'question';

/** Whose device a supervisor answered from: their own, or the one of the visit. */
export type AnsweredFrom =
  | 'own-device'
  | 'this-device'
  /** As a reader tells it: the record says a device of their own, and no signature of the server says so. */
  | 'unproven';

/** One entry of one device's record of a visit, by its place and its hash. */
export interface LastEntry {
  readonly device: string;
  readonly epoch: number;
  readonly seq: number;
  readonly hash: Hash;
}

/** How a prompt ended: spoken whole; shown whole, for as long as it takes to read, where no voice spoke it; or cut short. */
export type PromptOutcome = 'spoken' | 'shown' | 'cut';

/** Everything that can move a visit. Each names its origin; each is logged before it is acted on. */
export type VisitInput =
  | {
      readonly type: 'opened.visit';
      readonly time: InputTime;
      readonly visit: string;
      readonly site: string;
      readonly complaint: string;
      readonly role: 'technician' | 'trainee';
      readonly unit: UnitProfile;
      readonly software: string;
      /** The time zone of the device as its IANA name, such as America/Chicago. */
      readonly zone?: string;
      /** In which units a number without one is; the usual ones where absent. */
      readonly units?: UnitChoice;
      /** At a simulated unit: the name of the exercise. The search is led by who is at the unit, not by the planner. */
      readonly exercise?: string;
    }
  /** Somebody goes to a test of their own choice: what guards it is asked as if the search had chosen it. */
  | { readonly type: 'went.to-test'; readonly time: InputTime; readonly test: RankedTest }
  /** Other units were chosen on the device: from now on a number without one is in these. */
  | { readonly type: 'chose.units'; readonly time: InputTime; readonly units: UnitChoice }
  /** The visit is taken up again from its record, after a reload or a break. `cut`: what was heard when it broke off. */
  | { readonly type: 'restored.visit'; readonly time: InputTime; readonly cut?: string }
  /** Another device holds the technician's lease of the visit from here on: the first entry of its own that counts. */
  | {
      readonly type: 'took.over.visit';
      readonly time: InputTime;
      /** The last entry that counts of the device that wrote before. */
      readonly from: LastEntry;
      /** Which lease of the visit the server gave it: the first that it gives on is 1. */
      readonly lease: number;
      /** Which device takes it, and who carries it, where the server knows. */
      readonly device: string;
      readonly person?: string;
      readonly role: 'technician' | 'trainee';
      readonly software: string;
      /** Entries that the other device told the server of and that have not come, where there are any. */
      readonly missing?: number;
    }
  | { readonly type: 'heard.utterance'; readonly time: InputTime; readonly utterance: HeardUtterance }
  | { readonly type: 'touched.command'; readonly time: InputTime; readonly command: CommandId }
  | {
      readonly type: 'mouth.finished';
      readonly time: InputTime;
      readonly prompt: string;
      readonly outcome: PromptOutcome;
    }
  | { readonly type: 'diagnosis.answered'; readonly time: InputTime; readonly answer: RankedSuspects }
  /** Words were written over those of a dictation, by the number of its event. */
  | { readonly type: 'wrote.words'; readonly time: InputTime; readonly of: number; readonly text: string }
  /** A photo was taken and is kept beside the record. */
  | ({ readonly type: 'took.photo'; readonly time: InputTime } & KeptPhoto)
  | { readonly type: 'timer.elapsed'; readonly time: InputTime; readonly timer: TimerId }
  /** A supervisor, present or watching, acknowledges a trainee's live steps. */
  | {
      readonly type: 'supervisor.acknowledged';
      readonly time: InputTime;
      readonly supervisor: string;
      readonly from?: AnsweredFrom;
      /** Where it came from their own device: what the server signed of who they are. */
      readonly vouched?: Vouched;
    }
  /** Said by who does not hold the lease of the visit: it is kept, and moves nothing. */
  | { readonly type: 'remarked.visit'; readonly time: InputTime; readonly author: string; readonly text: string }
  | {
      /** Something at an edge failed: a microphone, the diagnosis. `sentence` says what to do. */
      readonly type: 'edge.failed';
      readonly time: InputTime;
      readonly edge: 'ear' | 'diagnosis' | 'mouth';
      readonly fault: string;
      readonly sentence: string;
    };
