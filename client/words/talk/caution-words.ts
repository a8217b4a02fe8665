import type { HazardId } from '../../../grammar/vocabulary/hazards.ts';

import { rowsBy } from '../../../grammar/vocabulary/rows-by.ts';
import { wordsIn } from '../within.ts';

/**
 * One caution: data. `words` name the hazard in one breath with the step that is asked; they are spoken once in a
 * cabinet and acknowledged, and again after power was off or the cabinet was left. Until then `again` leads the steps
 * there. No wording calls anything safe, suggests a value, or holds one of the words that are listened for while the
 * mouth speaks.
 */
export interface Caution {
  readonly id: string;
  readonly words: string;
  readonly again: string;
  readonly source: string;
  /** Hazards of the diagnosis that these words cover already. */
  readonly covers?: readonly HazardId[];
}

const FLAMMABLE_SOURCE = "ASHRAE 15 and 34, from memory; common practice; the maker's instructions govern";

export const CAUTIONS = [
  // Told once, before any live work; what the cautions at the unit need not say again.
  {
    id: 'standing-rules',
    words:
      'Live work: meter rated for it, leads in volts, gloves, glasses, rings off, dry footing. Never push a contactor in.',
    again: '',
    source: 'NFPA 70E 120.5 and Table 130.4; IEC 61010-2-030 category III; ASTM D120 gloves; common practice',
  },
  {
    id: 'standing-hazards',
    words:
      'Live until proven dead. Motors start, capacitors hold charge. Local codes, maker and licensed practice govern.',
    again: '',
    source: 'NFPA 70E 120.5; 29 CFR 1910.333(b)(2)(ii); common practice',
    covers: [
      'moving-fan',
      'starts-after-reset',
      'charge-stays',
      'capacitor-charge',
      'line-side-stays-live',
      'control-stays-live',
    ],
  },
  {
    id: 'live-line',
    words: 'Live, line volts.',
    again: 'Live.',
    source: 'NFPA 70E 120.5 and Table 130.4',
  },
  {
    id: 'live-control',
    words: 'Live control, line beside.',
    again: 'Live.',
    source: 'common practice',
  },
  {
    id: 'switch-off',
    words: 'Not a load switch: stand aside.',
    again: '',
    source: 'common practice: a pull-out is no load switch',
  },
  {
    id: 'breaker-throw',
    words: 'Stand aside.',
    again: '',
    source: 'common practice: whoever throws a switch stands to its side',
  },
  {
    id: 'capacitor-charge',
    words: 'May be charged.',
    again: 'May be charged.',
    covers: ['charge-stays', 'capacitor-charge'],
    source: 'common practice (20 kilohm, 2 watt); NEC 460.6 by analogy',
  },
  {
    id: 'energise',
    words: 'Hands clear: it may start.',
    again: 'Hands clear.',
    source: 'common practice',
  },
  {
    id: 'reset-once',
    words: 'One reset, compressor cover on.',
    again: 'One reset.',
    source: 'common practice: a grounded winding can vent the terminal',
  },
  {
    id: 'running-parts',
    words: 'Fan turns, lines burn: stay clear.',
    again: '',
    source: 'common practice',
    covers: ['moving-fan', 'hot-line'],
  },
  {
    id: 'fan-by-hand',
    words: 'Dead only: it can start by itself.',
    again: 'Dead only.',
    covers: ['moving-fan'],
    source: 'common practice',
  },
  {
    id: 'shell-heat',
    words: 'Shell burns: hand near, not on it.',
    again: 'It burns.',
    covers: ['moving-fan'],
    source: 'common practice: a tripped overload stands for a shell that burns the skin',
  },
  {
    id: 'refrigerant-pressure',
    words: 'Under pressure, burns by frost: gloves, hoses clear.',
    again: '',
    source: 'ASHRAE Standard 15 user notes, from memory; common practice',
    covers: ['pressurised-refrigerant'],
  },
  {
    id: 'nitrogen-test',
    words: "Dry nitrogen only, by regulator, within the plate's limit.",
    again: '',
    source: 'common practice: never oxygen, never without a regulator',
  },
  {
    id: 'insulation-test',
    words: 'Electronics off first, never in vacuum.',
    again: 'Electronics off.',
    source: "common practice; compressor makers' instructions govern",
  },
  // A refrigerant of class A2L, when it is learnt and when the work comes near it.
  {
    id: 'flammable-arrival',
    words: "Flammable refrigerant, A two L. Ventilate, keep flame away. The maker's instructions govern.",
    again: 'Flammable.',
    source: FLAMMABLE_SOURCE,
    covers: ['flammable-refrigerant'],
  },
  {
    id: 'flammable-opening',
    words: 'Flammable: recover, purge with nitrogen, ventilate.',
    again: 'Flammable.',
    source: FLAMMABLE_SOURCE,
    covers: ['flammable-refrigerant'],
  },
  {
    id: 'flammable-flame',
    words: 'Flammable: before a flame recover, purge, sniff the air.',
    again: 'Flammable.',
    source: FLAMMABLE_SOURCE,
    covers: ['flammable-refrigerant'],
  },
  {
    id: 'flammable-power',
    words: 'Flammable: sniff for a leak first.',
    again: 'Flammable.',
    source: FLAMMABLE_SOURCE,
    covers: ['flammable-refrigerant'],
  },
  {
    id: 'flammable-proof',
    words: 'Flammable: a probe can spark.',
    again: 'Flammable.',
    source: FLAMMABLE_SOURCE,
    covers: ['flammable-refrigerant'],
  },
  {
    id: 'flammable-running',
    words: 'Flammable: watch for leaks.',
    again: 'Flammable.',
    source: FLAMMABLE_SOURCE,
    covers: ['flammable-refrigerant'],
  },
] as const satisfies readonly Caution[];

export type CautionId = (typeof CAUTIONS)[number]['id'];
const CAUTIONS_BY_ID: Readonly<Record<CautionId, Caution>> = rowsBy('id', CAUTIONS);

export function cautionById(id: CautionId): Caution {
  return CAUTIONS_BY_ID[id];
}

export type SpokenCaution = Pick<Caution, 'id' | 'words' | 'source'>;

/** Told once before any live work, in two breaths. */
export const STANDING_RULES = ['standing-rules', 'standing-hazards'] as const satisfies readonly CautionId[];

/** So many words in one breath with the step, common practice: about five seconds beside a fan. */
const BREATH_WORDS = 12;

/** "Live. Leg one to ground": what the meter is set to was said with the hazard. */
export function withoutVolts(words: string): string {
  return words.replace(/, volts\.$/, '.');
}

/** "Shell burns: hand near, not on it. Look: compressor heat": where the hand goes was said with the hazard. */
function withoutHand(words: string): string {
  return words.replace(/, hand near the shell\.$/, '.');
}

/**
 * The cautions of one step as one prompt, and what it asks in the same breath where that stays short. What further
 * hazards would make too long is left to the next step, but the first of them is always told.
 * @param own what belongs to the step; @param hazards what its surroundings add, the gravest first
 */
export function cautionBreath(
  own: readonly SpokenCaution[],
  hazards: readonly SpokenCaution[],
  asked: string,
): { readonly told: readonly SpokenCaution[]; readonly text: string; readonly withStep: boolean } {
  const told = [...own];
  const textOf = (list: readonly SpokenCaution[]): string => list.map(({ words }) => words).join(' ');
  const tells = (caution: CautionId) => own.some(({ id }) => id === caution);
  const placed = tells('shell-heat') ? withoutHand(asked) : asked;
  const step = tells('live-line') ? withoutVolts(placed) : placed;
  const fits = (list: readonly SpokenCaution[]): boolean => wordsIn(`${textOf(list)} ${step}`) <= BREATH_WORDS;
  for (const hazard of hazards) if (told.length === 0 || fits([...told, hazard])) told.push(hazard);
  const withStep = step !== '' && fits(told);
  return { told, text: withStep ? `${textOf(told)} ${step}` : textOf(told), withStep };
}

/**
 * What a hazard of the diagnosis adds to a caution, for hands and eyes, in the order of the danger. `nothing`: the
 * caution of the step itself covers it, or it misleads the reading and hurts nobody.
 */
export const HAZARD_WORDS: Readonly<Record<HazardId, string>> = {
  'terminal-venting': 'A terminal can vent: cover on.',
  'flammable-refrigerant': 'Flammable: ventilate.',
  'capacitor-high-voltage': 'Over four hundred volts.',
  'charge-stays': 'Charge may stay.',
  'back-feed': 'Back-feed possible.',
  'one-pole-leaves-leg': 'One leg stays live.',
  'contactor-may-not-open': 'The contactor may hold in.',
  'breaker-back-fed': 'May be back-fed.',
  'line-side-stays-live': 'Line side stays live.',
  'starts-after-reset': 'It may restart.',
  'moving-fan': 'Fan may start.',
  'hot-line': 'Discharge line burns.',
  'pressurised-refrigerant': 'Under pressure.',
  'control-stays-live': 'Control stays live.',
  'line-voltage': 'nothing',
  'capacitor-charge': 'nothing',
  'ghost-voltage': 'nothing',
  'lost-leg-looks-good': 'nothing',
  'loose-lug-needs-load': 'nothing',
  'floating-common': 'nothing',
  'R-Y-two-meanings': 'nothing',
  'open-pole-reads-full': 'nothing',
  'supply-on-load-side': 'nothing',
  'defrost-stops-fan': 'nothing',
  'open-float-blanks-thermostat': 'nothing',
};
export const HAZARD_SOURCE = 'circuit solution of a plausible fault; common practice';

/** Units whose stored charge or refrigerant the cautions here do not cover: said once the nameplate tells. */
export const GATE_WORDS = {
  'inverter-driven':
    "Inverter driven unit: its drive holds a charge of its own. The maker's procedure governs; the proof here does not cover it.",
  'A3-refrigerant':
    "A3 refrigerant, highly flammable: the maker's procedure governs. Ventilate, keep ignition sources away, never a torch on a charged line.",
} as const;
