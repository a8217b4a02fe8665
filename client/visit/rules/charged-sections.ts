import type { PointId } from '../../../grammar/vocabulary/points.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import type { VisitContext } from '../chart/context.ts';
import { CAPACITOR_ZONES } from './isolation.ts';

/** Something that holds a charge of its own: its zone, and across which points its volts d.c. are read. */
export interface ChargedSection {
  readonly zone: ZoneId;
  readonly at: readonly [PointId, PointId];
}

const SECTION_POINTS: Readonly<Record<(typeof CAPACITOR_ZONES)[number], ChargedSection['at']>> = {
  'capacitor-herm': ['cap-C', 'cap-HERM'],
  'capacitor-fan': ['cap-C', 'cap-FAN'],
  'capacitor-start': ['start-cap-1', 'start-cap-2'],
};
const BLOWER: ChargedSection = { zone: 'air-handler', at: ['blower-cap-1', 'blower-cap-2'] };

/** After so long an electronically driven blower is taken up (from memory; the maker's figure governs). Minutes. */
export const WAITING_MINUTES = 5;

/** Every capacitor that is present at a zone. */
export function sectionsOf(zone: ZoneId, context: VisitContext): readonly ChargedSection[] {
  if (zone === 'air-handler') return waitsOut(zone, context) ? [] : [BLOWER];
  if (zone !== 'outdoor-load') return [];
  const isThere = (one: (typeof CAPACITOR_ZONES)[number]) => one !== 'capacitor-start' || hasStartCapacitor(context);
  return CAPACITOR_ZONES.filter(isThere).map((one) => ({
    zone: one,
    at: SECTION_POINTS[one],
  }));
}

/** By the profile, or once one was fitted, read or named. */
export function hasStartCapacitor({ unit, startCapacitor }: VisitContext): boolean {
  return unit.hardStart === true || startCapacitor;
}

export function unreadSections(zone: ZoneId, context: VisitContext): readonly ChargedSection[] {
  return sectionsOf(zone, context).filter((section) => !context.discharged.includes(section.zone));
}

/** An electronic drive has no capacitor that can be read: its charge is waited out. */
export function waitsOut(zone: ZoneId, { unit }: VisitContext): boolean {
  return zone === 'air-handler' && unit.blowerDrive === 'electronic';
}
