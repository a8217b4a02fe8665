import type { Meaning, Understanding } from '../../../grammar/phrases/meaning.ts';
import { samePlaces } from '../../../grammar/visit/judge-reading.ts';
import type { Question } from '../../../grammar/visit/questions.ts';
import { openQuestion } from '../../../grammar/visit/standing.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import { chosenFor } from '../../../grammar/vocabulary/unit-choice.ts';
import { unitFor } from '../../../grammar/vocabulary/units.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { meaningWords } from '../../words/things/meaning-words.ts';
import { placeWords } from '../../words/things/place-words.ts';
import type { Turn } from '../chart/turn.ts';
import { isReason } from '../rules/is-reason.ts';
import { answersPlace } from './answer-place.ts';
import { answersStillOff, askStillOff } from './ask-still-off.ts';
import { heedGround } from './heed-return.ts';
import { withdrawQuestion } from './questions.ts';
import { type Confirmed, takeReading } from './take-reading.ts';
import { keepPart } from './take-work.ts';

type TakeMeaning = (turn: Turn, meaning: Meaning, confirmed?: boolean, readings?: Confirmed) => void;
type ToConfirm = Extract<Question, { kind: 'confirm-meaning' }>;

/** Words that leave a question where it is: what it asked of does not count. */
const LEAVES = ['pass', 'cannot-reach', 'unsure'] as const;
/** At a question of a place there is nothing else that these could mean. */
const LEAVES_PLACE = [...LEAVES, 'done', 'no', 'take-back'] as const;

/**
 * Whether this was the answer to the question that stands open; if so it is dealt with. What answers nothing is left to
 * whoever takes the utterance.
 */
export function answersQuestion(turn: Turn, { meaning, verdict }: Understanding, take: TakeMeaning): boolean {
  const question = openQuestion(turn.context);
  if (question === undefined) return false;
  const isOfPlace = ['which-place', 'what-value', 'which-switch'].includes(question.kind);
  const leaves: readonly string[] = isOfPlace ? LEAVES_PLACE : LEAVES;
  if (meaning.kind === 'command' && meaning.correction === undefined && leaves.includes(meaning.command)) {
    withdrawQuestion(turn);
    return true;
  }
  switch (question.kind) {
    case 'which-place':
    case 'which-switch':
      return answersPlace(turn, question, meaning, verdict);
    case 'what-value':
      return readsThere(turn, question, meaning);
    case 'still-off':
      return answersStillOff(turn, question, meaning, take);
    case 'confirm-reading':
      return readAgain(turn, question.reading, meaning);
    case 'teen-or-ty':
      return choosesDigits(turn, question, meaning);
    case 'confirm-meaning':
      return question.wants === 'reason'
        ? answersWithReason(turn, question, meaning)
        : confirms(turn, question, meaning, take);
  }
}

/** Yes and no; the same said once more is a yes, but not where a rule and not the ear had the doubt. */
function confirms(turn: Turn, question: ToConfirm, meaning: Meaning, take: TakeMeaning): boolean {
  const isSaidAgain = question.confirmed !== true && JSON.stringify(meaning) === JSON.stringify(question.meaning);
  const isYes = isSaidAgain || (meaning.kind === 'command' && meaning.command === 'yes');
  if (!isYes && !(meaning.kind === 'command' && meaning.command === 'no')) return false;
  turn.endQuestion('answered');
  // The values were read back with the question.
  if (isYes) take(turn, question.meaning, question.confirmed === true, 'confirmed');
  else if (!isStillUnknown(question) || !askStillOff(turn, meaningWords(question.meaning) ?? ''))
    turn.say('question', SAY.setAside);
  return true;
}

/** The guess was wrong, and nobody knows what was said. A rule's doubt is about what is known. */
function isStillUnknown({ meaning, confirmed }: ToConfirm): boolean {
  return confirmed !== true && meaning.kind !== 'reading' && meaning.kind !== 'several';
}

/** One of the two, whole or by its digits; another number of as many digits is the value read again. */
function choosesDigits(turn: Turn, question: Extract<Question, { kind: 'teen-or-ty' }>, meaning: Meaning): boolean {
  const { reading, options } = question;
  const value = valueIn(meaning, reading);
  if (value === undefined) return false;
  const chosen = options.find((option) => option === value || endsIn(option, value));
  if (chosen !== undefined) {
    turn.endQuestion('answered');
    takeReading(turn, { ...reading, value: chosen }, 'digits settled');
    return true;
  }
  // Read again, it is in the unit that was said with it, or in the chosen one.
  if (String(value).length < String(options[0]).length || !isInUnitOf(reading, meaning, turn)) return false;
  turn.record({ type: 'reading.refused', reading, reason: 'read-again' });
  turn.endQuestion('answered');
  takeReading(turn, { ...reading, value }, 'as heard');
  return true;
}

/** A refused fuse or breaker: a note with a reason keeps it, a no sets it aside, a yes is not enough. */
function answersWithReason(turn: Turn, question: ToConfirm, meaning: Meaning): boolean {
  if (meaning.kind === 'command' && meaning.command === 'no') {
    turn.endQuestion('answered');
    turn.say('question', SAY.setAside);
    return true;
  }
  const isYes = meaning.kind === 'command' && (meaning.command === 'yes' || meaning.command === 'done');
  if (meaning.kind === 'note' && isReason(meaning.text) && question.meaning.kind === 'part') {
    turn.endQuestion('answered');
    keepPart(turn, question.meaning, meaning.text);
    return true;
  }
  if (isYes || meaning.kind === 'note') turn.say('question', SAY.reasonWanted);
  return isYes || meaning.kind === 'note';
}

/**
 * The questioned reading, read again: the same value confirms it, another takes its place, and the old one stays in the
 * record as set aside.
 */
function readAgain(turn: Turn, asked: Reading, meaning: Meaning): boolean {
  const again =
    meaning.kind === 'reading' &&
    meaning.reading.quantity === asked.quantity &&
    samePlaces(meaning.reading.at, asked.at);
  if (!again) return false;
  if (meaning.reading.value === asked.value && meaning.reading.unit === asked.unit) {
    turn.endQuestion('answered');
    heedGround(turn, asked);
    takeReading(turn, asked, 'confirmed');
    return true;
  }
  turn.record({ type: 'reading.refused', reading: asked, reason: 'read-again' });
  turn.endQuestion('answered');
  return false;
}

/** The value of the place that was named before it: it is taken as if both had been said in one breath. */
function readsThere(turn: Turn, { of }: Extract<Question, { kind: 'what-value' }>, meaning: Meaning): boolean {
  const isThere =
    meaning.kind === 'reading' &&
    of.some(({ quantity, at }) => quantity === meaning.reading.quantity && samePlaces(at, meaning.reading.at));
  if (isThere) {
    turn.endQuestion('answered');
    turn.repeatStep();
  }
  return false;
}

/** Whether a number is in the unit of what was asked about. */
function isInUnitOf({ quantity, unit }: Reading, meaning: Meaning, { context }: Turn): boolean {
  const said = meaning.kind === 'value' ? meaning.unit : meaning.kind === 'reading' ? meaning.reading.unit : undefined;
  return unit === (said ?? chosenFor(quantity, context.units) ?? unit);
}

function valueIn(meaning: Meaning, asked: Reading): number | undefined {
  const value =
    meaning.kind === 'value' && (meaning.unit === undefined || unitFor(meaning.unit, asked.quantity) !== undefined)
      ? meaning.value
      : meaning.kind === 'reading' && placeWords(meaning.reading.at) === placeWords(asked.at)
        ? meaning.reading.value
        : undefined;
  return typeof value === 'number' ? value : undefined;
}

/** "one five" settles 115: the last two digits are where the pair differs. */
function endsIn(option: number, value: number): boolean {
  return value >= 10 && value < 100 && Math.round(option) % 100 === value;
}
