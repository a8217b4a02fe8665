import { type FormEvent, type ReactNode, useEffect, useState } from 'react';
import { admitWakeHost, forgetWakeFiles, keepWakeFile } from '../../listening/browser/wake-files.ts';
import { type Attention, keepSoundSettings, readSoundSettings, type SoundSettings } from '../session/sound-settings.ts';
import { Sheet } from './sheet.tsx';

interface SoundSheetProps {
  /** The settings were changed: the ear is to be started with them. */
  readonly onChanged: () => void;
  readonly onClose: () => void;
}

/** How this device listens and speaks; kept on the device only. */
export function SoundSheet({ onChanged, onClose }: SoundSheetProps) {
  const [settings, setSettings] = useState(readSoundSettings);
  const wideband = useWidebandModel();
  const change = (changed: Partial<SoundSettings>) => setSettings({ ...settings, ...changed });
  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const files = new FormData(event.currentTarget);
    keepSoundSettings(settings);
    await keepWakeSettings(settings.wakeKey, files);
    onChanged();
    onClose();
  };
  return (
    <Sheet title="Sound" onClose={onClose}>
      <form className="open-visit sound" onSubmit={(event) => void submit(event)} aria-label="Sound">
        <fieldset>
          <legend>What is said counts</legend>
          <Pick name="attention" value="always" now={settings.attention} onPick={(attention) => change({ attention })}>
            always: a reading needs no word before it
          </Pick>
          <Pick name="attention" value="push" now={settings.attention} onPick={(attention) => change({ attention })}>
            while the key, the space bar or a headset’s button is pressed
          </Pick>
          <Pick name="attention" value="wake" now={settings.attention} onPick={(attention) => change({ attention })}>
            after your wake word
          </Pick>
          <p className="quiet">“Stop” is heard at any time.</p>
        </fieldset>
        {settings.attention === 'wake' ? <WakeFields settings={settings} change={change} /> : null}
        <fieldset>
          <legend>Recogniser</legend>
          <Pick
            name="ear"
            value="bundled"
            now={earOf(settings)}
            onPick={() => change({ ear: 'offline', model: 'bundled' })}
          >
            our own, on this device
          </Pick>
          {wideband || settings.model === 'wideband' ? (
            <Pick
              name="ear"
              value="wideband"
              now={earOf(settings)}
              onPick={() => change({ ear: 'offline', model: 'wideband' })}
            >
              our own with the server’s 16 kHz model; what the two hear differently is asked (6 MB once)
            </Pick>
          ) : null}
          <Pick name="ear" value="browser" now={earOf(settings)} onPick={() => change({ ear: 'browser' })}>
            the browser’s
          </Pick>
          {settings.ear === 'browser' ? (
            <>
              <p className="quiet">
                The browser’s recogniser may send the sound to its maker. It needs the network, and may fail in silence.
              </p>
              <label className="choice">
                <input
                  type="checkbox"
                  checked={settings.onlyHere}
                  onChange={(event) => change({ onlyHere: event.target.checked })}
                />
                only if the browser promises to keep it on this device
              </label>
            </>
          ) : null}
        </fieldset>
        <label>
          Voice
          <select
            className="control"
            value={settings.voice === 'silent' ? 0 : settings.rate}
            onChange={({ target }) =>
              change(target.value === '0' ? { voice: 'silent' } : { voice: 'spoken', rate: Number(target.value) })
            }
          >
            <option value={0}>silent: shown only</option>
            <option value={0.8}>spoken slower</option>
            <option value={1}>spoken</option>
            <option value={1.25}>spoken faster</option>
            <option value={1.5}>spoken much faster</option>
          </select>
        </label>
        <div className="keys">
          <button type="submit" className="key first">
            Keep
          </button>
          <button type="button" className="key" onClick={onClose}>
            Back
          </button>
        </div>
      </form>
    </Sheet>
  );
}

interface WakeFieldsProps {
  readonly settings: SoundSettings;
  readonly change: (changed: Partial<SoundSettings>) => void;
}

function WakeFields({ settings, change }: WakeFieldsProps) {
  return (
    <fieldset>
      <legend>Wake word (Porcupine)</legend>
      <p className="quiet">
        It needs a key and two files of your own from its maker. Key and files stay on this device; its program asks its
        maker’s host (kmp1.picovoice.net) whether the key may be used. Without a key nothing is asked of it. The sound
        is not sent.
      </p>
      <label>
        Access key
        <input
          className="control"
          type="password"
          autoComplete="off"
          value={settings.wakeKey}
          onChange={(event) => change({ wakeKey: event.target.value.trim() })}
        />
      </label>
      <label>
        Model file (.pv)
        <input className="control" type="file" name="model" accept=".pv" />
      </label>
      <label>
        Keyword file (.ppn)
        <input className="control" type="file" name="keyword" accept=".ppn" />
      </label>
    </fieldset>
  );
}

interface PickProps<T extends string> {
  readonly name: string;
  readonly value: T;
  readonly now: string;
  readonly onPick: (value: T) => void;
  readonly children: ReactNode;
}

function Pick<T extends Attention | 'bundled' | 'wideband' | 'browser'>({
  name,
  value,
  now,
  onPick,
  children,
}: PickProps<T>) {
  return (
    <label className="choice">
      <input type="radio" name={name} checked={now === value} onChange={() => onPick(value)} />
      <span>{children}</span>
    </label>
  );
}

function earOf({ ear, model }: SoundSettings): 'bundled' | 'wideband' | 'browser' {
  return ear === 'browser' ? 'browser' : model;
}

/** An empty key takes everything of the wake word away from this device. */
async function keepWakeSettings(key: string, form: FormData): Promise<void> {
  admitWakeHost(key !== '');
  if (key === '') return forgetWakeFiles();
  for (const which of ['model', 'keyword'] as const) {
    const file = form.get(which);
    if (file instanceof File && file.size > 0) await keepWakeFile(which, file);
  }
}

/** Whether the server has a 16 kHz model for us; false where it cannot be asked. */
function useWidebandModel(): boolean {
  const [has, setHas] = useState(false);
  useEffect(() => {
    fetch('/api/health')
      .then((response) => response.json())
      .then((health: { readonly models?: readonly string[] }) => setHas(health.models?.includes('wideband') === true))
      .catch(() => setHas(false));
  }, []);
  return has;
}
