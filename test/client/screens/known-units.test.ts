import { describe, expect, it } from 'vitest';
import { knownUnits, unitsAt } from '../../../client/screens/technician/known-units.ts';
import { openingFrom } from '../../../client/screens/technician/opening-from.ts';
import { foldVisit } from '../../../grammar/visit/fold-visit.ts';
import { TypedVisit } from '../visit/typed-visit.ts';

async function visitOf(...lines: readonly string[]) {
  const visit = await TypedVisit.open({ id: 'unknown' });
  await visit.type(...lines);
  return { folded: foldVisit(visit.events()) };
}

describe('units of earlier visits', () => {
  it('are known with all that their plates said, and found by their site however it is written', async () => {
    const visit = await visitOf(
      'serial a b c one two three',
      'nameplate supply volts two forty',
      'refrigerant is four ten a',
    );
    const known = knownUnits([visit]);
    const here = unitsAt(known, ' Reading  ROOM ');
    expect(here.map(({ unit }) => unit)).toEqual([
      { id: 'unknown', serial: 'ABC123', supply: { nominal: 240 }, refrigerant: 'R-410A' },
    ]);
    expect(unitsAt(known, 'Bakery')).toEqual([]);
    expect(unitsAt(known, '')).toEqual([]);
  });

  it('are none where nothing was read of them', async () => {
    expect(knownUnits([await visitOf('outdoor air ninety four')])).toEqual([]);
  });

  it('stand once a unit, as it was known last', async () => {
    const first = await visitOf('serial a b c one two three');
    const second = await visitOf('serial a b c one two three', 'nameplate supply volts two oh eight');
    const later = {
      folded: { ...second.folded, first: { ...second.folded.first!, time: { at: '2026-07-01T00:00:00Z', mono: 0 } } },
    };
    const known = knownUnits([first, later as typeof second]);
    expect(known.map(({ unit }) => unit.supply?.nominal)).toEqual([208]);
  });

  it('open a visit only where somebody says that the plate is still this one', async () => {
    const [one] = knownUnits([await visitOf('serial a b c one two three', 'nameplate supply volts two forty')]);
    const form = (again: string) =>
      openingFrom(new Map(Object.entries({ site: 'Reading room', complaint: 'warm', stock: '0', again })), [one!.unit]);
    expect(form('0').unit).toEqual(one!.unit);
    expect(form('').unit).toEqual({ id: 'unknown' });
    // One that is offered no more.
    expect(form('3').unit).toEqual({ id: 'unknown' });
  });
});
