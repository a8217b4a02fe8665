import { describe, expect, it } from 'vitest';
import { short } from '../../../fixtures/utterances/read-utterances.ts';
import { sayNumber } from '../../../grammar/phrases/languages/english/numbers/say-number.ts';
import { spokenForms } from '../../../grammar/phrases/languages/english/numbers/spoken-forms.ts';
import { NEGATIONS, UNREAL_WORDS } from '../../../grammar/phrases/languages/english/words/fillers.ts';
import type { Meaning, Understanding } from '../../../grammar/phrases/meaning.ts';
import { pattern, sentences } from '../../../grammar/phrases/pattern.ts';
import { makeUnderstand } from '../../../grammar/phrases/understand.ts';
import { DEVICES } from '../../../grammar/vocabulary/devices.ts';
import { MEASURANDS, type Measurand } from '../../../grammar/vocabulary/measurands.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import { FOREIGN_UNITS, UNITS, type Unit } from '../../../grammar/vocabulary/units.ts';
import { tries } from '../../how-much.ts';
import { seeded } from '../random-sentence.ts';

/** Families of sentences that were once taken for something else: each is made here, and none may be logged wrong. */
const understand = makeUnderstand();
const CASES = tries(400, 4_000);
const units: readonly Unit[] = UNITS;
const pick = <T>(items: readonly T[], random: () => number): T => items[Math.floor(random() * items.length)]!;
const names = (row: Measurand): string[] => sentences(pattern(row.say!)).map((words) => words.join(' '));
const NAMED = MEASURANDS.filter((row) => row.say !== undefined && !row.rare);

const readingsIn = (meaning: Meaning): Reading[] =>
  meaning.kind === 'several' ? meaning.parts.flatMap(readingsIn) : meaning.kind === 'reading' ? [meaning.reading] : [];

/** A whole number within a likely band, that ends in a digit of its own. */
function likelyValue(row: Measurand, random: () => number): number {
  const [low, high] = pick(
    row.likely.filter((band) => band[0] < 999),
    random,
  );
  const top = Math.min(high, 999);
  return row.shape === 'to-99' && random() < 0.6
    ? Math.round((low + random() * (top - low)) * 10) / 10
    : Math.round(low + random() * (top - low));
}

/** What goes wrong in many sentences, each with its cause. */
function wrongOf(make: (random: () => number) => { text: string; wrong: (understood: Understanding) => boolean }): {
  wrong: string[];
  logged: number;
} {
  const wrong: string[] = [];
  let logged = 0;
  for (let seed = 0; seed < CASES; seed += 1) {
    const { text, wrong: isWrong } = make(seeded(seed));
    const understood = understand(text);
    if (understood.verdict === 'logged') logged += 1;
    if (isWrong(understood)) wrong.push(`${text} → ${understood.verdict} ${short(understood.meaning)}`);
  }
  return { wrong, logged };
}

describe('the next place, named behind a value', () => {
  it('never takes the end of the number before it, and is asked for', () => {
    const { wrong, logged } = wrongOf((random) => {
      const row = pick(NAMED, random);
      const next = pick(NAMED, random);
      const value = likelyValue(row, random);
      const text = `${pick(names(row), random)} ${pick(spokenForms(value), random)} ${pick(names(next), random)}`;
      return {
        text,
        wrong: ({ verdict, meaning }) =>
          verdict === 'logged' &&
          (readingsIn(meaning).length > 1 || readingsIn(meaning).some((one) => one.value !== value)),
      };
    });
    expect(wrong).toEqual([]);
    expect(logged).toBeGreaterThan(0.3 * CASES);
  });

  it('is told apart from the reading as a place without a value', () => {
    const understood = understand('leg one to ground one twenty two leg two to ground');
    expect(understood.verdict).toBe('logged');
    expect(understood.meaning).toMatchObject({
      kind: 'several',
      parts: [
        { kind: 'reading', reading: { at: ['L1', 'ground'], value: 122 } },
        { kind: 'unclear', reason: 'no-value', at: ['L2', 'ground'] },
      ],
    });
  });
});

describe('"no" with a quantity', () => {
  const QUANTITIES = [
    { say: ['amps', 'current', 'amp draw'], of: 'current', at: 'on' },
    { say: ['volts', 'voltage', 'power', 'juice'], of: 'voltage', at: 'at' },
    { say: ['pressure'], of: 'pressure', at: 'on' },
  ] as const;

  it('is nothing of it at that place, never a correction of another reading', () => {
    const { wrong, logged } = wrongOf((random) => {
      const quantity = pick(QUANTITIES, random);
      const row = pick(
        NAMED.filter((one) => one.quantity === quantity.of),
        random,
      );
      const name = pick(
        names(row).filter((one) => !/\b(amps|current|draw|volts?|voltage|pressure|across|drop|p s i)\b/.test(one)),
        random,
      );
      return {
        text: `no ${pick(quantity.say, random)} ${quantity.at} the ${name ?? names(row)[0]}`,
        wrong: ({ verdict, meaning }) =>
          verdict === 'logged' &&
          (meaning.kind !== 'reading' || meaning.reading.quantity !== quantity.of || meaning.reading.value !== 0),
      };
    });
    expect(wrong).toEqual([]);
    expect(logged).toBeGreaterThan(0.5 * CASES);
  });

  it.each([
    ['no amps on the fan', 'current'],
    ['no volts leg one to ground', 'voltage'],
    ['no voltage on leg two', 'voltage'],
  ])('is taken at once, and nothing in it is set right: "%s"', (text, quantity) => {
    expect(understand(text)).toMatchObject({
      verdict: 'logged',
      meaning: { kind: 'reading', reading: { quantity, value: 0 } },
    });
  });

  it('before a place alone is asked; with a comma behind it, it corrects', () => {
    for (const row of NAMED.filter((one) => one.at.includes('ground'))) {
      const [name] = names(row);
      expect(understand(`no ${name}`).verdict, name).not.toBe('logged');
      expect(understand(`no, ${name}`), name).toMatchObject({ verdict: 'logged', meaning: { command: 'correct' } });
    }
  });
});

describe('zero and open', () => {
  const SAID = ['o l', 'open', 'open line', 'over limit', 'infinite', 'no continuity', 'zero', 'it beeps', 'closed'];
  const rows = NAMED.filter((row) => row.quantity === 'resistance');

  it('are never one letter or one word apart', () => {
    const { wrong } = wrongOf((random) => {
      const text = `${pick(names(pick(rows, random)), random)} ${pick(SAID, random)}`;
      const before = understand(text);
      const words = text.split(' ');
      const at = words.length - 1 - Math.floor(random() * Math.min(2, words.length));
      const letter = Math.floor(random() * words[at]!.length);
      const shorter = words[at]!.slice(0, letter) + words[at]!.slice(letter + 1);
      const changed = random() < 0.5 ? words.toSpliced(at, 1) : words.with(at, shorter);
      const was = readingsIn(before.meaning)[0]?.value;
      return {
        text: changed.filter(Boolean).join(' '),
        wrong: ({ verdict, meaning }) =>
          verdict === 'logged' && before.verdict === 'logged' && readingsIn(meaning).some(({ value }) => value !== was),
      };
    });
    expect(wrong).toEqual([]);
  });

  it('are not made of a leg by a plural that was lost or added', () => {
    for (let value = 108; value <= 132; value += 1) {
      for (const legs of ['leg', 'legs']) {
        expect(understand(`${sayNumber(value)} ${legs}`).verdict).not.toBe('logged');
        expect(understand(`${legs} ${sayNumber(value)}`).verdict).not.toBe('logged');
      }
    }
  });
});

describe('a point that is expected', () => {
  it('is what its own words mean, whatever else they name', () => {
    const wrong: string[] = [];
    let logged = 0;
    for (const row of MEASURANDS.filter((one) => one.say !== undefined)) {
      for (const name of names(row)) {
        const value = likelyValue(row, seeded(name.length));
        const text = `${name} ${sayNumber(value)}`;
        const { verdict, meaning } = understand(text, { readings: [{ quantity: row.quantity, at: row.at }] });
        if (verdict !== 'logged') continue;
        logged += 1;
        const [one] = readingsIn(meaning);
        if (one?.quantity !== row.quantity || one.at.join() !== row.at.join())
          wrong.push(`${text} → ${short(meaning)}`);
      }
    }
    expect(wrong).toEqual([]);
    expect(logged).toBeGreaterThan(300);
  });
});

describe('a word that turns a sentence round', () => {
  const DONE = ['pulled', 'opened', 'killed', 'turned off', 'locked out'];
  const places = DEVICES.filter((row) => !('withoutPlace' in row)).map((row) =>
    sentences(pattern(row.at), {
      stat: pattern('thermostat'),
    })[0]!.join(' '),
  );

  it('is never passed over, wherever it stands in a report', () => {
    const turning = [...NEGATIONS, ...UNREAL_WORDS].filter(
      (word) => !['off', 'out', 'have', 'is', 'are', 'was', 'do', 'does', 'did', 'will'].includes(word),
    );
    const { wrong } = wrongOf((random) => {
      const device = pick(places, random);
      const done = pick(DONE, random);
      const words = (random() < 0.5 ? `i ${done} the ${device}` : `${device} is ${done}`).split(' ');
      const text = words.toSpliced(Math.floor(random() * words.length), 0, pick(turning, random)).join(' ');
      return { text, wrong: ({ verdict, meaning }) => verdict === 'logged' && meaning.kind === 'report' };
    });
    expect(wrong).toEqual([]);
  });

  it.each(["ain't", "haven't", 'nobody', 'never', 'hardly', 'almost', 'not'])(
    'denies an opening and a discharge: %s',
    (word) => {
      for (const text of [
        `i ${word} pulled the outdoor disconnect`,
        `${word} pulled the outdoor disconnect`,
        `outdoor disconnect is ${word} pulled`,
        `outdoor disconnect ${word} pulled`,
        `capacitor is ${word} discharged`,
        `capacitor ${word} discharged`,
      ]) {
        expect(understand(text).verdict, text).toBe('rejected');
      }
    },
  );
});

describe('a report that breaks off', () => {
  it.each(['outdoor disconnect is pulled', 'panel breaker is off', 'leg one to ground one eighteen'])(
    'is asked behind an "and" that joins nothing, and a "right?": %s',
    (said) => {
      expect(understand(said).verdict).toBe('logged');
      for (const end of ['and', 'and the', 'right']) {
        expect(understand(`${said} ${end}`).verdict, end).not.toBe('logged');
      }
    },
  );
});

describe('a unit', () => {
  it('that is not known or does not belong is never dropped', () => {
    const said = [...FOREIGN_UNITS, ...units.flatMap((unit) => unit.say.match(/[a-z]{4,}/g) ?? [])];
    const { wrong } = wrongOf((random) => {
      const row = pick(NAMED, random);
      const unit = pick(said, random);
      const text = `${pick(names(row), random)} ${sayNumber(likelyValue(row, random))} ${unit}`;
      const belongs = (one: Reading): boolean =>
        units.some(
          (candidate) =>
            candidate.code === one.unit && candidate.quantities.includes(one.quantity) && candidate.say.includes(unit),
        );
      return {
        text,
        wrong: ({ verdict, meaning }) =>
          verdict === 'logged' && !readingsIn(meaning).every((one) => belongs(one) || row.say!.includes(unit)),
      };
    });
    expect(wrong).toEqual([]);
  });

  it('is kept as it was said, and nothing is converted', () => {
    for (const unit of units) {
      for (const quantity of unit.quantities) {
        const row = MEASURANDS.find((one) => one.quantity === quantity && !one.rare && one.say !== undefined);
        if (row === undefined) continue;
        const value = inUnit(row, unit, quantity);
        if (value === undefined) continue;
        const text = `${names(row)[0]} ${sayNumber(value)} ${sentences(pattern(unit.say))[0]!.join(' ')}`;
        const [one] = readingsIn(understand(text).meaning);
        expect(one, text).toMatchObject({ value, unit: unit.code });
      }
    }
  });
});

/** A whole number of a unit whose value is likely for the row; undefined where there is none. */
function inUnit(row: Measurand, unit: Unit, quantity: Reading['quantity']): number | undefined {
  const own = units.find((one) => one.code === row.unit)!;
  if (own.base !== unit.base) return undefined;
  const offset = (of: Unit): number => (quantity === 'difference' ? 0 : (of.offset ?? 0));
  const [low, high] = row.likely.at(-1)!;
  const middle = (((low + high) / 2) * own.factor + offset(own) - offset(unit)) / unit.factor;
  return middle >= 2 && middle <= 9000 ? Math.round(middle) : undefined;
}

describe('a word or a stop between a value and a place behind it', () => {
  const asked = { readings: [{ quantity: 'voltage', at: ['L1', 'ground'] }] } as const;
  const BETWEEN = [
    ' now ',
    ' then ',
    ' okay ',
    ' next ',
    ', now ',
    ', ',
    '. ',
    ' okay now ',
    ' volts now ',
    ' right now, ',
  ];
  const NEXT = ['leg two to ground', 'leg two', 'the other leg', 'T one to ground', 'leg one to leg two'];

  it.each(BETWEEN)('%j ends the value: it is never logged at the place that comes next', (between) => {
    const wrong: string[] = [];
    let logged = 0;
    for (const value of ['zero', 'one eighteen', 'one twenty one', 'point two', 'two forty']) {
      for (const next of NEXT) {
        const understood = understand(`${value}${between}${next}`, asked);
        if (understood.verdict !== 'logged') continue;
        logged += 1;
        const [first, ...more] = readingsIn(understood.meaning);
        if (first?.at.join() !== 'L1,ground' || more.length > 0) wrong.push(`${value}${between}${next}`);
      }
    }
    expect(wrong).toEqual([]);
    if (between === ' now ') expect(logged).toBeGreaterThan(0);
  });

  it('is asked where what is expected is no such quantity', () => {
    const air = { readings: [{ quantity: 'temperature', at: ['outdoor-air'] }] } as const;
    const { verdict, meaning } = understand('one twenty now leg two to ground', air);
    expect([verdict, readingsIn(meaning)[0]?.at.join()]).toEqual(['asked', 'L2,ground']);
  });

  it('is asked where nothing says whose value it is', () => {
    for (const text of ['zero now leg two to ground', 'two point one now common to start', 'two forty now T one T two'])
      expect(understand(text).verdict, text).toBe('asked');
  });
});

describe('a question mark', () => {
  it.each([
    'leg one to ground one eighteen?',
    'outdoor disconnect is pulled?',
    'compressor running?',
    'fan not turning?',
  ])('makes a fact of nothing: %s', (text) => expect(understand(text).verdict).not.toBe('logged'));
});

describe('a decimal comma', () => {
  it('is none in a list', () => {
    const { meaning } = understand('meter 240,0,0,0,0,0,0,meter 240');
    expect(meaning).toMatchObject({ report: { before: 240, values: [0, 0, 0, 0, 0, 0], after: 240 } });
  });

  it.each([
    ['herm 4,5 uf', 4.5],
    ['fan amps 1,2', 1.2],
    ['common to run 2,1 ohms', 2.1],
    ['vacuum 1,200 microns', 1200],
    ['fan amps 1,2.', 1.2],
  ])('%s is no tenfold', (text, value) => {
    expect(readingsIn(understand(text).meaning)[0]?.value).toBe(value);
  });
});
