import { describe, expect, test } from 'vitest';
import { openingFrom } from '../../../client/screens/technician/opening-from.ts';
import { UNIT_STOCK } from '../../../client/screens/technician/unit-stock.ts';

const PLATE = {
  supply: '240',
  herm: '45',
  fan: '5',
  rla: '15.4',
  lra: '77',
  fla: '1.2',
  tons: '3',
  refrigerant: 'R-410A',
};

function opened(fields: Readonly<Record<string, string>>) {
  return openingFrom(new Map(Object.entries({ site: ' Reading room ', complaint: 'warm', stock: '1', ...fields })));
}

describe('the form that opens a visit', () => {
  test('left as it stands gives the stock unit', () => {
    expect(opened(PLATE)).toEqual({
      site: 'Reading room',
      complaint: 'warm',
      role: 'technician',
      unit: UNIT_STOCK[1]?.unit,
    });
  });

  test('an emptied or senseless field is unknown, never the stock value', () => {
    const { unit } = opened({ ...PLATE, supply: '', fan: 'five', tons: '-3', refrigerant: '' });
    expect(unit).not.toHaveProperty('supply');
    expect(unit).not.toHaveProperty('capacitor');
    expect(unit).not.toHaveProperty('tons');
    expect(unit).not.toHaveProperty('refrigerant');
    expect(unit.compressor).toEqual({ rla: 15.4, lra: 77 });
  });

  test('takes a decimal comma, a trainee, an inverter and a flammable refrigerant', () => {
    const { role, unit } = opened({ ...PLATE, role: 'trainee', rla: '12,8', inverter: 'on', refrigerant: 'R-290' });
    expect(role).toBe('trainee');
    expect(unit).toMatchObject({ compressor: { rla: 12.8 }, inverterDriven: true, refrigerant: 'R-290' });
  });

  test('model and serial are taken as they were typed', () => {
    expect(opened({ stock: '0', model: ' 24ACX7-b ', serial: '' }).unit).toEqual({ id: 'unknown', model: '24ACX7-b' });
  });

  test('a unit of which nothing is known has nothing but its name', () => {
    expect(opened({ stock: '0' }).unit).toEqual({ id: 'unknown' });
  });
});
