import type { SwitchingDevice } from '../../../grammar/vocabulary/devices.ts';
import type { Isolation, IsolationPlace } from '../../../grammar/vocabulary/isolation-places.ts';
import type { EnergyState, ZoneId } from '../../../grammar/vocabulary/zones.ts';
import type { VisitContext } from '../chart/context.ts';

/** The outdoor unit's own conductors and its capacitor: dead together or not at all. */
export const CAPACITOR_ZONES = [
  'capacitor-herm',
  'capacitor-fan',
  'capacitor-start',
] as const satisfies readonly ZoneId[];
export const OUTDOOR_ZONES = ['outdoor-load', ...CAPACITOR_ZONES] as const satisfies readonly ZoneId[];

const OPENED_AT: Readonly<Record<ZoneId, readonly IsolationPlace[]>> = {
  'disconnect-line': ['panel'],
  'outdoor-load': ['outdoor', 'panel'],
  'capacitor-herm': ['outdoor', 'panel'],
  'capacitor-fan': ['outdoor', 'panel'],
  'capacitor-start': ['outdoor', 'panel'],
  'air-handler': ['air-handler'],
  control: ['air-handler'],
};

/** Zones that a switch takes off, the capacitor sections apart: a switch does not take their charge. */
export function zonesOpenedAt(place: IsolationPlace): readonly ZoneId[] {
  return (Object.keys(OPENED_AT) as ZoneId[]).filter((zone) => OPENED_AT[zone].includes(place));
}

/**
 * Zones that power can reach when a switch is closed or unlocked: none that another locked switch still keeps off. A
 * proof holds behind the locks it was made behind; one that was only told of since was never shown to feed the zone.
 */
export function zonesFedBy(place: IsolationPlace, context: VisitContext): readonly ZoneId[] {
  return zonesOpenedAt(place).filter((zone) => {
    const provedBehind = IN_PROOF.includes(context.energy[zone]) ? context.provedBehind[provedWith(zone)] : undefined;
    const keepsOff = (other: IsolationPlace) =>
      other !== place && context.isolation[other] === 'locked' && provedBehind?.includes(other) !== false;
    return !OPENED_AT[zone].some(keepsOff);
  });
}

/** The switches by which any of these zones is taken off. */
export function placesOpening(zones: readonly ZoneId[]): readonly IsolationPlace[] {
  return [...new Set(zones.flatMap((zone) => OPENED_AT[zone]))];
}

/** How far a zone's supply is reported isolated: one locked switch is enough. */
export function isolationOf(zone: ZoneId, context: VisitContext): Isolation {
  const states = OPENED_AT[zone].map((place) => context.isolation[place]);
  return states.find((one) => one === 'locked') ?? states.find((one) => one === 'open') ?? states[0] ?? 'unknown';
}

export function isOpened(zone: ZoneId, context: VisitContext): boolean {
  const isolation = isolationOf(zone, context);
  return isolation === 'open' || isolation === 'locked';
}

/** A switch, by device and place. */
export interface Switch {
  readonly device: SwitchingDevice;
  readonly place: IsolationPlace;
}

const SWITCH_AT: Readonly<Record<IsolationPlace, Switch>> = {
  outdoor: { device: 'disconnect', place: 'outdoor' },
  panel: { device: 'breaker', place: 'panel' },
  'air-handler': { device: 'service-switch', place: 'air-handler' },
};

/** The switch that takes a zone off, the nearest one; the outdoor unit's where no zone is meant. */
export function switchOf(zone: ZoneId | 'none'): Switch {
  return SWITCH_AT[(zone === 'none' ? undefined : OPENED_AT[zone][0]) ?? 'outdoor'];
}

/** The switch that was told open last. */
export function switchToldLast({ toldOpen }: VisitContext): Switch | undefined {
  const place = toldOpen.at(-1);
  return place === undefined ? undefined : SWITCH_AT[place];
}

/** The zone whose proof stands for a zone: the capacitor's sections are proved with the outdoor unit. */
export function provedWith(zone: ZoneId): ZoneId {
  return (OUTDOOR_ZONES as readonly ZoneId[]).includes(zone) ? 'outdoor-load' : zone;
}

/** Zones that are live together: the unit with its line side while the disconnect is in, the transformer with what feeds it. */
export function reachedByVoltage(zone: ZoneId, context: VisitContext): readonly ZoneId[] {
  if (zone === 'control' || zone === 'air-handler') return ['control', 'air-handler'];
  const outdoors = (OUTDOOR_ZONES as readonly ZoneId[]).includes(zone) ? OUTDOOR_ZONES : [];
  const isApart = context.isolation.outdoor === 'open' || context.isolation.outdoor === 'locked';
  if (isApart) return outdoors.length > 0 ? outdoors : [zone];
  return ['disconnect-line', ...OUTDOOR_ZONES];
}

/** Where a proof may begin, or has begun and may go on. */
export const TO_BE_PROVED: readonly EnergyState[] = ['reported-off', 'proving'];

/** Where a zone counts as taken off by somebody's word or by numbers: voltage there is where none should be. */
export const TAKEN_OFF: readonly EnergyState[] = ['reported-off', 'proving', 'reads-dead', 'proven-dead', 'in-doubt'];

/** Where no a.c. stands by numbers: there volts d.c. tell of a charge, and it may be discharged. */
export const READ_DEAD: readonly EnergyState[] = ['reads-dead', 'proven-dead'];

/** Read dead, or asked whether it still is: hands may be there, or soon. */
export const HANDS_MAY_BE: readonly EnergyState[] = [...READ_DEAD, 'in-doubt'];

/** Where a zone stands in a proof of absence of voltage, begun or whole. */
export const IN_PROOF: readonly EnergyState[] = ['proving', 'reads-dead', 'proven-dead', 'in-doubt'];

/** Zones that hold a charge of their own once they read dead; a capacitor's sections are released with their unit. */
const HOLDS_CHARGE: Readonly<Record<ZoneId, boolean>> = {
  'disconnect-line': false,
  'outdoor-load': true,
  control: false,
  'capacitor-herm': false,
  'capacitor-fan': false,
  'capacitor-start': false,
  'air-handler': true,
};

export function holdsCharge(zone: ZoneId): boolean {
  return HOLDS_CHARGE[zone];
}
