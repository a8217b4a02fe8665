import { type KeyboardEvent, useState } from 'react';
import { PAD } from '../../words/pages/key-words.ts';
import { withKey } from './typed-number.ts';

interface NumberPadProps {
  readonly title: string;
  /** Units to choose from, the usual one first; none where the number has none. */
  readonly units: readonly { readonly code: string; readonly sign: string }[];
  readonly mayBeOpen?: boolean;
  readonly mayBeNegative?: boolean;
  readonly onEnter: (value: number | 'open', unit: string) => void;
  readonly onCancel: () => void;
}

const DIGITS = ['1', '2', '3', '4', '5', '6', '7', '8', '9', '.', '0'] as const;

/** A number by glove: digits as large as the screen gives, the value large above them. A keyboard works as well. */
export function NumberPad({ title, units, mayBeOpen, mayBeNegative, onEnter, onCancel }: NumberPadProps) {
  const [text, setText] = useState('');
  const [unit, setUnit] = useState(units[0]?.code ?? '');
  const value = Number(text);
  const whole = text !== '' && text !== '-' && Number.isFinite(value);
  const press = (key: string) => setText((before) => withKey(before, key));
  const enter = () => {
    if (whole) onEnter(value, unit);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (/^[0-9.]$/.test(event.key) || event.key === 'Backspace') press(event.key);
    else if (event.key === '-' && mayBeNegative === true) press('-');
    else if (event.key === 'Enter' && event.target instanceof HTMLElement && event.target.dataset['key'] === undefined)
      enter();
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the keys inside are the controls; this only lets a keyboard type
    <div className="pad" onKeyDown={onKeyDown}>
      <h2 className="pad-title">{title}</h2>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: the number typed so far takes the focus, so that digits can be typed at once */}
      <output className="pad-value" tabIndex={0} aria-live="polite">
        {text} <span className="pad-unit">{units.find((one) => one.code === unit)?.sign}</span>
      </output>
      <div className="pad-choices">
        {units.length > 1 &&
          units.map(({ code, sign }) => (
            <button
              type="button"
              className="control"
              key={code}
              aria-pressed={code === unit}
              onClick={() => setUnit(code)}
            >
              {sign}
            </button>
          ))}
        {mayBeOpen === true && (
          <button type="button" className="control" onClick={() => onEnter('open', unit)}>
            {PAD.openLine}
          </button>
        )}
        {mayBeNegative === true && (
          <button type="button" className="control" onClick={() => press('-')}>
            {PAD.minus}
          </button>
        )}
      </div>
      <div className="keys pad-keys">
        {DIGITS.map((digit) => (
          <button type="button" className="key" data-key={digit} key={digit} onClick={() => press(digit)}>
            {digit}
          </button>
        ))}
        <button type="button" className="key" data-key="back" onClick={() => press('Backspace')}>
          {PAD.back}
        </button>
        <button type="button" className="key" data-key="cancel" onClick={onCancel}>
          {PAD.leave}
        </button>
        <button type="button" className="key first wide" data-key="enter" disabled={!whole} onClick={enter}>
          {PAD.enter}
        </button>
      </div>
    </div>
  );
}
