/**
 * Energy is held for each zone: where a conductor can be live, or a part can hold a charge, on its own.
 * Unknown counts as live.
 */
export const ZONES = [
  'disconnect-line',
  'outdoor-load',
  'control',
  'capacitor-herm',
  'capacitor-fan',
  'capacitor-start',
  'air-handler',
] as const;
export type ZoneId = (typeof ZONES)[number];

/** The energy of one zone. The order of proof runs left to right; any live evidence returns it to `live`. */
export const ENERGY_STATES = [
  'unknown',
  'live',
  'reported-off',
  'proving',
  'reads-dead',
  'proven-dead',
  'in-doubt',
] as const;
export type EnergyState = (typeof ENERGY_STATES)[number];

/** What a zone is called aloud and on paper. */
export const ZONE_NAMES: Readonly<Record<ZoneId, string>> = {
  'disconnect-line': 'disconnect line side',
  'outdoor-load': 'outdoor unit',
  control: '24 volt control',
  'capacitor-herm': 'capacitor, compressor section',
  'capacitor-fan': 'capacitor, fan section',
  'capacitor-start': 'start capacitor',
  'air-handler': 'air handler',
};
