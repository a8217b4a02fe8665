import type { VisitEvent, VisitOutcome } from '../../../grammar/visit/events.ts';
import type { VisitInput } from '../../../grammar/visit/inputs.ts';
import { COMMANDS_BY_ID } from '../../../grammar/vocabulary/commands.ts';
import { FOCUSES } from '../../../grammar/vocabulary/focuses.ts';
import { nameIn } from '../../../grammar/vocabulary/rows-by.ts';
import { ZONE_NAMES } from '../../../grammar/vocabulary/zones.ts';
import { capital } from '../capital.ts';
import { SAY } from '../talk/prompts.ts';
import { deedWords } from '../things/deed-words.ts';
import { itemWords, workWords } from '../things/job-words.ts';
import { nameplateName } from '../things/nameplate-words.ts';
import { partWords } from '../things/part-words.ts';
import { wireWords } from '../things/wire-words.ts';
import { DICTATED } from './dictated-words.ts';
import { showFinding, showLikely } from './show-likely.ts';
import { showPart } from './show-part.ts';
import { showPlace, showReading, showValue } from './show-reading.ts';
import { showObservation } from './show-understanding.ts';

type Of<T extends VisitOutcome['type']> = Extract<VisitOutcome, { type: T }>;
type Shown = readonly [text: string, detail?: string | undefined];
/**
 * Stands with a line of a list, in words of its own there; or why it stands in none. `takenBack`: how it stands once the
 * list holds it no more.
 */
export type Elsewhere =
  | { readonly withLine: string; readonly takenBack?: (event: never) => Shown }
  | { readonly leftOut: string };
type Entry<E> =
  | ((event: E) => Shown)
  | { readonly withLine: string; readonly takenBack?: (event: E) => Shown }
  | { readonly leftOut: string };

const TAKEN_BACK = 'taken back since';
const SAID: Elsewhere = { leftOut: 'its words are said in the talk' };
const PLAN: Elsewhere = { leftOut: 'bookkeeping of the plan; the steps themselves are said' };
const INPUT: Elsewhere = { leftOut: 'what came of it is shown' };
const placeOf = { outdoor: 'outdoor unit', panel: 'panel', 'air-handler': 'air handler' } as const;
const stateOf = { unknown: 'not known any more', closed: 'on', open: 'off, not locked', locked: 'off and locked' };
const zones = (ids: readonly (keyof typeof ZONE_NAMES)[]) => ids.map((zone) => ZONE_NAMES[zone]).join(', ');
const inDashes = (text: string) => text.replaceAll('-', ' ');
const fahrenheit = (value: number) => showValue(value, '[degF]');

/**
 * How each kind of event stands in the talk of a review: a line of its own, within another line, or left out, and why.
 * Total: what a record holds is shown or named as left out.
 */
export const ENTRIES: { readonly [T in VisitOutcome['type']]: Entry<Of<T>> } = {
  'visit.opened': ({ role, software, unit }) => [`Visit opened by a ${role}`, `Readback ${software}, unit ${unit.id}`],
  'visit.taken-over': { withLine: 'takeOvers' },
  'phase.entered': ({ phase }) => [`Phase: ${phase}`],
  'focus.moved': ({ focus }) => [`Looking at: ${FOCUSES.find(({ id }) => id === focus)?.name ?? focus}`],
  'supervisor.acknowledged': { withLine: 'acknowledgements' },
  'supervisor.withdrawn': () => ['The supervisor’s word no longer counts'],
  'reading.waits': ({ words }) => [`Waits for the supervisor: ${words}`],
  'waiting.withdrawn': ({ number }) => [`Taken back: what waited as number ${number}`],
  'unit.gated': ({ gate, words }) => [`The maker’s procedure governs: ${inDashes(gate)}`, words],
  'reading.logged': { withLine: 'readings' },
  'reading.judged': { withLine: 'readings' },
  'reading.asked': { withLine: 'asked' },
  'reading.refused': { withLine: 'refused' },
  'reading.corrected': ({ number, from, to }) => [
    `Set right: reading ${number}`,
    `${showReading(from)} → ${showReading(to)}`,
  ],
  'reading.withdrawn': ({ number }) => [`Taken back: reading ${number}`],
  'observation.logged': ({ observation }) => [`Seen: ${showObservation(observation)}`],
  'observation.withdrawn': ({ number }) => [`Taken back: what was seen, number ${number}`],
  'refusal.withdrawn': () => ['Taken back: what was refused'],
  'nameplate.logged': ({ field, value, unit }) => [
    `Nameplate: ${nameplateName(field)} ${typeof value === 'number' && unit !== undefined ? showValue(value, unit as never) : value}`,
  ],
  'nameplate.withdrawn': ({ field }) => [`Taken back: nameplate, ${nameplateName(field)}`],
  'question.asked': SAID,
  'question.ended': ({ number, how }) => [`Question ${number}: ${how}`],
  'switch.reported': ({ place, state, device }) => [
    `${capital(inDashes(device ?? 'switch'))} at the ${placeOf[place] ?? place}: ${stateOf[state] ?? state}`,
  ],
  'switch.withdrawn': ({ place }) => [`Taken back: what was told of the switch at the ${placeOf[place] ?? place}`],
  'call.seen': ({ call }) => [`Call: ${call}`],
  'run.changed': ({ running }) => [running ? 'The unit runs' : 'The unit does not run'],
  'energy.changed': { withLine: 'energyChanges' },
  'proof.began': ({ zone, before }) => [`Proof begins, ${ZONE_NAMES[zone]}`, `meter on a live source: ${before} V`],
  'proof.pair': ({ zone, at, value }) => [`Proof, ${ZONE_NAMES[zone]}: ${showPlace(at)} ${value} V`],
  'proof.reopened': ({ zone, why }) => [`Proof does not count yet, ${ZONE_NAMES[zone]}`, why],
  'proof.refused': ({ zone, why }) => [`Proof refused, ${ZONE_NAMES[zone]}`, why],
  'proof.withdrawn': ({ zone }) => [`Taken back: the proof, ${ZONE_NAMES[zone]}`],
  'proof.recorded': ({ zone, before, values, after, result }) => [
    `Proof recorded, ${ZONE_NAMES[zone]}: ${result}`,
    `meter ${before} V before, ${values.join(', ')} V, ${after} V after`,
  ],
  'charge.released': ({ zone }) => [`Stored charge read released: ${ZONE_NAMES[zone]}`],
  'charge.doubted': ({ zones: doubted }) => [`Stored charge not known any more: ${zones(doubted)}`],
  'search.began': ({ zone, at }) => [
    `Voltage where power was told off, ${ZONE_NAMES[zone]}: its source is sought`,
    showPlace(at),
  ],
  'search.ended': ({ zone, why }) => [`The search for a source ended, ${ZONE_NAMES[zone]}`, why],
  'caution.spoken': { withLine: 'cautions' },
  'caution.acknowledged': { withLine: 'cautions' },
  'hazard.warned': ({ words, zone }) => [`Warned: ${words}`, ZONE_NAMES[zone]],
  'step.asked': SAID,
  'step.parked': ({ words, step, why, optional }) => [
    `Set aside: ${words ?? inDashes(step)}`,
    optional === true ? `${why} · work went on without it` : why,
  ],
  'steps.settled': PLAN,
  'steps.reopened': PLAN,
  'suspects.ranked': ({ suspects, version }) => [
    `Suspects: ${suspects.slice(0, 3).map(showLikely).join(', ')}`,
    `table ${version}`,
  ],
  'contradiction.noticed': ({ numbers }) => [`Readings ${numbers.join(' and ')} contradict each other`],
  'finding.stated': (event) => [`Finding: ${showFinding(event)}`, `on readings ${event.evidence.join(', ')}`],
  'part.fitted': ({ part, ratings, doubts = [] }) => [`Fitted: ${showPart(part, ratings)}`, doubts.join(' · ')],
  'part.doubted': ({ part, weight, why, source }) => [
    `${weight === 'refuse' ? 'Refused' : 'Doubted'}: ${partWords(part, {})}`,
    `${why} · ${source}`,
  ],
  'part.withdrawn': ({ part }) => [`Taken back: ${partWords(part, {})}`],
  'work.done': ({ work, words }) => [`Done: ${words ?? workWords(work)}`],
  'work.withdrawn': ({ work }) => [`Taken back: ${workWords(work)}`],
  'landing.doubted': ({ wire, why }) => [`Doubted: ${wireWords(wire)}`, why],
  'close.overridden': ({ why, reason }) => [`Closed with something left: ${why.join('; ')}`, reason],
  'wire.moved': ({ wire }) => [capital(wireWords(wire))],
  'wire.withdrawn': ({ wire }) => [`Taken back: ${wireWords(wire)}`],
  'deed.reported': ({ deed }) => [capital(deedWords(deed))],
  'deed.withdrawn': ({ deed }) => [`Taken back: ${deedWords(deed)}`],
  'work.unproven': {
    withLine: 'unproven',
    takenBack: ({ what, zone }) => [`Not proven dead, ${ZONE_NAMES[zone]}: ${what}`, TAKEN_BACK],
  },
  'unproven.withdrawn': () => ['Taken back: hands where no power was proven off'],
  'split.judged': ({ split, minutes, word, band, source }) => [
    `Air ${fahrenheit(split)} colder after ${minutes} minutes: ${word}`,
    `${band.low} to ${band.high} wanted · ${source}`,
  ],
  'charge.judged': ({ figure, value, refrigerant, judged, noVerdict }) => [
    `${capital(inDashes(figure))} ${fahrenheit(value)} (${refrigerant})`,
    judged === undefined ? `no verdict: ${inDashes(noVerdict ?? '')}` : `${judged.word} · ${judged.source}`,
  ],
  'refrigerant.judged': ({ check, value, minutes, judged }) => [
    `${capital(inDashes(check))}: ${value} after ${minutes} minutes: ${judged.word}`,
    judged.source,
  ],
  'refrigerant.told': ({ words }) => [`Refrigerant circuit: ${words}`],
  'refrigerant.untold': ({ number }) => [`Taken back: what was told of the refrigerant circuit, number ${number}`],
  'circuit.early': ({ how, lacks, words }) => [`Too early (${how}): ${words}`, `lacks ${inDashes(lacks)}`],
  'flammable.told': ({ words, source }) => [`Told: ${words}`, source],
  'note.taken': { withLine: 'notes', takenBack: ({ text }) => [`${DICTATED.note}: ${text}`, TAKEN_BACK] },
  'dictation.written': ({ of, text }) => [`Written over entry ${of}: ${text}`],
  'item.reported': ({ item, said }) => [capital(itemWords(item)), said],
  'item.withdrawn': ({ item }) => [`Taken back: ${itemWords(item)}`],
  'recommendation.made': {
    withLine: 'recommendations',
    takenBack: ({ text }) => [`${DICTATED.recommendation}: ${text}`, TAKEN_BACK],
  },
  'recommendation.withdrawn': ({ text }) => [`Taken back: ${text}`],
  'visit.signed': { withLine: 'signatures', takenBack: ({ who, name }) => [`${DICTATED[who]}: ${name}`, TAKEN_BACK] },
  'remark.made': { withLine: 'remarks' },
  'injury.reported': { withLine: 'injuries' },
  'check.set': ({ minutes, every }) => [`Check on the technician: ${every ? 'every' : 'in'} ${minutes} minutes`],
  'check.asked': ({ times }) => [`Check on the technician put, ${times} times`],
  'check.answered': () => ['Check on the technician answered'],
  'check.unanswered': { withLine: 'unanswered' },
  'check.hastened': () => ['Check on the technician put sooner'],
  'check.ended': () => ['Check on the technician ended'],
  'talk.changed': ({ pace }) => [`Talk: ${pace}`],
  'photo.taken': { withLine: 'photos' },
  'units.chosen': ({ units }) => [SAY.units(units)],
  'prompt.said': { withLine: 'said' },
  'visit.held': () => ['The visit was held'],
  'visit.resumed': () => ['The visit went on'],
  'edge.interrupted': { withLine: 'interruptions' },
  'close.refused': ({ why }) => [`Not closed: ${why.join('; ')}`],
  'visit.closed': ({ summary }) => [`Visit closed: ${summary.plain}`, summary.openItems.join(' · ')],
};

/** The same of what moved the visit. */
export const INPUT_ENTRIES: { readonly [T in VisitInput['type']]: Entry<Extract<VisitInput, { type: T }>> } = {
  'opened.visit': INPUT,
  'restored.visit': ({ cut }) => ['Taken up again from its record', cut === undefined ? undefined : `cut at: ${cut}`],
  'took.over.visit': INPUT,
  'heard.utterance': { withLine: 'heard' },
  'touched.command': ({ command }) => [`Key: ${nameIn(COMMANDS_BY_ID as never, command)}`],
  'mouth.finished': { leftOut: 'that a prompt had been spoken' },
  'diagnosis.answered': INPUT,
  'wrote.words': INPUT,
  'timer.elapsed': INPUT,
  'supervisor.acknowledged': INPUT,
  'remarked.visit': INPUT,
  'edge.failed': INPUT,
  'chose.units': INPUT,
  'took.photo': INPUT,
  'went.to-test': ({ test }) => [`Went to a test of their own choice: ${inDashes(test.id)}`],
};

/** How an event stands in the talk. A kind that is not known here stands as unknown. */
export function entryOf(event: VisitEvent): Shown | Elsewhere | undefined {
  const [table, told] =
    event.type === 'input.taken' ? [INPUT_ENTRIES, event.input] : [ENTRIES as Readonly<Record<string, unknown>>, event];
  const kind = told.type as keyof typeof table;
  if (!Object.hasOwn(table, kind)) return undefined;
  const entry = table[kind] as Entry<unknown>;
  return typeof entry === 'function' ? entry(told) : (entry as Elsewhere);
}
