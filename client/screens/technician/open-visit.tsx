import { type FormEvent, useState } from 'react';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import { OPENING } from '../../words/pages/start-words.ts';
import { showDay } from '../show/show-moment.ts';
import { type KnownUnit, unitsAt } from './known-units.ts';
import { openingFrom, REFRIGERANTS, type VisitOpening } from './opening-from.ts';
import { UNIT_STOCK } from './unit-stock.ts';

interface OpenVisitProps {
  /** Units of earlier visits on this device. */
  readonly known: readonly KnownUnit[];
  readonly onOpen: (opening: VisitOpening) => void;
}

/** What a visit is opened with. Whatever is left empty is unknown, and may be said or typed later. */
export function OpenVisit({ known, onOpen }: OpenVisitProps) {
  const [stock, setStock] = useState(0);
  const [site, setSite] = useState('');
  /** Which of the units at this site it is again; none until somebody has looked. */
  const [again, setAgain] = useState('');
  const here = unitsAt(known, site);
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    onOpen(
      openingFrom(
        new FormData(event.currentTarget),
        here.map(({ unit }) => unit),
      ),
    );
  };
  const unit = UNIT_STOCK[stock]?.unit ?? { id: 'unknown' };
  return (
    <form className="open-visit" onSubmit={submit} aria-label={OPENING.form}>
      <label>
        {OPENING.site}
        <input
          className="control"
          name="site"
          required
          maxLength={120}
          autoComplete="off"
          list="sites"
          value={site}
          onChange={(event) => {
            setSite(event.target.value);
            setAgain('');
          }}
        />
        <datalist id="sites">
          {[...new Set(known.map((one) => one.site))].map((name) => (
            <option key={name} value={name} />
          ))}
        </datalist>
      </label>
      <label>
        {OPENING.complaint}
        <input className="control" name="complaint" required maxLength={240} autoComplete="off" />
      </label>
      <fieldset>
        <legend>{OPENING.youAre}</legend>
        <label className="choice">
          <input type="radio" name="role" value="technician" defaultChecked /> {OPENING.technician}
        </label>
        <label className="choice">
          <input type="radio" name="role" value="trainee" /> {OPENING.trainee}
        </label>
      </fieldset>
      {here.length === 0 ? null : (
        <fieldset data-known-units={here.length}>
          <legend>{OPENING.atThisSite}</legend>
          <label className="choice">
            <input type="radio" name="again" value="" checked={again === ''} onChange={() => setAgain('')} />{' '}
            {OPENING.readAnew}
          </label>
          {here.map(({ unit: one, seen }, at) => (
            <label className="choice" key={seen}>
              <input
                type="radio"
                name="again"
                value={at}
                checked={again === String(at)}
                onChange={() => setAgain(String(at))}
              />{' '}
              {OPENING.stillThis(one, showDay(seen))}
            </label>
          ))}
        </fieldset>
      )}
      <label hidden={again !== ''}>
        {OPENING.unit}
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
      <details hidden={again !== ''}>
        <summary>{OPENING.nameplate}</summary>
        {/* A fresh set of fields for each unit, so that its values are the ones to begin from. */}
        <div className="nameplate" key={stock}>
          {MARKS.map((name) => (
            <label key={name}>
              {OPENING.plate[name]}
              <input
                className="control"
                name={name}
                maxLength={40}
                autoComplete="off"
                autoCapitalize="characters"
                spellCheck={false}
              />
            </label>
          ))}
          {PLATE_FIELDS.map(({ name, of }) => (
            <label key={name}>
              {OPENING.plate[name]}
              <input className="control" name={name} inputMode="decimal" defaultValue={of(unit) ?? ''} />
            </label>
          ))}
          <label>
            {OPENING.refrigerant}
            <select className="control" name="refrigerant" defaultValue={unit.refrigerant ?? ''}>
              <option value="">{OPENING.notKnown}</option>
              {REFRIGERANTS.map((name) => (
                <option key={name}>{name}</option>
              ))}
            </select>
          </label>
          <label className="choice">
            <input type="checkbox" name="inverter" defaultChecked={unit.inverterDriven === true} /> {OPENING.inverter}
          </label>
        </div>
      </details>
      <button type="submit" className="key first">
        {OPENING.open}
      </button>
    </form>
  );
}

/** Letters and digits, of this unit alone: none comes with a stock unit. */
const MARKS = ['model', 'serial'] as const;
const PLATE_FIELDS: readonly { name: keyof typeof OPENING.plate; of: (unit: UnitProfile) => number | undefined }[] = [
  { name: 'supply', of: (unit) => unit.supply?.nominal },
  { name: 'herm', of: (unit) => unit.capacitor?.herm },
  { name: 'fan', of: (unit) => unit.capacitor?.fan },
  { name: 'rla', of: (unit) => unit.compressor?.rla },
  { name: 'lra', of: (unit) => unit.compressor?.lra },
  { name: 'fla', of: (unit) => unit.fanMotor?.fla },
  { name: 'tons', of: (unit) => unit.tons },
  { name: 'made', of: (unit) => unit.made },
];
