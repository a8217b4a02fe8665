import type { Amps, Microfarads, Volts } from '../../../grammar/vocabulary/quantities.ts';
import { REFRIGERANT_CLASSES, type RefrigerantId, type UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import { UNIT_STOCK } from './unit-stock.ts';

export interface VisitOpening {
  readonly site: string;
  readonly complaint: string;
  readonly role: 'technician' | 'trainee';
  readonly unit: UnitProfile;
}

export const REFRIGERANTS = Object.keys(REFRIGERANT_CLASSES) as RefrigerantId[];

/**
 * What the filled form says. A field that was emptied is unknown, also where the stock unit had a value for it.
 *
 * @param offered units whose plates were read at this site before: one that was looked at and is still there is taken
 */
export function openingFrom(form: { get(name: string): unknown }, offered: readonly UnitProfile[] = []): VisitOpening {
  const text = (name: string) => String(form.get(name) ?? '').trim();
  return {
    site: text('site'),
    complaint: text('complaint'),
    role: text('role') === 'trainee' ? 'trainee' : 'technician',
    unit: (text('again') === '' ? undefined : offered[Number(text('again'))]) ?? unitFrom(text),
  };
}

function unitFrom(text: (name: string) => string): UnitProfile {
  const stock = UNIT_STOCK[Number(text('stock'))]?.unit ?? { id: 'unknown' };
  const { supply: _supply, capacitor: _capacitor, compressor: _compressor, fanMotor: _fan, ...rest } = stock;
  const { tons: _tons, refrigerant: _refrigerant, inverterDriven: _inverter, ...kept } = rest;
  const number = (name: string) => {
    const value = Number(text(name).replace(',', '.'));
    return text(name) !== '' && Number.isFinite(value) && value > 0 ? value : undefined;
  };
  const plate = ['supply', 'herm', 'fan', 'rla', 'lra', 'fla', 'tons', 'made'].map(number);
  const [supply, herm, fan, rla, lra, fla, tons, made] = plate;
  const [model, serial] = [text('model'), text('serial')];
  const refrigerant = REFRIGERANTS.find((name) => name === text('refrigerant'));
  return {
    ...kept,
    ...(model === '' ? {} : { model }),
    ...(serial === '' ? {} : { serial }),
    ...(supply === undefined ? {} : { supply: { nominal: supply as Volts } }),
    ...(herm === undefined || fan === undefined
      ? {}
      : { capacitor: { herm: herm as Microfarads, fan: fan as Microfarads } }),
    ...(rla === undefined || lra === undefined ? {} : { compressor: { rla: rla as Amps, lra: lra as Amps } }),
    ...(fla === undefined ? {} : { fanMotor: { fla: fla as Amps } }),
    ...(tons === undefined ? {} : { tons }),
    ...(made === undefined ? {} : { made }),
    ...(refrigerant === undefined ? {} : { refrigerant }),
    ...(text('inverter') === '' ? {} : { inverterDriven: true }),
  };
}
