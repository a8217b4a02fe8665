import { useEffect, useRef, useState } from 'react';
import { KEYS_HELP } from '../../words/pages/review-words.ts';

const STORED = 'readback.review-keys';

/** Whether letters by themselves are orders: whoever speaks to the computer, or meets keys by chance, switches it off. */
export function areKeysOn(): boolean {
  return localStorage.getItem(STORED) !== 'off';
}

/** All keys of the replay, and the switch for those that are letters by themselves. */
export function KeysHelp({ open, close }: { readonly open: boolean; readonly close: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null);
  const [on, setOn] = useState(areKeysOn);
  useEffect(() => {
    if (open) dialog.current?.showModal();
    else dialog.current?.close();
  }, [open]);
  return (
    <dialog ref={dialog} className="keys-help" aria-label={KEYS_HELP.title} onClose={close}>
      <h2>{KEYS_HELP.title}</h2>
      <table>
        <thead>
          <tr>
            <th scope="col">{KEYS_HELP.key}</th>
            <th scope="col">{KEYS_HELP.does}</th>
          </tr>
        </thead>
        <tbody>
          {KEYS_HELP.rows.map(([keys, does]) => (
            <tr key={keys}>
              <td>
                <kbd>{keys}</kbd>
              </td>
              <td>{does}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <label className="keys-switch">
        <input
          type="checkbox"
          checked={on}
          onChange={({ target: { checked } }) => {
            localStorage.setItem(STORED, checked ? 'on' : 'off');
            setOn(checked);
          }}
        />{' '}
        {KEYS_HELP.letters}
      </label>
      <button type="button" className="control" onClick={close}>
        {KEYS_HELP.close}
      </button>
    </dialog>
  );
}
