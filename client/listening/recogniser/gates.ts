import type { Gate } from './gate.ts';
import type { SpeechModel } from './speech-module.ts';

/**
 * Where each model's margins are cut. `bundled`: 31 clean orders of people and 93 under 6 dB of kitchen noise (even half
 * of 207; 98 % of the right ones kept), 90 recordings of foreign words and 42 of foreign sentences against the grammar of
 * a visit (2 words let in). `wideband`: the same foreign words (none let in); its `reject` was checked on 62 of the odd
 * half's orders in noise only. The mean cepstrum is that of 120 of the orders.
 * `doubt`: of every fourth even order, clean and under 12 dB, 5 of 45 right ones lie below (bundled), 1 of 47 (wideband).
 * `sure` is set on the careful side: at 0 a forced "load side" was taken for a spoken "line side" without a second look.
 * The wideband one's: of 216 expected readings of synthetic voices (even half, clean, 10 and 5 dB of fan) none came out
 * otherwise between -1 and -4, for half the second looks at 10 dB; of 64 that were said while another reading was expected,
 * one that no grammar had lay between.
 */
export const GATES: Readonly<Record<SpeechModel['id'], Gate>> = {
  bundled: {
    reject: -10,
    short: 2.9,
    doubt: -5.5,
    rival: 150,
    sure: -1,
    scale: 3,
    mean: [44.91, -3.81, 2.09, -2.24, -1.85, -3.75, -1.99, 0.42, -2.01, -1.06, 1.35, -1.18, 0.57],
  },
  wideband: {
    reject: -7,
    short: 2.9,
    doubt: -5,
    rival: 150,
    sure: -3,
    scale: 3,
    mean: [50.57, -3.07, -2.44, 4.32, -4.17, -1.77, -1.42, -6.03, -0.41, -1.99, 0.33, -2.5, -1.19],
  },
};
