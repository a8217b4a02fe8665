import { useMemo, useState } from 'react';
import type { PointId } from '../../../grammar/vocabulary/points.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import { drawLadder, LADDER_SECTIONS, type LadderSection } from '../../practice/ladder/draw-ladder.ts';
import { branchWords } from '../../words/practice/ladder-words.ts';
import { PRACTICE } from '../../words/practice/practice-page-words.ts';
import { LadderDrawing } from './ladder-drawing.tsx';
import { LadderTable } from './ladder-table.tsx';

interface LadderProps {
  readonly unit: UnitProfile;
  readonly commonOn: 1 | 2;
  readonly probes: readonly PointId[];
  readonly onPut: (point: PointId) => void;
}

const WAYS = ['drawn', 'table'] as const;

/** The unit's ladder diagram, a part of it at a time, as a drawing or as a table of the same. */
export function Ladder({ unit, commonOn, probes, onPut }: LadderProps) {
  const ladder = useMemo(() => drawLadder(unit, commonOn), [unit, commonOn]);
  const [section, setSection] = useState<LadderSection>('supply');
  const [as, setAs] = useState<(typeof WAYS)[number]>(WAYS[0]);
  const shown = { rungs: ladder.sections[section], name: PRACTICE.sections[section], probes, onPut };
  return (
    <div className="ladder">
      <div className="keys ladder-choices">
        {LADDER_SECTIONS.map((one) => (
          <button
            type="button"
            key={one}
            className="key"
            aria-pressed={section === one}
            onClick={() => setSection(one)}
          >
            {PRACTICE.sections[one]}
          </button>
        ))}
        {WAYS.map((one) => (
          <button type="button" key={one} className="key" aria-pressed={as === one} onClick={() => setAs(one)}>
            {PRACTICE[one]}
          </button>
        ))}
      </div>
      {as === 'drawn' ? <LadderDrawing {...shown} /> : <LadderTable {...shown} />}
      <p className="quiet">{PRACTICE.asUsual}</p>
      {ladder.notSaid.length === 0 ? null : (
        <p className="ladder-open">{PRACTICE.notSaid(ladder.notSaid.map(branchWords))}</p>
      )}
    </div>
  );
}
