import { rowsBy } from './rows-by.ts';

/** Where on the job a terminal stands. `within` says which narrower places count as part of it. */
export const PLACES = [
  { id: 'panel', say: 'panel | breaker panel | main panel', within: [] },
  { id: 'disconnect', say: 'disconnect | outdoor disconnect | pull out', within: [] },
  { id: 'contactor', say: 'contactor', within: [] },
  { id: 'capacitor', say: 'cap | capacitor | run cap', within: [] },
  { id: 'compressor', say: 'compressor', within: [] },
  { id: 'fan-motor', say: 'fan motor | condenser fan | outdoor fan | outdoor fan motor', within: [] },
  { id: 'thermostat', say: 'thermostat | stat | tstat', within: [] },
  {
    id: 'air-handler',
    say: 'air handler | handler | indoor unit | furnace | control board | board',
    within: [],
  },
  {
    id: 'condenser',
    say: 'condenser | outdoor unit | outside unit',
    // Said without "at the".
    alone: 'outside | outdoors',
    within: ['contactor', 'capacitor', 'compressor', 'fan-motor', 'disconnect'],
  },
] as const;
export type PlaceId = (typeof PLACES)[number]['id'];
export const PLACES_BY_ID: Readonly<Record<PlaceId, { readonly within: readonly PlaceId[] }>> = rowsBy('id', PLACES);
