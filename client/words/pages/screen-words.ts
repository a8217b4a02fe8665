/** How this device shows things. */
export const SCREEN = {
  title: 'Screen',
  light: 'Light',
  lights: { light: 'Light', dark: 'Dark', sun: 'Full sun' },
  text: 'Text',
  texts: { normal: 'Normal', large: 'Large', largest: 'Largest' },
} as const;
