/** A compressor on a drive of its own, told in passing (common practice). A blower of that kind is another matter. */
const DRIVE = /\b(?:inverter|variable (?:speed|frequency|capacity)|mini ?split|v ?r ?f)\b/;
const NO_DRIVE = /\b(?:not|no|isn't|blower|fan motor|indoor|power inverter|solar|van|truck|generator|battery)\b/;

/** Whether words that were not understood say that a drive feeds the compressor. */
export function tellsOfDrive(heard: string): boolean {
  const words = heard.toLowerCase();
  return DRIVE.test(words) && !NO_DRIVE.test(words);
}

/** Whether words say that something which burns readily is in the circuit. */
export function tellsOfPropane(heard: string): boolean {
  return /\b(?:propane|isobutane|r ?(?:two ninety|290|twenty two a|22a)|hydrocarbon)\b/.test(heard.toLowerCase());
}
