/**
 * What can hurt or mislead at a step. Ids and plain names only: the words of a caution belong to client/visit.
 * `misleads` marks a trap for the reading, not for the body.
 */
export interface HazardName {
  readonly id: string;
  readonly name: string;
  readonly misleads?: true;
}

export const HAZARDS = [
  // of the step itself
  { id: 'line-voltage', name: 'line voltage at the probes' },
  { id: 'moving-fan', name: 'fan can start without warning' },
  { id: 'hot-line', name: 'hot discharge line' },
  { id: 'pressurised-refrigerant', name: 'refrigerant under pressure' },
  { id: 'flammable-refrigerant', name: 'flammable refrigerant' },
  { id: 'capacitor-charge', name: 'capacitor may hold a charge' },
  { id: 'capacitor-high-voltage', name: 'running capacitor above 400 volts' },
  { id: 'terminal-venting', name: 'grounded winding can vent a compressor terminal' },
  { id: 'line-side-stays-live', name: 'line side stays live with the disconnect out' },
  { id: 'control-stays-live', name: '24 volt control stays live with the disconnect out' },
  // what a plausible fault or the wiring makes real
  { id: 'back-feed', name: 'back-feed through the windings: both load lugs live, nothing between them' },
  { id: 'breaker-back-fed', name: 'open breaker pole is back-fed' },
  { id: 'one-pole-leaves-leg', name: 'one-pole contactor leaves a leg on the load side' },
  { id: 'contactor-may-not-open', name: 'contactor may stay closed without a call' },
  { id: 'charge-stays', name: 'capacitor cannot bleed: winding open or lead off' },
  { id: 'starts-after-reset', name: 'compressor can restart when the overload resets' },
  // traps for the reading
  { id: 'ghost-voltage', name: 'ghost voltage on a floating conductor', misleads: true },
  { id: 'lost-leg-looks-good', name: 'a lost leg still reads to ground', misleads: true },
  { id: 'loose-lug-needs-load', name: 'a loose lug reads good without load', misleads: true },
  { id: 'floating-common', name: 'floating common: ground is no reference for 24 volts', misleads: true },
  { id: 'R-Y-two-meanings', name: 'R to Y near zero has two meanings', misleads: true },
  { id: 'open-pole-reads-full', name: 'full voltage across an open pole can be normal', misleads: true },
  { id: 'supply-on-load-side', name: 'supply may be landed on the load side', misleads: true },
  { id: 'defrost-stops-fan', name: 'defrost also stops the fan', misleads: true },
  { id: 'open-float-blanks-thermostat', name: 'an open float switch can blank the thermostat', misleads: true },
] as const satisfies readonly HazardName[];
export type HazardId = (typeof HAZARDS)[number]['id'];
