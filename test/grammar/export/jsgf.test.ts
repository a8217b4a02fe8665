import { readFileSync } from 'node:fs';
import createModule, { type SoundSwallowerModule } from 'soundswallower';
import { beforeAll, describe, expect, it } from 'vitest';
import { toJsgf } from '../../../grammar/export/jsgf.ts';
import { PRONUNCIATIONS } from '../../../grammar/export/pronunciations.ts';
import type { Expectation } from '../../../grammar/phrases/meaning.ts';
import { makeUnderstand } from '../../../grammar/phrases/understand.ts';
import { MEASURANDS } from '../../../grammar/vocabulary/measurands.ts';
import { PLATE_LINES } from '../../../grammar/vocabulary/nameplate.ts';
import { tries } from '../../how-much.ts';
import { randomPath, seeded, wordsOf } from '../random-sentence.ts';
import { accepts } from './accepts.ts';
import { readJsgf } from './read-grammars.ts';

const understand = makeUnderstand();
const LEG: Expectation = { readings: [{ quantity: 'voltage', at: ['L1', 'ground'] }] };
const SUCTION: Expectation = { readings: [{ quantity: 'pressure', at: ['suction-port'] }] };
const METRIC = { temperature: 'Cel', pressure: 'kPa' } as const;
const MODEL = new URL('../../../node_modules/soundswallower/model/en-us/', import.meta.url);

/** What the recogniser is given at different moments. */
const MOMENTS: readonly (readonly [string, string, Expectation | undefined])[] = [
  ['the expected reading', toJsgf(LEG, { scope: 'expected' }), LEG],
  ['everything', toJsgf(LEG, { scope: 'all' }), LEG],
  [
    'a pressure in kilopascals',
    toJsgf({ ...SUCTION, units: METRIC }, { scope: 'expected' }),
    { ...SUCTION, units: METRIC },
  ],
  ['orders only', toJsgf(undefined, { scope: 'commands' }), undefined],
  [
    'a teen/ty question',
    toJsgf({ readings: [], question: 'teen-or-ty', options: [115, 150] }, { scope: 'expected' }),
    { readings: [], question: 'teen-or-ty', options: [115, 150] },
  ],
  ...PLATE_LINES.map((line) => {
    const expectation: Expectation = { readings: [], plate: [...new Set([...line, ...PLATE_LINES.flat()])] };
    return [`the plate's ${line.join(' and ')}`, toJsgf(expectation, { scope: 'expected' }), expectation] as const;
  }),
  ...MEASURANDS.filter((_, index) => index % 12 === 0).map(({ quantity, at }) => {
    const expectation: Expectation = { readings: [{ quantity, at }] };
    return [`${quantity} ${at.join('–')}`, toJsgf(expectation, { scope: 'expected' }), expectation] as const;
  }),
];

const wordsIn = (jsgf: string): string[] => [
  ...new Set(
    jsgf
      .split('\n')
      .slice(2)
      .join(' ')
      .replace(/<[^>]*>|[()[\]|=;*]|\bpublic\b/g, ' ')
      .split(/\s+/)
      .filter((word) => word !== ''),
  ),
];

describe.each(MOMENTS)('the recogniser grammar for %s', (_name, jsgf, expectation) => {
  it('gives sentences that are understood, each of them', () => {
    const { rules, root } = readJsgf(jsgf);
    const seeds = Array.from({ length: tries(60, 300) }, (_, seed) => seed);
    const texts = seeds.map((seed) => wordsOf(randomPath(rules, root, seeded(seed))).join(' '));
    const lost = texts.filter((text) => understand(text, expectation).reason === 'outside-grammar');
    expect(lost).toEqual([]);
  });

  it('has a pronunciation for every word', () => {
    const dictionary = new Set(
      readFileSync(new URL('dict.txt', MODEL), 'utf8')
        .split('\n')
        .map((line) => line.split(' ')[0]),
    );
    const unknown = wordsIn(jsgf).filter((word) => !dictionary.has(word) && PRONUNCIATIONS[word] === undefined);
    expect(unknown).toEqual([]);
  });
});

describe('the expected reading', () => {
  const { rules, root } = readJsgf(toJsgf(LEG, { scope: 'expected' }));
  const { rules: orders, root: orderRoot } = readJsgf(toJsgf(LEG, { scope: 'commands' }));

  it('may be said with its place, without it, and next to orders', () => {
    for (const text of [
      'leg one to ground one eighteen',
      'one eighteen',
      'ground to line one two oh eight',
      'what next',
    ]) {
      expect(accepts(rules, root, text.split(' ')), text).toBe(true);
    }
  });

  it('leaves no room for other places, and orders leave none for readings', () => {
    expect(accepts(rules, root, 'leg two to ground one eighteen'.split(' '))).toBe(false);
    expect(accepts(orders, orderRoot, 'leg one to ground one eighteen'.split(' '))).toBe(false);
    expect(accepts(orders, orderRoot, ['stop'])).toBe(true);
  });

  it('is offered for every measurand of the tables', () => {
    for (const { quantity, at } of MEASURANDS) {
      const jsgf = toJsgf({ readings: [{ quantity, at }] }, { scope: 'expected' });
      expect(jsgf, `${quantity} ${at.join()}`).toContain('<expected-0-0>');
    }
  });
});

describe("soundswallower's own compiler", () => {
  let module: SoundSwallowerModule;
  beforeAll(async () => {
    const base = new URL('../', MODEL).pathname;
    module = await createModule({ modelBase: base } as Partial<SoundSwallowerModule>);
  });

  it('compiles each grammar with the added pronunciations', async () => {
    const decoder = new module.Decoder({ loglevel: 'FATAL' });
    await decoder.initialize();
    for (const [word, all] of Object.entries(PRONUNCIATIONS)) {
      all.forEach((phones, index) => {
        const name = index === 0 ? word : `${word}(${index + 1})`;
        if (!decoder.lookup_word(name)) decoder.add_words([name, phones]);
      });
    }
    for (const [name, jsgf] of MOMENTS) expect(() => decoder.set_grammar(jsgf), name).not.toThrow();
    decoder.delete();
  }, 300_000);

  it('speaks only phones that the model knows', () => {
    const phones = new Set(
      readFileSync(new URL('dict.txt', MODEL), 'utf8')
        .split('\n')
        .filter((line) => line !== '' && !line.startsWith(';'))
        .slice(0, 20_000)
        .flatMap((line) => line.split(' ').slice(1)),
    );
    for (const [word, all] of Object.entries(PRONUNCIATIONS)) {
      for (const phone of all.flatMap((spoken) => spoken.split(' ')))
        expect(phones.has(phone), `${word}: ${phone}`).toBe(true);
    }
  });
});

it('lets pressures be heard in hundreds and thousands where they are read in kilopascals, and nowhere else', () => {
  const hears = (units: Expectation['units']) =>
    (['expected', 'all'] as const).map((scope) => {
      const { rules, root } = readJsgf(toJsgf({ ...SUCTION, ...(units === undefined ? {} : { units }) }, { scope }));
      return accepts(rules, root, 'suction pressure twenty four hundred'.split(' '));
    });
  expect([hears(METRIC), hears(undefined)]).toEqual([
    [true, true],
    [false, false],
  ]);
});
