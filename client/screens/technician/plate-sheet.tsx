import type { FormEvent } from 'react';
import type { Meaning } from '../../../grammar/phrases/meaning.ts';
import { NAMEPLATE_FIELDS_BY_ID, type NameplateField, type PlateField } from '../../../grammar/vocabulary/nameplate.ts';
import { KEY, MORE, PLATE } from '../../words/pages/key-words.ts';
import { PAGE } from '../../words/pages/page-words.ts';
import { showUnit } from '../../words/shown/show-reading.ts';
import { nameplateName } from '../../words/things/nameplate-words.ts';
import { Sheet } from './sheet.tsx';

interface PlateSheetProps {
  /** Those that are asked and not read yet. */
  readonly fields: readonly PlateField[];
  readonly onEnter: (meaning: Meaning, words: string) => void;
  readonly onClose: () => void;
}

/** The lines of the nameplate that are not read yet, to be typed; what is left empty is asked on. */
export function PlateSheet({ fields, onEnter, onClose }: PlateSheetProps) {
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const typed = new FormData(event.currentTarget);
    const lines = fields.flatMap((field) => lineOf(field, String(typed.get(field) ?? '').trim()) ?? []);
    const [only] = lines;
    if (only !== undefined) {
      const words = lines.map(({ field, value }) => `${nameplateName(field)} ${value}`).join(', ');
      onEnter(lines.length === 1 ? only : { kind: 'several', parts: lines }, PLATE.heard(words));
    }
    onClose();
  };
  return (
    <Sheet title={MORE.plate} onClose={onClose}>
      <form className="supervisor" onSubmit={submit}>
        <div className="nameplate">
          {fields.map((field) => (
            <PlateInput key={field} field={NAMEPLATE_FIELDS_BY_ID[field]} />
          ))}
        </div>
        <div className="keys">
          <button type="submit" className="key first wide">
            {KEY.enterPlate}
          </button>
          <button type="button" className="key" onClick={onClose}>
            {PAGE.back}
          </button>
        </div>
      </form>
    </Sheet>
  );
}

function PlateInput({ field }: { readonly field: NameplateField }) {
  const { id, name, value, unit, choices, low, high } = field;
  return (
    <label htmlFor={`plate-${id}`}>
      {unit === undefined ? name : `${name}, ${showUnit(unit)}`}
      {choices === undefined ? (
        <input
          id={`plate-${id}`}
          name={id}
          className="control"
          autoComplete="off"
          spellCheck={false}
          maxLength={40}
          {...(value === 'mark'
            ? { autoCapitalize: 'characters' }
            : { type: 'number', step: 'any', min: low ?? 0, max: high })}
        />
      ) : (
        <select id={`plate-${id}`} name={id} className="control" defaultValue="">
          <option value="">{PLATE.notRead}</option>
          {choices.map((choice) => (
            <option key={choice.value}>{choice.value}</option>
          ))}
        </select>
      )}
    </label>
  );
}

type Line = Extract<Meaning, { kind: 'nameplate' }>;

/** A typed line; undefined where it is empty, or no number where the line wants one: the form has held it to its limits. */
function lineOf(id: PlateField, text: string): Line | undefined {
  const { value, unit }: NameplateField = NAMEPLATE_FIELDS_BY_ID[id];
  if (text === '') return undefined;
  if (value === 'mark' || value === 'choice') return { kind: 'nameplate', field: id, value: text };
  const number = Number(text);
  if (!(number > 0)) return undefined;
  return { kind: 'nameplate', field: id, value: number, ...(unit === undefined ? {} : { unit }) };
}
