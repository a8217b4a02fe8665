/** Boxes of one height in one row, as one path of SVG: one shape to draw instead of hundreds. */
export function boxes(
  row: readonly { readonly x: number; readonly width: number }[],
  top: number,
  height: number,
): string {
  return row.map(({ x, width }) => `M${x} ${top}h${width}v${height}h${-width}z`).join('');
}
