import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import type { KeptVisit } from '../glance/kept-visit.ts';

/** What of a visit tells of its unit. */
type UnitVisit = Pick<KeptVisit, 'site' | 'first' | 'unit' | 'plate'>;

/** A unit as it was known at the end of a visit on this device. */
export interface KnownUnit {
  readonly site: string;
  readonly unit: UnitProfile;
  /** When that visit began. RFC 3339. */
  readonly seen: string;
}

/**
 * The units of the visits on this device, the latest first: the records themselves are what is kept, so that nothing
 * else can differ from them. One of which nothing is known but its name is none.
 */
export function knownUnits(visits: readonly { readonly folded: UnitVisit }[]): readonly KnownUnit[] {
  const known = visits.flatMap(({ folded }): readonly KnownUnit[] => {
    const { site, first } = folded;
    const unit = unitOf(folded);
    const { id: _name, ...read } = unit;
    return site === '' || first === undefined || Object.keys(read).length === 0
      ? []
      : [{ site, unit, seen: first.time.at }];
  });
  const latest = known.toSorted((a, b) => b.seen.localeCompare(a.seen));
  return latest.filter((one, at) => latest.findIndex((other) => isSameUnit(one, other)) === at);
}

/** Those of a site, by its name: whatever its letters and spaces. */
export function unitsAt(known: readonly KnownUnit[], site: string): readonly KnownUnit[] {
  return site.trim() === '' ? [] : known.filter((one) => nameOf(one.site) === nameOf(site));
}

/** With its model and serial number, where they were read. */
function unitOf({ unit, plate }: UnitVisit): UnitProfile {
  const { model, serial } = plate;
  return {
    ...unit,
    ...(typeof model === 'string' ? { model } : {}),
    ...(typeof serial === 'string' ? { serial } : {}),
  };
}

/** By its serial number, else by all that is known. */
function isSameUnit(one: KnownUnit, other: KnownUnit): boolean {
  if (nameOf(one.site) !== nameOf(other.site)) return false;
  const [a, b] = [one.unit.serial, other.unit.serial];
  return a !== undefined && b !== undefined ? a === b : JSON.stringify(one.unit) === JSON.stringify(other.unit);
}

const nameOf = (site: string): string => site.trim().toLowerCase().replace(/\s+/g, ' ');
