import { type FormEvent, type ReactNode, useState } from 'react';
import { admitWakeHost, forgetWakeFiles, keepWakeFile } from '../../listening/browser/wake-files.ts';
import { MODEL_CHOICES, type ModelChoice } from '../../listening/recogniser/speech-module.ts';
import { PAGE } from '../../words/pages/page-words.ts';
import { LEARN, SOUND, WAKE_WORD } from '../../words/pages/sound-words.ts';
import { type Attention, keepSoundSettings, readSoundSettings, type SoundSettings } from '../session/sound-settings.ts';
import { Sheet } from './sheet.tsx';

interface SoundSheetProps {
  /** The settings were changed: the ear is to be started with them. */
  readonly onChanged: () => void;
  /** The page on which the ear learns a voice is asked for. */
  readonly onLearn: () => void;
  readonly onClose: () => void;
}

/** How this device listens and speaks; kept on the device only. */
export function SoundSheet({ onChanged, onLearn, onClose }: SoundSheetProps) {
  const [settings, setSettings] = useState(readSoundSettings);
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
    <Sheet title={SOUND.title} onClose={onClose}>
      <form className="open-visit sound" onSubmit={(event) => void submit(event)} aria-label={SOUND.title}>
        <fieldset>
          <legend>{SOUND.counts}</legend>
          <Pick name="attention" value="always" now={settings.attention} onPick={(attention) => change({ attention })}>
            {SOUND.always}
          </Pick>
          <Pick name="attention" value="push" now={settings.attention} onPick={(attention) => change({ attention })}>
            {SOUND.push}
          </Pick>
          <Pick name="attention" value="wake" now={settings.attention} onPick={(attention) => change({ attention })}>
            {SOUND.wake}
          </Pick>
          <p className="quiet">{SOUND.stopAlways}</p>
        </fieldset>
        {settings.attention === 'wake' ? <WakeFields settings={settings} change={change} /> : null}
        <fieldset>
          <legend>{SOUND.recogniser}</legend>
          {MODEL_CHOICES.map((models) => (
            <Pick
              key={models}
              name="ear"
              value={models}
              now={earOf(settings)}
              onPick={() => change({ ear: 'offline', models })}
            >
              {SOUND.models[models]}
            </Pick>
          ))}
          <Pick name="ear" value="browser" now={earOf(settings)} onPick={() => change({ ear: 'browser' })}>
            {SOUND.browser}
          </Pick>
          {settings.ear === 'browser' ? (
            <>
              <p className="quiet">{SOUND.browserWarning}</p>
              <label className="choice">
                <input
                  type="checkbox"
                  checked={settings.onlyHere}
                  onChange={(event) => change({ onlyHere: event.target.checked })}
                />
                {SOUND.onlyHere}
              </label>
            </>
          ) : null}
        </fieldset>
        <label>
          {SOUND.voice}
          <select
            className="control"
            value={settings.voice === 'silent' ? 0 : settings.rate}
            onChange={({ target }) =>
              change(target.value === '0' ? { voice: 'silent' } : { voice: 'spoken', rate: Number(target.value) })
            }
          >
            <option value={0}>{SOUND.voices.silent}</option>
            <option value={0.8}>{SOUND.voices.slower}</option>
            <option value={1}>{SOUND.voices.normal}</option>
            <option value={1.25}>{SOUND.voices.faster}</option>
            <option value={1.5}>{SOUND.voices.muchFaster}</option>
          </select>
        </label>
        <div className="keys">
          <button type="button" className="key full" onClick={onLearn}>
            {LEARN.open}
          </button>
          <button type="submit" className="key first">
            {SOUND.keep}
          </button>
          <button type="button" className="key" onClick={onClose}>
            {PAGE.back}
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
      <legend>{WAKE_WORD.title}</legend>
      <p className="quiet">{WAKE_WORD.note}</p>
      <label>
        {WAKE_WORD.key}
        <input
          className="control"
          type="password"
          autoComplete="off"
          value={settings.wakeKey}
          onChange={(event) => change({ wakeKey: event.target.value.trim() })}
        />
      </label>
      <label>
        {WAKE_WORD.model}
        <input className="control" type="file" name="model" accept=".pv" />
      </label>
      <label>
        {WAKE_WORD.keyword}
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

function Pick<T extends Attention | ModelChoice | 'browser'>({ name, value, now, onPick, children }: PickProps<T>) {
  return (
    <label className="choice">
      <input type="radio" name={name} checked={now === value} onChange={() => onPick(value)} />
      <span>{children}</span>
    </label>
  );
}

function earOf({ ear, models }: SoundSettings): ModelChoice | 'browser' {
  return ear === 'browser' ? 'browser' : models;
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
