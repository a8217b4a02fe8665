import { ZONES, type ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { SAY } from '../../words/talk/prompts.ts';
import type { Turn } from '../chart/turn.ts';
import { OUTDOOR_ZONES, provedWith } from '../rules/isolation.ts';
import { isProvenDead } from '../steps/choose-step.ts';

/** The zones among these that are not proven dead, each by the one it is proved with. */
export function notProvenDead({ context }: Turn, zones: readonly ZoneId[]): readonly ZoneId[] {
  return ZONES.filter((zone) => zones.some((one) => provedWith(one) === zone) && !isProvenDead(zone, context));
}

/**
 * Hands were in these zones: said at once where one is not proven dead, and recorded as work of its own. It belongs to
 * the event that was recorded last and is taken back with it; `alone`: with nothing but itself.
 */
export function tellUnproven(turn: Turn, what: string, zones: readonly ZoneId[], alone?: 'alone'): void {
  const open = notProvenDead(turn, zones);
  if (open.length === 0) return;
  recordUnproven(turn, what, open, alone);
  sayUnproven(turn, open);
}

/** Says which of these zones is not proven dead; nothing where all are. */
export function sayUnproven(turn: Turn, zones: readonly ZoneId[]): void {
  const open = notProvenDead(turn, zones);
  if (open.length > 0) turn.say('warning', SAY.unproven(open));
}

/** The same without a word: what is said of it stands elsewhere. */
export function recordUnproven(turn: Turn, what: string, zones: readonly ZoneId[], alone?: 'alone'): void {
  const cause = turn.context.events;
  const own = alone === undefined ? {} : { alone: true as const };
  for (const zone of zones)
    turn.record({ type: 'work.unproven', what, zone, state: stateOf(turn, zone), cause, ...own });
}

/** The unit may be proven and a section of its capacitor not: the state that keeps hands out is told. */
function stateOf({ context: { energy } }: Turn, zone: ZoneId) {
  const together: readonly ZoneId[] = zone === 'outdoor-load' ? OUTDOOR_ZONES : [zone];
  return energy[together.find((one) => energy[one] !== 'proven-dead') ?? zone];
}
