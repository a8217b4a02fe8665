import type { Expectation, Understanding } from '../../../grammar/phrases/meaning.ts';
import type { UnderstandOptions } from '../../../grammar/phrases/understand.ts';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import type { InputTime, PromptOutcome, VisitInput } from '../../../grammar/visit/inputs.ts';
import type { CommandId } from '../../../grammar/vocabulary/commands.ts';
import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import type { Assessment, Evidence } from '../../diagnosis/diagnosis.ts';
import type { Prompt } from '../../speaking/mouth.ts';
import type { EarUtterance, Untimed } from '../../visit/run/visit-run.ts';
import type { Glance } from '../glance/glance.ts';

/** How a visit begins in its worker: anew, taken over from another device, or from its record. */
export type Beginning =
  | { readonly as: 'opened'; readonly opening: Untimed<Extract<VisitInput, { type: 'opened.visit' }>> }
  | {
      readonly as: 'taken-over';
      readonly bodies: readonly string[];
      readonly taking: Untimed<Extract<VisitInput, { type: 'took.over.visit' }>>;
    }
  | { readonly as: 'restored'; readonly bodies: readonly string[] };

/**
 * What the page gives to the visit, each with the time of its clock and a number that is confirmed as soon as it has
 * come. Messages arrive in the order in which they were sent.
 */
export type ToVisit = { readonly now: InputTime; readonly number: number; readonly given: Given };

export type Given =
  | { readonly begin: Beginning }
  | { readonly take: Untimed<VisitInput> }
  | { readonly hear: EarUtterance }
  | { readonly touch: CommandId }
  /** Whether cautions are cut too. */
  | { readonly hush: boolean }
  /** To be told under this number once nothing is being taken, spoken or worked out. */
  | { readonly settle: number }
  | EdgeAnswer;

/** What the visit asks of the page's edges. */
export type EdgeQuestion =
  | { readonly edge: 'append'; readonly bodies: readonly string[] }
  | {
      readonly edge: 'understand';
      readonly text: string;
      readonly expectation: Expectation;
      readonly options: UnderstandOptions;
    }
  | {
      readonly edge: 'diagnose';
      readonly unit: UnitProfile;
      readonly evidence: readonly Evidence[];
      readonly parked: readonly TestId[];
    }
  | { readonly edge: 'speak'; readonly prompt: Prompt }
  /** Answered after so many minutes of the page's clock. */
  | { readonly edge: 'wait'; readonly minutes: number };

/** What comes back for each edge, by its name. */
export interface EdgeValues {
  readonly append: undefined;
  readonly understand: Understanding;
  readonly diagnose: Assessment;
  readonly speak: PromptOutcome;
  readonly wait: undefined;
}

/** The answer to the question of that number; a sentence where the edge failed. */
export type EdgeAnswer =
  | { readonly answered: number; readonly value: EdgeValues[keyof EdgeValues] }
  | { readonly answered: number; readonly sentence: string };

/** Where the visit stands, and the events that brought it there. */
export interface VisitShown {
  readonly events: readonly VisitEvent[];
  readonly expectation: Expectation;
  readonly glance: Glance;
}

/** What the visit tells the page. The first that is shown stands before anything was taken. */
export type FromVisit =
  /** The message of that number has come. */
  | { readonly came: number }
  | { readonly shown: VisitShown }
  /** With a sentence where the record could not be written. */
  | { readonly settled: number; readonly sentence?: string }
  /** What is being spoken gives way: cautions too, where so. */
  | { readonly hush: boolean }
  /** A hush of the page's was heeded: what is asked to be spoken from now on came behind it. */
  | { readonly hushed: true }
  | { readonly asks: number; readonly question: EdgeQuestion }
  /** It could not begin. */
  | { readonly failed: string };
