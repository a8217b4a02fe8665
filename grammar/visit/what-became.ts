import type { Understanding } from '../phrases/meaning.ts';
import type { CommandId } from '../vocabulary/commands.ts';
import type { VisitOutcome } from './events.ts';

/**
 * What became of something heard, where it was not taken as it was understood. `nothing`: it answers, and there was
 * nothing to answer. `waits`: for a supervisor.
 */
export type Became = 'refused' | 'refused-in-part' | 'asked' | 'waits' | 'nothing';

/** Words that say something only where something was asked or cautioned of. */
const ANSWERS: readonly CommandId[] = ['yes', 'no', 'live', 'got-it', 'here', 'same-place'];

/** Before anything came of it. */
export function becameAtFirst({ meaning, verdict }: Understanding, accepted: boolean): Became | undefined {
  const isAnswer = meaning?.kind === 'command' && ANSWERS.includes(meaning.command);
  return accepted && verdict === 'logged' && isAnswer ? 'nothing' : undefined;
}

/**
 * What it became by an event that came of it.
 *
 * @param logged whether a reading of the same words was taken before
 */
export function becameBy(event: VisitOutcome, before: Became | undefined, logged: boolean): Became | undefined {
  switch (event.type) {
    case 'prompt.said':
      return before;
    case 'reading.refused':
    case 'proof.refused':
    case 'close.refused':
      return logged ? 'refused-in-part' : 'refused';
    case 'reading.logged':
      return before === 'refused' ? 'refused-in-part' : undefined;
    case 'reading.waits':
      return 'waits';
    case 'reading.asked':
      return before === undefined || before === 'nothing' ? 'asked' : before;
    default:
      return before === 'nothing' ? undefined : before;
  }
}
