import type { HazardId } from '../../../grammar/vocabulary/hazards.ts';

import { rowsBy } from '../../../grammar/vocabulary/rows-by.ts';

/**
 * One caution: data. `words` are spoken the first time for each caution and zone and must be acknowledged; after that
 * the single word "Live" (or `again`) leads the prompt. No wording calls anything safe, suggests a value, or holds one
 * of the words that are listened for while the mouth speaks.
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
  {
    id: 'live-line',
    words:
      'Caution: live line voltage. Meter rated for it, leads in the volt jacks, gloves and glasses on, rings off, dry footing.',
    again: 'Live.',
    source: 'NFPA 70E 120.5 and Table 130.4; IEC 61010-2-030 category III; ASTM D120 gloves',
  },
  {
    id: 'live-control',
    words:
      'Caution: live control circuit. Line voltage may stand beside it. Keep both probes on the control terminals.',
    again: 'Live.',
    source: 'common practice',
  },
  {
    id: 'prove-as-live',
    words: 'Caution: treat it as live until the meter shows otherwise. A thermostat or a contactor is not isolation.',
    again: 'As live.',
    source: 'NFPA 70E 120.5; 29 CFR 1910.333(b)(2)(ii)',
  },
  {
    id: 'switch-off',
    words: 'Caution: a pull-out is not a load switch. Stand to one side.',
    again: 'Stand to one side.',
    source: 'common practice',
  },
  {
    id: 'capacitor-charge',
    words: 'Caution: the capacitor may hold a charge. Discharge each section through a resistor, then measure.',
    again: 'May be charged.',
    covers: ['charge-stays', 'capacitor-charge'],
    source: 'common practice (20 kilohm, 2 watt); NEC 460.6 by analogy',
  },
  {
    id: 'energise',
    words: 'Caution: covers on, tools and hands clear. The unit may start by itself.',
    again: 'Hands clear.',
    source: 'common practice',
  },
  {
    id: 'reset-once',
    words: 'Caution: before this one reset, read each winding to the shell. Compressor cover stays on.',
    again: 'One reset.',
    source: 'common practice: a grounded winding can vent the terminal',
  },
  {
    id: 'running-parts',
    words:
      'Caution: running fan and a discharge line that burns. Place the clamp while it is dead, step back, then energise.',
    again: 'Running parts.',
    source: 'common practice',
    covers: ['moving-fan', 'hot-line'],
  },
  {
    id: 'contactor-by-hand',
    words: 'Never push a contactor in by hand while it is fed.',
    again: 'Hands off the armature.',
    source: 'common practice: an arc at the contacts, and a load that starts on whoever holds it',
  },
  {
    id: 'fan-by-hand',
    words: 'Caution: a fan is turned by hand only while it is proven dead. It can start by itself.',
    again: 'Dead only.',
    covers: ['moving-fan'],
    source: 'common practice',
  },
  {
    id: 'shell-heat',
    words: 'Caution: the shell may burn. Hand near it, not on it, clear of fan and terminals.',
    again: 'It may burn.',
    covers: ['moving-fan'],
    source: 'common practice: a tripped overload stands for a shell that burns the skin',
  },
  {
    id: 'refrigerant-pressure',
    words: 'Caution: refrigerant under pressure, it burns by frost. Glasses and gloves on, hoses clear of the fan.',
    again: 'Under pressure.',
    source: 'ASHRAE Standard 15 user notes, from memory; common practice',
    covers: ['pressurised-refrigerant'],
  },
  {
    id: 'nitrogen-test',
    words: 'Caution: dry nitrogen through a regulator, not above the nameplate test pressure. Never a torch on it.',
    again: 'Nitrogen.',
    source: 'common practice: never oxygen, never without a regulator',
  },
  {
    id: 'insulation-test',
    words: 'Caution: insulation test. Electronics lifted off first, and never on a compressor in vacuum.',
    again: 'Electronics off.',
    source: "common practice; compressor makers' instructions govern",
  },
  // A refrigerant of class A2L, when it is learnt and when the work comes near it.
  {
    id: 'flammable-arrival',
    words:
      "Flammable refrigerant, class A two L. Ventilate, keep flame and spark away. The maker's instructions govern.",
    again: 'Flammable.',
    source: FLAMMABLE_SOURCE,
    covers: ['flammable-refrigerant'],
  },
  {
    id: 'flammable-opening',
    words: 'Flammable: ventilate, watch for leaks. Recover it all and purge with nitrogen before a joint is opened.',
    again: 'Flammable.',
    source: FLAMMABLE_SOURCE,
    covers: ['flammable-refrigerant'],
  },
  {
    id: 'flammable-flame',
    words: 'Flammable: before a flame, recover, purge with nitrogen, and sniff the air around it.',
    again: 'Flammable.',
    source: FLAMMABLE_SOURCE,
    covers: ['flammable-refrigerant'],
  },
  {
    id: 'flammable-power',
    words: 'Flammable: sniff for a leak and ventilate before power.',
    again: 'Flammable.',
    source: FLAMMABLE_SOURCE,
    covers: ['flammable-refrigerant'],
  },
  {
    id: 'flammable-proof',
    words: 'Flammable: a switch or a probe can spark. Ventilate, watch for leaks.',
    again: 'Flammable.',
    source: FLAMMABLE_SOURCE,
    covers: ['flammable-refrigerant'],
  },
  {
    id: 'flammable-running',
    words: 'Flammable: watch for leaks while it runs, keep sparks away.',
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

/** The cautions of one step as one prompt; behind the first one of a visit, what governs and what to answer. */
export function cautionPrompt(due: readonly SpokenCaution[], isFirst: boolean): string {
  return [...due.map((one) => one.words), ...(isFirst ? [GOVERNING_WORDS, ANSWER_WORDS] : [])].join(' ');
}

const GOVERNING_WORDS = "Local codes, the maker's instructions and licensed practice govern.";
const ANSWER_WORDS = 'Say "live" when you have it.';

/**
 * What a hazard of the diagnosis adds to a caution, for hands and eyes, in the order of the danger: the first due ones
 * are spoken. `nothing`: the caution of the step itself covers it, or it misleads the reading and hurts nobody.
 */
export const HAZARD_WORDS: Readonly<Record<HazardId, string>> = {
  'terminal-venting': 'A grounded winding can blow a terminal out: compressor cover stays on.',
  'flammable-refrigerant': 'Flammable refrigerant: ventilate, keep flame and spark away.',
  'capacitor-high-voltage': 'The capacitor runs above four hundred volts.',
  'charge-stays': 'The capacitor may not bleed down by itself.',
  'back-feed': 'Back-feed possible: both load lugs can be live with nothing between them.',
  'one-pole-leaves-leg': 'A one-pole contactor leaves a leg on the load side.',
  'contactor-may-not-open': 'The contactor may stay closed without a call.',
  'breaker-back-fed': 'An open breaker pole can be back-fed.',
  'line-side-stays-live': "The disconnect's line side stays live.",
  'starts-after-reset': 'The compressor can restart by itself.',
  'moving-fan': 'The fan can start without warning.',
  'hot-line': 'The discharge line burns.',
  'pressurised-refrigerant': 'Refrigerant under pressure: glasses and gloves.',
  'control-stays-live': 'Twenty four volts stays live with the disconnect out.',
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
