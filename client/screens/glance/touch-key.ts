import type { Meaning } from '../../../grammar/phrases/meaning.ts';
import type { CommandId } from '../../../grammar/vocabulary/commands.ts';
import type { JobItemId } from '../../../grammar/vocabulary/job-items.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import type { ObservationId } from '../../../grammar/vocabulary/observations.ts';
import type { PointId } from '../../../grammar/vocabulary/points.ts';
import type { QuantityId } from '../../../grammar/vocabulary/quantities.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { pairsOf } from '../../visit/rules/proof-plan.ts';
import { showObservation } from '../../words/shown/show-understanding.ts';
import { itemWords } from '../../words/things/job-words.ts';

/** What a number pad is opened for. */
export type PadRequest =
  | {
      readonly kind: 'reading';
      readonly quantity: QuantityId;
      readonly at: readonly PointId[];
      readonly bench: boolean;
    }
  | { readonly kind: 'set-right'; readonly reading: Reading }
  | { readonly kind: 'proof'; readonly zone: ZoneId; readonly pairs: readonly (readonly PointId[])[] }
  /** Each section whose stored charge is still to be read. */
  | { readonly kind: 'discharge'; readonly sections: readonly (readonly PointId[])[] }
  | { readonly kind: 'meter' };

/** What a key does when it is pressed. */
export type KeyDoes =
  | { readonly do: 'command'; readonly command: CommandId }
  | { readonly do: 'enter'; readonly meaning: Meaning; readonly words: string }
  | { readonly do: 'pad'; readonly pad: PadRequest }
  | { readonly do: 'open'; readonly sheet: 'part' | 'plate' | 'supervisor' | 'write' };

export interface TouchKey {
  readonly label: string;
  readonly tone: 'first' | 'warm' | 'plain';
  readonly width: 1 | 2;
  readonly does: KeyDoes;
}

export function commandKey(
  label: string,
  command: CommandId,
  tone: TouchKey['tone'] = 'plain',
  width: TouchKey['width'] = 1,
): TouchKey {
  return { label, tone, width, does: { do: 'command', command } };
}

/** What a sentence would say, by touch; the label stands in the record as what was heard. */
export function reportKey(label: string, meaning: Meaning, width: TouchKey['width'] = 1): TouchKey {
  return { label, tone: width === 1 ? 'plain' : 'first', width, does: { do: 'enter', meaning, words: label } };
}

export function observationKey(observation: ObservationId, width: TouchKey['width'] = 1): TouchKey {
  return reportKey(
    showObservation(observation),
    { kind: 'report', report: { type: 'observation', observation } },
    width,
  );
}

export function itemKey(item: JobItemId): TouchKey {
  return reportKey(itemWords(item), { kind: 'report', report: { type: 'job-item', item } });
}

/** Opens the sheet where words are written: recommendations and names. */
export function writeKey(label: string): TouchKey {
  return { label, tone: 'first', width: 1, does: { do: 'open', sheet: 'write' } };
}

/** Opens the sheet where the nameplate is written. */
export function plateKey(label: string): TouchKey {
  return { label, tone: 'first', width: 1, does: { do: 'open', sheet: 'plate' } };
}

/** The numbers of a proof: the meter, each pair of the zone, the meter again. */
export function proofPad(zone: ZoneId): PadRequest {
  return { kind: 'proof', zone, pairs: pairsOf(zone) };
}

export function padKey(label: string, pad: PadRequest, width: TouchKey['width'] = 1): TouchKey {
  return { label, tone: 'first', width, does: { do: 'pad', pad } };
}
