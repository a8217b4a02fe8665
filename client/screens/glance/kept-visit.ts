import { type FoldedVisit, foldVisit } from '../../../grammar/visit/fold-visit.ts';
import { readBodies } from '../../../grammar/visit/read-bodies.ts';

/** What the pages show of a visit that lies on this device and does not run here. `said` holds the last sentence alone. */
export type KeptVisit = Pick<
  FoldedVisit,
  'visit' | 'site' | 'complaint' | 'first' | 'summary' | 'energy' | 'readings' | 'unit' | 'plate' | 'said'
>;

/** Folds the bodies of a record, opened and in their order. */
export function keptVisitOf(bodies: readonly string[]): KeptVisit {
  const folded = foldVisit(readBodies(bodies));
  const { visit, site, complaint, first, summary, energy, readings, unit, plate } = folded;
  return {
    visit,
    site,
    complaint,
    energy,
    readings,
    unit,
    plate,
    said: folded.said.slice(-1),
    ...(first === undefined ? {} : { first }),
    ...(summary === undefined ? {} : { summary }),
  };
}
