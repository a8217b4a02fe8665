import { useEffect, useState } from 'react';
import { LIST } from '../../words/pages/list-words.ts';
import { askServer } from '../session/server-answer.ts';
import type { Asked, ListQuery } from './use-list-query.ts';

interface Choice {
  readonly value: string;
  readonly visits: number;
}

interface Choices {
  readonly findings: readonly Choice[];
  readonly parts: readonly Choice[];
  readonly technicians: readonly Choice[];
}

interface ListFiltersProps {
  readonly query: ListQuery;
  readonly change: (change: ListQuery) => void;
}

/** Between the last key and the search, in milliseconds. */
const SETTLES_MS = 250;
const FLAGS = ['unproven', 'cautionsOpen', 'repeated'] as const;

/** Search and filters of the list. */
export function ListFilters({ query, change }: ListFiltersProps) {
  const choices = useChoices();
  const set = (name: Asked) => (value: string) => change({ [name]: value });
  // Open where something is filtered as the page comes; from then on only whoever reads it shuts it.
  const [isOpen, setIsOpen] = useState(() => Object.keys(query).some((name) => name !== 'words'));
  return (
    <search className="list-filters">
      <SearchField words={query.words ?? ''} change={set('words')} />
      <details open={isOpen} onToggle={(event) => setIsOpen(event.currentTarget.open)}>
        <summary>{LIST.filters}</summary>
        <div className="filter-fields">
          <Select label={LIST.state} value={query.state} change={set('state')} options={Object.entries(LIST.states)} />
          <Select
            label={LIST.finding}
            value={query.finding}
            change={set('finding')}
            options={[
              ['none', LIST.noFinding],
              ...choices.findings.map(({ value, visits }) => [value, LIST.choice(LIST.fault(value), visits)] as const),
            ]}
          />
          <Select
            label={LIST.part}
            value={query.part}
            change={set('part')}
            options={choices.parts.map(({ value, visits }) => [value, LIST.choice(LIST.partName(value), visits)])}
          />
          <Select
            label={LIST.technician}
            value={query.technician}
            change={set('technician')}
            options={choices.technicians.map(({ value, visits }) => [value, LIST.choice(value, visits)])}
          />
          <Day label={LIST.from} value={query.from} change={set('from')} />
          <Day label={LIST.until} value={query.until} change={set('until')} />
          <fieldset>
            <legend>{LIST.only}</legend>
            {FLAGS.map((flag) => (
              <label key={flag}>
                <input
                  type="checkbox"
                  checked={query[flag] === 'true'}
                  onChange={(event) => change({ [flag]: event.target.checked ? 'true' : '' })}
                />{' '}
                {LIST.flags[flag]}
              </label>
            ))}
          </fieldset>
          <button
            type="button"
            className="control"
            onClick={() => change(Object.fromEntries(Object.keys(query).map((name) => [name, ''])))}
          >
            {LIST.clear}
          </button>
        </div>
      </details>
    </search>
  );
}

function SearchField({ words, change }: { readonly words: string; readonly change: (words: string) => void }) {
  const [typed, setTyped] = useState(words);
  // What was cleared elsewhere is cleared here.
  useEffect(() => setTyped(words), [words]);
  useEffect(() => {
    if (typed === words) return;
    const timer = setTimeout(() => change(typed), SETTLES_MS);
    return () => clearTimeout(timer);
  }, [typed, words, change]);
  return (
    <label className="search-field">
      <span>{LIST.search}</span>
      <input
        type="search"
        className="control"
        placeholder={LIST.searchFor}
        maxLength={200}
        dir="auto"
        value={typed}
        onChange={(event) => setTyped(event.target.value)}
      />
    </label>
  );
}

interface FieldProps {
  readonly label: string;
  readonly value: string | undefined;
  readonly change: (value: string) => void;
}

function Select({
  label,
  value = '',
  change,
  options,
}: FieldProps & { readonly options: readonly (readonly [string, string])[] }) {
  return (
    <label>
      <span>{label}</span>
      <select className="control" value={value} onChange={(event) => change(event.target.value)}>
        <option value="">{LIST.any}</option>
        {options.map(([id, name]) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
        {value === '' || options.some(([id]) => id === value) ? null : <option value={value}>{value}</option>}
      </select>
    </label>
  );
}

function Day({ label, value = '', change }: FieldProps) {
  return (
    <label>
      <span>{label}</span>
      <input type="date" className="control" value={value} onChange={(event) => change(event.target.value)} />
    </label>
  );
}

const NO_CHOICES: Choices = { findings: [], parts: [], technicians: [] };

function useChoices(): Choices {
  const [choices, setChoices] = useState(NO_CHOICES);
  useEffect(() => {
    void askServer<Choices>('GET', '/api/list/choices').then((answer) => answer.ok && setChoices(answer.body));
  }, []);
  return choices;
}
