import { REFRIGERANT_CLASSES, type UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import type { Turn } from '../chart/turn.ts';

const WORDS = {
  'inverter-driven':
    "Inverter driven unit: its drive holds a charge of its own. The maker's procedure governs; the proof here does not cover it.",
  'A3-refrigerant':
    "A3 refrigerant, highly flammable: the maker's procedure governs. Ventilate, keep ignition sources away, never a torch on a charged line.",
} as const;

/**
 * Units whose stored charge and procedures differ are gated where the nameplate tells: it is said, and from then on
 * nothing here is called proven dead.
 */
export function gateUnit(turn: Turn): void {
  const gate = gateOf(turn.context.unit);
  if (gate === undefined || gate === turn.context.gate) return;
  turn.set({ gate });
  turn.record({ type: 'unit.gated', gate, words: WORDS[gate] });
  turn.say('warning', WORDS[gate]);
}

function gateOf(unit: UnitProfile): keyof typeof WORDS | undefined {
  if (unit.inverterDriven === true) return 'inverter-driven';
  if (unit.refrigerant === undefined) return undefined;
  return REFRIGERANT_CLASSES[unit.refrigerant] === 'A3' ? 'A3-refrigerant' : undefined;
}
