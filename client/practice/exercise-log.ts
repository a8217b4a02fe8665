import type { FaultId } from '../../grammar/vocabulary/faults.ts';
import type { PointId } from '../../grammar/vocabulary/points.ts';
import type { TestId } from '../../grammar/vocabulary/tests.ts';
import type { ZoneId } from '../../grammar/vocabulary/zones.ts';
import type { Expected, Suspect } from '../diagnosis/diagnosis.ts';
import type { Shown, Taking } from './simulated-unit.ts';

/** A suspect that a test is made for, or none. */
export type Hypothesis = FaultId | 'none-yet';

/** What stops an exercise as it would stop a person. */
export const SAFETY_ERRORS = [
  /** Hands at a conductor that holds a dangerous voltage. */
  'touched-live',
  /** Ohms, continuity, megohms or microfarads where there is voltage. */
  'ohms-on-live',
  /** Hands or a meter at a capacitor that still holds its charge. */
  'charged-capacitor',
  /** Power or a call given while something is open that hands are at. */
  'energised-hands-in',
  /** Hands or an ohmmeter where it is dead, and nobody had proven that. */
  'not-proven-dead',
  /** Power, a call or a run at a refrigerant circuit that was opened and is not tight, dry and charged. */
  'circuit-open',
  /** Anything else that the visit warned of while it was done. */
  'against-warning',
] as const;
export type SafetyError = (typeof SAFETY_ERRORS)[number];

/** How an exercise is over. */
export const ENDINGS = ['closed', 'stopped', 'given-up', 'out-of-time'] as const;
export type Ending = (typeof ENDINGS)[number];

/** How far a proof had come when hands or an ohmmeter came. */
export type ProofStage = 'not-off' | 'not-read' | 'half';

/** A test that was made, with what was thought before it and what came of it. */
export interface TestMade {
  readonly type: 'tested';
  /** Undefined where no suspect says what it would show there. */
  readonly test?: TestId;
  /** As it is called, a test that the list lacks too. */
  readonly what: string;
  readonly taking: Taking | 'look';
  readonly shown: Shown | string;
  readonly hypothesis: Hypothesis;
  /** How much it could tell before it was made. Bits. */
  readonly bits: number;
  /** How much of which fault it is stood open then. Bits. */
  readonly open: number;
  /** It could tell next to nothing. */
  readonly redundant: boolean;
  /** What each leading suspect said that it would show. */
  readonly expected: readonly Expected[];
  readonly before: readonly Suspect[];
  readonly after: readonly Suspect[];
}

/** A hint that was given to a test. */
export interface Hint {
  readonly type: 'hinted';
  readonly test: TestId;
  readonly level: HintLevel;
  readonly words: string;
}

/** What happened in an exercise beside the record of its visit. */
export type ExerciseDeed =
  | TestMade
  | Hint
  /** `harm`: somebody would be hurt, or a meter be gone. `near-miss`: it happened to go well. */
  | {
      readonly type: 'stopped-for';
      readonly error: SafetyError;
      readonly weight: 'harm' | 'near-miss';
      readonly zone: ZoneId;
      /** Volts that hands or meter met, a.c. or d.c.: the most, to ground or between. */
      readonly volts: number;
      /** Volts between the two places of an ohmmeter. */
      readonly between?: number;
      /** Of hands and ohmmeters: how far the proof had come. */
      readonly stage?: ProofStage;
      /** What the visit says of it, where it is the visit's own warning. */
      readonly words?: string;
      /** What had been said against it before it was done, where something had. */
      readonly said?: string;
      /** What was being done, in its own words. */
      readonly what: string;
    }
  | {
      readonly type: 'probes-elsewhere';
      readonly said: readonly PointId[];
      readonly stood: readonly PointId[];
      /** They were asked there, and nobody said otherwise. */
      readonly asked?: true;
    }
  /** A suspect that was named for a test; `none-yet` is none. */
  | { readonly type: 'suspected'; readonly suspect: FaultId }
  /** Something else was begun while this stood asked. */
  | { readonly type: 'left-open'; readonly what: string }
  /** A part or a work was begun; `found`: behind a finding. */
  | { readonly type: 'repair-begun'; readonly what: string; readonly found: boolean }
  /** `number`: of the part or work in the record, by which it is taken back. */
  | { readonly type: 'mended'; readonly what: string; readonly cures: boolean; readonly number?: number | undefined }
  | { readonly type: 'taken-back'; readonly number: number | undefined }
  | { readonly type: 'ended'; readonly how: Ending };

/** How much a hint gives away: which circuit, which place, which test. */
export type HintLevel = 1 | 2 | 3;

/** A deed with when it was: minutes of work, and how many events the record of the visit held. */
export type LoggedDeed = ExerciseDeed & { readonly minutes: number; readonly events: number };
