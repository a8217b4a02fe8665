import { REFRIGERANT_CLASSES, type UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import { ZONES } from '../../../grammar/vocabulary/zones.ts';
import { GATE_WORDS } from '../../words/talk/caution-words.ts';
import type { Turn } from '../chart/turn.ts';
import { IN_PROOF } from '../rules/isolation.ts';
import { endProofs } from './end-proofs.ts';

/**
 * Units whose stored charge and procedures differ are gated where the nameplate tells: it is said, and from then on
 * nothing here is called proven dead.
 */
export function gateUnit(turn: Turn): void {
  const gate = gateOf(turn.context.unit);
  if (gate === undefined || gate === turn.context.gate) return;
  turn.record({ type: 'unit.gated', gate, words: GATE_WORDS[gate] });
  turn.say('warning', GATE_WORDS[gate]);
  endProofs(
    turn,
    ZONES.filter((zone) => IN_PROOF.includes(turn.context.energy[zone])),
    'doubted',
    GATE_WORDS[gate],
  );
}

function gateOf(unit: UnitProfile): keyof typeof GATE_WORDS | undefined {
  if (unit.inverterDriven === true) return 'inverter-driven';
  if (unit.refrigerant === undefined) return undefined;
  return REFRIGERANT_CLASSES[unit.refrigerant] === 'A3' ? 'A3-refrigerant' : undefined;
}
