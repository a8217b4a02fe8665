import { useState } from 'react';
import type { Meaning } from '../../../grammar/phrases/meaning.ts';
import { PART_RATINGS, PARTS, PARTS_BY_ID, type PartId } from '../../../grammar/vocabulary/parts.ts';
import { SAID_WORKS, type WorkId } from '../../../grammar/vocabulary/works.ts';
import { PART_PICKER } from '../../words/pages/key-words.ts';
import { NumberPad } from './number-pad.tsx';
import { PickSheet } from './pick-sheet.tsx';
import { Sheet } from './sheet.tsx';

interface PartPickerProps {
  readonly onEnter: (meaning: Meaning, words: string) => void;
  readonly onClose: () => void;
}

/** The part that was fitted, then each of its ratings (one that is not on the part is passed); or what was mended without. */
export function PartPicker({ onEnter, onClose }: PartPickerProps) {
  const [part, setPart] = useState<PartId>();
  const [ratings, setRatings] = useState<Readonly<Record<string, number>>>({});
  const [at, setAt] = useState(0);
  const asked: readonly string[] = part === undefined ? [] : PARTS_BY_ID[part].ratings;
  const enter = (chosen: PartId, all: Readonly<Record<string, number>>) => {
    onEnter({ kind: 'part', part: chosen, ratings: all }, PART_PICKER.heard(chosen, Object.values(all)));
    onClose();
  };
  const next = (chosen: PartId, all: Readonly<Record<string, number>>) => {
    setRatings(all);
    if (at + 1 < asked.length) setAt(at + 1);
    else enter(chosen, all);
  };
  if (part === undefined) {
    const picks: readonly { readonly label: string; readonly value: PartId | WorkId }[] = [
      ...PARTS.map(({ id, name }) => ({ label: name, value: id })),
      ...SAID_WORKS.map(({ id, name }) => ({ label: name, value: id })),
    ];
    const pick = (id: PartId | WorkId) => {
      const work = SAID_WORKS.find((one) => one.id === id);
      if (work !== undefined) {
        onEnter({ kind: 'work', work: work.id }, work.name);
        return onClose();
      }
      setPart(id as PartId);
      if (PARTS_BY_ID[id as PartId].ratings.length === 0) enter(id as PartId, {});
    };
    return <PickSheet title={PART_PICKER.title} picks={picks} onPick={pick} onClose={onClose} />;
  }
  const rating = asked[at] ?? '';
  const title = PART_PICKER.rating(rating);
  const unit = PART_RATINGS.find(({ id }) => id === rating)?.unit ?? '';
  return (
    <Sheet title={title} onClose={onClose} tall>
      <NumberPad
        key={at}
        title={title}
        units={[{ code: unit, sign: unit === '1' ? '' : unit }]}
        onEnter={(value) => next(part, { ...ratings, [rating]: Number(value) })}
        onCancel={() => next(part, ratings)}
      />
    </Sheet>
  );
}
