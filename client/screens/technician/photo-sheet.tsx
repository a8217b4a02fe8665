import { useState } from 'react';
import { PHOTO_SUBJECTS, type PhotoSubject } from '../../../grammar/visit/kept-photo.ts';
import { PHOTO } from '../../words/shown/photo-words.ts';
import { Sheet } from './sheet.tsx';

interface PhotoSheetProps {
  readonly taken: number;
  /** Resolves to the sentence that says why it is not kept, where it is not. */
  readonly onPhoto: (of: PhotoSubject, file: Blob) => Promise<string | undefined>;
  readonly onClose: () => void;
}

/** Takes a photo with the device's own camera, and keeps it beside the record under what it shows. */
export function PhotoSheet({ taken, onPhoto, onClose }: PhotoSheetProps) {
  const [problem, setProblem] = useState<string>();
  const take = async (of: PhotoSubject, input: HTMLInputElement) => {
    const [file] = input.files ?? [];
    if (file !== undefined) setProblem(await onPhoto(of, file));
    // The same file may be chosen again.
    input.value = '';
  };
  return (
    <Sheet title={PHOTO.title} onClose={onClose} withBack>
      <p className="quiet">{PHOTO.note}</p>
      <p role="status" data-photos={taken}>
        {problem ?? PHOTO.taken(taken)}
      </p>
      <div className="keys">
        {PHOTO_SUBJECTS.map((of) => (
          <label key={of} className="key full">
            {PHOTO.take[of]}
            <input
              className="reader-only"
              type="file"
              name={of}
              accept="image/*"
              capture="environment"
              onChange={({ target }) => void take(of, target)}
            />
          </label>
        ))}
      </div>
    </Sheet>
  );
}
