import { describe, expect, it } from 'vitest';
import { readUtterances, short } from '../../../fixtures/utterances/read-utterances.ts';
import { fitOf } from '../../../grammar/phrases/compose/fit.ts';
import { NEGATIONS } from '../../../grammar/phrases/languages/english/words/fillers.ts';
import { NUMBER_WORDS } from '../../../grammar/phrases/languages/english/words/number-words.ts';
import type { Meaning } from '../../../grammar/phrases/meaning.ts';
import { makeUnderstand } from '../../../grammar/phrases/understand.ts';
import { MEASURANDS } from '../../../grammar/vocabulary/measurands.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';

/**
 * One word of a line that was understood is lost, or heard as another word. What is left may be a right sentence of its
 * own ("the coil" for "the outdoor coil"); wrong is a reading, a report or an order that was never said.
 */
const understand = makeUnderstand();
/** So many words are in the lines at least. */
const WORDS = 1_000;
/**
 * Of the changes of a word that is no number, so many may be logged as another value, place or report. What a lost word
 * leaves is at times a whole sentence: "the [disconnect] load side", "[target] subcooling is ten".
 */
const MOST = { changed: 0.003, lost: 0.003 } as const;

/** Words that belong to no sentence of the job: what a room, a radio or a child puts in. */
const OTHERS =
  'window banana tuesday ladder yesterday maybe doctor river yellowish candle mother pencil seven-ish carpet sandwich television monday garden holiday basket'.split(
    ' ',
  );

const lines = readUtterances()
  .filter((line) => /^as-(people-say|technicians-talk)/.test(line.where) && line.verdict === 'logged')
  .filter((line) => line.expectation === undefined && !line.meaning.startsWith('note'));

/** What it puts on record: notes and places without a value put nothing there, and an order does no harm. */
function facts(meaning: Meaning): string[] {
  if (meaning.kind === 'several') return meaning.parts.flatMap(facts);
  if (meaning.kind === 'command' && meaning.correction === undefined) return [];
  return meaning.kind === 'note' || meaning.kind === 'unclear' ? [] : [short(meaning)];
}

/** The number and the place of a fact, or its kind and name: a colour or a "condenser" that was lost makes it vaguer. */
const isVaguer = (fact: string, said: readonly string[]): boolean =>
  said.some((one) => {
    const [words, whole] = [fact.split(' '), one.split(' ')];
    return (
      (words[0] === 'wire' && words.every((word) => whole.includes(word))) ||
      (words[0] === 'part' && whole[0] === 'part' && whole[1]!.endsWith(`-${words[1]!}`)) ||
      (words[0] === 'work' && whole[0] === 'work' && whole[1]!.endsWith(words[1]!.replace('coil-', '')))
    );
  });

interface Tally {
  tried: number;
  wrong: string[];
}

/** Every word that is no number, of every line, one at a time; the word it is changed to goes round. */
function changed(how: 'lost' | 'changed'): Tally {
  const tally: Tally = { tried: 0, wrong: [] };
  for (const line of lines) {
    const words = line.text.split(/[\s-]+/);
    const said = facts(understand(line.text).meaning);
    for (const [at, word] of words.entries()) {
      const bare = word.toLowerCase().replace(/[^a-z']/g, '');
      const number = NUMBER_WORDS.includes(bare) || /\d/.test(word);
      // That a "not" was lost cannot be heard; what denies has sentences of its own in the families.
      const denies = NEGATIONS.includes(word.toLowerCase());
      if (number || denies || words.length < 2) continue;
      const other = OTHERS[tally.tried % OTHERS.length]!;
      tally.tried += 1;
      const text = (how === 'lost' ? words.toSpliced(at, 1) : words.with(at, other)).join(' ');
      const { verdict, meaning } = understand(text);
      if (verdict !== 'logged') continue;
      const strange = facts(meaning).filter((fact) => !said.includes(fact) && !isVaguer(fact, said));
      if (strange.length > 0) tally.wrong.push(`${line.text} → ${text}: ${strange.join(' + ')}`);
    }
  }
  return tally;
}

const readingsIn = (meaning: Meaning): Reading[] =>
  meaning.kind === 'several' ? meaning.parts.flatMap(readingsIn) : meaning.kind === 'reading' ? [meaning.reading] : [];

/** Weights have no bands; what is open has no number. */
function isLikely({ quantity, at, value, unit }: Reading): boolean {
  const row = MEASURANDS.find((one) => one.quantity === quantity && one.at.join() === at.join());
  return row === undefined || fitOf(row, value, unit) === 'likely';
}

describe('one word of a line that was understood', () => {
  it.each(['lost', 'changed'] as const)(
    '%s leaves hardly ever anything else on record',
    (how) => {
      const { tried, wrong } = changed(how);
      expect(tried).toBeGreaterThanOrEqual(WORDS);
      expect(wrong.length / tried, `${wrong.length} of ${tried}\n${wrong.join('\n')}`).toBeLessThanOrEqual(MOST[how]);
    },
    240_000,
  );

  it('of a number leaves a likely value, or is asked', () => {
    const strange: string[] = [];
    let tried = 0;
    for (const line of lines) {
      const words = line.text.split(/[\s-]+/);
      const said = facts(understand(line.text).meaning);
      for (const [at, word] of words.entries()) {
        if (!NUMBER_WORDS.includes(word.toLowerCase())) continue;
        tried += 1;
        const text = words.toSpliced(at, 1).join(' ');
        const { verdict, meaning } = understand(text);
        const unlikely = readingsIn(meaning).filter((one) => !said.includes(short({ kind: 'reading', reading: one })));
        if (verdict === 'logged' && unlikely.some((one) => !isLikely(one))) strange.push(`${line.text} → ${text}`);
      }
    }
    expect(tried).toBeGreaterThan(1_000);
    expect(strange).toEqual([]);
  });

  it.each([
    'the run cap, forty five over five',
    'blower reading nine point six',
    'the fan is pulling four point six amps',
    "contactor's in",
    "contactor's closed",
  ])('may leave "%s", which is asked: it says two things', (text) => {
    expect(understand(text).verdict).toBe('asked');
  });

  it('is not asked where it is looked for', () => {
    const means = { kind: 'report', report: { type: 'observation', observation: 'contactor-pulled-in' } } as const;
    expect(understand("contactor's in", { readings: [], answers: [{ answer: 'in', means }] }).verdict).toBe('logged');
  });

  it.each([
    "cap's forty five over four point eight",
    'cap reads forty five over five',
    'blower draws three point nine',
    'fan amps one point two',
    'condenser fan four point six amps',
    'contactor is pulled in',
  ])('is not missed in "%s"', (text) => {
    expect(understand(text).verdict).toBe('logged');
  });

  it.each([
    ['leg one to ground eighteen', 118],
    ['leg one to leg two forty', 240],
    ['suction pressure eighteen', 118],
    ['transformer secondary six', 26],
  ])('of a number: %s lies outside what is likely there, and is asked', (text) => {
    expect(understand(text).verdict).toBe('asked');
  });
});
