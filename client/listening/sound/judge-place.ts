/** What a sound check measured. Decibels are relative to full scale (0 is the loudest that can be told). */
export interface PlaceMeasured {
  /** Level of the place while nobody of ours speaks. */
  readonly floorDb: number;
  /** Speech was heard while nobody of ours spoke. */
  readonly othersTalk: boolean;
  /** Level of our own voice in the microphone; undefined where nothing was spoken. */
  readonly echoDb: number | undefined;
  /** Level of the test number; undefined where none was heard. */
  readonly speechDb: number | undefined;
  readonly number: 'right' | 'other' | 'unheard';
}

/** What may be wrong with a place. */
export type PlaceFault = 'loud' | 'others-talk' | 'far' | 'clipped' | 'echo' | 'misheard' | 'unheard';

/**
 * Our own bounds, from the hearing's figures: people were understood at 12 dB over a kitchen's noise, and less and less
 * below it; a voice at -45 dB is near the dither that is added to it.
 */
const LOUD_FLOOR_DB = -35;
const LEAST_OVER_FLOOR_DB = 12;
const FAR_DB = -45;
const CLIPPED_DB = -3;
const ECHO_OVER_FLOOR_DB = 10;

/** What is wrong with the place, the worst first; none: nothing was found that would hinder hearing. */
export function judgePlace(measured: PlaceMeasured): readonly PlaceFault[] {
  const { floorDb, othersTalk, echoDb, speechDb, number } = measured;
  const faults: readonly [PlaceFault, boolean][] = [
    ['unheard', number === 'unheard'],
    ['misheard', number === 'other'],
    ['others-talk', othersTalk],
    ['loud', floorDb > LOUD_FLOOR_DB || (speechDb !== undefined && speechDb - floorDb < LEAST_OVER_FLOOR_DB)],
    ['far', speechDb !== undefined && speechDb < FAR_DB],
    ['clipped', speechDb !== undefined && speechDb > CLIPPED_DB],
    ['echo', echoDb !== undefined && echoDb - floorDb > ECHO_OVER_FLOOR_DB],
  ];
  return faults.filter(([, found]) => found).map(([fault]) => fault);
}
