import type { AnswerId } from '../vocabulary/answers.ts';
import type { CommandId } from '../vocabulary/commands.ts';
import type { CoverId } from '../vocabulary/covers.ts';
import type { DeedId } from '../vocabulary/deeds.ts';
import type { Focus } from '../vocabulary/focuses.ts';
import type { DictatedAs, JobItemId } from '../vocabulary/job-items.ts';
import type { NameplateFieldId } from '../vocabulary/nameplate.ts';
import type { ObservationId } from '../vocabulary/observations.ts';
import type { PartId, PartRatingId } from '../vocabulary/parts.ts';
import type { PlaceId } from '../vocabulary/places.ts';
import type { PointId } from '../vocabulary/points.ts';
import type { ProofEndId } from '../vocabulary/proof-pairs.ts';
import type { QuantityId, UnitCode } from '../vocabulary/quantities.ts';
import type { WorkId } from '../vocabulary/works.ts';
import type { ZoneId } from '../vocabulary/zones.ts';

/** The kinds of segment an utterance is made of; each has one composer. */
export type FrameId =
  | 'reading'
  | 'value'
  | 'pair'
  | 'same'
  | 'command'
  | 'correction'
  | 'switch'
  | 'absence'
  | 'meter-proof'
  | 'discharged'
  | 'observation'
  | 'injury'
  | 'job-item'
  | 'deed'
  | 'dictation'
  | 'check-on-me'
  | 'nameplate'
  | 'plate-answer'
  | 'answer'
  | 'part'
  | 'work'
  | 'wire'
  | 'mass'
  | 'note'
  | 'remark'
  | 'place'
  | 'switch-place'
  | 'next-place'
  | 'no-place';

/** What a path through the network says, in the order of the words. */
export type Tag =
  /** A probe tip; several points may share the name that was said. */
  | { readonly tag: 'tip'; readonly points: readonly PointId[] }
  /** A measurand's own name: rows of MEASURANDS. */
  | { readonly tag: 'named'; readonly rows: readonly number[] }
  | { readonly tag: 'place'; readonly place: PlaceId }
  | { readonly tag: 'number'; readonly edge: 'begin' | 'end' }
  /** A word that stands for a value: nothing, open, the meter's tone. */
  | { readonly tag: 'value'; readonly is: 'zero' | 'open' | 'tone' | 'shorted' | 'nothing' | 'dead' }
  /** `asChosen`: its word names no scale ("degrees"), and stands for the chosen one. */
  | { readonly tag: 'unit'; readonly unit: UnitCode; readonly of: readonly QuantityId[]; readonly asChosen?: true }
  /** What is measured, said without a unit: "voltage across", "is drawing". */
  | { readonly tag: 'measures'; readonly of: readonly QuantityId[] }
  /** "across", "between": two tips are to come. */
  | { readonly tag: 'spans' }
  /** A word behind a value that may end it. */
  | { readonly tag: 'parts' }
  | { readonly tag: 'bench' }
  | { readonly tag: 'moving'; readonly how: 'range' | 'peak' }
  /** `denied`: by a "no", which before a place may as well say that nothing is there. */
  | { readonly tag: 'corrected'; readonly by: 'mark' | 'denial' }
  /** Two values in one breath: both legs, both pressures, or two numbers that only look like pressures. */
  | { readonly tag: 'pair'; readonly of: 'both' | 'line' | 'legs' | 'pressures' | 'over' | 'capacitor' | 'charges' }
  /** Refrigerant weighed in, or out. */
  | { readonly tag: 'into' }
  | { readonly tag: 'out' }
  | { readonly tag: 'command'; readonly command: CommandId }
  /** For a moment only. */
  | { readonly tag: 'moment' }
  | { readonly tag: 'focus'; readonly focus: Focus }
  | { readonly tag: 'device'; readonly row: number }
  | { readonly tag: 'state'; readonly state: 'open' | 'closed' | 'locked' | 'unlocked' }
  | { readonly tag: 'zones'; readonly zones: readonly ZoneId[] }
  | { readonly tag: 'observation'; readonly observation: ObservationId; readonly as?: string; readonly unsure?: true }
  /** What was asked is answered in a word. */
  | { readonly tag: 'answer'; readonly answer: AnswerId }
  | { readonly tag: 'item'; readonly item: JobItemId }
  | { readonly tag: 'deed'; readonly deed: DeedId }
  | { readonly tag: 'cover'; readonly cover: CoverId }
  | { readonly tag: 'moved'; readonly to: 'out' | 'in' }
  /** An end of a pair within a proof; behind its ends, whether the pair is the next value's or the last one's. */
  | { readonly tag: 'proof-end'; readonly end: ProofEndId }
  | { readonly tag: 'proof-pair'; readonly of: 'next' | 'last' }
  | { readonly tag: 'dictated-as'; readonly as: DictatedAs }
  | { readonly tag: 'every' }
  | { readonly tag: 'field'; readonly field: NameplateFieldId }
  | { readonly tag: 'choice'; readonly value: string }
  | { readonly tag: 'part'; readonly part: PartId }
  | { readonly tag: 'rating'; readonly rating: PartRatingId }
  | { readonly tag: 'work'; readonly work: WorkId }
  | { readonly tag: 'colour'; readonly colour: string }
  | { readonly tag: 'size'; readonly size: string }
  | { readonly tag: 'wire'; readonly action: 'lifted' | 'landed' | 'jumper-on' | 'jumper-off' }
  | { readonly tag: 'end'; readonly end: 'from' | 'to' }
  | { readonly tag: 'dictated'; readonly edge: 'begin' | 'end' }
  /** "I mean", "sorry": what was said before of this segment, or of its value, does not count;
   * `echo`: the number that follows begins with the same words again. */
  | { readonly tag: 'restart'; readonly of: 'all' | 'value' | 'echo' }
  /** A function word that was not heard. */
  | { readonly tag: 'supplied'; readonly word: string }
  /** Closes a segment. */
  | { readonly tag: 'frame'; readonly frame: FrameId };
