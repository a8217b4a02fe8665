import type { VisitOutcome } from './events.ts';
import type { VisitInput } from './inputs.ts';
import { isTooDeep, parseBody } from './parse-body.ts';

/** How a text that was sealed begins: the form of what follows is told by its number. */
const SEALED = 'sealed1:';

/** Stands where a text was sealed by a key that is not there (any more). */
export const NOT_READABLE = '(erased)';

/** What a writer's device keeps personal texts from others by: one key a device and visit. */
export interface TextCipher {
  /** `name` is bound to it: what was sealed as a site opens as nothing else. Resolves to base64url. */
  seal(text: string, name: string): Promise<string>;
  /** Undefined where it was not sealed by this key, or not under this name. */
  open(sealed: string, name: string): Promise<string | undefined>;
}

/** What AES-GCM binds to a text beside the key: the same in browser and server. */
export function boundText(name: string): string {
  return `readback personal text 1\n${name}\n`;
}

/** What AES-GCM binds to a file, a sound or a photo. */
export const BOUND_TO_FILE = 'readback personal file 1\n';

/** Words of people: what was understood, what it may mean else, and what is asked about it. */
const WORDS = ['heard', 'taken', 'text', 'alternatives', 'words'] as const;

/**
 * Which texts of a body are personal, by their names, wherever in the body they stand: who and where, and whatever
 * somebody said or wrote in their own words. Numbers, readings, findings, parts, and the program's own cautions stay open:
 * they tell of the unit, and of what a technician was warned. A serial number is personal wherever it stands.
 */
const PERSONAL: Readonly<Record<VisitInput['type'] | VisitOutcome['type'], readonly string[]>> = {
  'opened.visit': ['site', 'complaint'],
  'chose.units': [],
  'went.to-test': [],
  'took.over.visit': ['person'],
  'restored.visit': ['cut'],
  'heard.utterance': WORDS,
  'touched.command': [],
  'mouth.finished': [],
  'diagnosis.answered': [],
  'wrote.words': ['text'],
  'timer.elapsed': [],
  'took.photo': [],
  // Whose word it was is what the server signed: it answers for a live step, and has to be held against that later.
  'supervisor.acknowledged': [],
  'remarked.visit': ['author', 'text'],
  'edge.failed': [],
  'visit.opened': ['site', 'complaint'],
  'visit.taken-over': ['person'],
  'units.chosen': [],
  'phase.entered': [],
  'focus.moved': [],
  'supervisor.withdrawn': [],
  'reading.waits': WORDS,
  'waiting.withdrawn': [],
  'unit.gated': [],
  'reading.logged': [],
  'reading.judged': [],
  'reading.asked': [],
  'reading.refused': [],
  'reading.corrected': [],
  'reading.withdrawn': [],
  'observation.logged': [],
  'observation.withdrawn': [],
  'refusal.withdrawn': [],
  'nameplate.withdrawn': [],
  'question.asked': WORDS,
  'question.ended': [],
  'switch.reported': [],
  'switch.withdrawn': [],
  'call.seen': [],
  'run.changed': [],
  'nameplate.logged': [],
  'energy.changed': [],
  'proof.began': [],
  'proof.pair': [],
  'proof.reopened': [],
  'proof.refused': [],
  'proof.withdrawn': [],
  'charge.released': [],
  'charge.doubted': [],
  'proof.recorded': [],
  'search.began': [],
  'search.ended': [],
  'caution.spoken': [],
  'caution.acknowledged': [],
  'hazard.warned': ['words'],
  'step.asked': [],
  'step.parked': [],
  'steps.settled': [],
  'steps.reopened': [],
  'suspects.ranked': [],
  'contradiction.noticed': [],
  'finding.stated': [],
  'part.fitted': [],
  'part.doubted': [],
  'part.withdrawn': [],
  'work.done': ['words'],
  'work.withdrawn': [],
  'landing.doubted': [],
  'close.overridden': ['reason'],
  'wire.moved': [],
  'wire.withdrawn': [],
  'deed.reported': [],
  'deed.withdrawn': [],
  'work.unproven': [],
  'unproven.withdrawn': [],
  'split.judged': [],
  'charge.judged': [],
  'refrigerant.judged': [],
  'refrigerant.told': ['words'],
  'refrigerant.untold': [],
  'circuit.early': [],
  'flammable.told': [],
  'note.taken': ['text'],
  'dictation.written': ['text'],
  'item.reported': ['said'],
  'item.withdrawn': [],
  'recommendation.made': ['text'],
  'recommendation.withdrawn': ['text'],
  'visit.signed': ['name'],
  'remark.made': ['author', 'text'],
  'photo.taken': [],
  'injury.reported': [],
  'check.set': [],
  'check.asked': [],
  'check.answered': [],
  'check.unanswered': [],
  'check.hastened': [],
  'check.ended': [],
  'talk.changed': [],
  'prompt.said': ['text'],
  'visit.held': [],
  'visit.resumed': [],
  'edge.interrupted': [],
  'close.refused': ['why'],
  'visit.closed': ['technical', 'plain', 'openItems'],
};

/**
 * The body with its personal texts sealed: what enters the chain, so that the chain stays whole when the key is erased.
 * A body that holds none, or is no event, is passed as it is.
 */
export async function sealBody(body: string, cipher: TextCipher): Promise<string> {
  const event = parse(body);
  if (event === undefined) return body;
  const names = namesOf(event);
  let changed = false;
  const sealed = await mapTexts(event, async (text, name, beside) => {
    if (!names.has(name) && !isSerial(name, beside)) return text;
    changed = true;
    return `${SEALED}${await cipher.seal(text, name)}`;
  });
  return changed ? JSON.stringify(sealed) : body;
}

/**
 * The body as it was before it was sealed, for reading alone: the chain is of the sealed one. Without the key, or by a
 * wrong one, `NOT_READABLE` stands in place of each text. Whatever the version that sealed it took for personal is opened.
 */
export async function openBody(body: string, cipher: TextCipher | undefined): Promise<string> {
  if (!body.includes(`"${SEALED}`)) return body;
  const event = parse(body);
  if (event === undefined) return body;
  const opened = await mapTexts(event, async (text, name) => {
    if (!text.startsWith(SEALED)) return text;
    return (await cipher?.open(text.slice(SEALED.length), name)) ?? NOT_READABLE;
  });
  return JSON.stringify(opened);
}

/**
 * Whether the body holds a personal text that is not sealed: whoever wrote it did not seal, so that no key that is erased
 * takes it away. A body that is no event that is known here tells only of serial numbers; one that is nested deeper than any event may hold anything.
 */
export function isInTheOpen(body: string): boolean {
  if (isTooDeep(body)) return true;
  const event = parse(body);
  const names = namesOf(event);
  for (const [text, name, beside] of textsOf(event)) {
    if (text !== '' && !WHOLLY_SEALED.test(text) && (names.has(name) || isSerial(name, beside))) return true;
  }
  return false;
}

/** Nonce, what was sealed and tag have 28 bytes at the least, in base64url. */
const WHOLLY_SEALED = new RegExp(`^${SEALED}[A-Za-z0-9_-]{38,}$`);

/** Whether anything in the body is sealed. */
export function isSealed(body: string): boolean {
  return body.includes(`"${SEALED}`);
}

type Beside = Readonly<Record<string, unknown>>;
type Text = readonly [text: string, name: string, beside: Beside];
type MapText = (text: string, name: string, beside: Beside) => Promise<string>;

/** A copy with each text mapped; texts in a list go by the list's name. */
async function mapTexts(value: unknown, map: MapText, name = '', beside: Beside = {}): Promise<unknown> {
  if (typeof value === 'string') return map(value, name, beside);
  if (Array.isArray(value)) {
    const list: unknown[] = [];
    for (const one of value) list.push(await mapTexts(one, map, name, beside));
    return list;
  }
  if (typeof value !== 'object' || value === null) return value;
  const entries: [string, unknown][] = [];
  for (const [key, one] of Object.entries(value)) entries.push([key, await mapTexts(one, map, key, value as Beside)]);
  return Object.fromEntries(entries);
}

/** Every text with its name and what stands beside it; texts in a list go by the list's name. */
function textsOf(value: unknown, name = '', beside: Beside = {}, into: Text[] = []): readonly Text[] {
  if (typeof value === 'string') into.push([value, name, beside]);
  else if (Array.isArray(value)) for (const one of value) textsOf(one, name, beside, into);
  else if (typeof value === 'object' && value !== null) {
    for (const [key, one] of Object.entries(value)) textsOf(one, key, value as Beside, into);
  }
  return into;
}

/** Which names of an event's texts are personal. */
function namesOf(event: unknown): ReadonlySet<string> {
  const type = typeOf(event);
  return new Set(type === undefined ? [] : PERSONAL[type as keyof typeof PERSONAL]);
}

function isSerial(name: string, { field }: Beside): boolean {
  return name === 'serial' || (name === 'value' && field === 'serial');
}

/** An input is known by its own type. */
function typeOf(event: unknown): string | undefined {
  if (typeof event !== 'object' || event === null) return undefined;
  const { type, input } = event as { type?: unknown; input?: unknown };
  if (type === 'input.taken') return typeOf(input);
  return typeof type === 'string' && Object.hasOwn(PERSONAL, type) ? type : undefined;
}

function parse(body: string): object | undefined {
  const value = parseBody(body);
  return typeof value === 'object' && value !== null ? value : undefined;
}
