import { sayNumber } from '../../../grammar/phrases/numbers/say-number.ts';
import type { JudgedWord, RefrigerantCheck } from '../../../grammar/visit/events.ts';

/** What is said of the tests of an opened refrigerant circuit. */
export const SAY_OF_REFRIGERANT = {
  judged: (check: RefrigerantCheck, value: number, word: JudgedWord) => JUDGED[check](sayNumber(Math.abs(value)), word),
  leakFirst: 'Repair the leak, then the pressure test begins anew.',
  readAgain: 'Time: read it again.',
  standing: (minutes: number) => `Let it stand. Read it again in ${sayNumber(minutes)} minutes.`,
  standsStill: (minutes: number) => `It has to stand ${sayNumber(minutes)} minutes more.`,
} as const;

const JUDGED: Readonly<Record<RefrigerantCheck, (value: string, word: JudgedWord) => string>> = {
  'pressure-test': (value, word) =>
    `Changed by ${value} psi beyond temperature. ${word === 'does not fit' ? 'It leaks: find it, then test again.' : word === 'fits' ? 'It held.' : 'That is marginal: within a gauge error or a small leak.'}`,
  evacuation: (_value, word) =>
    word === 'does not fit'
      ? 'Not deep enough yet: five hundred microns or below.'
      : 'Deep enough. Valve off the pump.',
  decay: (_value, word) =>
    word === 'does not fit'
      ? 'It rose too far: moisture or a leak. Evacuate again, or search.'
      : word === 'fits'
        ? 'It stood.'
        : 'That is marginal: moisture, most likely.',
};
