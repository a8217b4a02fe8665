/** How this device shows things. */
export const SCREEN = {
  title: 'Screen',
  light: 'Light',
  lights: { light: 'Light', dark: 'Dark', sun: 'Full sun' },
  text: 'Text',
  texts: { normal: 'Normal', large: 'Large', largest: 'Largest' },
  temperature: 'Temperature',
  temperatures: { '[degF]': '°F', Cel: '°C' },
  pressure: 'Pressure',
  pressures: { '[psi]': 'psi', kPa: 'kPa' },
  clock: 'Clock',
  clocks: { 12: '12 hours', 24: '24 hours' },
  ofUnits: 'A number without a unit is in these. What was read stays as it was.',
} as const;
