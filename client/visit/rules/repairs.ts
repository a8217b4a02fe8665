import { OPENS_REFRIGERANT } from '../../../grammar/visit/opens-refrigerant.ts';
import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { FittedPartId, PartId } from '../../../grammar/vocabulary/parts.ts';
import type { WorkId } from '../../../grammar/vocabulary/works.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';

/** Refrigerant weighed in counts as a part fitted. */
export const CHARGE = 'refrigerant';

type OneOrMore<Id> = readonly [Id, ...Id[]];
type None = readonly [];

/**
 * How a fault is mended by the trade's usual way: by a part that is fitted, by work without one, by either, or by the
 * charge. Each of the parts, fitted, and each of the works, done, cures it: the diagnosis starts again without it.
 */
type Repair = (
  | { readonly by: 'part'; readonly parts: OneOrMore<FittedPartId>; readonly works: None }
  | { readonly by: 'work'; readonly parts: None; readonly works: OneOrMore<WorkId> }
  | { readonly by: 'either'; readonly parts: OneOrMore<FittedPartId>; readonly works: OneOrMore<WorkId> }
  | { readonly by: 'charge'; readonly parts: readonly ['refrigerant', ...FittedPartId[]]; readonly works: None }
  /** Whatever is done for it is said; nothing of the two tables is known to cure it. */
  | { readonly by: 'either'; readonly parts: None; readonly works: None }
) & {
  /** Where hands go: the zone that is proven dead before the repair is asked; `none`: no live part is met. */
  readonly provenDead: ZoneId | 'none';
};

const NONE = [] as const;

const REPAIRS = {
  // supply
  'supply-low': { by: 'work', parts: NONE, works: ['supply-restored'], provenDead: 'none' },
  'lost-utility-leg': { by: 'work', parts: NONE, works: ['supply-restored'], provenDead: 'none' },
  'breaker-tripped': { by: 'either', parts: ['breaker'], works: ['breaker-reset'], provenDead: 'outdoor-load' },
  'breaker-pole-1-open': { by: 'part', parts: ['breaker'], works: NONE, provenDead: 'disconnect-line' },
  'breaker-pole-2-open': { by: 'part', parts: ['breaker'], works: NONE, provenDead: 'disconnect-line' },
  'disconnect-open': { by: 'part', parts: ['disconnect'], works: NONE, provenDead: 'disconnect-line' },
  'disconnect-blade-1-burnt': { by: 'part', parts: ['disconnect'], works: NONE, provenDead: 'disconnect-line' },
  'disconnect-blade-2-burnt': { by: 'part', parts: ['disconnect'], works: NONE, provenDead: 'disconnect-line' },
  'line-fuse-1-open': { by: 'part', parts: ['fuse'], works: NONE, provenDead: 'outdoor-load' },
  'line-fuse-2-open': { by: 'part', parts: ['fuse'], works: NONE, provenDead: 'outdoor-load' },
  'loose-lug-1': {
    by: 'either',
    parts: ['disconnect'],
    works: ['lug-1-tightened', 'lugs-tightened'],
    provenDead: 'outdoor-load',
  },
  'loose-lug-2': {
    by: 'either',
    parts: ['disconnect'],
    works: ['lug-2-tightened', 'lugs-tightened'],
    provenDead: 'outdoor-load',
  },
  'air-handler-no-power': { by: 'either', parts: NONE, works: NONE, provenDead: 'air-handler' },
  // contactor
  'contactor-pole-1-burnt': {
    by: 'either',
    parts: ['contactor'],
    works: ['contacts-cleaned'],
    provenDead: 'outdoor-load',
  },
  'contactor-pole-2-burnt': {
    by: 'either',
    parts: ['contactor'],
    works: ['contacts-cleaned'],
    provenDead: 'outdoor-load',
  },
  'contactor-pole-1-stuck-closed': { by: 'part', parts: ['contactor'], works: NONE, provenDead: 'outdoor-load' },
  'contactor-pole-2-stuck-closed': { by: 'part', parts: ['contactor'], works: NONE, provenDead: 'outdoor-load' },
  'contactor-stuck-closed': { by: 'part', parts: ['contactor'], works: NONE, provenDead: 'outdoor-load' },
  'contactor-jammed-open': {
    by: 'either',
    parts: ['contactor'],
    works: ['contacts-cleaned'],
    provenDead: 'outdoor-load',
  },
  'contactor-coil-open': { by: 'part', parts: ['contactor'], works: NONE, provenDead: 'outdoor-load' },
  'contactor-coil-shorted': { by: 'part', parts: ['contactor'], works: NONE, provenDead: 'outdoor-load' },
  // capacitors
  'herm-capacitor-weak': {
    by: 'part',
    parts: ['dual-capacitor', 'capacitor'],
    works: NONE,
    provenDead: 'outdoor-load',
  },
  'herm-capacitor-open': {
    by: 'part',
    parts: ['dual-capacitor', 'capacitor'],
    works: NONE,
    provenDead: 'outdoor-load',
  },
  'herm-capacitor-shorted': { by: 'part', parts: ['dual-capacitor'], works: NONE, provenDead: 'outdoor-load' },
  'fan-capacitor-weak': { by: 'part', parts: ['dual-capacitor', 'capacitor'], works: NONE, provenDead: 'outdoor-load' },
  'fan-capacitor-open': { by: 'part', parts: ['dual-capacitor', 'capacitor'], works: NONE, provenDead: 'outdoor-load' },
  'fan-capacitor-shorted': { by: 'part', parts: ['dual-capacitor'], works: NONE, provenDead: 'outdoor-load' },
  'hard-start-failed': { by: 'part', parts: ['hard-start'], works: NONE, provenDead: 'outdoor-load' },
  'capacitor-lead-off': { by: 'either', parts: NONE, works: NONE, provenDead: 'outdoor-load' },
  // compressor
  'compressor-lead-burnt': { by: 'either', parts: NONE, works: NONE, provenDead: 'outdoor-load' },
  'compressor-run-winding-open': { by: 'part', parts: ['compressor'], works: NONE, provenDead: 'outdoor-load' },
  'compressor-start-winding-open': { by: 'part', parts: ['compressor'], works: NONE, provenDead: 'outdoor-load' },
  'compressor-grounded': { by: 'part', parts: ['compressor'], works: NONE, provenDead: 'outdoor-load' },
  'compressor-overload-open': { by: 'part', parts: ['compressor'], works: NONE, provenDead: 'outdoor-load' },
  'compressor-seized': { by: 'part', parts: ['compressor'], works: NONE, provenDead: 'outdoor-load' },
  'crankcase-heater-open': { by: 'part', parts: ['crankcase-heater'], works: NONE, provenDead: 'outdoor-load' },
  // outdoor fan
  'fan-lead-off': { by: 'either', parts: NONE, works: NONE, provenDead: 'outdoor-load' },
  'fan-run-winding-open': { by: 'part', parts: ['fan-motor'], works: NONE, provenDead: 'outdoor-load' },
  'fan-start-winding-open': { by: 'part', parts: ['fan-motor'], works: NONE, provenDead: 'outdoor-load' },
  'fan-motor-grounded': { by: 'part', parts: ['fan-motor'], works: NONE, provenDead: 'outdoor-load' },
  'fan-bearings-seized': { by: 'either', parts: ['fan-motor'], works: ['fan-freed'], provenDead: 'outdoor-load' },
  'defrost-fan-relay-open': { by: 'part', parts: ['defrost-board'], works: NONE, provenDead: 'outdoor-load' },
  // control circuit
  'transformer-dead': { by: 'part', parts: ['transformer'], works: NONE, provenDead: 'air-handler' },
  'control-fuse-open': { by: 'part', parts: ['control-fuse'], works: NONE, provenDead: 'control' },
  'control-short-Y-C': { by: 'work', parts: NONE, works: ['control-wire-repaired'], provenDead: 'control' },
  'control-short-R-C': { by: 'work', parts: NONE, works: ['control-wire-repaired'], provenDead: 'control' },
  'R-wire-broken': { by: 'work', parts: NONE, works: ['control-wire-repaired'], provenDead: 'control' },
  'Y-wire-broken-indoors': { by: 'work', parts: NONE, works: ['control-wire-repaired'], provenDead: 'control' },
  'Y-wire-broken-outdoors': { by: 'work', parts: NONE, works: ['control-wire-repaired'], provenDead: 'control' },
  'C-wire-broken': { by: 'work', parts: NONE, works: ['control-wire-repaired'], provenDead: 'control' },
  'G-wire-broken': { by: 'work', parts: NONE, works: ['control-wire-repaired'], provenDead: 'control' },
  'thermostat-not-calling': { by: 'either', parts: ['thermostat'], works: ['thermostat-set'], provenDead: 'control' },
  'O-wire-broken': { by: 'work', parts: NONE, works: ['control-wire-repaired'], provenDead: 'control' },
  'thermostat-no-fan-call': { by: 'either', parts: ['thermostat'], works: ['thermostat-set'], provenDead: 'control' },
  'delay-stays-open': { by: 'either', parts: NONE, works: NONE, provenDead: 'outdoor-load' },
  'float-switch-open': { by: 'either', parts: ['float-switch'], works: ['drain-cleared'], provenDead: 'control' },
  'high-switch-open': { by: 'either', parts: ['pressure-switch'], works: ['switch-reset'], provenDead: 'outdoor-load' },
  'low-switch-open': { by: 'either', parts: ['pressure-switch'], works: ['switch-reset'], provenDead: 'outdoor-load' },
  'door-switch-open': { by: 'either', parts: ['door-switch'], works: ['door-closed'], provenDead: 'air-handler' },
  // second stage
  'thermostat-no-second-stage': {
    by: 'either',
    parts: ['thermostat'],
    works: ['thermostat-set'],
    provenDead: 'control',
  },
  'Y2-wire-broken': { by: 'work', parts: NONE, works: ['control-wire-repaired'], provenDead: 'control' },
  // Plugged on from outside, or inside the shell: then the compressor is the part (common practice, the maker decides).
  'unloader-solenoid-open': {
    by: 'part',
    parts: ['unloader-solenoid', 'compressor'],
    works: NONE,
    provenDead: 'outdoor-load',
  },
  'unloader-stuck-unloaded': { by: 'part', parts: ['compressor'], works: NONE, provenDead: 'outdoor-load' },
  // indoor air
  'blower-motor-open': { by: 'part', parts: ['blower-motor'], works: NONE, provenDead: 'air-handler' },
  'blower-seized': { by: 'either', parts: ['blower-motor'], works: ['blower-cleaned'], provenDead: 'air-handler' },
  'blower-relay-open': { by: 'part', parts: ['blower-relay', 'control-board'], works: NONE, provenDead: 'air-handler' },
  'blower-capacitor-weak': { by: 'part', parts: ['capacitor'], works: NONE, provenDead: 'air-handler' },
  'filter-dirty': { by: 'either', parts: ['filter'], works: ['filter-cleaned'], provenDead: 'none' },
  'indoor-coil-iced': { by: 'work', parts: NONE, works: ['coil-thawed'], provenDead: 'none' },
  'low-indoor-air': {
    by: 'either',
    parts: ['filter'],
    works: ['indoor-coil-cleaned', 'coil-cleaned', 'filter-cleaned', 'blower-cleaned', 'vents-opened'],
    provenDead: 'none',
  },
  // refrigerant side
  'low-charge': { by: 'charge', parts: [CHARGE, 'valve-core'], works: NONE, provenDead: 'outdoor-load' },
  overcharge: { by: 'charge', parts: [CHARGE], works: NONE, provenDead: 'outdoor-load' },
  'liquid-restriction': {
    by: 'part',
    parts: ['filter-drier', 'expansion-valve'],
    works: NONE,
    provenDead: 'outdoor-load',
  },
  'condenser-dirty': {
    by: 'work',
    parts: NONE,
    works: ['outdoor-coil-cleaned', 'coil-cleaned'],
    provenDead: 'outdoor-load',
  },
  'non-condensables': { by: 'charge', parts: [CHARGE], works: NONE, provenDead: 'outdoor-load' },
  'leaking-valves': { by: 'part', parts: ['compressor'], works: NONE, provenDead: 'outdoor-load' },
  'reversing-valve-stuck': { by: 'part', parts: ['reversing-valve'], works: NONE, provenDead: 'outdoor-load' },
  // the open ends
  'nothing-wrong': { by: 'either', parts: NONE, works: NONE, provenDead: 'outdoor-load' },
  'something-else': { by: 'either', parts: NONE, works: NONE, provenDead: 'outdoor-load' },
} as const satisfies Readonly<Record<FaultId, Repair>>;

type Mending = (typeof REPAIRS)[keyof typeof REPAIRS]['parts' | 'works'][number];

/** Parts and works that cure no fault by themselves, with the reason. */
const CURES_NOTHING = {
  'leak-repaired': 'the charge is still low until it is weighed in',
} as const satisfies Readonly<Record<Exclude<PartId | WorkId, Mending>, string>>;

/** The repair of a fault. Where nothing was found it is that of a cause which the measurements do not name. */
function repairFor(fault: FaultId | undefined): Repair {
  return REPAIRS[fault ?? 'something-else'];
}

/** The faults among the suspects that a part cures. */
export function repairedBy(part: FittedPartId, suspects: readonly FaultId[]): readonly FaultId[] {
  return [...new Set(suspects)].filter((fault) => {
    const { parts }: { readonly parts: readonly FittedPartId[] } = repairFor(fault);
    return parts.includes(part);
  });
}

/** The faults among the suspects that a piece of work cures. */
export function mendedBy(work: WorkId, suspects: readonly FaultId[]): readonly FaultId[] {
  if (work in CURES_NOTHING) return [];
  return [...new Set(suspects)].filter((fault) => {
    const { works }: { readonly works: readonly WorkId[] } = repairFor(fault);
    return works.includes(work);
  });
}

/** Each of the parts and each of the works that cures a fault. */
export function mendingsOf(fault: FaultId): {
  readonly parts: readonly FittedPartId[];
  readonly works: readonly WorkId[];
} {
  return repairFor(fault);
}

/** What repairs a fault: a part that is fitted, work without one, either, or the charge. */
export function repairOf(fault: FaultId | undefined): Repair['by'] {
  return repairFor(fault).by;
}

/** Whether a part that repairs a fault sits in the refrigerant circuit. */
export function repairOpensRefrigerant(fault: FaultId | undefined): boolean {
  return repairFor(fault).parts.some((part) => OPENS_REFRIGERANT[part]);
}

/** The zone that must be proven dead before a fault is repaired. */
export function repairZone(fault: FaultId | undefined): Repair['provenDead'] {
  return repairFor(fault).provenDead;
}
