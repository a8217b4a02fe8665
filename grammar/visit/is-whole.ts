import type { VisitEvent, VisitOutcome } from './events.ts';
import { isChance, isJudged, isListOf, isPlaces, isRanking, isSummary, isText } from './is-whole-inside.ts';
import { isTime } from './read-bodies.ts';
import type { RefrigerantCheck } from './refrigerant-facts.ts';

type Of<T extends VisitOutcome['type']> = Extract<VisitOutcome, { type: T }>;
/** How a field is looked at; what is inside a record is not. */
type Kind<V> = [V] extends [string]
  ? 'text'
  : [V] extends [number]
    ? 'number'
    : [V] extends [boolean]
      ? 'yes-or-no'
      : [V] extends [readonly unknown[]]
        ? 'list'
        : [V] extends [{ readonly quantity: unknown; readonly at: unknown }]
          ? 'reading'
          : [V] extends [string | number]
            ? 'text-or-number'
            : [V] extends [string | boolean]
              ? 'text-or-yes'
              : 'record';
type Fields<E> = {
  readonly [K in Exclude<keyof E, 'type' | 'time'>]-?: undefined extends E[K]
    ? `${Kind<Exclude<E[K], undefined>>}?`
    : Kind<E[K]>;
};

/** What an event of each type must hold, and what it may hold ("?"); a field that is added to an event is added here, or this does not compile. */
const FIELDS: { readonly [T in VisitOutcome['type']]: Fields<Of<T>> } = {
  'visit.opened': {
    visit: 'text',
    site: 'text',
    complaint: 'text',
    role: 'text',
    unit: 'record',
    software: 'text',
    exercise: 'text?',
  },
  'visit.taken-over': {
    from: 'record',
    device: 'text',
    role: 'text',
    lease: 'number?',
    missing: 'number?',
    person: 'text?',
  },
  'phase.entered': { phase: 'text' },
  'focus.moved': { focus: 'text' },
  'supervisor.acknowledged': { supervisor: 'text', from: 'text?' },
  'supervisor.withdrawn': {},
  'reading.waits': { number: 'number', words: 'text', reading: 'reading?', report: 'record?' },
  'waiting.withdrawn': { number: 'number' },
  'unit.gated': { gate: 'text', words: 'text' },
  'reading.logged': { reading: 'reading', number: 'number', under: 'record', test: 'text?', confirmed: 'yes-or-no?' },
  'reading.judged': { number: 'number', judged: 'record' },
  'reading.asked': { reading: 'reading', why: 'text', twin: 'number?' },
  'reading.refused': { reading: 'reading', reason: 'text' },
  'reading.corrected': { number: 'number', from: 'reading', to: 'reading', under: 'record?' },
  'reading.withdrawn': { number: 'number' },
  'observation.logged': { observation: 'text', number: 'number', under: 'record', test: 'text?' },
  'observation.withdrawn': { number: 'number' },
  'refusal.withdrawn': {},
  'nameplate.withdrawn': { field: 'text' },
  'question.asked': { number: 'number', question: 'record', words: 'text' },
  'question.ended': { number: 'number', how: 'text' },
  'switch.reported': { place: 'text', state: 'text', device: 'text?', lockOff: 'yes-or-no?' },
  'switch.withdrawn': { place: 'text' },
  'call.seen': { call: 'text' },
  'run.changed': { running: 'yes-or-no' },
  'nameplate.logged': { field: 'text', value: 'text-or-number', unit: 'text?' },
  'energy.changed': { zone: 'text', from: 'text', to: 'text', why: 'text' },
  'proof.began': { zone: 'text', before: 'number', began: 'number?' },
  'proof.pair': { zone: 'text', at: 'list', value: 'number' },
  'proof.reopened': { zone: 'text', why: 'text', at: 'list?' },
  'proof.refused': { zone: 'text', why: 'text' },
  'proof.withdrawn': { zone: 'text', corrected: 'yes-or-no?' },
  'charge.released': { zone: 'text' },
  'charge.doubted': { zones: 'list' },
  'proof.recorded': { zone: 'text', before: 'number', values: 'list', after: 'number', result: 'text', at: 'list?' },
  'search.began': { zone: 'text', at: 'list' },
  'search.ended': { zone: 'text', why: 'text' },
  'caution.spoken': {
    caution: 'text',
    words: 'text',
    source: 'text',
    zone: 'text?',
    late: 'text-or-yes?',
    shown: 'yes-or-no?',
  },
  'caution.acknowledged': { caution: 'text', zone: 'text?' },
  'hazard.warned': { words: 'text', zone: 'text', danger: 'text?' },
  'step.asked': { step: 'text', words: 'text' },
  'step.parked': { step: 'text', why: 'text', test: 'text?', optional: 'yes-or-no?', words: 'text?' },
  'steps.settled': { steps: 'list' },
  'steps.reopened': { steps: 'list' },
  'suspects.ranked': { version: 'text', forSeq: 'number', suspects: 'list', hazards: 'list' },
  'contradiction.noticed': { numbers: 'list' },
  'finding.stated': { fault: 'text', probability: 'number', evidence: 'list', unproved: 'list?' },
  'part.fitted': {
    part: 'text',
    ratings: 'record',
    repairs: 'list',
    number: 'number?',
    words: 'text?',
    doubts: 'list?',
  },
  'part.doubted': { part: 'text', weight: 'text', why: 'text', source: 'text', words: 'text?', number: 'number?' },
  'part.withdrawn': { part: 'text', number: 'number?' },
  'work.done': { work: 'text', repairs: 'list', number: 'number?', words: 'text?' },
  'work.withdrawn': { work: 'text', number: 'number?' },
  'landing.doubted': { wire: 'record', why: 'text' },
  'close.overridden': { why: 'list', reason: 'text' },
  'wire.moved': { wire: 'record' },
  'wire.withdrawn': { wire: 'record' },
  'deed.reported': { deed: 'record', steps: 'text?' },
  'deed.withdrawn': { deed: 'record' },
  'work.unproven': { what: 'text', zone: 'text', state: 'text', cause: 'number', alone: 'yes-or-no?' },
  'unproven.withdrawn': { cause: 'number' },
  'split.judged': { split: 'number', minutes: 'number', word: 'text', band: 'record', source: 'text' },
  'charge.judged': {
    figure: 'text',
    value: 'number',
    refrigerant: 'text',
    readings: 'list',
    minutes: 'number',
    judged: 'record?',
    noVerdict: 'text?',
  },
  'refrigerant.judged': { check: 'text', value: 'number', minutes: 'number', judged: 'record', reading: 'number?' },
  'refrigerant.told': { what: 'text', number: 'number', words: 'text' },
  'refrigerant.untold': { number: 'number' },
  'circuit.early': { how: 'text', lacks: 'text', words: 'text', number: 'number?' },
  'flammable.told': { caution: 'text', words: 'text', source: 'text' },
  'note.taken': { text: 'text', from: 'text?', about: 'text?', sound: 'record?', guessed: 'yes-or-no?' },
  'dictation.written': { of: 'number', text: 'text' },
  'item.reported': { item: 'text', said: 'text?' },
  'item.withdrawn': { item: 'text' },
  'recommendation.made': { text: 'text', sound: 'record?', guessed: 'yes-or-no?' },
  'recommendation.withdrawn': { text: 'text' },
  'visit.signed': { who: 'text', name: 'text', sound: 'record?', guessed: 'yes-or-no?' },
  'remark.made': { author: 'text', text: 'text', from: 'text?' },
  'photo.taken': { of: 'text', sha256: 'text' },
  'injury.reported': {},
  'check.set': { minutes: 'number', every: 'yes-or-no' },
  'check.asked': { times: 'number' },
  'check.answered': {},
  'check.unanswered': { times: 'number' },
  'check.hastened': {},
  'check.ended': {},
  'talk.changed': { pace: 'text' },
  'units.chosen': { units: 'record' },
  'prompt.said': { id: 'text', kind: 'text', text: 'text' },
  'visit.held': {},
  'visit.resumed': {},
  'edge.interrupted': { edge: 'text', fault: 'text', sentence: 'text' },
  'close.refused': { why: 'list' },
  'visit.closed': { summary: 'record' },
};

const LOOKS: Readonly<Record<string, (value: unknown) => boolean>> = {
  text: (value) => typeof value === 'string',
  number: (value) => typeof value === 'number',
  'yes-or-no': (value) => typeof value === 'boolean',
  'text-or-yes': (value) => typeof value === 'string' || value === true,
  'text-or-number': (value) => typeof value === 'string' || typeof value === 'number',
  list: Array.isArray,
  record: isRecord,
  reading: isReading,
};

const isOfKind = (kind: string, value: unknown): boolean =>
  kind.endsWith('?') ? value === undefined || isOfKind(kind.slice(0, -1), value) : LOOKS[kind]?.(value) === true;

function isReading(value: unknown): boolean {
  if (!isRecord(value)) return false;
  const { quantity, at, unit } = value;
  return isText(quantity) && isListOf(isText)(at) && isText(unit) && value['value'] !== undefined;
}

/** What was understood, at any depth: readings, places and values are what they are in every meaning. */
function isMeaning(value: unknown): boolean {
  if (Array.isArray(value)) return value.every(isMeaning);
  if (!isRecord(value)) return true;
  const held = HELD_BY_KIND[String(value['kind'])];
  if (held !== undefined && value[held] === undefined) return false;
  return Object.entries(value).every(([name, inside]) => {
    if (name === 'reading') return isReading(inside);
    if (name === 'at') return inside === undefined || isPlaces(inside);
    if (name === 'parts') return Array.isArray(inside) && inside.every((part) => isRecord(part) && isMeaning(part));
    if (name === 'report' || name === 'wire') return isRecord(inside) && isMeaning(inside);
    return isMeaning(inside);
  });
}

/** What a meaning of these kinds cannot be without. */
const HELD_BY_KIND: Readonly<Record<string, string>> = {
  reading: 'reading',
  report: 'report',
  several: 'parts',
  wire: 'wire',
  value: 'value',
  command: 'command',
};

const REFRIGERANT_CHECKS: readonly RefrigerantCheck[] = ['pressure-test', 'evacuation', 'decay'];

/** Fields that readers go into, by what they must hold inside wherever they stand. */
const INSIDE: readonly (readonly [string, (value: unknown) => boolean])[] = [
  ['judged', isJudged],
  ['check', (value) => (REFRIGERANT_CHECKS as readonly unknown[]).includes(value)],
  ['summary', isSummary],
  ['suspects', isRanking],
  ['hazards', isListOf(isText)],
  ['probability', isChance],
  ['doubts', isListOf(isText)],
  ['why', (value) => isText(value) || isListOf(isText)(value)],
  ['at', isPlaces],
  ['values', isListOf((value) => typeof value === 'number')],
  ['numbers', isListOf((value) => typeof value === 'number')],
  ['evidence', isListOf((value) => typeof value === 'number')],
  ['steps', (value) => isText(value) || isListOf(isText)(value)],
  ['repairs', isListOf(isText)],
];

/**
 * Whether an event holds what an event of its type must: a record may have been written by another program, or been
 * damaged. Types that are not known pass: nothing is known that they lack.
 */
export function isWhole(event: VisitEvent): boolean {
  if (!isRecord(event)) return false;
  if (event.type === 'input.taken')
    return isRecord(event.input) && isTime(event.input.time) && isHeardWhole(event.input);
  const fields = (FIELDS as Readonly<Record<string, Readonly<Record<string, string>>>>)[event.type];
  const held = event as unknown as Readonly<Record<string, unknown>>;
  if (fields === undefined) return true;
  const looks = Object.entries(fields).every(([name, kind]) => isOfKind(kind, held[name]));
  return looks && isTime(held['time']) && INSIDE.every(([name, look]) => held[name] === undefined || look(held[name]));
}

function isHeardWhole(input: { readonly type: string }): boolean {
  if (input.type !== 'heard.utterance') return true;
  const { utterance } = input as { readonly utterance?: unknown };
  if (!isRecord(utterance) || !isRecord(utterance['understanding'])) return false;
  const { heard, meaning, verdict } = utterance['understanding'] as Readonly<Record<string, unknown>>;
  return typeof heard === 'string' && typeof verdict === 'string' && isRecord(meaning) && isMeaning(meaning);
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
