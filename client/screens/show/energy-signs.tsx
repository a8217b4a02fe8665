import type { JSX } from 'react';
import type { EnergyState } from '../../../grammar/vocabulary/zones.ts';

/**
 * Each state has a shape, beside its word and its colour (theme.css). Jagged: energy may be there. Broken line: only a
 * word says it is off. Ring: being read. Bar: read as dead; a broken bar: it is asked whether it still is.
 */
const SHAPES: Readonly<Record<EnergyState, JSX.Element>> = {
  unknown: <path d="M2 16 L7 6 L11 16 M13 16 L17 6 L22 16" strokeDasharray="3 2.4" />,
  live: <path d="M2 17 L7 5 L12 19 L17 5 L22 17" />,
  'reported-off': <path d="M2 16 H8 L16 6 M17 16 H22" />,
  proving: <path d="M12 4 A8 8 0 1 1 4 12" />,
  'reads-dead': <circle cx="12" cy="12" r="8" />,
  'proven-dead': <path d="M3 6 V18 M21 6 V18 M3 12 H21" />,
  'in-doubt': <path d="M3 6 V18 M21 6 V18 M3 12 H21" strokeDasharray="3 2.4" />,
};

export function EnergySign({ state }: { readonly state: EnergyState }) {
  return (
    <svg className="energy-sign" viewBox="0 0 24 24" aria-hidden="true">
      {SHAPES[state]}
    </svg>
  );
}
