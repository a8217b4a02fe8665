import { useState } from 'react';
import type { UnitChoice } from '../../../grammar/vocabulary/unit-choice.ts';
import { SCREEN } from '../../words/pages/screen-words.ts';
import { keepScreenSettings, readScreenSettings, type ScreenSettings } from '../session/screen-settings.ts';
import { Sheet } from './sheet.tsx';

interface ScreenSheetProps {
  /** Of the visit that runs, which may have been opened elsewhere. */
  readonly units: UnitChoice;
  readonly onUnits: (units: UnitChoice) => void;
  readonly onClose: () => void;
}

/** Light, size of the text, units and clock, by large keys; the page follows at once. */
export function ScreenSheet({ units, onUnits, onClose }: ScreenSheetProps) {
  const [settings, setSettings] = useState(readScreenSettings);
  const change = (changed: Partial<ScreenSettings>) => {
    const chosen = { ...settings, ...changed };
    setSettings(chosen);
    keepScreenSettings(chosen);
  };
  const choose = (chosen: UnitChoice) => {
    change({ units: chosen });
    onUnits(chosen);
  };
  return (
    <Sheet title={SCREEN.title} onClose={onClose} withBack>
      <Choices
        title={SCREEN.light}
        names={SCREEN.lights}
        chosen={settings.light}
        onChoose={(light) => change({ light })}
      />
      <Choices title={SCREEN.text} names={SCREEN.texts} chosen={settings.text} onChoose={(text) => change({ text })} />
      <p className="sheet-note">{SCREEN.ofUnits}</p>
      <Choices
        title={SCREEN.temperature}
        names={SCREEN.temperatures}
        chosen={units.temperature}
        onChoose={(temperature) => choose({ ...units, temperature })}
      />
      <Choices
        title={SCREEN.pressure}
        names={SCREEN.pressures}
        chosen={units.pressure}
        onChoose={(pressure) => choose({ ...units, pressure })}
      />
      <Choices
        title={SCREEN.clock}
        names={SCREEN.clocks}
        chosen={settings.hours}
        onChoose={(hours) => change({ hours })}
      />
    </Sheet>
  );
}

interface ChoicesProps<T extends string> {
  readonly title: string;
  /** What can be chosen, by name, in its order. */
  readonly names: Readonly<Record<T, string>>;
  readonly chosen: T;
  readonly onChoose: (one: T) => void;
}

function Choices<T extends string>({ title, names, chosen, onChoose }: ChoicesProps<T>) {
  return (
    <section className="key-group" aria-label={title}>
      <h3>{title}</h3>
      <div className="keys">
        {(Object.keys(names) as T[]).map((one) => (
          <button type="button" key={one} className="key" aria-pressed={one === chosen} onClick={() => onChoose(one)}>
            {names[one]}
          </button>
        ))}
      </div>
    </section>
  );
}
