import { longWord } from './long-word.ts';
import { Sheet } from './sheet.tsx';

export interface Pick<T> {
  readonly label: string;
  readonly value: T;
}

interface PickSheetProps<T> {
  readonly title: string;
  readonly picks: readonly Pick<T>[];
  readonly onPick: (value: T) => void;
  readonly onClose: () => void;
}

/** One of many, as large keys. */
export function PickSheet<T>({ title, picks, onPick, onClose }: PickSheetProps<T>) {
  return (
    <Sheet title={title} onClose={onClose} withBack>
      <h2 className="pick-title">{title}</h2>
      <div className="keys">
        {picks.map(({ label, value }) => (
          <button type="button" className={`key ${longWord(label)}`} key={label} onClick={() => onPick(value)}>
            {label}
          </button>
        ))}
      </div>
    </Sheet>
  );
}
