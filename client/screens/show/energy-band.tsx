import { type EnergyState, ZONE_NAMES, ZONES, type ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { ENERGY_BAND, ENERGY_WORDS, ZONE_SHORT } from '../../words/shown/energy-names.ts';
import { EnergySign } from './energy-signs.tsx';

/** Energy by zone, always visible: word, shape and colour for each. */
export function EnergyBand({ energy }: { readonly energy: Readonly<Record<ZoneId, EnergyState>> }) {
  return (
    <ul className="energy-band" aria-label={ENERGY_BAND}>
      {ZONES.map((zone) => (
        <li key={zone} className={`energy-cell energy-${energy[zone]}`} data-zone={zone} data-energy={energy[zone]}>
          <span className="energy-zone" aria-hidden="true">
            {ZONE_SHORT[zone]}
            <EnergySign state={energy[zone]} />
          </span>
          <span className="reader-only">{ZONE_NAMES[zone]}: </span>
          <span className="energy-state">{ENERGY_WORDS[energy[zone]]}</span>
        </li>
      ))}
    </ul>
  );
}
