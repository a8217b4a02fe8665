/** A text that is to be put somewhere: at the first of its places where it lies over nothing. */
export interface Label {
  readonly text: string;
  /** Middles of the places it may have, the best first: across, and down to its base line. In CSS pixels. */
  readonly at: readonly { readonly x: number; readonly y: number }[];
}

export interface PlacedLabel {
  readonly text: string;
  readonly x: number;
  readonly y: number;
}

interface Bounds {
  readonly left: number;
  readonly right: number;
  /** Middles of marks that no label may lie over. */
  readonly marks?: readonly { readonly x: number; readonly y: number }[];
}

/** Around the middle of a mark, and of a text above and below its base line. In CSS pixels. */
const MARK = 6;
const ABOVE = 11;
const BELOW = 2;

/** Of the texts in a track, in CSS pixels: a little more than the widest sign of the fonts that are common. */
const SIGN_WIDE = 8;
const HIGH = 15;
const GAP = 4;

export function labelWidth(text: string): number {
  return text.length * SIGN_WIDE;
}

/**
 * Puts labels one after another where each lies over no other and within the bounds; one that finds no place is left
 * out, since what it says stands in the table as well. Undefined in the place of a label that was left out.
 */
export function placeLabels(
  labels: readonly Label[],
  { left, right, marks = [] }: Bounds,
): readonly (PlacedLabel | undefined)[] {
  const taken: { readonly left: number; readonly right: number; readonly y: number }[] = [];
  return labels.map(({ text, at }) => {
    const half = labelWidth(text) / 2;
    const place = at.find(
      ({ x, y }) =>
        x - half >= left &&
        x + half <= right &&
        !marks.some(
          (mark) => Math.abs(mark.x - x) < half + MARK && mark.y + MARK > y - ABOVE && mark.y - MARK < y + BELOW,
        ) &&
        // Those that lie near come last: a long visit has thousands.
        !taken.some((box) => Math.abs(box.y - y) < HIGH && x + half + GAP > box.left && x - half - GAP < box.right),
    );
    if (place === undefined) return undefined;
    taken.push({ left: place.x - half, right: place.x + half, y: place.y });
    return { text, ...place };
  });
}
