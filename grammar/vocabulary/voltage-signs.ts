/** A conductor, as words name it; capacitor sections hold d.c. of their own and are none. */
const CONDUCTOR = /\b(?:legs?|line|t ?(?:one|two|1|2)|l ?(?:one|two|1|2)|ground|volts?)\b/;
/** A number of volts that no dead conductor shows; one and two name legs as well. */
const VOLTS =
  /\bkilo ?volts?\b|\b(?:three|four|five|six|seven|eight|nine|ten|eleven|twelve|\w+teen|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|hundred|[3-9]|\d{2,3})\b/;
/** Other things that are measured there, and the meter on its own live source. */
const OTHERWISE =
  /\b(?:meter|ohms?|megohms?|amps?|microfarads?|degrees?|psi|pounds?|ounces?|microns?|inches|percent|minutes?|hertz|no|not)\b/;

/** Words by which a number is set right: they deny the one before, and not the voltage. */
const CORRECTING = /^ ?(?:no|nope|sorry|wait|oops|actually|correction|i meant?)\b|\bnot (?:a )?zero\b/g;

/** Whether words that were not understood can tell of a voltage at a conductor. */
export function canMeanVoltage(heard: string): boolean {
  const statements = heard
    .toLowerCase()
    .split(/[,;]|\b(?:and|then|but|so)\b/)
    .map((words) => words.replace(CORRECTING, ''));
  return statements.some((words) => CONDUCTOR.test(words) && VOLTS.test(words) && !OTHERWISE.test(words));
}
