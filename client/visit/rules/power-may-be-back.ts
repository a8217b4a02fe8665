import type { Meaning } from '../../../grammar/phrases/meaning.ts';
import { tokenise } from '../../../grammar/phrases/tokenise.ts';
import type { HeardUtterance } from '../../../grammar/visit/inputs.ts';
import { POWER_PLACES, POWER_SIGNS } from '../../../grammar/vocabulary/power-signs.ts';
import { ZONES, type ZoneId } from '../../../grammar/vocabulary/zones.ts';
import type { VisitContext } from '../chart/context.ts';
import { OUTDOOR_ZONES, zonesFedBy } from './isolation.ts';
import { SHOWN_BY_LOOK } from './shown-by-look.ts';

/** A sign that power may be back: which row of the table, and every zone that it can touch. */
export interface PowerSign {
  readonly sign: string;
  readonly zones: readonly ZoneId[];
}

/**
 * Reads the words as they were heard, however well they were understood. What an accepted report says for itself, its
 * own meaning ends in its turn; those zones are left to it.
 */
export function powerMayBeBack(utterance: HeardUtterance, context: VisitContext): PowerSign | undefined {
  const { accepted, understanding } = utterance;
  const taken = accepted && understanding.verdict === 'logged' ? understanding.meaning : undefined;
  // The word by which a caution is acknowledged.
  if (taken?.kind === 'command' && taken.command === 'live' && context.caution !== undefined) return undefined;
  const words = tokenise(understanding.heard)
    .map(({ text }) => text)
    .join(' ');
  const row = POWER_SIGNS.find((one) => one.words.test(words));
  if (row === undefined) return undefined;
  const left = taken === undefined ? [] : endedByMeaning(taken, context);
  const reached = row.everywhere === true ? ZONES : zonesReached(words, context);
  return { sign: row.sign, zones: reached.filter((zone) => !left.includes(zone)) };
}

/** Every zone behind the places that are named; all of them where none is. */
function zonesReached(words: string, context: VisitContext): readonly ZoneId[] {
  const named = POWER_PLACES.filter((place) => place.words.test(words));
  if (named.length === 0) return ZONES;
  return named.flatMap(({ reach }) => ('zones' in reach ? reach.zones : zonesFedBy(reach.behind, context)));
}

function endedByMeaning(meaning: Meaning, context: VisitContext): readonly ZoneId[] {
  if (meaning.kind === 'several') return meaning.parts.flatMap((part) => endedByMeaning(part, context));
  if (meaning.kind !== 'report') return [];
  const { report } = meaning;
  if (report.type === 'observation') {
    return SHOWN_BY_LOOK[report.observation].power === 'nothing' ? [] : OUTDOOR_ZONES;
  }
  if (report.type !== 'energy' || report.place === 'thermostat') return [];
  return report.state === 'closed' || report.state === 'unlocked' ? zonesFedBy(report.place, context) : [];
}
