import { type FormEvent, useState } from 'react';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import { openingFrom, REFRIGERANTS, type VisitOpening } from './opening-from.ts';
import { UNIT_STOCK } from './unit-stock.ts';

/** What a visit is opened with. Whatever is left empty is unknown, and may be said or typed later. */
export function OpenVisit({ onOpen }: { readonly onOpen: (opening: VisitOpening) => void }) {
  const [stock, setStock] = useState(0);
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    onOpen(openingFrom(new FormData(event.currentTarget)));
  };
  const unit = UNIT_STOCK[stock]?.unit ?? { id: 'unknown' };
  return (
    <form className="open-visit" onSubmit={submit} aria-label="Open a visit">
      <label>
        Site
        <input className="control" name="site" required maxLength={120} autoComplete="off" />
      </label>
      <label>
        Complaint
        <input className="control" name="complaint" required maxLength={240} autoComplete="off" />
      </label>
      <fieldset>
        <legend>You are</legend>
        <label className="choice">
          <input type="radio" name="role" value="technician" defaultChecked /> technician, short talk
        </label>
        <label className="choice">
          <input type="radio" name="role" value="trainee" /> trainee, full talk
        </label>
      </fieldset>
      <label>
        Unit
        <select
          className="control"
          name="stock"
          value={stock}
          onChange={(event) => setStock(Number(event.target.value))}
        >
          {UNIT_STOCK.map(({ name }, index) => (
            <option key={name} value={index}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <details>
        <summary>Nameplate</summary>
        {/* A fresh set of fields for each unit, so that its values are the ones to begin from. */}
        <div className="nameplate" key={stock}>
          {PLATE_FIELDS.map(({ name, label, of }) => (
            <label key={name}>
              {label}
              <input className="control" name={name} inputMode="decimal" defaultValue={of(unit) ?? ''} />
            </label>
          ))}
          <label>
            Refrigerant
            <select className="control" name="refrigerant" defaultValue={unit.refrigerant ?? ''}>
              <option value="">not known</option>
              {REFRIGERANTS.map((name) => (
                <option key={name}>{name}</option>
              ))}
            </select>
          </label>
          <label className="choice">
            <input type="checkbox" name="inverter" defaultChecked={unit.inverterDriven === true} /> inverter driven
          </label>
        </div>
      </details>
      <button type="submit" className="key first">
        Open the visit
      </button>
    </form>
  );
}

const PLATE_FIELDS: readonly { name: string; label: string; of: (unit: UnitProfile) => number | undefined }[] = [
  { name: 'supply', label: 'Supply, V', of: (unit) => unit.supply?.nominal },
  { name: 'herm', label: 'Capacitor HERM, µF', of: (unit) => unit.capacitor?.herm },
  { name: 'fan', label: 'Capacitor FAN, µF', of: (unit) => unit.capacitor?.fan },
  { name: 'rla', label: 'Compressor RLA, A', of: (unit) => unit.compressor?.rla },
  { name: 'lra', label: 'Compressor LRA, A', of: (unit) => unit.compressor?.lra },
  { name: 'fla', label: 'Fan FLA, A', of: (unit) => unit.fanMotor?.fla },
  { name: 'tons', label: 'Tons', of: (unit) => unit.tons },
];
