import type { CommandId } from '../../../grammar/vocabulary/commands.ts';
import type { VisitContext } from '../../visit/chart/context.ts';
import { Sheet } from './sheet.tsx';
import { readingToSetRight } from './touch-keys.ts';

export type MoreChoice =
  | 'reading'
  | 'seen'
  | 'switched'
  | 'proof'
  | 'part'
  | 'set-right'
  | 'write'
  | 'wires'
  | 'hurt'
  | 'ear'
  | 'sound'
  | 'sound-check';

interface MoreSheetProps {
  readonly context: VisitContext;
  readonly earOn: boolean;
  readonly onCommand: (command: CommandId) => void;
  readonly onChoose: (choice: MoreChoice) => void;
  readonly onClose: () => void;
}

interface CommandKey {
  readonly label: string;
  /** Absent: always there, and never without use. */
  readonly isThere?: (context: VisitContext) => boolean;
  readonly isOfUse?: (context: VisitContext) => boolean;
}

/**
 * The key of each order. `of-the-moment`: offered while it answers something; `another-key`: touch does it another way;
 * `by-voice`: it has no key.
 */
const COMMAND_KEYS: Readonly<Record<CommandId, CommandKey | 'of-the-moment' | 'another-key' | 'by-voice'>> = {
  'take-back': { label: 'Take it back', isOfUse: ({ readings }) => readings.length > 0 },
  correct: 'another-key',
  'what-next': { label: 'What next' },
  why: { label: 'Why' },
  'say-again': { label: 'Say again' },
  pass: { label: 'Pass on this' },
  'cannot-reach': { label: 'Cannot reach it' },
  status: { label: 'Where are we' },
  hold: { label: 'Hold the visit', isThere: ({ held }) => !held },
  'go-on': { label: 'Go on', isThere: ({ held }) => held },
  'short-talk': { label: 'Short talk', isThere: ({ pace }) => pace === 'full' },
  'full-talk': { label: 'Full talk', isThere: ({ pace }) => pace !== 'full' },
  finish: { label: 'Finish the visit' },
  yes: 'of-the-moment',
  no: 'of-the-moment',
  live: 'of-the-moment',
  done: 'of-the-moment',
  fine: 'of-the-moment',
  stop: 'by-voice',
  'cancel-check': 'by-voice',
  help: 'by-voice',
};

const IN_ORDER = Object.keys(COMMAND_KEYS) as CommandId[];

/** Everything that can be said, by touch: what happened, and orders to Readback itself. */
export function MoreSheet({ context, earOn, onCommand, onChoose, onClose }: MoreSheetProps) {
  return (
    <Sheet title="More" onClose={onClose}>
      <div className="keys">
        <button type="button" className="key warm" onClick={() => onChoose('hurt')}>
          Somebody is hurt
        </button>
        <Choice label="A reading" onPress={() => onChoose('reading')} />
        <Choice label="Something seen" onPress={() => onChoose('seen')} />
        <Choice label="Power switched" onPress={() => onChoose('switched')} />
        <Choice label="Prove it dead" onPress={() => onChoose('proof')} />
        <Choice label="Part fitted or work done" onPress={() => onChoose('part')} />
        <Choice label="Wires" onPress={() => onChoose('wires')} disabled={context.wires.length === 0} />
        <Choice label="Recommend, sign" onPress={() => onChoose('write')} />
        <Choice
          label="Set it right"
          onPress={() => onChoose('set-right')}
          disabled={readingToSetRight(context) === undefined}
        />
        {IN_ORDER.filter((command) => command !== 'finish').map((command) => (
          <CommandChoice key={command} command={command} context={context} onCommand={onCommand} />
        ))}
        <Choice label={earOn ? 'Ear off' : 'Ear on'} onPress={() => onChoose('ear')} />
        <Choice label="Sound" onPress={() => onChoose('sound')} />
        <Choice label="Sound check" onPress={() => onChoose('sound-check')} />
        <CommandChoice command="finish" context={context} onCommand={onCommand} />
        <button type="button" className="key full leave" onClick={onClose}>
          Back
        </button>
      </div>
    </Sheet>
  );
}

interface CommandChoiceProps {
  readonly command: CommandId;
  readonly context: VisitContext;
  readonly onCommand: (command: CommandId) => void;
}

function CommandChoice({ command, context, onCommand }: CommandChoiceProps) {
  const key = COMMAND_KEYS[command];
  if (typeof key === 'string' || key.isThere?.(context) === false) return null;
  return <Choice label={key.label} onPress={() => onCommand(command)} disabled={key.isOfUse?.(context) === false} />;
}

interface ChoiceProps {
  readonly label: string;
  readonly onPress: () => void;
  readonly disabled?: boolean;
}

function Choice({ label, onPress, disabled = false }: ChoiceProps) {
  return (
    <button type="button" className="key" onClick={onPress} disabled={disabled}>
      {label}
    </button>
  );
}
