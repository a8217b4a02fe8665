import { COMMANDS, type CommandId } from '../../grammar/vocabulary/commands.ts';
import { WORLD_REFUSALS } from '../words/terminal/visit-lines.ts';

/** What a line that begins with "@" does to the world around a visit. */
export type WorldMove =
  /** Minutes pass; what falls due on the way rings. */
  | { readonly move: 'wait'; readonly minutes: number }
  /** All but the record is forgotten. */
  | { readonly move: 'reload' }
  /** The wall clock is set anew; the monotonic one goes on as before. */
  | { readonly move: 'clock'; readonly minutes: number }
  /** The device sleeps: the wall clock goes on, the monotonic one and all timers stand. */
  | { readonly move: 'sleep'; readonly minutes: number }
  /** The ear takes so many utterances for noise. */
  | { readonly move: 'noise'; readonly times: number }
  | { readonly move: 'key'; readonly command: CommandId }
  /** A supervisor who stands by acknowledges a trainee's live steps. */
  | { readonly move: 'supervisor'; readonly name: string };

type Refused = { readonly refused: string };

const FORMS = [
  '@wait MINUTES',
  '@reload',
  '@clock MINUTES',
  '@sleep MINUTES',
  '@noise N',
  '@key COMMAND',
  '@supervisor NAME',
] as const;

/** A week: timers that come again every minute are still rung one by one. */
const MOST_MINUTES = 10_080;
const MOST_TIMES = 1000;
const LONGEST_NAME = 80;

/** Reads a line that begins with "@"; one that cannot be followed comes back as a sentence that says what to write. */
export function readWorldLine(line: string): WorldMove | Refused {
  const [, word = '', rest = ''] = /^(\S+)\s*(.*)$/su.exec(line.trim()) ?? [];
  switch (word) {
    case '@wait':
    case '@sleep':
      return readMinutes(word, rest);
    case '@reload':
      return rest === '' ? { move: 'reload' } : { refused: WORLD_REFUSALS.alone(word) };
    case '@clock': {
      const minutes = /^[+-]?\d+(\.\d+)?$/.test(rest) ? Number(rest) : 0;
      return minutes !== 0 && Math.abs(minutes) <= MOST_MINUTES
        ? { move: 'clock', minutes }
        : { refused: WORLD_REFUSALS.jump(word, MOST_MINUTES) };
    }
    case '@noise': {
      const times = /^\d+$/.test(rest) ? Number(rest) : 0;
      return times >= 1 && times <= MOST_TIMES
        ? { move: 'noise', times }
        : { refused: WORLD_REFUSALS.times(word, MOST_TIMES) };
    }
    case '@key': {
      const command = COMMANDS.find(({ id }) => id === rest)?.id;
      const ids = COMMANDS.map(({ id }) => id);
      return command === undefined ? { refused: WORLD_REFUSALS.command(word, ids) } : { move: 'key', command };
    }
    case '@supervisor':
      return rest !== '' && rest.length <= LONGEST_NAME
        ? { move: 'supervisor', name: rest }
        : { refused: WORLD_REFUSALS.name(word) };
    default:
      return { refused: WORLD_REFUSALS.unknown(short(word), FORMS) };
  }
}

function readMinutes(word: '@wait' | '@sleep', rest: string): WorldMove | Refused {
  const minutes = /^\d+(\.\d+)?$/.test(rest) ? Number(rest) : 0;
  if (!(minutes > 0 && minutes <= MOST_MINUTES)) return { refused: WORLD_REFUSALS.minutes(word, MOST_MINUTES) };
  return { move: word === '@wait' ? 'wait' : 'sleep', minutes };
}

/** A word that is no command may be a whole page. */
function short(word: string): string {
  return word.length <= 20 ? word : `${word.slice(0, 20)}…`;
}
