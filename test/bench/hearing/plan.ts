import type { HearingOptions } from '../../../client/listening/node/load-hearing.ts';
import { MODEL_CHOICES } from '../../../client/listening/recogniser/speech-module.ts';
import { TerminalError } from '../../../client/terminal/terminal-error.ts';

/** What a run of the hearing bench was asked to do. */
export interface Plan {
  readonly sets: readonly string[];
  /** Takes every so many-th recording or sentence, from the `from`-th on. */
  readonly every: number;
  readonly from: number;
  readonly half: Half;
  /** Decibels over the noise; `undefined`: as recorded. Each set has its own levels where none are named. */
  readonly levels: readonly (number | undefined)[] | undefined;
  readonly people: string | undefined;
  readonly digits: string | undefined;
  /** Any folder of sound with its words. */
  readonly folder: string | undefined;
  readonly settings: Pick<HearingOptions, 'models' | 'now'>;
  /** How many times as fast as usual the synthetic voices read. */
  readonly pace: number;
  /** How long each noise is listened to. */
  readonly minutes: number;
  progress(text: string): void;
}

/**
 * Speakers and voices are parted by their place in the sorted list, orders by the voice that they seem to be of: on the
 * first half the ear is tuned, on the other it is reported. Gates of before were set on every second order of the list.
 */
export type Half = 'all' | 'tune' | 'report';

export const EVERY_SET = [
  'orders',
  'foreign',
  'waited',
  'digits',
  'teach',
  'readings',
  'spoken',
  'spliced',
  'continued',
  'fluent',
  'level',
  'behind',
  'urgent',
  'noise',
  'speed',
  'folder',
] as const;

/** @throws {TerminalError} usage, which names what is wrong with the options */
export function planFrom(options: ReadonlyMap<string, string>, progress: Plan['progress']): Plan {
  const sets = options.get('sets')?.split(',') ?? EVERY_SET;
  const unknown = sets.filter((set) => !(EVERY_SET as readonly string[]).includes(set));
  if (unknown.length > 0)
    throw new TerminalError('usage', `There is no set ${unknown.join(', ')}: name some of ${EVERY_SET.join(', ')}.`);
  const half = options.get('half') ?? 'all';
  if (half !== 'all' && half !== 'tune' && half !== 'report')
    throw new TerminalError('usage', 'half is one of all, tune, report.');
  const named = options.get('models');
  const models = MODEL_CHOICES.find((one) => one === named);
  if (named !== undefined && models === undefined)
    throw new TerminalError('usage', `models is one of ${MODEL_CHOICES.join(', ')}.`);
  return {
    sets,
    half,
    every: Number(options.get('every') ?? 1),
    from: Number(options.get('from') ?? 0),
    levels: options
      .get('at')
      ?.split(',')
      .map((level) => (level === 'clean' ? undefined : Number(level))),
    people: options.get('people'),
    digits: options.get('digits'),
    folder: options.get('folder'),
    settings: {
      now: processorMs,
      ...(models !== undefined && { models }),
    },
    pace: Number(options.get('pace') ?? 1),
    minutes: Number(options.get('minutes') ?? 10),
    progress,
  };
}

/** Time of the processor, not of the wall: other work on the machine does not count. */
function processorMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** The part of a sorted list that the plan takes. */
export function chosen<Item>(items: readonly Item[], { half, every, from }: Plan): readonly Item[] {
  return inHalf(items, half).filter((_, index) => index % every === from);
}

export function inHalf<Item>(items: readonly Item[], half: Half): readonly Item[] {
  return half === 'all' ? items : items.filter((_, index) => index % 2 === (half === 'tune' ? 0 : 1));
}

export const levelName = (level: number | undefined): string => (level === undefined ? 'clean' : `${level} dB`);
