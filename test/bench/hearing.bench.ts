import { existsSync, readFileSync } from 'node:fs';
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Hearing } from '../../client/listening/hearing.ts';
import { loadHearing } from '../../client/listening/node/load-hearing.ts';
import { type Bench, type Figure, quantile } from './figures.ts';
import { hear } from './hearing/hear-sound.ts';
import { condenserNoise } from './hearing/noise.ts';
import { type Tried, tryForeign, tryOrders } from './hearing/people-set.ts';
import { readSound } from './hearing/read-sound.ts';
import { FOREIGN, readingSentences, type SpokenResult, trySentence, VOICES } from './hearing/spoken-set.ts';
import { shareOf, written } from './hearing/tally.ts';

const ORDERS = readFileSync(new URL('../../../fixtures/grammars/coffee-orders.jsgf', import.meta.url), 'utf8');
const DIGITS =
  '#JSGF V1.0;\ngrammar digits;\npublic <d> = zero | oh | one | two | three | four | five | six | seven | eight | nine;\n';
const DIGIT_NAMES = 'zero one two three four five six seven eight nine'.split(' ');
/** Published acceptance of the benchmark's own engine in its kitchen noise (its repository, table of results). */
const PUBLISHED: Readonly<Record<string, string>> = { 24: '99', 18: '99', 12: '98', 6: '96' };

/**
 * How well the ear hears. Options: `sets=spoken,noise,orders,foreign,digits` · `every=N` every N-th recording or
 * sentence · `from=N` · `at=clean,24,12` decibels over the noise · `people=FOLDER` of spoken orders · `digits=FOLDER`
 * of spoken digits · `model=FOLDER` of a wideband model. Takes as long as the sound does, about a tenth to a third.
 */
export const bench: Bench = async (options, progress) => {
  const sets = (options.get('sets') ?? 'spoken,noise,orders,foreign,digits').split(',');
  const every = Number(options.get('every') ?? 1);
  const from = Number(options.get('from') ?? 0);
  const at = options.get('at')?.split(',');
  const people = options.get('people');
  const digits = options.get('digits');
  const model = options.get('model');
  const settings = model === undefined ? {} : { model };
  const figures: Figure[] = [];
  if (sets.includes('spoken')) figures.push(...(await spoken(settings, every, at ?? ['clean', '10'], progress)));
  if (sets.includes('noise')) figures.push(...(await noises(settings, progress)));
  if (people !== undefined && existsSync(people)) {
    if (sets.includes('orders')) {
      figures.push(
        ...(await orders(settings, people, { every, from }, at ?? ['clean', '24', '18', '12', '6'], progress)),
      );
    }
    if (sets.includes('foreign')) figures.push(...(await foreign(settings, people, every, progress)));
  }
  if (sets.includes('digits') && digits !== undefined)
    figures.push(...(await spokenDigits(settings, digits, every, progress)));
  return figures;
};

type Settings = { readonly model?: string };
type Progress = (text: string) => void;

const overOf = (level: string): number | undefined => (level === 'clean' ? undefined : Number(level));

async function orders(
  settings: Settings,
  folder: string,
  part: { readonly every: number; readonly from: number },
  levels: readonly string[],
  progress: Progress,
): Promise<Figure[]> {
  const noise = await readSound(join(folder, 'kitchen-noise.flac'));
  const figures: Figure[] = [];
  for (const level of levels) {
    const hearing = await loadHearing({ ...settings, grammar: ORDERS });
    const over = overOf(level);
    const tried = await tryOrders(hearing, {
      folder,
      grammar: ORDERS,
      ...part,
      ...(over !== undefined && { over, noise }),
      progress: (done, of) => done % 20 === 0 && progress(`orders ${level}: ${done} of ${of}`),
    });
    hearing.close();
    const right = tried.filter((one) => one.right);
    const against = PUBLISHED[level] === undefined ? '' : `published ${PUBLISHED[level]} %`;
    figures.push(
      shareFigure(`orders ${level}, every slot right`, right.length, tried.length, against),
      shareFigure(`orders ${level}, right and accepted`, right.filter((one) => one.accepted).length, tried.length),
      shareFigure(
        `orders ${level}, accepted and wrong`,
        tried.filter((one) => one.accepted && !one.right).length,
        tried.length,
      ),
      ...times(`orders ${level}`, tried),
      ...margins(`orders ${level}`, right),
    );
    for (const one of tried) if (!one.right) progress(`  ${level} ${one.file} "${one.text}" ${one.margin.toFixed(1)}`);
  }
  return figures;
}

/** Recordings of people that hold no meter reading, against the grammar of a visit. */
async function foreign(settings: Settings, folder: string, every: number, progress: Progress): Promise<Figure[]> {
  const hearing = await loadHearing(settings);
  const figures: Figure[] = [];
  for (const name of ['other-speech', 'commands']) {
    const tried = await tryForeign(hearing, join(folder, name), every, (done, of) => {
      if (done % 20 === 0) progress(`${name} against the visit's grammar: ${done} of ${of}`);
    });
    const taken = tried.filter((one) => one.accepted);
    figures.push(shareFigure(`${name} accepted by the visit's grammar`, taken.length, tried.length, 'aim ≤ 1 %'));
    figures.push(...margins(name, tried));
    for (const { file, text, margin } of taken) progress(`  ${file} "${text}" ${margin.toFixed(1)}`);
  }
  hearing.close();
  return figures;
}

async function spoken(
  settings: Settings,
  every: number,
  levels: readonly string[],
  progress: Progress,
): Promise<Figure[]> {
  const figures: Figure[] = [];
  const sentences = readingSentences(5 * every);
  for (const level of levels) {
    for (const expected of [true, false]) {
      const hearing = await loadHearing(settings);
      const over = overOf(level);
      const results = sentences.flatMap((words, index) => {
        if (index % 10 === 0) progress(`spoken ${level}: ${index} of ${sentences.length}`);
        // Three of the twelve voices a sentence, in turn.
        return [0, 4, 8].map((step) =>
          trySentence(hearing, words, VOICES[(index + step) % VOICES.length]!, {
            expected,
            ...(over !== undefined && { over }),
          }),
        );
      });
      hearing.close();
      const name = `readings ${level}, ${expected ? 'expected' : 'not expected'}`;
      figures.push(...outcomes(name, results), ...times(name, results));
      for (const { outcome, words, text } of results)
        if (outcome === 'wrong') progress(`  wrong: "${words}" → "${text}"`);
    }
  }
  const hearing = await loadHearing(settings);
  const taken = FOREIGN.flatMap((words) =>
    VOICES.map((voice) => trySentence(hearing, words, voice, { expected: false })),
  ).filter(({ outcome }) => outcome !== 'rejected');
  hearing.close();
  for (const { words, text } of taken) progress(`  taken: "${words}" → "${text}"`);
  return [...figures, shareFigure('other talk accepted', taken.length, FOREIGN.length * VOICES.length, 'aim ≤ 1 %')];
}

async function noises(settings: Settings, progress: Progress): Promise<Figure[]> {
  const hearing = await loadHearing(settings);
  const minutes = 6;
  let accepted = 0;
  for (let minute = 0; minute < minutes; minute += 1) {
    progress(`condenser noise: minute ${minute + 1} of ${minutes}`);
    accepted += hear(hearing, condenserNoise(60, minute + 1)).filter((heard) => heard.accepted).length;
  }
  hearing.close();
  return [
    {
      name: `condenser noise accepted in ${minutes} minutes`,
      value: accepted,
      unit: 'times',
      against: 'aim 0 an hour',
    },
  ];
}

async function spokenDigits(settings: Settings, folder: string, every: number, progress: Progress): Promise<Figure[]> {
  const hearing: Hearing = await loadHearing({ ...settings, grammar: DIGITS });
  const files = (await readdir(folder, { recursive: true })).filter((file) => file.endsWith('.wav')).sort();
  const chosen = files.filter((_, index) => index % every === 0);
  let right = 0;
  for (const [index, file] of chosen.entries()) {
    if (index % 50 === 0) progress(`digits: ${index} of ${chosen.length}`);
    const sound = await readSound(join(folder, file));
    const padded = new Float32Array(sound.length + 16_000);
    padded.set(sound, 8_000);
    const wanted = DIGIT_NAMES[Number(/(\d)_[a-z]+_\d+\.wav$/.exec(file)?.[1])];
    const text = hear(hearing, padded)[0]?.text ?? '';
    if ((text === 'oh' ? 'zero' : text) === wanted) right += 1;
  }
  hearing.close();
  return [shareFigure('isolated digits right', right, chosen.length, 'aim ≥ 80 %')];
}

function outcomes(name: string, results: readonly SpokenResult[]): Figure[] {
  return (['right', 'asked', 'wrong', 'rejected'] as const).map((outcome) =>
    shareFigure(`${name}: ${outcome}`, results.filter((one) => one.outcome === outcome).length, results.length),
  );
}

function times(name: string, tried: readonly Pick<Tried, 'verdictMs' | 'realTimeFactor'>[]): Figure[] {
  const known = tried.filter(({ verdictMs }) => Number.isFinite(verdictMs));
  const verdicts = known.map(({ verdictMs }) => verdictMs);
  return [
    { name: `${name}, end of speech to verdict p50`, value: quantile(verdicts, 0.5), unit: 'ms' },
    {
      name: `${name}, end of speech to verdict p95`,
      value: quantile(verdicts, 0.95),
      unit: 'ms',
      against: 'aim ≤ 450',
    },
    {
      name: `${name}, real-time factor p50`,
      value: quantile(
        known.map((one) => one.realTimeFactor),
        0.5,
      ),
      unit: '',
    },
  ];
}

/** Where the gate's cuts are to be looked for. */
function margins(name: string, tried: readonly Tried[]): Figure[] {
  const found = tried.map(({ margin }) => Math.max(-99, margin));
  return [0.01, 0.02, 0.05, 0.5, 0.95, 0.99].map((share) => ({
    name: `${name}, margin at ${share}`,
    value: quantile(found, share),
    unit: '/frame',
  }));
}

const shareFigure = (name: string, count: number, of: number, against = ''): Figure => {
  const share = shareOf(count, of);
  return { name, value: share.percent, unit: '%', against: [written(share), against].filter(Boolean).join('; ') };
};
