import { useEffect, useRef } from 'react';
import { LANDMARK_WORDS } from '../../words/pages/review-words.ts';
import type { Goal } from './goals.ts';
import { areKeysOn } from './keys-help.tsx';
import { type Replay, SPEEDS } from './use-replay.ts';

interface ReviewKeys {
  readonly replay: Replay;
  readonly go: (goal: Goal, way: 'on' | 'back') => void;
  readonly help: () => void;
}

/** Letters and marks that are orders wherever nothing is being written. The slider has keys of its own beside them. */
export function useReviewKeys(keys: ReviewKeys): void {
  const latest = useRef(keys);
  latest.current = keys;
  useEffect(() => {
    const pressed = (event: KeyboardEvent) => {
      if (event.altKey || event.ctrlKey || event.metaKey || event.defaultPrevented || isWriting(event.target)) return;
      if (document.querySelector('dialog[open]') !== null) return;
      const order = orderOf(event, latest.current);
      if (order === undefined) return;
      event.preventDefault();
      order();
    };
    addEventListener('keydown', pressed);
    return () => removeEventListener('keydown', pressed);
  }, []);
}

function orderOf(event: KeyboardEvent, { replay, go, help }: ReviewKeys): (() => void) | undefined {
  const { key } = event;
  // It shows how the others are switched off.
  if (key === '?') return help;
  if (!areKeysOn()) return undefined;
  if (key === 'k') return () => (replay.playing ? replay.pause() : replay.play());
  if (key === '.') return () => replay.step('on');
  if (key === ',') return () => replay.step('back');
  if (key === 'l') return () => replay.follow();
  const speed = SPEEDS[Number(key) - 1];
  if (speed !== undefined) return () => replay.setSpeed(speed.factor);
  const goals = Object.entries(LANDMARK_WORDS) as [Goal, { readonly key: string }][];
  const goal = goals.find(([, words]) => words.key === key.toLowerCase())?.[0];
  if (goal === undefined || key.length !== 1) return undefined;
  return () => go(goal, event.shiftKey ? 'back' : 'on');
}

function isWriting(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  if (target instanceof HTMLInputElement) return target.type !== 'range' && target.type !== 'checkbox';
  return target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement || target.isContentEditable;
}
