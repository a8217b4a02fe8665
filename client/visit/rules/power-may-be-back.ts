import { WRITTEN_ENGLISH } from '../../../grammar/phrases/languages/english/written-english.ts';
import type { Meaning, Report } from '../../../grammar/phrases/meaning.ts';
import { tokenise } from '../../../grammar/phrases/tokenise.ts';
import type { HeardUtterance } from '../../../grammar/visit/inputs.ts';
import { POWER_PLACES, POWER_SIGNS } from '../../../grammar/vocabulary/power-signs.ts';
import { speltOut } from '../../../grammar/vocabulary/spelt-out.ts';
import {
  isElsewhere,
  isNotYet,
  isOfAnotherTime,
  troublesIn,
  withoutHarmless,
} from '../../../grammar/vocabulary/trouble-signs.ts';
import { ZONES, type ZoneId } from '../../../grammar/vocabulary/zones.ts';
import type { VisitContext } from '../chart/context.ts';
import { OUTDOOR_ZONES, zonesFedBy } from './isolation.ts';
import { SHOWN_BY_LOOK } from './shown-by-look.ts';

/** What is taken whole and tells nothing of the unit: its words may. */
const NOT_TOLD: readonly Meaning['kind'][] = ['command', 'note', 'dictated', 'value', 'unclear'];

/** Where one statement of a sentence ends and the next begins: a place narrows only what is said of it. */
const NEXT_STATEMENT = /[,;.]|\b(?:and|then|but|so|because|though|while)\b/;

/**
 * The zones in which power may be back by the words as they were heard, however well they were understood. What an
 * accepted report says for itself, its own meaning ends in its turn; those zones are left to it.
 */
export function powerMayBeBack(utterance: HeardUtterance, context: VisitContext): readonly ZoneId[] {
  const { accepted, understanding } = utterance;
  const taken = accepted && understanding.verdict === 'logged' ? understanding.meaning : undefined;
  const { heard } = understanding;
  // The word by which a caution is acknowledged.
  if (taken?.kind === 'command' && wordsOf(heard) === 'live' && context.caution !== undefined) return [];
  if (isBareState(taken, wordsOf(heard), context)) return ZONES;
  if (taken === undefined || NOT_TOLD.includes(taken.kind)) {
    if ((isUnclear(utterance) || isDictated(taken)) && troublesIn(heard).has('power')) return ZONES;
    const meant = accepted ? endedByMeaning(understanding.meaning, context) : [];
    const told = new Set([...meant, ...speltOut(heard).flatMap((words) => zonesMeant(words, context))]);
    return ZONES.filter((zone) => told.has(zone));
  }
  // A number that the meter shows, taken for the weather.
  if (
    taken.kind === 'reading' &&
    taken.reading.quantity === 'temperature' &&
    /\b(?:meter|volts?|voltage)\b/.test(wordsOf(heard))
  )
    return ZONES;
  const left = endedByMeaning(taken, context);
  const reached = new Set(speltOut(heard).flatMap((words) => [...zonesTouched(words, context)]));
  return ZONES.filter((zone) => reached.has(zone) && !left.includes(zone));
}

/** "Back on", "in", "hot": a state, and nothing that it is said of; to who was asked for power, or by a look, it is said of that. */
function isBareState(taken: Meaning | undefined, words: string, { step }: VisitContext): boolean {
  if (!BARE_STATE.test(words)) return false;
  if (taken?.kind === 'command') return /\bhot\b/.test(words);
  if (taken?.kind !== 'report' || taken.report.type !== 'energy' || taken.report.place === 'thermostat') return false;
  return step?.ask.kind !== 'action' || step.ask.done !== 'power-on';
}

const BARE_STATE =
  /^(?:(?:it|it's|is|are|that|that's|they're|all|everything|now|right|back|yes|yeah|okay|ok) )*(?:on|in|up|closed|hot)(?: (?:now|again|back|there))*$/;

/** A note is taken as it is said: what it tells of the unit is heeded all the same. */
function isDictated(taken: Meaning | undefined): boolean {
  return taken?.kind === 'note' || taken?.kind === 'dictated';
}

/** Not understood, or in no way that says what it is about; a number of a proof that is asked about says it. */
export function isUnclear({ accepted, understanding: { verdict, meaning } }: HeardUtterance): boolean {
  if (meaning.kind === 'value' || meaning.kind === 'unclear') return true;
  const isOfProof = meaning.kind === 'report' && OF_PROOF.includes(meaning.report.type);
  return !accepted || verdict === 'rejected' || (verdict === 'asked' && !isOfProof);
}

const OF_PROOF: readonly Report['type'][] = ['absence-of-voltage', 'meter-proof'];

/** What was not taken whole may have meant any place; only a single statement is narrowed by its place. */
function zonesMeant(heard: string, context: VisitContext): readonly ZoneId[] {
  const words = wordsOf(heard);
  const statements = heard.split(NEXT_STATEMENT);
  if (![words, ...statements.map(wordsOf)].some(hasSign)) return [];
  return statements.length === 1 ? zonesReached(words, context) : ZONES;
}

function zonesTouched(heard: string, context: VisitContext): ReadonlySet<ZoneId> {
  const told = heard.split(NEXT_STATEMENT).map(wordsOf).filter(hasSign);
  // A sign that only the whole shows belongs to no part: nothing narrows it. One that reaches nothing ends nothing.
  if (told.length === 0) return new Set(hasSign(wordsOf(heard)) ? ZONES : []);
  return new Set(told.flatMap((part) => zonesReached(part, context)));
}

function hasSign(text: string): boolean {
  const told = withoutHarmless(text);
  const isOurs = !isOfAnotherTime(told) && !isElsewhere(told) && !isNotYet(told);
  return isOurs && POWER_SIGNS.some(({ words }) => words.test(told));
}

/** Whether they tell of the power or a switch itself, and not only that something is live. */
export function tellsOfPower(heard: string): boolean {
  const told = speltOut(heard).map(wordsOf);
  return told.some((words) => /\b(?:power|breaker|disconnect|switch)\b/.test(words) && hasSign(words));
}

/** What the words may mean of locks: that one is off; that a switch came back, and so its own; or nothing. */
export function locksTold(heard: string): 'lock' | 'switch' | 'none' {
  const told = speltOut(heard).map(wordsOf);
  const signs = POWER_SIGNS.filter(({ words }) => told.some((one) => words.test(one))).map(({ sign }) => sign);
  if (signs.includes('lock')) return 'lock';
  return signs.includes('switch') || signs.includes('somebody') ? 'switch' : 'none';
}

function wordsOf(text: string): string {
  return tokenise(text, WRITTEN_ENGLISH)
    .map(({ text: word }) => word)
    .join(' ');
}

/** Every zone behind the places that a statement with a sign names; all of them where it names none. */
function zonesReached(words: string, context: VisitContext): readonly ZoneId[] {
  const signs = POWER_SIGNS.filter((one) => one.words.test(words));
  if (signs.length === 0) return [];
  const told = POWER_PLACES.filter((place) => place.words.test(words));
  const placed = told.filter(({ bare }) => bare !== true);
  // Somebody at a breaker, or a lock off it, tells of no one switch.
  const onlySwitch = signs.every(({ sign }) => sign === 'switch');
  const named = placed.length > 0 || !onlySwitch ? placed : told;
  if (named.length === 0 || signs.some(({ everywhere }) => everywhere === true)) return ZONES;
  return named.flatMap(({ reach }) =>
    'zones' in reach ? reach.zones : [reach.behind].flat().flatMap((place) => zonesFedBy(place, context)),
  );
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
