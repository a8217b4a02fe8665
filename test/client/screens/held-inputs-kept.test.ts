import { afterEach, expect, test, vi } from 'vitest';
import { HeldInputs } from '../../../client/screens/session/held-inputs.ts';

afterEach(() => vi.unstubAllGlobals());

const keeping = (kept: string | null) =>
  vi.stubGlobal('sessionStorage', { getItem: () => kept, setItem: () => undefined });

test.each(['', '{', 'null', '{"id":1}', '7'])('a visit begins though what the tab kept is damaged: %j', (kept) => {
  keeping(kept);
  const held = new HeldInputs('v');
  held.takenUp([]);
  expect(held.left).toEqual([]);
});

test('a visit begins where the browser keeps nothing for a tab', () => {
  const refuse = () => {
    throw new DOMException('denied', 'SecurityError');
  };
  vi.stubGlobal('sessionStorage', { getItem: refuse, setItem: refuse });
  const held = new HeldInputs('v');
  held.hold({ id: 'typed-1', by: 'line', words: 'leg one to ground one eighteen' });
  held.takenUp([]);
  expect(held.left).toHaveLength(1);
});
