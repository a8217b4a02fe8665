import { readUnitChoice, type UnitChoice } from '../../../grammar/vocabulary/unit-choice.ts';
import type { ClockHours } from '../../words/printed/print-times.ts';
import { keptSettings, oneOf } from './kept-settings.ts';

/** How this device shows things. Kept on the device only. */
export interface ScreenSettings {
  /** Paper and ink; dark for indoors and night; black on white for full sun. */
  readonly light: Light;
  readonly text: TextSize;
  readonly hours: ClockHours;
  /** In which units a visit that is opened here reads; one that runs has its own. */
  readonly units: UnitChoice;
}

export const LIGHTS = ['light', 'dark', 'sun'] as const;
export type Light = (typeof LIGHTS)[number];
export const TEXT_SIZES = ['normal', 'large', 'largest'] as const;
export type TextSize = (typeof TEXT_SIZES)[number];

const HOURS = ['12', '24'] as const satisfies readonly ClockHours[];

const PLACE = 'readback.screen';

/** What was chosen on this device. */
export function readScreenSettings(): ScreenSettings {
  const kept = keptSettings(PLACE);
  return {
    light: oneOf(kept['light'], LIGHTS, 'light'),
    text: oneOf(kept['text'], TEXT_SIZES, 'normal'),
    hours: oneOf(kept['hours'], HOURS, '12'),
    units: readUnitChoice(kept['units']),
  };
}

/** Keeps the choice and shows the page by it. */
export function keepScreenSettings(settings: ScreenSettings): void {
  localStorage.setItem(PLACE, JSON.stringify(settings));
  showBySettings();
}

/** Sets the page's light and the size of its text as they were chosen. */
export function showBySettings(): void {
  const { light, text } = readScreenSettings();
  const root = document.documentElement;
  root.dataset['light'] = light;
  root.dataset['text'] = text;
  const paper = getComputedStyle(root).getPropertyValue('--paper').trim();
  document.querySelector('meta[name="theme-color"]')?.setAttribute('content', paper);
}
