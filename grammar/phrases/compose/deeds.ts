import type { Meaning, Report } from '../meaning.ts';
import { type Draft, sure } from './draft.ts';
import type { Segment } from './segment.ts';

/** Something mended without a part; with a torch where the words say so. */
export function composeWork(segment: Segment): Draft[] {
  const done = segment.items.find((item) => item.tag === 'work');
  if (done === undefined) return [];
  const work: Meaning = { kind: 'work', work: done.work };
  const deeds = composeDeed(segment).map((draft) => draft.meaning);
  return sure(deeds.length === 0 ? work : { kind: 'several', parts: [work, ...deeds] });
}

/** Something done at the unit: a deed by hand, a part or a cover that was moved. */
export function composeDeed(segment: Segment): Draft[] {
  const report = deedIn(segment);
  return report === undefined ? [] : sure({ kind: 'report', report });
}

function deedIn({ items }: Segment): Report | undefined {
  const done = items.find((item) => item.tag === 'deed');
  if (done !== undefined) return { type: 'deed', deed: done.deed };
  const moved = items.find((item) => item.tag === 'moved');
  if (moved === undefined) return undefined;
  const part = items.find((item) => item.tag === 'part');
  if (part !== undefined) return { type: 'part-moved', part: part.part, to: moved.to };
  // "took the cover off the compressor terminals": the place behind it tells which cover it was.
  const cover = items.findLast((item) => item.tag === 'cover');
  return cover === undefined
    ? undefined
    : { type: 'cover', cover: cover.cover, state: moved.to === 'out' ? 'off' : 'on' };
}
