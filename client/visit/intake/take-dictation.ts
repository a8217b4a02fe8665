import type { Meaning } from '../../../grammar/phrases/meaning.ts';
import type { Dictation } from '../../../grammar/visit/dictated.ts';
import type { HeardUtterance } from '../../../grammar/visit/inputs.ts';
import type { KeptSound } from '../../../grammar/visit/kept-sound.ts';
import { keepsSound } from '../../../grammar/visit/standing.ts';
import { type DictatedAs, GO_AHEAD } from '../../../grammar/vocabulary/job-items.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { KEPT_AS_SOUND, SIGNED_BY_VOICE } from '../../words/talk/reasons.ts';
import { meaningWords } from '../../words/things/meaning-words.ts';
import type { Turn } from '../chart/turn.ts';
import { isReason } from '../rules/is-reason.ts';
import { closeVisit, overrideClose } from './close-visit.ts';
import { takeSupervisor } from './take-job.ts';

/** What is dictated under which heading. */
type Heading = 'note' | DictatedAs;

/** A heading that was said alone waits so long for its words. Milliseconds; our choice. */
const WAITS_MS = 30_000;
/** Longer than a heading lasts: what is dictated was said in its breath. Milliseconds of sound; our choice. */
const MORE_THAN_HEADING_MS = 2_000;

/**
 * Words behind a heading that was said alone: taken as they are, whatever a recogniser of orders made of them. What is
 * plainly an order or a measurement ends the dictation and is taken as that.
 *
 * @returns whether the utterance was dictated
 */
export function takeDictation(turn: Turn, utterance: HeardUtterance): boolean {
  const { dictating, now } = turn.context;
  if (dictating === undefined) return false;
  turn.talk({ dictating: undefined });
  if (now.mono - dictating.since > WAITS_MS || meansSomethingElse(utterance)) return false;
  if (!utterance.accepted && soundOf(turn) === undefined) turn.say('question', SAY.dictationLost);
  else record(turn, dictating.as, utterance.understanding.heard);
  return true;
}

/** Understood without a doubt: what can also be meant as words of a note is a note. */
function meansSomethingElse({ accepted, understanding: { verdict, meaning } }: HeardUtterance): boolean {
  return accepted && verdict === 'logged' && !FREE.includes(meaning.kind);
}

const FREE: readonly Meaning['kind'][] = ['value', 'unclear'];

/** "Note", and what for. */
export function takeNote(turn: Turn, text: string): void {
  takeHeading(turn, 'note', text);
}

/** Words under a heading: a recommendation, what the customer says, or who signs. Without words they are waited for. */
export function takeDictated(turn: Turn, as: DictatedAs, text: string): void {
  if (as === 'supervisor') {
    const isName = text !== '' && !GO_AHEAD.includes(text);
    return takeSupervisor(turn, isName ? text : SIGNED_BY_VOICE, 'this-device');
  }
  takeHeading(turn, as, text);
}

function takeHeading(turn: Turn, as: Heading, text: string): void {
  const sound = soundOf(turn);
  const isWithIt = sound !== undefined && sound.ms >= MORE_THAN_HEADING_MS;
  // The technician's word is a signature, with a name or without one.
  if (text.trim() !== '' || isWithIt || as === 'technician') return record(turn, as, text);
  turn.talk({ dictating: { as, since: turn.context.now.mono } });
  turn.say('question', SAY.dictateWhat(as));
}

/** What the close asks for in free words. */
const FREE_STEPS: Readonly<Record<string, 'recommendation' | 'customer' | 'technician'>> = {
  'close.recommend': 'recommendation',
  'close.customer': 'customer',
  'close.technician': 'technician',
};
/** Each word with a capital, but for what stands inside of names. */
const NAME =
  /^\p{Lu}[\p{L}'’.-]*,?(?: (?:(?:de|da|di|del|della|der|den|la|le|van|von|bin|al|dos) )*\p{Lu}[\p{L}'’.-]*,?){0,3}$/u;
const BEFORE_NAME = /^(?:signed(?: by)?|(?:it|this|name|customer|he|she)(?: is|'s)|i am|i'm)[: ]+/i;
/** What says that it was signed, and by nobody. */
const NO_NAME =
  /^(?:(?:it is|it's|he|she|they|customer|has|have|all|already|just|is|was|they've|he's|she's) )*(?:signed(?: off| it)?|did|done|did it|has|have)?[.!]?$/i;
/** So many words may be a name that was typed without its capitals. */
const MOST_OF_NAME = 3;

/**
 * What was typed where the close asks for free words, and is nothing else: a name as it is written is taken, anything
 * else asked about. What was heard is none: no ear here knows names.
 *
 * @returns whether it was taken or asked about
 */
export function takeFreeAnswer(turn: Turn, heard: string): boolean {
  const { step, caution, questions } = turn.context;
  const as = FREE_STEPS[step?.id ?? ''];
  if (as === undefined || turn.heard?.ear !== 'typed' || caution !== undefined || questions.length > 0) return false;
  const text = as === 'recommendation' ? heard.trim() : heard.trim().replace(BEFORE_NAME, '');
  const words = text.split(/\s+/).length;
  if (as !== 'recommendation' && NO_NAME.test(text)) {
    turn.say('question', SAY.dictateWhat(as));
    return true;
  }
  if (as !== 'recommendation') {
    if (NAME.test(text)) {
      record(turn, as, text);
      return true;
    }
    if (words > MOST_OF_NAME || !/^[\p{L}'’., -]+$/u.test(text)) return false;
  } else if (words < 2 || !/\p{L}{2}/u.test(text)) return false;
  const meaning = { kind: 'dictated', as, text } as const;
  turn.ask({ kind: 'confirm-meaning', meaning }, SAY.meant(meaningWords(meaning) ?? text));
  return true;
}

/** No ear takes names, and free speech is a guess to each of them: only what was typed or written is not. */
function record(turn: Turn, as: Heading, text: string): void {
  const sound = soundOf(turn);
  const isGuess = turn.heard !== undefined && turn.heard.ear !== 'typed';
  const dictation: Dictation = { ...(sound === undefined ? {} : { sound }), ...(isGuess ? { guessed: true } : {}) };
  if (as === 'technician' || as === 'customer') return sign(turn, as, isGuess ? '' : text, sound);
  const words = text.trim() === '' ? KEPT_AS_SOUND : text;
  if (as === 'recommendation') {
    turn.record({ type: 'recommendation.made', text: words, ...dictation });
    turn.record({ type: 'steps.settled', steps: ['close.recommend'] });
    turn.say('readback', isGuess ? SAY.dictated(sound !== undefined) : SAY.recommended(words));
    return;
  }
  if (as === 'certificate' || as === 'cylinder') {
    // Whole in itself for readers that know nothing of its subject.
    const text = `${as} ${isGuess ? words : markOf(turn, words)}`;
    turn.record({ type: 'note.taken', text, about: as, ...dictation });
    return void turn.say('readback', isGuess ? SAY.dictated(sound !== undefined) : SAY.taken(text));
  }
  const from = as === 'saying' ? ({ from: 'customer' } as const) : {};
  turn.record({ type: 'note.taken', text: words, ...from, ...dictation });
  const closing = turn.context.closeRefused.length > 0 && as === 'note';
  // A recogniser of free speech gives reasons in words; one of orders cannot.
  const isWhy = isReason(words) && (!isGuess || turn.heard?.ear === 'browser');
  turn.say('readback', closing && !isWhy ? SAY.reasonInWords : isGuess ? SAY.dictated(sound !== undefined) : SAY.noted);
  if (closing && isWhy) overrideClose(turn, words);
}

/** "14A" is a mark and no current: the words behind the heading as they were heard, not as a measurement reads. */
function markOf({ heard, context }: Turn, words: string): string {
  const understanding = heard?.understanding ?? context.heard;
  const [, behind] = MARK_BEHIND.exec(understanding?.heard ?? '') ?? [];
  return (behind ?? words).replace(/^(number )?(is )?/i, '') || words;
}

const MARK_BEHIND = /\b(?:cylinder|certificate|certification)\s+(.+)$/i;

function sign(turn: Turn, who: 'technician' | 'customer', text: string, sound: KeptSound | undefined): void {
  const name = text.trim() === '' ? SIGNED_BY_VOICE : text;
  // Neither a name nor the sound of one: nothing says who it is.
  if (who === 'customer' && name === SIGNED_BY_VOICE && sound === undefined) {
    turn.say('question', SAY.nameLost);
    return;
  }
  turn.record({ type: 'visit.signed', who, name, ...(sound === undefined ? {} : { sound }) });
  turn.record({ type: 'steps.settled', steps: [`close.${who}`] });
  const closes = who === 'technician' && turn.context.step?.id === 'close.technician';
  if (!closes || name !== SIGNED_BY_VOICE) turn.say('readback', SAY.signed(who, name));
  if (closes) closeVisit(turn);
}

/** The sound of what was just heard, where it was agreed that it may be kept. */
function soundOf({ heard, context }: Turn): KeptSound | undefined {
  return keepsSound(context) ? heard?.sound : undefined;
}

/** Words written over those of a dictation. One that is not there, or empty words, change nothing. */
export function writeWords(turn: Turn, of: number, text: string): void {
  const { notes, recommendations, signatures } = turn.context;
  const isThere = [...notes, ...recommendations, ...signatures].some(({ seq }) => seq === of);
  if (isThere && text.trim() !== '') turn.record({ type: 'dictation.written', of, text: text.trim() });
}
