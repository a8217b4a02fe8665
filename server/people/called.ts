/**
 * What a person may be called: something that is seen, on one line. No control characters, and none of those that turn the
 * direction of what stands behind them (Unicode, UAX 9), since the name is signed, spoken of and shown beside others.
 */
export const CALLED = {
  minLength: 1,
  maxLength: 100,
  pattern: '^(?=.*\\S)[^\\u0000-\\u001f\\u007f-\\u009f\\u2028-\\u202e\\u2066-\\u2069]+$',
} as const;

/** Whether somebody may be called so. */
export function isCalled(name: string): boolean {
  return name.length <= CALLED.maxLength && new RegExp(CALLED.pattern, 'u').test(name);
}
