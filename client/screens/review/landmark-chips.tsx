import { memo } from 'react';
import { LANDMARK_WORDS, REPLAY } from '../../words/pages/review-words.ts';
import type { Goal, Goals } from './goals.ts';

interface LandmarkChipsProps {
  readonly goals: Goals;
  readonly go: (goal: Goal, way: 'on' | 'back') => void;
}

/** A key for each kind that the visit has: with how many there are, and to the next. */
export const LandmarkChips = memo(function LandmarkChips({ goals, go }: LandmarkChipsProps) {
  const there = [...goals].filter(([, seqs]) => seqs.length > 0);
  if (there.length === 0) return null;
  return (
    <ul className="chips" aria-label={REPLAY.chips}>
      {there.map(([goal, seqs]) => (
        <li key={goal}>
          <button
            type="button"
            className={goal === 'unproven' || goal === 'hurt' ? 'control chip chip-danger' : 'control chip'}
            title={REPLAY.chipKey(LANDMARK_WORDS[goal].key)}
            data-goal={goal}
            onClick={(event) => go(goal, event.shiftKey ? 'back' : 'on')}
          >
            {LANDMARK_WORDS[goal].chip(seqs.length)}
          </button>
        </li>
      ))}
    </ul>
  );
});
