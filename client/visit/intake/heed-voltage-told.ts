import type { Meaning, Understanding } from '../../../grammar/phrases/meaning.ts';
import { canMeanVoltage } from '../../../grammar/vocabulary/voltage-signs.ts';
import { ZONES } from '../../../grammar/vocabulary/zones.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { BECAUSE } from '../../words/talk/reasons.ts';
import type { Turn } from '../chart/turn.ts';
import { IN_PROOF } from '../rules/isolation.ts';
import { expectationOf } from '../steps/expectation.ts';
import { endProofs } from './end-proofs.ts';

/** Words that were not understood and can tell of a voltage where a proof stands end it, and are asked for again. */
export function heedVoltageTold(turn: Turn, { heard, meaning }: Understanding): void {
  const { readings, meter } = expectationOf(turn.context);
  const isBare = meaning.kind === 'value' && isLineVolts(meaning) && readings.length === 0 && meter !== true;
  if (isBare || canMeanVoltage(heard)) doubtByVoltage(turn);
}

/** A number of which only the guess is asked: a meter that nobody had asked for, or a value that cannot be what it was taken for. */
export function heedNumberGuessed(turn: Turn, understanding: Understanding): void {
  if (isMeterUnasked(turn, understanding.meaning) || isNoSuchValue(understanding)) doubtByVoltage(turn);
}

/** A number that a supply shows, and nothing that says of what: one leg to ground, or both. Volts. */
function isLineVolts({ value, unit }: Extract<Meaning, { kind: 'value' }>): boolean {
  if (typeof value !== 'number' || (unit !== undefined && unit !== 'V')) return false;
  return (value >= 100 && value <= 135) || (value >= 195 && value <= 260);
}

/** "My meter jumped to two forty", where nobody asked for the meter: it is on what was dead. */
function isMeterUnasked({ context }: Turn, meaning: Meaning): boolean {
  if (meaning.kind !== 'report' || meaning.report.type !== 'meter-proof') return false;
  const ask = context.step?.ask;
  return !(ask?.kind === 'action' && (ask.done === 'absence-proved' || ask.done === 'meter-again'));
}

/** Two hundred forty degrees of air: what the number is of was guessed, and it is one that a supply shows. */
function isNoSuchValue({ meaning, reason }: Understanding): boolean {
  if (meaning.kind !== 'reading' || reason !== 'implausible' || meaning.reading.quantity === 'voltage') return false;
  return isLineVolts({ kind: 'value', value: meaning.reading.value });
}

function doubtByVoltage(turn: Turn): void {
  const zones = ZONES.filter((zone) => IN_PROOF.includes(turn.context.energy[zone]));
  const [zone] = zones;
  if (zone === undefined) return;
  turn.warn(SAY.maybeVoltage, zone);
  endProofs(turn, zones, 'doubted', BECAUSE.maybeVoltage);
}
