import { useCallback, useState } from 'react';

/** What is asked of the list, as it stands in the address; an empty one is not asked. */
export const ASKED = [
  'words',
  'state',
  'finding',
  'part',
  'technician',
  'from',
  'until',
  'unproven',
  'cautionsOpen',
  'repeated',
] as const;
export type Asked = (typeof ASKED)[number];
export type ListQuery = Readonly<Partial<Record<Asked, string>>>;

/** The query of a list, kept in the address: a link leads to it, and the way back from a visit finds it again. */
export function useListQuery(): readonly [ListQuery, (change: ListQuery) => void] {
  const [query, setQuery] = useState<ListQuery>(() => readQuery(location.search));
  const change = useCallback((changed: ListQuery) => {
    setQuery((before) => {
      const after = Object.fromEntries(Object.entries({ ...before, ...changed }).filter(([, value]) => value !== ''));
      const text = new URLSearchParams(after).toString();
      history.replaceState(history.state, '', text === '' ? location.pathname : `${location.pathname}?${text}`);
      return after;
    });
  }, []);
  return [query, change];
}

export function readQuery(search: string): ListQuery {
  const asked = new URLSearchParams(search);
  return Object.fromEntries(ASKED.flatMap((name) => (asked.get(name) ? [[name, asked.get(name) ?? '']] : [])));
}

/** As the server takes it: days are those of the reader, the last one whole. */
export function asParameters({ from, until, ...query }: ListQuery): URLSearchParams {
  const parameters = new URLSearchParams(query as Record<string, string>);
  const begins = from === undefined ? Number.NaN : new Date(`${from}T00:00`).getTime();
  const ends = until === undefined ? Number.NaN : nextDay(until);
  if (Number.isFinite(begins)) parameters.set('from', String(begins));
  if (Number.isFinite(ends)) parameters.set('until', String(ends));
  return parameters;
}

function nextDay(day: string): number {
  const date = new Date(`${day}T00:00`);
  date.setDate(date.getDate() + 1);
  return date.getTime();
}
