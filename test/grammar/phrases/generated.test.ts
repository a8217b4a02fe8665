import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compose } from '../../../grammar/phrases/compose/compose.ts';
import { fitOf } from '../../../grammar/phrases/compose/fit.ts';
import { segmentsOf } from '../../../grammar/phrases/compose/segment.ts';
import { ENGLISH } from '../../../grammar/phrases/languages/english/english.ts';
import { spokenForms } from '../../../grammar/phrases/languages/english/numbers/spoken-forms.ts';
import { RULES } from '../../../grammar/phrases/languages/english/rules/utterance-rules.ts';
import { FILLERS, HESITATIONS } from '../../../grammar/phrases/languages/english/words/fillers.ts';
import { NUMBER_WORDS } from '../../../grammar/phrases/languages/english/words/number-words.ts';
import { WRITTEN_ENGLISH } from '../../../grammar/phrases/languages/english/written-english.ts';
import { match } from '../../../grammar/phrases/match.ts';
import type { Meaning, Understanding } from '../../../grammar/phrases/meaning.ts';
import { Network } from '../../../grammar/phrases/network.ts';
import { pattern, sentences } from '../../../grammar/phrases/pattern.ts';
import { tokenise } from '../../../grammar/phrases/tokenise.ts';
import { makeUnderstand } from '../../../grammar/phrases/understand.ts';
import { MEASURANDS, type Measurand } from '../../../grammar/vocabulary/measurands.ts';
import { POINTS, type Point } from '../../../grammar/vocabulary/points.ts';
import { UNITS, type Unit } from '../../../grammar/vocabulary/units.ts';
import { SEED, tries } from '../../how-much.ts';
import { randomPath, seeded, wordsOf } from '../random-sentence.ts';

const understand = makeUnderstand();
const SENTENCES = tries(8_000, 100_000);
const READINGS = tries(4_000, 30_000);
const CORRUPTIONS = tries(3_000, 12_000);
const REPLACED = tries(2_000, 10_000);

/** Every rule that stands alone as an utterance or as one part of it. */
const SEGMENTS = [
  'reading',
  'pair',
  'same',
  'order',
  'switch',
  'observation',
  'discharged',
  'meter-proof',
  'absence',
  'nameplate',
  'part',
  'work',
  'wire',
  'mass',
  'injury',
  'correction',
  'note',
  'bare-value',
  'placeless',
];

/** A reading with the sentence that says it. */
interface SaidReading {
  readonly text: string;
  readonly row: Measurand;
  readonly value: number;
  readonly shared: boolean;
}

const pick = <T>(items: readonly T[], random: () => number): T => items[Math.floor(random() * items.length)]!;
const points = new Map<string, Point>(POINTS.map((point) => [point.id, point]));
const phrasesOf = new Map<string, string[]>();
const phrases = (say: string): string[] => {
  let known = phrasesOf.get(say);
  if (known === undefined) {
    known = sentences(pattern(say)).map((words) => words.join(' '));
    phrasesOf.set(say, known);
  }
  return known;
};
const units: readonly Unit[] = UNITS;
const LINKS = ['', '', '', 'is', 'reads', 'at', 'shows', "i've got"];

/** A reading with a likely value, one decimal at most, said by one of its names in one of the value's forms. */
function randomReading(random: () => number): SaidReading {
  const row = pick(MEASURANDS, random);
  const [low, high] = pick(
    row.likely.filter((band) => band[0] <= 9000),
    random,
  );
  const top = Math.min(high, 9999);
  const fine = row.shape === 'to-99' || random() < 0.2;
  const raw = low + random() * (top - low);
  const value = Math.max(0, fine ? Math.round(raw * 10) / 10 : Math.round(raw));
  const [one, other] = row.at;
  const named = row.say !== undefined && (row.onlyByName || other === undefined || random() < 0.5);
  const place = points.get(one!)?.place;
  const says = (id: string): string => pick(phrases(points.get(id)?.say ?? points.get(id)!.name), random);
  const where = one!.includes('@') ? ` at the ${place === 'air-handler' ? 'air handler' : place}` : '';
  const name = named
    ? pick(phrases(row.say!), random)
    : random() < 0.5
      ? `${says(one!)} to ${says(other!)}${where}`
      : `${says(other!)} to ${says(one!)}${where}`;
  const unit = units.find((candidate) => candidate.code === row.unit && candidate.quantities.includes(row.quantity))!;
  const withUnit = random() < 0.4;
  const text = [
    name,
    pick(LINKS, random),
    pick(spokenForms(value), random),
    withUnit ? pick(phrases(unit.say), random) : '',
  ]
    .filter((part) => part !== '')
    .join(' ');
  // "volts" leaves open whether they are of direct current.
  return { text, row, value, shared: !withUnit || row.unit === 'V' };
}

/** Every number of a meaning, in the order in which it holds them. */
function valuesOf(meaning: Meaning): string {
  const found: string[] = [];
  JSON.stringify(meaning, (_key, value) => {
    if (typeof value === 'number' || value === 'open') found.push(String(value));
    return value;
  });
  return found.join(' ');
}

describe('a generated sentence of the job', () => {
  it.each(['job-item', 'check-on-me', 'dictation', 'deed'])(
    'of the rule %s means what it was generated for',
    (rule) => {
      for (let seed = 0; seed < tries(400, 2_000); seed += 1) {
        const path = randomPath(RULES, rule, seeded(seed));
        const text = wordsOf(path).join(' ');
        const understood = understand(text);
        const meant = (segmentsOf(path, ENGLISH) ?? [])
          .flatMap((segment) => compose(segment, undefined, ENGLISH.words))
          .map((draft) => JSON.stringify(draft.meaning));
        if (understood.verdict === 'logged') expect(meant, text).toContain(JSON.stringify(understood.meaning));
        else expect(understood.reason, text).not.toBe('outside-grammar');
      }
    },
  );
});

describe('a generated sentence', () => {
  it('of any rule means what it was generated for, or is asked', () => {
    let logged = 0;
    fc.assert(
      fc.property(fc.constantFrom(...SEGMENTS), fc.integer(), (rule, seed) => {
        const path = randomPath(RULES, rule, seeded(seed));
        const text = wordsOf(path).join(' ');
        const segments = segmentsOf(path, ENGLISH);
        const meant = segments?.length === 1 ? compose(segments[0]!, undefined, ENGLISH.words) : [];
        const understood = understand(text);
        // Words that may mean something likelier than what they were generated for are decided by that.
        const plain = meant.some((draft) => draft.doubt === undefined && draft.cost < 1);
        if (plain) expect(understood.reason, text).not.toBe('outside-grammar');
        if (understood.verdict !== 'logged' || !plain) return;
        // "no voltage at the coil" is a reading before it is a correction.
        if (rule === 'correction' && /^no (voltage|volts)\b/.test(text)) return;
        logged += 1;
        expect(
          meant.map((draft) => JSON.stringify(draft.meaning)),
          text,
        ).toContain(JSON.stringify(understood.meaning));
      }),
      { numRuns: SENTENCES, seed: SEED },
    );
    expect(logged).toBeGreaterThan(0.4 * SENTENCES);
  }, 300_000);

  it('of a reading in any form keeps its value, its unit and its place', () => {
    const seen = { logged: 0, asked: 0 };
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const { text, row, value, shared } = randomReading(seeded(seed));
        const { verdict, meaning } = understand(text);
        expect(meaning.kind, text).toBe('reading');
        if (meaning.kind !== 'reading') return;
        seen[verdict === 'logged' ? 'logged' : 'asked'] += 1;
        if (verdict !== 'logged') return;
        expect(meaning.reading.value, text).toBe(value);
        // Without "fan" the bare letters mean the compressor.
        if (row.rare && !text.includes('fan')) return;
        const same = meaning.reading.quantity === row.quantity && meaning.reading.at.join() === row.at.join();
        // A name that several rows share may go to another row, but only where the value is as likely there.
        const likelyThere =
          shared &&
          MEASURANDS.some((other) => other.at === meaning.reading.at && fitOf(other, value, other.unit) === 'likely');
        expect(same || likelyThere, `${text} → ${JSON.stringify(meaning.reading)}`).toBe(true);
      }),
      { numRuns: READINGS, seed: SEED },
    );
    expect(seen.logged).toBeGreaterThan(seen.asked * 3);
  }, 300_000);
});

const network = new Network(RULES, 'utterance', ENGLISH);
const VOCABULARY = [...network.words].filter((word) => word !== '#');
const STRANGE = [
  'banana',
  'window',
  'tuesday',
  'seventy-ish',
  'xylophone',
  'ladder',
  'maybe',
  'twice',
  'lag',
  'grand',
  'contractor',
  'harm',
];

/** One or two words replaced, dropped, doubled, added or exchanged. */
function corrupt(words: readonly string[], random: () => number): string[] {
  const changed = [...words];
  const times = random() < 0.5 ? 1 : 2;
  for (let done = 0; done < times; done += 1) {
    const at = Math.floor(random() * changed.length);
    const from = pick([VOCABULARY, STRANGE, FILLERS, HESITATIONS], random);
    const kind = random();
    if (kind < 0.5) changed[at] = pick(from, random);
    else if (kind < 0.65 && changed.length > 1) changed.splice(at, 1);
    else if (kind < 0.85) changed.splice(at, 0, pick(from, random));
    else if (kind < 0.93) changed.splice(at, 0, changed[at]!);
    else [changed[at], changed[0]] = [changed[0]!, changed[at]!];
  }
  return changed;
}

/** Whether the network takes it as it was heard: with its fillers and homophones, nothing repaired. */
const inGrammar = (text: string): boolean => match(network, tokenise(text, WRITTEN_ENGLISH)).length > 0;

const everyWordFits = (text: string): boolean =>
  match(network, tokenise(text, WRITTEN_ENGLISH)).some(({ steps }) =>
    steps.every(({ taken }) => taken === undefined || taken.how === 'word'),
  );

describe('a sentence with up to two words corrupted', () => {
  it('that leaves the grammar is never logged with another value', () => {
    let left = 0;
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const random = seeded(seed);
        const { text } = randomReading(random);
        const before: Understanding = understand(text);
        const changed = corrupt(text.split(' '), random).join(' ');
        if (inGrammar(changed)) return;
        left += 1;
        const after = understand(changed);
        if (after.verdict !== 'logged' || valuesOf(after.meaning) === '') return;
        expect(valuesOf(after.meaning), `${text} → ${changed}`).toBe(valuesOf(before.meaning));
      }),
      { numRuns: CORRUPTIONS, seed: SEED },
    );
    expect(left).toBeGreaterThan(0.4 * CORRUPTIONS);
  }, 300_000);

  it('with a filler or a hesitation in place of a number word is never logged with another value', () => {
    let tried = 0;
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const random = seeded(seed);
        const { text } = randomReading(random);
        const words = text.split(' ');
        const at = pick(
          words.flatMap((word, index) => (NUMBER_WORDS.includes(word) ? [index] : [])),
          random,
        );
        const changed = words.with(at, pick([...FILLERS, ...HESITATIONS], random)).join(' ');
        // "a hundred" for "two hundred" is a sentence of its own.
        if (everyWordFits(changed)) return;
        const after = understand(changed);
        tried += 1;
        if (after.verdict !== 'logged' || valuesOf(after.meaning) === '') return;
        expect(valuesOf(after.meaning), `${text} → ${changed}`).toBe(valuesOf(understand(text).meaning));
      }),
      { numRuns: REPLACED, seed: SEED },
    );
    expect(tried).toBeGreaterThan(0.9 * REPLACED);
  }, 300_000);
});
