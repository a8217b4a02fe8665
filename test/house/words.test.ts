import { describe, expect, it } from 'vitest';
import { NEVER_SAID } from '../client/visit/never-said.ts';
import { sourceFiles } from './import-graph.ts';
import { type Literal, literalsIn, literalsOf, textsOf } from './literals.ts';

/** Rooms whose words stand in client/words. */
const ROOMS = ['client/visit', 'client/practice', 'client/screens', 'client/terminal', 'client/speaking'];

/** The terminal's tools and the practice hold their own usage and coded errors; the build of the pages is none of them. */
const OWN_SENTENCES = /^client\/terminal\/(?!print-|describe-)|^client\/screens\/node\/|^client\/practice\/errors/;

function outside(literals: readonly Literal[]): readonly Literal[] {
  return literals.filter(({ as, at }) => as !== 'sentence' || !OWN_SENTENCES.test(at));
}

describe('every spoken and shown word', () => {
  it('stands in client/words', () => {
    const files = ROOMS.flatMap(sourceFiles).filter((file) => !file.endsWith('.d.ts'));
    expect(files.length).toBeGreaterThan(100);
    expect(outside(files.flatMap(literalsOf))).toEqual([]);
  });

  it.each([
    ['a prompt', "turn.say('answer', 'Working');", 'Working'],
    ['a prompt around a value', `turn.say('readback', \`Meter \${volts}.\`);`, 'Meter ….'],
    ['one of two prompts', "turn.say('answer', done ? SAY.closed : 'Almost');", 'Almost'],
    ['the end of a prompt', "turn.say('answer', SAY.opened + ' Begin');", 'Begin'],
    ['parts of a prompt', "turn.say('answer', ['Open', site].join(' '));", 'Open'],
    ['a reason in the record', "turn.raise({ type: 'energy.live', zone, why: 'humming' });", 'humming'],
    ['a label of a key', "padKey('Enter it', { kind: 'proof', zone });", 'Enter it'],
    ['what a key enters', "onEnter(meaning, 'hurt');", 'hurt'],
    ['text of a page', 'const page = <p>Reading</p>;', 'Reading'],
    ['one of two texts of a page', "const page = <p>{on ? WORDS.on : 'Off'}</p>;", 'Off'],
    ['a label of a page', 'const page = <section aria-label="Now" />;', 'Now'],
    ['a label of a page around a value', `const page = <svg aria-label={\`Terminals: \${words}\`} />;`, 'Terminals: …'],
    ['a sentence on its way', "const problem = 'It is lost: load again';", 'It is lost: load again'],
  ])('is found outside it: %s', (_, source, text) => {
    expect(literalsIn('client/visit/planted.tsx', source).map((one) => one.text)).toContain(text);
  });

  it.each([
    ['a kind of prompt', "turn.say('warning', SAY.quiet);"],
    ['what is compared', "turn.say('answer', word === 'does not fit' ? SAY.bad : SAY.good);"],
    ['a name in code', "const page = <input className='key first' name='site' data-key='enter' />;"],
    ['a guard', "const step = { guard: 'hands-on without proof', target: 'asked' };"],
    ['a citation', "const SPLIT_SOURCE = 'Split, dry bulb: common practice';"],
    ["a programmer's mistake", "throw new Error('index.html has no place, for the page');"],
  ])('is not taken for one: %s', (_, source) => {
    expect(literalsIn('client/visit/planted.tsx', source)).toEqual([]);
  });
});

describe('what the mouth is given', () => {
  /** Recorded or written, and never spoken. */
  const UNSPOKEN = ['client/words/talk/reasons.ts', 'client/words/talk/summary-words.ts'];

  it.each(
    [...sourceFiles('client/words/talk'), 'client/words/practice/exercise-words.ts'].filter(
      (file) => !UNSPOKEN.includes(file),
    ),
  )('by %s holds none of the words that are listened for meanwhile, and never says safe', (file) => {
    const texts = textsOf(file).filter((text) => /\p{L} /u.test(text));
    expect(texts.length).toBeGreaterThan(3);
    expect(texts.filter((text) => NEVER_SAID.test(text))).toEqual([]);
  });
});
