/** Every error of the practice, with what to do next. */
export const PRACTICE_ERRORS = {
  'unknown-family': 'No such family of faults. Use power, motors, control, cooling or two.',
  'bad-seed': 'Not the number of an exercise. Use a whole number from 1 to 99999.',
  'bad-limit': 'Not a limit. Use a whole number of minutes from 1 to 999, of hints from 0, or leave it out.',
  'bad-exercise': 'Not an exercise. Use a family and a number, such as motors-412.',
} as const;
export type PracticeErrorCode = keyof typeof PRACTICE_ERRORS;

/** An error with its code; the message is sentences for people: what is wrong, then what to do next. */
export class PracticeError extends Error {
  readonly code: PracticeErrorCode;

  constructor(code: PracticeErrorCode, detail: string) {
    super(`"${detail}". ${PRACTICE_ERRORS[code]}`);
    this.name = 'PracticeError';
    this.code = code;
  }
}
