/** The columns of a printed sheet. */
const WIDTH = 100;

/** A line as lines no longer than a sheet is wide, broken between words; what goes on is set in. */
export function wrapLine(text: string): readonly string[] {
  const lines: string[] = [];
  let row = '';
  for (const word of text.split(' ')) {
    if (row !== '' && `${row} ${word}`.length > WIDTH) {
      lines.push(row);
      row = `    ${word}`;
    } else row = row === '' ? word : `${row} ${word}`;
  }
  return [...lines, row];
}
