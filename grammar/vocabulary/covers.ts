/** Covers behind which live parts stand: those of the cabinet, and the one over the compressor's own terminals. */
export type CoverId = 'unit' | 'compressor-terminals';
export type CoverState = 'off' | 'on';

/**
 * How covers are called. "panel" is one of the cabinet: a panel with breakers is named by its breaker, and nobody is told
 * by a panel that is off that power is.
 */
export const COVER_NAMES = {
  unit: '[access | front | side | top | unit | cabinet | condenser | control box] (cover | covers | panel | panels)',
  'compressor-terminals':
    '(compressor [terminal | terminals | terminal box] | terminal | terminals | terminal box) cover',
} as const satisfies Readonly<Record<CoverId, string>>;

/** Behind a cover: where it was taken off. */
export const OFF_THE_UNIT = 'off [of] [the (unit | condenser | cabinet)]';
export const OFF_THE_TERMINALS = 'off [of] the (compressor [terminals] | terminals)';

/** That a cover is off or on, behind its name and without it. That all are on is a look; "panel is on" is never taken. */
export const COVER_IS = {
  off: '(is | are | has been | have been | came) [all]',
  gone: '(is | are | has been | have been) (removed | taken off)',
  on: '(is | has been) ([back] on | put back [on] | in place)',
} as const;
export const COVER_SAID = [
  { cover: 'unit', to: 'out', say: '(cover | covers | panels) off' },
  { cover: 'unit', to: 'in', say: 'cover is on | unit is buttoned up' },
  { cover: 'compressor-terminals', to: 'out', say: 'compressor terminals are (open | exposed | uncovered)' },
  { cover: 'compressor-terminals', to: 'in', say: 'compressor terminals are covered' },
] as const satisfies readonly { cover: CoverId; to: 'out' | 'in'; say: string }[];

/** Closing the cabinet as a whole. */
export const BUTTONED_UP = '(closed | buttoned) up the unit';
