import type { Meaning } from '../../grammar/phrases/meaning.ts';
import type { HeardUtterance, InputTime, VisitInput } from '../../grammar/visit/inputs.ts';
import type { UnitProfile } from '../../grammar/vocabulary/unit-profile.ts';
import { ZONES, type ZoneId } from '../../grammar/vocabulary/zones.ts';
import { type Facts, newFacts, type Objection, type Warning, WIRED_ZONES } from './facts.ts';
import { breathsIn, canMeanLockOff, canMeanPowerBack, isNumberAlone, saysCoverOff } from './heard-words.ts';
import { evidenceOf, provenEndedBy } from './live-evidence.ts';
import { endProof, lapseByTime, objections } from './proof-rules.ts';
import { command, takePart } from './take-part.ts';
import { flammable, powerAgainstProof, toldInWords } from './warning-rules.ts';

/** Something that happened: an input as the record has it, or that all but the record was forgotten. */
export type Happening = VisitInput | { readonly type: 'reloaded' };

export interface Opinion {
  /** Why each zone may not be called proven dead; an empty list: it may. */
  readonly against: Readonly<Record<ZoneId, readonly Objection[]>>;
  readonly due: readonly Warning[];
}

/**
 * A second opinion on a visit, from the words of the paper on conduct and nothing else. Where the paper leaves
 * something open it says no to "proven dead" and asks for no warning.
 */
export class Oracle {
  #facts: Facts;

  constructor(unit: UnitProfile, role: 'technician' | 'trainee') {
    this.#facts = newFacts(unit, role);
  }

  after(happening: Happening): Opinion {
    const due = take(this.#facts, happening);
    const against = Object.fromEntries(ZONES.map((zone) => [zone, objections(this.#facts, zone)]));
    return { against: against as Opinion['against'], due };
  }
}

function take(facts: Facts, happening: Happening): readonly Warning[] {
  if (happening.type === 'reloaded') {
    facts.reloaded = true;
    return [];
  }
  const lapsed = lapseByTime(facts, happening.time);
  facts.last = happening.time;
  facts.reloaded = false;
  letGoByTime(facts, happening.time);
  const due: Warning[] = lapsed ? [{ rule: 'e', kind: 'proof lapsed', wants: 'aloud' }] : [];
  if (happening.type === 'opened.visit') due.push(...flammable(happening.unit.refrigerant));
  if (happening.type === 'supervisor.acknowledged') facts.supervised = true;
  if (happening.type === 'heard.utterance') due.push(...hear(facts, happening.utterance, happening.time));
  if (happening.type === 'touched.command') command(facts, happening.command, happening.time);
  return due;
}

/** What is dictated into a note in the same breath is told to nobody. */
function withoutNotes(words: string, meaning: HeardUtterance['understanding']['meaning']): string {
  const noted = meaning.kind === 'several' && meaning.parts.some(({ kind }) => kind === 'note');
  return noted ? words.replace(/\bnote\b.*$/, '') : words;
}

/** b. "Each part of a sentence is judged by the facts as the part before it left them." */
function hear(facts: Facts, utterance: HeardUtterance, time: InputTime): readonly Warning[] {
  if (!utterance.accepted) return [];
  facts.present = time;
  facts.sentences += 1;
  const { heard, verdict, meaning } = utterance.understanding;
  const words = heard.toLowerCase();
  facts.numberAlone = isNumberAlone(words);
  const dictated = meaning.kind === 'note' || meaning.kind === 'dictated';
  const due: Warning[] = dictated ? [] : [...toldInWords(facts, withoutNotes(words, meaning))];
  if (verdict === 'logged' && saysCoverOff(words) && !dictated)
    facts.coversOff.push({ said: facts.sentences, zones: ['outdoor-load'] });
  const parts = meaning.kind === 'several' ? meaning.parts : [meaning];
  if (verdict !== 'rejected' && goesOn(meaning)) facts.pending.shift();
  if (verdict === 'logged') due.push(...takeParts(facts, parts, words, time));
  // What is asked is not taken, but it can say that power is back.
  if (verdict === 'asked') {
    for (const part of parts) evidenceOf(facts, part);
    const mayCount = utterance.understanding.twin === undefined;
    facts.pending.push({ meanings: [...parts], mayCount, since: time.mono });
    for (const part of parts) noteBench(facts, part);
  }
  // A number alone that belongs to nothing is a question for its place.
  if (verdict === 'rejected' && utterance.understanding.reason === 'no-place')
    facts.pending.push({ meanings: [], mayCount: false, since: time.mono });
  // What was taken whole says by its parts which zones it touches; other words can touch every zone.
  const whole = verdict === 'logged' && !dictated && meaning.kind !== 'command';
  if (!whole && canMeanPowerBack(words)) {
    const ended = provenEndedBy(facts, () =>
      endProof(facts, WIRED_ZONES, { rule: 'f', reason: 'the words can mean that power is back' }),
    );
    if (canMeanLockOff(words)) dropLocks(facts);
    if (!dictated) due.push(...powerAgainstProof(ended));
  }
  return due;
}

/** A reading on the bench, or anything else told, after which a number alone is no longer of the bench. */
function noteBench(facts: Facts, part: Meaning): void {
  if (part.kind === 'reading' && part.reading.bench === true) {
    facts.bench = part.reading.at.join();
    facts.benches.push(facts.bench);
  } else if (part.kind !== 'command' && part.kind !== 'value') facts.bench = null;
}

/** A question that nobody answers is let go after a minute. */
function letGoByTime(facts: Facts, { mono }: InputTime): void {
  const [first] = facts.pending;
  if (first === undefined || mono - first.since <= QUESTION_STANDS) return;
  facts.pending.shift();
  facts.pending = facts.pending.map((one) => ({ ...one, since: Math.max(one.since, first.since + QUESTION_STANDS) }));
  letGoByTime(facts, { mono } as InputTime);
}
const QUESTION_STANDS = 60_000;

/** Whoever tells something else, or goes on, has left the question that stood; a number alone can be its answer. */
function goesOn(meaning: Meaning): boolean {
  if (meaning.kind === 'command') return ['what-next', 'done', 'go-back', 'skip-to'].includes(meaning.command);
  if (meaning.kind === 'report' && meaning.report.type === 'injury') return false;
  return !['value', 'unclear', 'note'].includes(meaning.kind);
}

/** Each part with its own words, where it is a proof said in one breath. */
function takeParts(facts: Facts, parts: readonly Meaning[], words: string, time: InputTime): readonly Warning[] {
  const isBreath = (part: Meaning): boolean => part.kind === 'report' && part.report.type === 'absence-of-voltage';
  const breaths = breathsIn(words);
  const each = breaths.length === parts.filter(isBreath).length ? [...breaths] : [];
  return parts.flatMap((part, index) => {
    // b, c: each part is a thing said for itself, and the latest of them is what is taken back.
    if (index > 0) facts.sentences += 1;
    const again = part.kind === 'reading' && part.reading.bench !== true && part.reading.at.join() === facts.bench;
    if (!again) noteBench(facts, part);
    return takePart(facts, part, (isBreath(part) ? each.shift() : undefined) ?? words, time);
  });
}

function dropLocks(facts: Facts): void {
  for (const [key, device] of Object.entries(facts.devices)) {
    if (device.state === 'locked') delete facts.devices[key];
  }
}
