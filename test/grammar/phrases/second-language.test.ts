import { describe, expect, it } from 'vitest';
import { short } from '../../../fixtures/utterances/read-utterances.ts';
import { ENGLISH } from '../../../grammar/phrases/languages/english/english.ts';
import { match } from '../../../grammar/phrases/match.ts';
import type { Expectation } from '../../../grammar/phrases/meaning.ts';
import { Network } from '../../../grammar/phrases/network.ts';
import { tokenise } from '../../../grammar/phrases/tokenise.ts';
import { makeUnderstand } from '../../../grammar/phrases/understand.ts';
import { sayTovi, TOVI, TOVI_NUMBER_RULES } from './tovi.ts';

const tovi = makeUnderstand(TOVI);
const english = makeUnderstand(ENGLISH);
const LEG: Expectation = { readings: [{ quantity: 'voltage', at: ['L1', 'ground'] }] };

describe('a second language', () => {
  it.each([
    ['volta ri u baton u mel linio ba je tero', 'voltage L1 ground 118 V'],
    ['volta sa u baton u mel tero je linio de', 'voltage L2 ground 119 V'],
    ['volta loton u de mel linio ba je linio de', 'voltage L1 L2 240 V'],
    ['volta ri u de mel kom mi linio de je linio ba', 'voltage L1 L2 208.5 V'],
    ['mikro mi u loton komuna de skatolo je hermo', 'capacitance cap-C cap-HERM 45 uF'],
    ['mikro vakua komuna de skatolo je hermo', 'capacitance cap-C cap-HERM open uF'],
    ['nu volta ri u baton u mel lino ba je tero', 'voltage L1 ground 118 V'],
    ['kio sekva', 'order what-next'],
    ['ripetu', 'order say-again'],
    ['vento halta', 'seen fan-not-turning'],
    ['skribu la pordo ne fermas', 'note la pordo ne fermas'],
    ['volta ri u baton u mel linio ba je tero poste vento halta', 'voltage L1 ground 118 V + seen fan-not-turning'],
  ])('is understood by its own rules and number order: %s', (said, meant) => {
    const understood = tovi(said);
    expect(short(understood.meaning)).toBe(meant);
    expect(understood.verdict).toBe('logged');
  });

  it('binds a bare value to what is expected, in words and in digits', () => {
    expect(short(tovi('ri u baton u mel', LEG).meaning)).toBe('voltage L1 ground 118 V');
    expect(short(tovi('118 v', LEG, { typed: true }).meaning)).toBe('voltage L1 ground 118 V');
    expect(short(tovi('volta 118 linio ba je tero').meaning)).toBe('voltage L1 ground 118 V');
  });

  it('reads every number that it says, in its own order alone', () => {
    const network = new Network(TOVI_NUMBER_RULES, 'number', TOVI);
    for (let value = 0; value <= 999; value += 1) {
      for (const said of [value, -value, Number(`${value}.4`)]) {
        const words = sayTovi(said);
        expect(TOVI.numbers.read(words.split(' '))?.value === said, `${words} ${said}`).toBe(true);
        expect(match(network, tokenise(words, TOVI))[0]?.cost, words).toBe(0);
      }
    }
    for (const turned of ['baton u ri', 'mel u ri', 'ri baton', 'mi u ka u ton', 'ba de']) {
      expect(TOVI.numbers.read(turned.split(' ')), turned).toBeUndefined();
    }
    expect(tovi('volta baton u ri u mel linio ba je tero')).toMatchObject({ verdict: 'rejected' });
  });

  it('asks by its own words: one that was mended, a digit that may be lost, a value that cannot be', () => {
    const mended = tovi('volta ri u baton u mel linia ba je tero');
    expect(mended).toMatchObject({ verdict: 'asked', reason: 'needed-repair' });
    expect(mended.repaired).toEqual([{ heard: 'linia', taken: 'linio' }]);
    expect(short(mended.meaning)).toBe('voltage L1 ground 118 V');
    // Before tens their units may be lost, behind tens the hundred.
    for (const said of ['volta em baton u mel linio ba je tero', 'volta ri u baton linio ba je tero']) {
      expect(tovi(said), said).toMatchObject({ verdict: 'asked', reason: 'several-values-fit' });
    }
    expect(tovi('volta sa mel linio ba je tero')).toMatchObject({ verdict: 'asked', reason: 'implausible' });
  });

  it('neither mends a number word nor passes over one, nor over a unit or a denial', () => {
    for (const said of [
      'volta ri u batom u mel linio ba je tero',
      'volta ri u baton u mel ka linio ba je tero',
      'vato ri u baton u mel linio ba je tero',
      'ne vento halta',
    ]) {
      expect(tovi(said), said).toMatchObject({ verdict: 'rejected' });
    }
  });

  it('says why nothing can be made of it, with sentences of its own', () => {
    expect(tovi('pumpo vento staras').meaning).toMatchObject({
      reason: 'outside-grammar',
      alternatives: ['vento halta'],
    });
    expect(tovi('vato ka linio ba je tero').reason).toBe('other-unit');
    expect(tovi('выключено').reason).toBe('not-english');
    expect(tovi('ŝĉŝĉ').reason).toBe('outside-grammar');
  });
});

describe('beside a second language English', () => {
  it.each([
    ['leg one to ground one eighteen', 'voltage L1 ground 118 V'],
    ['what next', 'order what-next'],
    ['outdoor fan is not turning', 'seen fan-not-turning'],
  ])('means what it meant, and nothing there: %s', (said, meant) => {
    expect(short(english(said).meaning)).toBe(meant);
    expect(tovi(said).verdict).toBe('rejected');
  });

  it.each(['volta ri u baton u mel linio ba je tero', 'kio sekva', 'vento halta'])('knows none of it: %s', (said) => {
    expect(english(said).verdict).toBe('rejected');
  });
});
