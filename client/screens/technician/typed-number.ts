const LONGEST = 7;

/** The text of a number after one more key of the pad: a digit, ".", "-" (puts the sign before it, or takes it away), "Backspace". */
export function withKey(before: string, key: string): string {
  if (key === 'Backspace') return before.slice(0, -1);
  if (key === '-') return before.startsWith('-') ? before.slice(1) : `-${before}`;
  if (key === '.' && before.includes('.')) return before;
  return before.length >= LONGEST ? before : before + key;
}
