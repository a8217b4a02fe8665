export function sayNumber(value: number): string {
  return String(value);
}
export function sayDigits(value: number): string {
  return String(value);
}
