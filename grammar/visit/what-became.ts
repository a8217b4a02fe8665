import type { Understanding } from '../phrases/meaning.ts';
import type { CommandId } from '../vocabulary/commands.ts';
import type { VisitOutcome } from './events.ts';

/**
 * What became of something heard, where it was not taken as it was understood. `nothing`: it answers, and there was
 * nothing to answer. `waits`: for a supervisor. `taken`: it was in doubt by itself, and answered the question about it.
 * `after-close`: the visit was closed, nothing was changed.
 */
export type Became = 'refused' | 'refused-in-part' | 'asked' | 'waits' | 'nothing' | 'taken' | 'after-close';

/** Words that say something only where something was asked or cautioned of. */
const ANSWERS: readonly CommandId[] = ['yes', 'no', 'live', 'got-it', 'here', 'same-place'];

/**
 * Before anything came of it.
 *
 * @param closed whether the visit was closed by then
 */
export function becameAtFirst(
  { meaning, verdict }: Understanding,
  accepted: boolean,
  closed: boolean,
): Became | undefined {
  if (accepted && closed) return 'after-close';
  const isAnswer = meaning?.kind === 'command' && ANSWERS.includes(meaning.command);
  return accepted && verdict === 'logged' && isAnswer ? 'nothing' : undefined;
}

/**
 * What it became by an event that came of it.
 *
 * @param logged whether a reading of the same words was taken before
 */
export function becameBy(
  event: VisitOutcome,
  before: Became | undefined,
  logged: boolean,
  { verdict }: Pick<Understanding, 'verdict'>,
): Became | undefined {
  switch (event.type) {
    case 'prompt.said':
      return before;
    case 'reading.refused':
    case 'proof.refused':
    case 'close.refused':
      return logged ? 'refused-in-part' : 'refused';
    case 'reading.logged':
      if (before === 'refused') return 'refused-in-part';
      return verdict === 'asked' ? 'taken' : undefined;
    case 'injury.reported':
      return undefined;
    case 'reading.waits':
      return 'waits';
    case 'reading.asked':
      return before === undefined || before === 'nothing' ? 'asked' : before;
    default:
      return before === 'nothing' ? undefined : before;
  }
}
