import { type ReactNode, useEffect, useRef } from 'react';
import { PAGE } from '../../words/pages/page-words.ts';

interface SheetProps {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ReactNode;
  /** Fills the screen: for the number pad. */
  readonly tall?: boolean;
  /** A key that leads back, below what scrolls: for sheets that have no keys of their own to leave by. */
  readonly withBack?: boolean;
}

/** A sheet over the page. The browser keeps the focus inside it, and Escape closes it. */
export function Sheet({ title, onClose, children, tall = false, withBack = false }: SheetProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    dialog.current?.showModal();
  }, []);
  return (
    <dialog ref={dialog} className={tall ? 'sheet tall' : 'sheet'} aria-label={title} onClose={onClose}>
      <div className="sheet-body">{children}</div>
      {withBack ? (
        <button type="button" className="key full" onClick={onClose}>
          {PAGE.back}
        </button>
      ) : null}
    </dialog>
  );
}
