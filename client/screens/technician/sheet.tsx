import { type ReactNode, useEffect, useRef } from 'react';

interface SheetProps {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ReactNode;
  /** Fills the screen: for the number pad. */
  readonly tall?: boolean;
}

/** A sheet over the page. The browser keeps the focus inside it, and Escape closes it. */
export function Sheet({ title, onClose, children, tall = false }: SheetProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    dialog.current?.showModal();
  }, []);
  return (
    <dialog ref={dialog} className={tall ? 'sheet tall' : 'sheet'} aria-label={title} onClose={onClose}>
      {children}
    </dialog>
  );
}
