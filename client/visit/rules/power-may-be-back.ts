import type { Meaning } from '../../../grammar/phrases/meaning.ts';
import { tokenise } from '../../../grammar/phrases/tokenise.ts';
import type { HeardUtterance } from '../../../grammar/visit/inputs.ts';
import { POWER_PLACES, POWER_SIGNS } from '../../../grammar/vocabulary/power-signs.ts';
import { ZONES, type ZoneId } from '../../../grammar/vocabulary/zones.ts';
import type { VisitContext } from '../chart/context.ts';
import { OUTDOOR_ZONES, zonesFedBy } from './isolation.ts';
import { SHOWN_BY_LOOK } from './shown-by-look.ts';

/** Where one statement of a sentence ends and the next begins: a place narrows only what is said of it. */
const NEXT_STATEMENT = /[,;.]|\b(?:and|then|but|so)\b/;

/**
 * The zones in which power may be back by the words as they were heard, however well they were understood. What an
 * accepted report says for itself, its own meaning ends in its turn; those zones are left to it.
 */
export function powerMayBeBack(utterance: HeardUtterance, context: VisitContext): readonly ZoneId[] {
  const { accepted, understanding } = utterance;
  const taken = accepted && understanding.verdict === 'logged' ? understanding.meaning : undefined;
  // The word by which a caution is acknowledged.
  if (taken?.kind === 'command' && taken.command === 'live' && context.caution !== undefined) return [];
  const left = taken === undefined ? [] : endedByMeaning(taken, context);
  const reached = zonesTouched(understanding.heard, context);
  return ZONES.filter((zone) => reached.has(zone) && !left.includes(zone));
}

function zonesTouched(heard: string, context: VisitContext): ReadonlySet<ZoneId> {
  const parts = heard.split(NEXT_STATEMENT).map(wordsOf);
  // A sign that only the whole shows belongs to no part: nothing narrows it.
  if (!parts.some(hasSign) && hasSign(wordsOf(heard))) return new Set(ZONES);
  return new Set(parts.flatMap((part) => zonesReached(part, context)));
}

function hasSign(words: string): boolean {
  return POWER_SIGNS.some((one) => one.words.test(words));
}

function wordsOf(text: string): string {
  return tokenise(text)
    .map(({ text: word }) => word)
    .join(' ');
}

/** Every zone behind the places that a statement with a sign names; all of them where it names none. */
function zonesReached(words: string, context: VisitContext): readonly ZoneId[] {
  const signs = POWER_SIGNS.filter((one) => one.words.test(words));
  if (signs.length === 0) return [];
  const named = POWER_PLACES.filter((place) => place.words.test(words));
  if (named.length === 0 || signs.some(({ everywhere }) => everywhere === true)) return ZONES;
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
