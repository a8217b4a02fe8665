import { useState } from 'react';
import { SCREEN } from '../../words/pages/screen-words.ts';
import {
  keepScreenSettings,
  LIGHTS,
  readScreenSettings,
  type ScreenSettings,
  TEXT_SIZES,
} from '../session/screen-settings.ts';
import { Sheet } from './sheet.tsx';

/** The light and the size of the text, by large keys; the page follows at once. */
export function ScreenSheet({ onClose }: { readonly onClose: () => void }) {
  const [settings, setSettings] = useState(readScreenSettings);
  const change = (changed: Partial<ScreenSettings>) => {
    const chosen = { ...settings, ...changed };
    setSettings(chosen);
    keepScreenSettings(chosen);
  };
  return (
    <Sheet title={SCREEN.title} onClose={onClose} withBack>
      <section className="key-group" aria-label={SCREEN.light}>
        <h3>{SCREEN.light}</h3>
        <div className="keys">
          {LIGHTS.map((light) => (
            <button
              type="button"
              key={light}
              className="key"
              aria-pressed={settings.light === light}
              onClick={() => change({ light })}
            >
              {SCREEN.lights[light]}
            </button>
          ))}
        </div>
      </section>
      <section className="key-group" aria-label={SCREEN.text}>
        <h3>{SCREEN.text}</h3>
        <div className="keys">
          {TEXT_SIZES.map((text) => (
            <button
              type="button"
              key={text}
              className="key"
              aria-pressed={settings.text === text}
              onClick={() => change({ text })}
            >
              {SCREEN.texts[text]}
            </button>
          ))}
        </div>
      </section>
    </Sheet>
  );
}
