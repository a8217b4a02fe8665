import { type FormEvent, useRef } from 'react';
import { SUPERVISOR } from '../../words/pages/key-words.ts';
import { PAGE } from '../../words/pages/page-words.ts';
import { Sheet } from './sheet.tsx';

interface SupervisorSheetProps {
  readonly onAcknowledge: (supervisor: string) => void;
  readonly onClose: () => void;
}

/** The supervisor who stands by acknowledges the trainee's live steps by name. */
export function SupervisorSheet({ onAcknowledge, onClose }: SupervisorSheetProps) {
  const name = useRef<HTMLInputElement>(null);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const supervisor = name.current?.value.trim() ?? '';
    if (supervisor === '') return;
    onAcknowledge(supervisor);
    onClose();
  };
  return (
    <Sheet title={SUPERVISOR.title} onClose={onClose}>
      <form className="supervisor" onSubmit={submit}>
        <label>
          {SUPERVISOR.name}
          <input ref={name} className="control" autoComplete="off" maxLength={80} required />
        </label>
        <div className="keys">
          <button type="submit" className="key first wide">
            {SUPERVISOR.acknowledge}
          </button>
          <button type="button" className="key" onClick={onClose}>
            {PAGE.back}
          </button>
        </div>
      </form>
    </Sheet>
  );
}
