import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import type { ObservationId } from '../../../grammar/vocabulary/observations.ts';
import type { PointId } from '../../../grammar/vocabulary/points.ts';
import { observationWords } from '../things/observation-words.ts';
import { placeWords } from '../things/place-words.ts';
import { valueWords } from '../things/value-words.ts';

/** Why something came about, as the record says it and the review shows it. None of these is spoken. */
export const BECAUSE = {
  // A zone's energy.
  switchReported: (device: string, place: string, state: string) =>
    `${device} at ${place.replace('-', ' ')} reported ${state}`,
  seen: (observation: ObservationId) => observationWords(observation),
  reads: ({ at, value, unit }: Reading) => `${placeWords(at)} reads ${valueWords(value, unit)}`,
  holdsCharge: (at: readonly PointId[]) => `${placeWords(at)} holds a charge`,
  discharged: (at: readonly PointId[], below: number) => `${placeWords(at)} below ${below} volts d.c.`,
  chargeReleased: 'reads dead, stored charge released and measured',
  provedAbsent: (below: number) =>
    `meter proven, every pair and leg to ground below ${below} volts, meter proven again`,
  meterReadsLive: (volts: number) => `meter reads ${valueWords(volts, 'V')} on a known live source`,
  holdsNoCharge: 'reads dead, holds no charge',
  foundInProof: (volts: number) => `${valueWords(volts, 'V')} in the proof`,
  proofTooLong: (minutes: number) => `the proof took longer than ${minutes} minutes`,
  provedElsewhere: 'its first pair was read at another place',
  meterNotProven: 'the meter did not read its source',
  dcOnLive: 'd.c. of what does not read dead',
  sectionUnread: 'a section is not read',
  timePassed: (minutes: number) => `${minutes} minutes have passed, and the maker's time by the technician's word`,
  quiet: 'thirty minutes without a word',
  maybeBack: (heard: string) => `power may be back: "${heard}"`,
  fuseBack: 'a fuse was put back in',
  takenBack: 'what it rested on was taken back or corrected',
  recordCut: 'the record broke off inside a sentence',
  away: 'the record stood still',
  takenOver: 'another device carries the visit on',
  readFirst: 'the reading came first',
  provedAnew: 'the proof was said anew from its meter on',
  functionNotSaid: 'nobody said that the meter was on DC',
  notUnderstood: (heard: string) => `not understood: "${heard}"`,
  saidStillOff: 'said to be still off',
  notSaidOff: 'not said to be still off',
  maybeVoltage: 'a voltage may have been told',
  clockJumped: 'the clocks do not agree since the proof',
  openedBefore: 'the switch was reported open before',

  // A reading that was asked back.
  teenOrTy: 'teen or ty',
  notSure: 'not sure',
  listedWithout: (what: string) => `listed without ${what}`,

  // A step that was set aside, a visit that was closed.
  passed: 'passed',
  unreadable: 'cannot be read',
  cannotReach: 'cannot reach',
  workBegan: 'work has begun',
  keptAllTheSame: (reason: string) => `kept all the same: ${reason}`,
  closedAllTheSame: (reason: string) => `closed all the same: ${reason}`,
} as const;

/** What stands in the record for a signature that was given by voice, without a name. */
/** Stands for words that nobody has heard or written yet. */
export const KEPT_AS_SOUND = 'kept as sound';
/** Stands for words that were guessed, where somebody would rely on them. */
export const WORDS_UNSURE = 'as dictated, words not confirmed';
export const SIGNED_BY_VOICE = 'by voice';
