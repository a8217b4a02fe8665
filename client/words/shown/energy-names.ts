import type { EnergyState, ZoneId } from '../../../grammar/vocabulary/zones.ts';

/** Each state of a zone's energy. */
export const ENERGY_WORDS: Readonly<Record<EnergyState, string>> = {
  unknown: 'unknown',
  live: 'live',
  'reported-off': 'reported off',
  proving: 'proving',
  'reads-dead': 'reads dead',
  'proven-dead': 'proven dead',
  'in-doubt': 'in doubt',
};

/** Zone names that fit a narrow band; the long ones are in the accessible name. */
export const ZONE_SHORT: Readonly<Record<ZoneId, string>> = {
  'disconnect-line': 'line side',
  'outdoor-load': 'outdoor unit',
  control: '24 V control',
  'capacitor-herm': 'cap HERM',
  'capacitor-fan': 'cap FAN',
  'capacitor-start': 'cap start',
  'air-handler': 'air handler',
};

export const ENERGY_BAND = 'Energy by zone';
