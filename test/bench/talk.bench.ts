import { cautionById } from '../../client/words/talk/caution-words.ts';
import type { FaultId } from '../../grammar/vocabulary/faults.ts';
import { FAULTS_BY_ID } from '../../grammar/vocabulary/faults.ts';
import { type ObeyedVisit, obey, printed } from '../talk/obeying-technician.ts';
import { designWith, TWELVE_FAULTS } from '../talk/twelve-faults.ts';
import { type Bench, type Figure, median } from './figures.ts';

/** Words a second of the program's voice, measured; a technician's own speech is about as fast (common practice). */
const WORDS_A_SECOND = 2.3;
const wordsIn = (text: string): number => text.split(/\s+/).filter((word) => /\w/.test(word)).length;

interface Talk {
  readonly utterances: number;
  readonly prompts: number;
  readonly words: number;
  readonly longest: number;
  /** The longest prompt once the standing rules were told. */
  readonly longestAfter: number;
}

export function talkOf({ lines }: ObeyedVisit): Talk {
  const said = lines.filter(({ who }) => who !== 'technician');
  const told = lines.findLastIndex(({ text }) => text.includes(cautionById('standing-hazards').words));
  const after = lines.slice(told + 1).filter(({ who }) => who !== 'technician');
  const longest = (prompts: typeof said) => Math.max(0, ...prompts.map(({ text }) => wordsIn(text)));
  return {
    utterances: lines.length - said.length,
    prompts: said.length,
    words: said.reduce((sum, { text }) => sum + wordsIn(text), 0),
    longest: longest(said),
    longestAfter: longest(after),
  };
}

/** What a visit asks of ears and mouth, where the technician does exactly what is asked, fault by fault. */
export const bench: Bench = async (options, progress) => {
  const named = options.get('fault');
  if (named !== undefined && !(named in FAULTS_BY_ID)) throw new Error(`There is no fault "${named}".`);
  const faults: readonly FaultId[] = named === undefined ? TWELVE_FAULTS : [named as FaultId];
  const from = Number(options.get('from') ?? 4);
  const talks: Talk[] = [];
  let found = 0;
  for (const fault of faults) {
    const { seed, ratings } = designWith(fault, from);
    const visit = await obey(fault, ratings, seed, options.has('acks'));
    const talk = talkOf(visit);
    talks.push(talk);
    if (visit.found === fault && visit.closed) found += 1;
    if (options.has('print') || named !== undefined) process.stdout.write(`${printed(visit)}\n`);
    const wrong = visit.faults.map(({ kind, step }) => `${kind}: ${step}`).join('; ');
    progress(
      `${fault.padEnd(24)} ${talk.utterances} utterances, ${talk.prompts} prompts, ${talk.words} words, ` +
        `${Math.round(talk.words / WORDS_A_SECOND)} s, longest ${talk.longest} and ${talk.longestAfter}; ` +
        `found ${visit.found ?? 'nothing'}${visit.closed ? '' : ', not closed'}${wrong === '' ? '' : `; ${wrong}`}`,
    );
  }
  const figure = (
    name: string,
    values: readonly number[],
    unit: string,
    limits: readonly [number, number],
  ): Figure[] => [
    { name: `${name}, median`, value: median(values), unit, against: `at most ${limits[0]}` },
    { name: `${name}, most`, value: Math.max(...values), unit, against: `at most ${limits[1]}` },
  ];
  return [
    { name: 'visits found and closed', value: found, unit: '', against: `of ${faults.length}` },
    ...figure(
      'utterances',
      talks.map(({ utterances }) => utterances),
      '',
      [42, 60],
    ),
    ...figure(
      'prompts',
      talks.map(({ prompts }) => prompts),
      '',
      [60, 100],
    ),
    ...figure(
      'words',
      talks.map(({ words }) => words),
      '',
      [400, 650],
    ),
    ...figure(
      'speech',
      talks.map(({ words }) => words / WORDS_A_SECOND),
      's',
      [175, 290],
    ),
    {
      name: 'longest prompt',
      value: Math.max(...talks.map(({ longest }) => longest)),
      unit: 'words',
      against: 'at most 25',
    },
    {
      name: 'longest prompt once a hazard was told',
      value: Math.max(...talks.map(({ longestAfter }) => longestAfter)),
      unit: 'words',
      against: 'at most 12',
    },
  ];
};
