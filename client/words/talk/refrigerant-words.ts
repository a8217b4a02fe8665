import { sayNumber } from '../../../grammar/phrases/languages/english/numbers/say-number.ts';
import type { EarlyStart, JudgedWord } from '../../../grammar/visit/events.ts';
import type { RefrigerantCheck, RefrigerantStage } from '../../../grammar/visit/refrigerant-facts.ts';
import type { UnitChoice } from '../../../grammar/vocabulary/unit-choice.ts';
import { pressureChosen, pressureLimitWords } from '../things/chosen-words.ts';
import { UNIT_WORDS } from '../things/value-words.ts';

/** What an opened circuit lacks, in a word or two. */
const LACKS: Readonly<Record<RefrigerantStage, string>> = {
  recovered: 'recovery by weight',
  held: 'a pressure test that held',
  evacuated: 'evacuation',
  stood: 'a vacuum that stood',
  charged: 'charge by weight',
};

/** What is said of the tests of an opened refrigerant circuit. */
export const SAY_OF_REFRIGERANT = {
  judged: (check: RefrigerantCheck, value: number, word: JudgedWord, units: UnitChoice) =>
    JUDGED[check](Math.abs(value), word, units),
  leakFirst: 'Repair the leak, then the pressure test begins anew.',
  readAgain: 'Time: read it again.',
  standing: (minutes: number) => `Let it stand. Read it again in ${sayNumber(minutes)} minutes.`,
  standsStill: (minutes: number) => `It has to stand ${sayNumber(minutes)} minutes more.`,
  outOfOrder: (lacks: RefrigerantStage) => `Does not count yet. First: ${LACKS[lacks]}.`,
  overLimit: (psi: number, plated: boolean, units: UnitChoice) =>
    `Too high. ${plated ? 'The plate allows' : 'Plate unread: at most'} ${pressureLimitWords(psi, 'most', units)}. Let it down.`,
  underFloor: (psi: number, units: UnitChoice) =>
    `Too low to test: at least ${pressureLimitWords(psi, 'least', units)}.`,
  flameOn: {
    refrigerant: 'Flame away: the line is charged. Recover it, nitrogen through, then braze.',
    nitrogen: 'Flame away: nitrogen under pressure. Let it down first, and say what it reads.',
  },
  /** 40 CFR 82.154(a): refrigerant is not to be released knowingly. */
  vented: 'Refrigerant is recovered, never let out: the law forbids it.',
  /** Common practice: oil burns in oxygen, and in air under pressure. */
  explodes: 'Never oxygen or air in the circuit: it explodes. Dry nitrogen, with a regulator.',
  countsAsOpened: 'Counted as refrigerant circuit opened. If not, say: take that back.',
  insulationInVacuum: 'Refused: in a vacuum. An insulation test there arcs in the compressor.',
  /** Where nothing else is left but to run it. */
  notRun: (lacks: RefrigerantStage) => `Not run before its circuit has ${LACKS[lacks]}. Say that, or finish the visit.`,
  early: (how: EarlyStart, lacks: RefrigerantStage | 'vacuum') =>
    lacks === 'vacuum' ? IN_VACUUM[how] : `${TOO_EARLY[how]}: the circuit lacks ${LACKS[lacks]}. Switch it off.`,
} as const;

const TOO_EARLY: Readonly<Record<EarlyStart, string>> = {
  power: 'Power too early',
  call: 'Call too early',
  run: 'Running too early',
};
const IN_VACUUM: Readonly<Record<EarlyStart, string>> = {
  power: 'Power in a vacuum: the compressor must not start.',
  call: 'Call in a vacuum: the compressor must not start.',
  run: 'Running in a vacuum: switch it off.',
};

/** What stands open where a circuit was started too early. */
export function earlyWords(how: EarlyStart, lacks: RefrigerantStage | 'vacuum'): string {
  const what = { power: 'power was back', call: 'a call was on', run: 'it ran' }[how];
  return lacks === 'vacuum'
    ? `${what} while the refrigerant circuit was in a vacuum`
    : `${what} while the opened refrigerant circuit lacked ${LACKS[lacks]}`;
}

const JUDGED: Readonly<Record<RefrigerantCheck, (value: number, word: JudgedWord, units: UnitChoice) => string>> = {
  'pressure-test': (psi, word, units) =>
    `Changed by ${sayNumber(pressureChosen(psi, units))} ${UNIT_WORDS[units.pressure]} beyond temperature. ${word === 'does not fit' ? 'It leaks: find it, then test again.' : 'It held.'}`,
  evacuation: (_value, word) =>
    word === 'does not fit'
      ? 'Not deep enough yet: five hundred microns or below.'
      : 'Deep enough. Valve off the pump.',
  decay: (_value, word) =>
    word === 'does not fit' ? 'It rose too far: moisture or a leak. Evacuate again, or search.' : 'It stood.',
};
