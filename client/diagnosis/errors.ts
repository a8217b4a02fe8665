/** Every error of the diagnosis, with what to do next. */
export const DIAGNOSIS_ERRORS = {
  'unknown-refrigerant': 'No saturation data for this refrigerant. Check the nameplate, or leave the refrigerant out.',
  'saturation-out-of-range': 'Outside the limits of the saturation equation. Read the gauge or the thermometer again.',
  'bad-profile': 'That cannot be right. Correct it, or leave it out where the plate does not say.',
  'unit-not-covered': "This kind of unit is not covered. Follow the maker's procedure.",
  'unknown-test': 'No such test. Ask for the list of tests.',
  'unknown-fault': 'No such fault. Ask for the list of faults.',
  'bad-reading':
    'Not a reading of this test. Give a number in its unit, "open" on ohms and microfarads, or one of its answers.',
  'unknown-unit': 'No such unit. Give a UCUM code, such as V, A, Ohm, kOhm, uF, [degF], Cel or [psi].',
  'wrong-unit': 'The unit does not belong to this quantity. Read again and name the unit.',
  'point-not-on-unit': 'This unit has no such point. Correct the unit profile if it should.',
  'bad-line': 'Not a line that this tool understands. Send one JSON object a line.',
} as const;
export type DiagnosisErrorCode = keyof typeof DIAGNOSIS_ERRORS;

/** An error with its code; the message is sentences for people: what is wrong, then what to do next. */
export class DiagnosisError extends Error {
  readonly code: DiagnosisErrorCode;

  constructor(code: DiagnosisErrorCode, detail: string) {
    super(`${detail.charAt(0).toUpperCase()}${detail.slice(1)}. ${DIAGNOSIS_ERRORS[code]}`);
    this.name = 'DiagnosisError';
    this.code = code;
  }
}
