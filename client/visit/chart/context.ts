import type { Understanding } from '../../../grammar/phrases/meaning.ts';
import type { VisitFacts } from '../../../grammar/visit/facts.ts';
import type { InputTime, RankedTest } from '../../../grammar/visit/inputs.ts';
import type { HazardId } from '../../../grammar/vocabulary/hazards.ts';
import type { DictatedAs } from '../../../grammar/vocabulary/job-items.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import type { PlateField } from '../../../grammar/vocabulary/nameplate.ts';
import type { ObservationId } from '../../../grammar/vocabulary/observations.ts';
import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import type { Prompt } from '../../speaking/mouth.ts';
import type { SpokenCaution } from '../../words/talk/caution-words.ts';

/** One thing the visit asks for. Where it comes from decides when it is offered, its needs decide what guards it. */
export interface Step {
  readonly id: string;
  /** For a test of the planner's. */
  readonly test?: TestId;
  readonly source: 'arrive' | 'planner' | 'energy' | 'repair' | 'prove' | 'close';
  readonly ask:
    | { readonly kind: 'reading'; readonly quantity: Reading['quantity']; readonly at: Reading['at'] }
    | { readonly kind: 'look'; readonly answers: readonly ObservationId[] }
    /** Answered by a report, a part or a command; `done` says by which. */
    | { readonly kind: 'action'; readonly done: ActionDone };
  readonly needs: RankedTest['needs'];
  readonly hazards: readonly HazardId[];
  /** Read as live whatever the switches say: its caution is due. */
  readonly live?: true;
  /** Offered only once the unit has run this long, in minutes. */
  readonly afterMinutes?: number;
  /** Offered only where gauges were put on in this visit: a charge that nobody doubts is left alone. */
  readonly withGauges?: true;
  /** Offered only where words come from a microphone of the page. */
  readonly withMicrophone?: true;
  /** Not asked where the clamps were passed while the conductors were dead. */
  readonly withClamps?: true;
  /** Tells nothing of a unit that was taken off. */
  readonly whileFed?: true;
  /** Asked once; when something else is said instead it is passed by, and named when the visit closes. */
  readonly optional?: true;
  /** Of the nameplate: the fields that are asked for in one breath. */
  readonly plate?: readonly PlateField[];
  /** The zone whose energy the hands or probes meet. */
  readonly zone: ZoneId | 'none';
}

/** What answers a step that asks for an action. */
export type ActionDone =
  | 'call-on'
  | 'call-off'
  | 'power-off'
  | 'breaker-off'
  | 'clamps-placed'
  | 'disconnect-locked'
  | 'absence-proved'
  | 'meter-again'
  | 'source-opened'
  | 'capacitors-discharged'
  | 'charge-left'
  | 'part-fitted'
  | 'wires-landed'
  | 'tug-tested'
  | 'covers-on'
  | 'power-on'
  | 'consent-asked'
  | 'sound-agreed'
  | 'meter-named'
  | 'nameplate-read'
  | 'leak-searched'
  | 'vacuum-isolated'
  | 'thermostat-agreed'
  | 'recommended'
  | 'technician-signed'
  | 'customer-signed'
  | 'visit-finished';

/** The talk beside the facts: it is never recorded, and begins anew where a visit is taken up again. */
export interface Talk {
  readonly step: Step | undefined;
  /** The caution that is being spoken or waits for its acknowledgement. */
  readonly caution:
    | {
        readonly spoken: readonly SpokenCaution[];
        readonly zone: ZoneId | 'none';
        /** Prompts of it that are still to be spoken whole. */
        readonly prompts: readonly string[];
        /** The step's own words were in its breath: its answer acknowledges it. */
        readonly withStep: boolean;
        /** It was given whole, by voice or before the eyes. */
        readonly isSpoken: boolean;
        /** A part of it was only shown: no voice spoke it. */
        readonly isShown?: true;
      }
    | undefined;
  /** Cautions that came behind what they warn of: being given, cut short, or given and not acknowledged. */
  readonly late: readonly {
    readonly prompt: string;
    readonly caution: string;
    readonly words: string;
    readonly source: string;
    readonly zone: ZoneId;
    readonly why: string;
    readonly stands: 'due' | 'cut' | 'given';
  }[];
  /** What is dictated next, after its heading alone was said; `since` when, on the input clock in milliseconds. */
  readonly dictating: { readonly as: 'note' | DictatedAs; readonly since: number } | undefined;
  /** When a warning was given to the mouth last, on the monotonic clock: nothing of that same moment cuts it. */
  readonly warnedAt: number | undefined;
  /** Prompts given to the mouth lately, the latest last. */
  readonly lately: readonly Prompt[];
  /** Those that were cut or never begun, in their order: "say again" brings them back until something else is said. */
  readonly silenced: readonly Prompt[];
  /** The step whose words were spoken in one breath with its caution. */
  readonly toldWithCaution: string | undefined;
  /** The step for which cautions were acknowledged last: its further hazards do not hold it up again. */
  readonly cautionedFor: string | undefined;
  /** Since when the unit ran as the time to its split was told. Milliseconds on the input clock. */
  readonly toldRunIn: number | undefined;
  /** The run of which the time is called every five minutes. */
  readonly timedRun: number | undefined;
  /** That it is still off was said just before: a no behind it takes that back. */
  readonly saidStillOff: boolean;
  /** How much evidence there was as power or a call came back: while there is no more, it is read live. */
  readonly fedAt: number | undefined;
  /** What was told last of why nothing can be asked. */
  readonly toldStuck: string | undefined;
  /** The question that was put last, and when on the input clock. Milliseconds. */
  readonly put: { readonly number: number; readonly mono: number } | undefined;
  /** What was heard last, before what is being taken now. */
  readonly heard: Understanding | undefined;
  /** Steps that were asked, the latest last. */
  readonly asked: readonly Step[];
  /**
   * Steps that the technician asked for by name: they go before the plan. Their answers bear numbers behind `since`.
   * `bringsBack`: also where power or a call must come back for them.
   */
  readonly wanted:
    | {
        readonly steps: readonly Step[];
        readonly since: number;
        readonly parkedBefore: number;
        readonly bringsBack: boolean;
      }
    | undefined;
  /** Nothing is asked until something is said; and whether that held before what is being taken now. */
  readonly waits: boolean;
  readonly wasWaiting: boolean;
  /** The fault of an edge that was said last: the same is said once, and stands on the screen. */
  readonly saidFault: string | undefined;
  /** The step is to be asked again when the turn is over. */
  readonly repeatsStep: boolean;
  /** Number the diagnosis was last asked for. */
  readonly askedFor: number;
  /** The time of the last input before a proof began: both clocks are held against it while one stands. */
  readonly clockBase: InputTime;
}

/** What the machine holds: the facts of the visit, which only events change, and the talk. */
export type VisitContext = VisitFacts & Talk;

/** No talk yet. */
export function noTalk(): Talk {
  return {
    step: undefined,
    caution: undefined,
    late: [],
    dictating: undefined,
    warnedAt: undefined,
    lately: [],
    silenced: [],
    toldWithCaution: undefined,
    cautionedFor: undefined,
    toldRunIn: undefined,
    timedRun: undefined,
    saidStillOff: false,
    fedAt: undefined,
    toldStuck: undefined,
    put: undefined,
    heard: undefined,
    asked: [],
    wanted: undefined,
    waits: false,
    wasWaiting: false,
    saidFault: undefined,
    repeatsStep: false,
    askedFor: -1,
    clockBase: { at: '1970-01-01T00:00:00.000Z', mono: 0 },
  };
}
