import { describe, expect, it } from 'vitest';
import { TEST_MODELS } from '../../../client/diagnosis/measuring/test-models.ts';
import { short } from '../../../fixtures/utterances/read-utterances.ts';
import { NAMES } from '../../../grammar/phrases/languages/english/words/names.ts';
import type { Expectation } from '../../../grammar/phrases/meaning.ts';
import { pattern, sentences } from '../../../grammar/phrases/pattern.ts';
import { makeUnderstand } from '../../../grammar/phrases/understand.ts';
import { COMMANDS } from '../../../grammar/vocabulary/commands.ts';
import { COVER_NAMES } from '../../../grammar/vocabulary/covers.ts';
import { DEEDS } from '../../../grammar/vocabulary/deeds.ts';
import { JOB_ITEMS } from '../../../grammar/vocabulary/job-items.ts';
import { MEASURANDS } from '../../../grammar/vocabulary/measurands.ts';
import { MOVED } from '../../../grammar/vocabulary/moved-parts.ts';
import { NAMEPLATE_FIELDS, type NameplateField } from '../../../grammar/vocabulary/nameplate.ts';
import { OBSERVATIONS } from '../../../grammar/vocabulary/observations.ts';
import { PARTS } from '../../../grammar/vocabulary/parts.ts';
import { POINTS, type Point } from '../../../grammar/vocabulary/points.ts';
import type { QuantityId } from '../../../grammar/vocabulary/quantities.ts';
import { UNITS, type Unit } from '../../../grammar/vocabulary/units.ts';
import { WIRE_COLOURS } from '../../../grammar/vocabulary/wires.ts';
import { SAID_WORKS } from '../../../grammar/vocabulary/works.ts';

const understand = makeUnderstand();
const units: readonly Unit[] = UNITS;
const order = POINTS.map((point): string => point.id);
const points = new Map<string, Point>(POINTS.map((point) => [point.id, point]));
const said = (text: string): string => text.replaceAll(',', '').toLowerCase();
const key = (quantity: string, at: readonly string[]): string => `${quantity} ${[...at].sort().join()}`;

const NAMED = Object.fromEntries(Object.entries(NAMES).map(([name, say]) => [name, pattern(say)]));

describe('the table of what can be measured', () => {
  it('holds at least 60 places and pairs, each quantity once at each of them', () => {
    expect(new Set(MEASURANDS.map((row) => row.at.join())).size).toBeGreaterThanOrEqual(60);
    const keys = MEASURANDS.map((row) => `${key(row.quantity, row.at)} ${row.unit}`);
    expect(new Set(keys).size).toBe(keys.length);
  });

  it('holds every quantity that a visit records', () => {
    const recorded: QuantityId[] = [
      'voltage',
      'voltage-dc',
      'current',
      'resistance',
      'capacitance',
      'temperature',
      'difference',
      'wet-bulb',
      'pressure',
      'vacuum',
      'static-pressure',
      'airflow',
      'frequency',
      'humidity',
      'insulation',
      'time',
    ];
    for (const quantity of recorded)
      expect(
        MEASURANDS.some((row) => row.quantity === quantity),
        quantity,
      ).toBe(true);
  });

  it.each(MEASURANDS.map((row) => [key(row.quantity, row.at), row] as const))(
    'gives %s its tips in order, a unit that measures it, and likely values among the possible',
    (_name, row) => {
      expect([...row.at].sort((a, b) => order.indexOf(a) - order.indexOf(b))).toEqual(row.at);
      const unit = units.find((one) => one.code === row.unit && one.quantities.includes(row.quantity));
      expect(unit).toBeDefined();
      for (const [low, high] of row.likely) {
        expect(low).toBeLessThanOrEqual(high);
        expect(low).toBeGreaterThanOrEqual(row.low);
        expect(high).toBeLessThanOrEqual(row.high);
      }
    },
  );

  it('answers every test of the diagnosis that reads a value', () => {
    const rows = new Set(MEASURANDS.map((row) => key(row.quantity, row.at)));
    const unsaid = Object.entries(TEST_MODELS).filter(
      ([, model]) => model.quantity !== 'observation' && !rows.has(key(model.quantity, model.at)),
    );
    expect(unsaid.map(([id]) => id)).toEqual([]);
  });
});

describe('everything that has a name can be said by it', () => {
  it.each(MEASURANDS.map((row) => [key(row.quantity, row.at), row] as const))('reading: %s', (_name, row) => {
    const unit = sentences(
      pattern(units.find((one) => one.code === row.unit && one.quantities.includes(row.quantity))!.say),
    )[0]!;
    const [one, other] = row.at.map((id) => said(points.get(id)!.name));
    const own = row.say === undefined ? [] : sentences(pattern(row.say)).map((words) => words.join(' '));
    const names = [
      ...own,
      ...(other === undefined || row.onlyByName ? [] : [`${one} to ${other}`, `${other} to ${one}`]),
    ];
    expect(names.length).toBeGreaterThan(0);
    const expectation = { readings: [{ quantity: row.quantity, at: row.at }] };
    const [low, high] = row.likely[0]!;
    const value =
      high >= 4 && low <= 4
        ? 'four'
        : high >= 62 && low <= 62
          ? 'sixty two'
          : high >= 122 && low <= 122
            ? 'one twenty two'
            : 'six hundred';
    for (const name of names) {
      const { meaning } = understand(`${name} ${value} ${unit.join(' ')}`, expectation);
      expect(short(meaning), name).toContain(`${row.quantity} ${row.at.join(' ')} `);
    }
  });

  it.each(OBSERVATIONS.map((row) => [row.id, row] as const))('observation: %s', (id, row) => {
    expect(short(understand(row.name).meaning)).toBe(`seen ${id}`);
    for (const words of sentences(
      pattern(row.say.replaceAll('$fan', 'outdoor fan').replaceAll('$stat', 'thermostat')),
    )) {
      const understood = understand(words.join(' '));
      expect(understood.verdict, words.join(' ')).toBe('logged');
      expect(short(understood.meaning), words.join(' ')).toBe(`seen ${id}`);
    }
  });

  it.each(JOB_ITEMS.map((row) => [row.id, row] as const))('job item: %s', (id, row) => {
    // What tells of the plate's line is that only where the plate is asked.
    const expectation: Expectation | undefined =
      id === 'plate-line-unreadable' ? { readings: [], plate: ['model'] } : undefined;
    for (const words of [row.name.split(' '), ...sentences(pattern(row.say), NAMED)]) {
      const understood = understand(words.join(' '), expectation);
      expect(`${understood.verdict} ${short(understood.meaning)}`, words.join(' ')).toBe(`logged item ${id}`);
    }
  });

  it.each(COMMANDS.map((row) => [row.id, row] as const))('order: %s', (id, row) => {
    for (const words of [
      said(row.name).split(' '),
      ...sentences(pattern(row.say)),
      ...('typed' in row ? sentences(pattern(row.typed)) : []),
      ...('moment' in row ? sentences(pattern(row.moment)) : []),
    ]) {
      const understood = understand(words.join(' '));
      expect(`${understood.verdict} ${short(understood.meaning)}`, words.join(' ')).toBe(`logged order ${id}`);
    }
  });

  it.each(NAMEPLATE_FIELDS.map((row) => [row.id, row as NameplateField] as const))('nameplate: %s', (id, row) => {
    for (const name of sentences(pattern(row.say)).map((words) => words.join(' '))) {
      const values =
        row.value === 'choice'
          ? row.choices!.map((choice) => sentences(pattern(choice.say))[0]!.join(' '))
          : ['one two one'];
      for (const value of values) {
        const { meaning } = understand(`nameplate ${name} ${value}`);
        expect(meaning, `nameplate ${name} ${value}`).toMatchObject({ kind: 'nameplate', field: id });
      }
    }
  });

  it.each(PARTS.map((row) => [row.id, row] as const))('part: %s', (id, row) => {
    for (const name of sentences(pattern(row.say)).map((words) => words.join(' '))) {
      expect(understand(`fitted a ${name}`).meaning, name).toMatchObject({ kind: 'part', part: id });
    }
  });

  const names = Object.fromEntries(Object.entries(NAMES).map(([name, say]) => [name, pattern(say)]));
  it.each(SAID_WORKS.map((row) => [row.id, row] as const))('work without a part: %s', (id, row) => {
    for (const words of [row.name.split(' '), ...sentences(pattern(row.say), names)]) {
      const understood = understand(words.join(' '));
      expect(`${understood.verdict} ${short(understood.meaning)}`, words.join(' ')).toBe(`logged work ${id}`);
    }
  });

  it.each(SAID_WORKS.flatMap((row) => ('withFlame' in row ? [[row.id, row] as const] : [])))(
    'work with a torch: %s',
    (id, row) => {
      for (const words of sentences(pattern(row.withFlame))) {
        const understood = understand(words.join(' '));
        expect(`${understood.verdict} ${short(understood.meaning)}`, words.join(' ')).toBe(
          `logged work ${id} + deed flame-lit`,
        );
      }
    },
  );

  it.each(DEEDS.map((row) => [row.id, row] as const))('deed: %s', (id, row) => {
    const understood = understand(row.name);
    expect(`${understood.verdict} ${short(understood.meaning)}`).toBe(`logged deed ${id}`);
  });

  it.each(PARTS.map((row) => [row.id, row] as const))('part taken out and put back: %s', (id, row) => {
    for (const name of sentences(pattern(row.say)).map((words) => words.join(' '))) {
      const moves = [`took the ${name} out`, `put the ${name} back in`].map((text) => short(understand(text).meaning));
      if (MOVED[id] === 'never') expect(moves.filter((meant) => meant.startsWith('moved'))).toEqual([]);
      else expect(moves, name).toEqual([`moved ${id} out`, `moved ${id} in`]);
    }
  });

  it.each(Object.entries(COVER_NAMES))('cover taken off and put back on: %s', (id, say) => {
    for (const name of sentences(pattern(say)).map((words) => words.join(' '))) {
      for (const [text, state] of [
        [`took the ${name} off`, 'off'],
        [`${name} is off`, 'off'],
        [`put the ${name} back on`, 'on'],
      ]) {
        const understood = understand(text!);
        expect(`${understood.verdict} ${short(understood.meaning)}`, text).toBe(`logged cover ${id} ${state}`);
      }
    }
  });

  it.each(WIRE_COLOURS)('wire colour: %s', (colour) => {
    expect(understand(`lifted the ${colour} wire from T one`).meaning).toEqual({
      kind: 'wire',
      wire: { action: 'lifted', colour, from: 'T1' },
    });
  });
});
