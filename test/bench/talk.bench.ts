import type { FaultId } from '../../grammar/vocabulary/faults.ts';
import { FAULTS_BY_ID } from '../../grammar/vocabulary/faults.ts';
import { obey, printed } from '../talk/obeying-technician.ts';
import { TALK_LIMITS, type Talk, talkOf } from '../talk/talk-of.ts';
import { designWith, TWELVE_FAULTS } from '../talk/twelve-faults.ts';
import { type Bench, type Figure, median } from './figures.ts';

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
    const visit = await obey(fault, ratings, seed, { acks: options.has('acks') });
    const talk = talkOf(visit);
    talks.push(talk);
    if (visit.found === fault && visit.closed) found += 1;
    if (options.has('print') || named !== undefined) process.stdout.write(`${printed(visit)}\n`);
    const wrong = visit.faults.map(({ kind, step }) => `${kind}: ${step}`).join('; ');
    progress(
      `${fault.padEnd(24)} ${talk.utterances} utterances, ${talk.prompts} prompts, ${talk.words} words, ` +
        `${Math.round(talk.seconds)} s, longest ${talk.longest} and ${talk.longestAfter}; ` +
        `found ${visit.found ?? 'nothing'}${visit.closed ? '' : ', not closed'}${wrong === '' ? '' : `; ${wrong}`}`,
    );
  }
  const { median: middle, most, longest, longestAfter } = TALK_LIMITS;
  const figures = (name: 'utterances' | 'words' | 'seconds'): Figure[] => {
    const values = talks.map((talk) => talk[name]);
    return [
      { name: `${name}, median`, value: median(values), unit: '', against: `at most ${middle[name]}` },
      { name: `${name}, most`, value: Math.max(...values), unit: '', against: `at most ${most[name]}` },
    ];
  };
  const longestOf = (name: 'longest' | 'longestAfter') => Math.max(...talks.map((talk) => talk[name]));
  return [
    { name: 'visits found and closed', value: found, unit: '', against: `of ${faults.length}` },
    ...figures('utterances'),
    { name: 'prompts, median', value: median(talks.map(({ prompts }) => prompts)), unit: '', against: 'no limit' },
    ...figures('words'),
    ...figures('seconds'),
    { name: 'longest prompt', value: longestOf('longest'), unit: 'words', against: `at most ${longest}` },
    {
      name: 'longest prompt once a hazard was told',
      value: longestOf('longestAfter'),
      unit: 'words',
      against: `at most ${longestAfter}`,
    },
  ];
};
