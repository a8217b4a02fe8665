import type { Expectation, Meaning } from '../meaning.ts';
import type { Draft } from './draft.ts';
import { composeReading } from './reading.ts';
import { rowsSaid } from './rows-said.ts';
import { saidValue } from './said-value.ts';
import type { Segment } from './segment.ts';

/** "correction one nineteen", "no, leg two": what is to be set right in the latest reading. */
export function composeCorrection(segment: Segment, expectation: Expectation | undefined): Draft[] {
  const said = saidValue(segment.items, expectation?.units);
  const [row] = rowsSaid(segment.items);
  const denied = segment.items.some((item) => item.tag === 'corrected' && item.by === 'denial');
  // "no amps on the fan" says that there are none.
  if (denied && segment.items.some((item) => item.tag === 'measures')) return [];
  if (row !== undefined && said !== undefined) return composeReading(segment, expectation).map(asCorrection);
  if (row !== undefined) {
    const unsure = denied && !segment.paused;
    return [
      { ...correct({ at: row.at }), cost: denied ? 1 : 0, ...(unsure && { doubt: 'several-places-fit' as const }) },
    ];
  }
  // A place that no row knows is not dropped in silence.
  const placed = segment.items.some((item) => item.tag === 'tip' || item.tag === 'named' || item.tag === 'place');
  if (said === undefined || placed) return [];
  const [unit] = said.units;
  const broken = said.number?.gaps.before === true;
  const doubt = said.doubt ?? (broken ? 'needed-repair' : undefined);
  return [{ ...correct({ value: said.value, ...(unit && { unit }) }), ...(doubt && { doubt }) }];
}

const correct = (correction: Extract<Meaning, { kind: 'command' }>['correction'] & object): Draft => ({
  meaning: { kind: 'command', command: 'correct', correction },
  cost: 0,
});

function asCorrection(draft: Draft): Draft {
  if (draft.meaning.kind !== 'reading') return draft;
  const { at, value, unit } = draft.meaning.reading;
  return { ...draft, meaning: { kind: 'command', command: 'correct', correction: { at, value, unit } } };
}
