import type { Expression, Rules } from '../../grammar/phrases/expression.ts';
import type { Path } from '../../grammar/phrases/match.ts';
import { NUMERAL } from '../../grammar/phrases/words.ts';

/** A number 0 ≤ x < 1, from a seed: the same seed gives the same sequence (mulberry32, public domain). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

const DICTATED = ['the', 'customer', 'says', 'it', 'started', 'on', 'tuesday', 'after', 'rain'];

/** A random walk through a rule: the words of one sentence and the tags passed on the way, as the matcher gives them. */
export function randomPath(rules: Rules, root: string, random: () => number): Path {
  const steps: Path['steps'][number][] = [];
  let tags: Extract<Expression, { kind: 'tag' }>['tag'][] = [];
  const speak = (word: string): void => {
    steps.push({ tags, taken: { how: 'word', heard: { text: word }, word } });
    tags = [];
  };
  const walk = (item: Expression): void => {
    switch (item.kind) {
      case 'word':
        speak(item.word);
        return;
      case 'sequence':
        item.items.forEach(walk);
        return;
      case 'alternative': {
        const spoken = item.items.filter((choice) => choice.kind !== 'word' || choice.word !== NUMERAL);
        walk(spoken[Math.floor(random() * spoken.length)]!);
        return;
      }
      case 'optional':
        if (random() < 0.4) walk(item.item);
        return;
      case 'repeat': {
        let count = item.least;
        while (count < (item.most ?? 4) && random() < 0.3) count += 1;
        for (let done = 0; done < count; done += 1) walk(item.item);
        return;
      }
      case 'rule':
        walk(rules[item.name]!);
        return;
      case 'tag':
        tags.push(item.tag);
        return;
      case 'dictation':
        for (const word of DICTATED.slice(0, 1 + Math.floor(random() * DICTATED.length))) speak(word);
    }
  };
  walk(rules[root]!);
  steps.push({ tags });
  return { cost: 0, steps };
}

/** The words of a path. */
export const wordsOf = (path: Path): string[] => path.steps.flatMap(({ taken }) => (taken ? [taken.heard.text] : []));
