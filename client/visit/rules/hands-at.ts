import type { Deed, WireMove } from '../../../grammar/visit/events.ts';
import type { DeedId, LeadsOf } from '../../../grammar/vocabulary/deeds.ts';
import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { FittedPartId } from '../../../grammar/vocabulary/parts.ts';
import type { WorkId } from '../../../grammar/vocabulary/works.ts';
import { ZONES, type ZoneId } from '../../../grammar/vocabulary/zones.ts';
import type { VisitContext } from '../chart/context.ts';
import { isProvenDead } from '../steps/choose-step.ts';
import { provedWith } from './isolation.ts';
import { repairZone } from './repairs.ts';
import { zonesAt } from './zones-at.ts';

type Zones = readonly ZoneId[];
const NOWHERE: Zones = [];
const OUTDOORS: Zones = ['outdoor-load'];
const INDOORS: Zones = ['air-handler'];
const CONTROL: Zones = ['control'];

/** Where hands are when a part comes out or goes in (common practice; where a unit is built otherwise, its maker's word). */
const HANDS_AT_PART: Readonly<Record<FittedPartId, Zones>> = {
  'dual-capacitor': OUTDOORS,
  capacitor: OUTDOORS,
  'hard-start': OUTDOORS,
  contactor: OUTDOORS,
  'fan-motor': OUTDOORS,
  'blower-motor': INDOORS,
  // Behind the blades of a disconnect, or in the block that is pulled.
  fuse: OUTDOORS,
  'control-fuse': CONTROL,
  breaker: ['disconnect-line'],
  transformer: INDOORS,
  thermostat: CONTROL,
  'float-switch': CONTROL,
  'pressure-switch': CONTROL,
  disconnect: ['disconnect-line'],
  filter: NOWHERE,
  'filter-drier': OUTDOORS,
  compressor: OUTDOORS,
  'defrost-board': OUTDOORS,
  'control-board': INDOORS,
  'blower-relay': INDOORS,
  'reversing-valve': OUTDOORS,
  'unloader-solenoid': OUTDOORS,
  'crankcase-heater': OUTDOORS,
  'door-switch': INDOORS,
  'expansion-valve': INDOORS,
  // At the ports, outside the cabinet.
  'valve-core': NOWHERE,
  refrigerant: NOWHERE,
};

/** Where hands, brushes or water are when something is mended without a part. */
const HANDS_AT_WORK: Readonly<Record<WorkId, Zones>> = {
  'outdoor-coil-cleaned': OUTDOORS,
  'indoor-coil-cleaned': INDOORS,
  'coil-cleaned': OUTDOORS,
  // By its own fan, or by time.
  'coil-thawed': NOWHERE,
  'filter-cleaned': NOWHERE,
  'blower-cleaned': INDOORS,
  'vents-opened': NOWHERE,
  'drain-cleared': NOWHERE,
  'lug-1-tightened': OUTDOORS,
  'lug-2-tightened': OUTDOORS,
  'lugs-tightened': OUTDOORS,
  'contacts-cleaned': OUTDOORS,
  'control-wire-repaired': CONTROL,
  'switch-reset': OUTDOORS,
  'door-closed': NOWHERE,
  'thermostat-set': NOWHERE,
  'fan-freed': OUTDOORS,
  'leak-repaired': NOWHERE,
  'supply-restored': NOWHERE,
  'breaker-reset': NOWHERE,
};

/** What of the deeds by hand puts hands at conductors. */
const HANDS_AT_DEED: Readonly<Record<DeedId, Zones>> = {
  'contactor-pressed': OUTDOORS,
  'switch-bypassed': CONTROL,
  'bypass-off': CONTROL,
  'flame-lit': NOWHERE,
  'vacuum-on': NOWHERE,
  'vacuum-off': NOWHERE,
  'vacuum-off-nitrogen': NOWHERE,
  'shell-touched': NOWHERE,
  'compressor-leads-off': OUTDOORS,
  'compressor-leads-on': OUTDOORS,
  'fan-leads-off': OUTDOORS,
  'fan-leads-on': OUTDOORS,
  'capacitor-leads-off': OUTDOORS,
  'capacitor-leads-on': OUTDOORS,
  'blower-leads-off': INDOORS,
  'blower-leads-on': INDOORS,
};

/** Where leads that are off as a whole hang. */
export function zonesOfLeads(part: LeadsOf): Zones {
  return HANDS_AT_DEED[`${part}-leads-off`];
}

/** @param cures the faults that the part mends: where one was found, hands are where its repair was asked */
export function handsAtPart(part: FittedPartId, cures: readonly FaultId[], context: VisitContext): Zones {
  return whereAsked(cures, context) ?? HANDS_AT_PART[part];
}

export function handsAtWork(work: WorkId, cures: readonly FaultId[], context: VisitContext): Zones {
  return HANDS_AT_WORK[work].length === 0 ? NOWHERE : (whereAsked(cures, context) ?? HANDS_AT_WORK[work]);
}

function whereAsked(cures: readonly FaultId[], { finding }: VisitContext): Zones | undefined {
  if (finding === undefined || !cures.includes(finding.fault)) return undefined;
  const zone = repairZone(finding.fault);
  return zone === 'none' ? undefined : [zone];
}

/** A cover of the cabinet comes off for every live reading; the one over the compressor's terminals never does. */
export function handsAtDeed(deed: Deed): Zones {
  switch (deed.type) {
    case 'part-moved':
      return HANDS_AT_PART[deed.part];
    case 'cover':
      return deed.cover === 'compressor-terminals' && deed.state === 'off' ? OUTDOORS : NOWHERE;
    case 'deed':
      return HANDS_AT_DEED[deed.deed];
  }
}

/** Where a wire or a jumper is. Without a terminal: where a proof stands, else at the outdoor unit. */
export function handsAtWire({ from, to }: Pick<WireMove, 'from' | 'to'>, context: VisitContext): Zones {
  const named = zonesAt([from, to]);
  if (named.length > 0) return named;
  return ZONES.filter((zone) => provedWith(zone) === zone && isProvenDead(zone, context)).length > 0
    ? NOWHERE
    : OUTDOORS;
}
