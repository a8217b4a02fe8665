import type { ZoneId } from '../../grammar/vocabulary/zones.ts';
import type { Step, VisitContext } from './context.ts';

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
}

export const CAUTIONS = [
  {
    id: 'live-line',
    words: 'Caution: live line voltage. Meter rated for it, gloves and glasses on, rings off, dry footing.',
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
    words: 'Caution: call off first. A pull-out is not a load switch. Stand to one side.',
    again: 'Call off first.',
    source: 'common practice',
  },
  {
    id: 'capacitor-charge',
    words: 'Caution: the capacitor may hold a charge. Discharge each section through a resistor, then measure.',
    again: 'May be charged.',
    source: 'common practice (20 kilohm, 2 watt); NEC 460.6 by analogy',
  },
  {
    id: 'energise',
    words: 'Caution: covers on, tools and hands clear. The unit may start by itself.',
    again: 'Hands clear.',
    source: 'common practice',
  },
  {
    id: 'running-parts',
    words:
      'Caution: running fan and a discharge line that burns. Place the clamp while it is dead, step back, then energise.',
    again: 'Running parts.',
    source: 'common practice',
  },
] as const satisfies readonly Caution[];

export type CautionId = (typeof CAUTIONS)[number]['id'];

/** Spoken once in a visit, behind its first caution. */
export const GOVERNING_WORDS = "Local codes, the maker's instructions and licensed practice govern.";

/** The cautions that guard a step, in the order they are spoken. */
export function cautionsFor(step: Step): readonly CautionId[] {
  if (step.ask.kind === 'action') {
    switch (step.ask.done) {
      case 'power-off':
        return ['switch-off'];
      case 'absence-proved':
        return ['prove-as-live'];
      case 'capacitors-discharged':
        return ['capacitor-charge'];
      case 'power-on':
        return ['energise'];
      default:
        return [];
    }
  }
  if (step.ask.kind === 'look' || step.needs.power !== 'on' || step.zone === 'none') return [];
  if (step.ask.quantity === 'current') return ['running-parts'];
  if (step.ask.quantity !== 'voltage' && step.ask.quantity !== 'voltage-dc') return [];
  return [liveCaution(step.zone)];
}

/** The caution that belongs to a live voltage in a zone. */
export function liveCaution(zone: ZoneId): CautionId {
  return zone === 'control' ? 'live-control' : 'live-line';
}

/** A caution is due once for each caution and zone in a visit. */
export function dueCaution(step: Step, context: VisitContext): Caution | undefined {
  const due = cautionsFor(step).find((id) => !context.acknowledged.includes(cautionKey(id, step.zone)));
  return CAUTIONS.find((caution) => caution.id === due);
}

export function cautionKey(id: string, zone: ZoneId | 'none'): string {
  return `${id}@${zone}`;
}

export function cautionById(id: CautionId): Caution {
  const found = CAUTIONS.find((caution) => caution.id === id);
  if (found === undefined) throw new Error(`no caution ${id}`);
  return found;
}
