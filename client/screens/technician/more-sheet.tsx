import type { CommandId } from '../../../grammar/vocabulary/commands.ts';
import type { VisitContext } from '../../visit/chart/context.ts';
import { MORE } from '../../words/pages/key-words.ts';
import { PAGE } from '../../words/pages/page-words.ts';
import { AboutLine } from '../show/about-line.tsx';
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
  | 'dictated'
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
  'take-back': { label: MORE.takeBack, isOfUse: ({ readings }) => readings.length > 0 },
  correct: 'another-key',
  'what-next': { label: MORE.whatNext },
  why: { label: MORE.why },
  'say-again': { label: MORE.sayAgain },
  'what-left': { label: MORE.whatLeft },
  'where-probes': { label: MORE.whereProbes },
  'go-back': { label: MORE.goBack },
  pass: { label: MORE.pass },
  'cannot-reach': { label: MORE.cannotReach },
  status: { label: MORE.status },
  hold: { label: MORE.hold, isThere: ({ held }) => !held },
  'go-on': { label: MORE.goOn, isThere: ({ held }) => held },
  'short-talk': { label: MORE.shortTalk, isThere: ({ pace }) => pace === 'full' },
  'full-talk': { label: MORE.fullTalk, isThere: ({ pace }) => pace !== 'full' },
  finish: { label: MORE.finish },
  yes: 'of-the-moment',
  no: 'of-the-moment',
  live: 'of-the-moment',
  'got-it': 'of-the-moment',
  here: 'of-the-moment',
  'same-place': 'of-the-moment',
  done: 'of-the-moment',
  fine: 'of-the-moment',
  'what-heard': 'by-voice',
  recall: 'by-voice',
  unsure: 'by-voice',
  'what-expected': 'by-voice',
  'what-means': 'by-voice',
  suspects: 'by-voice',
  'is-it-dead': 'by-voice',
  'skip-to': 'by-voice',
  stop: 'by-voice',
  'cancel-check': 'by-voice',
  help: 'by-voice',
};

const IN_ORDER = Object.keys(COMMAND_KEYS) as CommandId[];

/** Everything that can be said, by touch: what happened, and orders to Readback itself. */
export function MoreSheet({ context, earOn, onCommand, onChoose, onClose }: MoreSheetProps) {
  return (
    <Sheet title={MORE.title} onClose={onClose}>
      <div className="keys">
        <button type="button" className="key warm" onClick={() => onChoose('hurt')}>
          {MORE.hurt}
        </button>
        <Choice label={MORE.reading} onPress={() => onChoose('reading')} />
        <Choice label={MORE.seen} onPress={() => onChoose('seen')} />
        <Choice label={MORE.switched} onPress={() => onChoose('switched')} />
        <Choice label={MORE.proof} onPress={() => onChoose('proof')} />
        <Choice label={MORE.part} onPress={() => onChoose('part')} />
        <Choice label={MORE.wires} onPress={() => onChoose('wires')} disabled={context.wires.length === 0} />
        <Choice label={MORE.write} onPress={() => onChoose('write')} />
        <Choice label={MORE.dictated} onPress={() => onChoose('dictated')} />
        <Choice
          label={MORE.setRight}
          onPress={() => onChoose('set-right')}
          disabled={readingToSetRight(context) === undefined}
        />
        {IN_ORDER.filter((command) => command !== 'finish').map((command) => (
          <CommandChoice key={command} command={command} context={context} onCommand={onCommand} />
        ))}
        <Choice label={earOn ? MORE.earOff : MORE.earOn} onPress={() => onChoose('ear')} />
        <Choice label={MORE.sound} onPress={() => onChoose('sound')} />
        <Choice label={MORE.soundCheck} onPress={() => onChoose('sound-check')} />
        <CommandChoice command="finish" context={context} onCommand={onCommand} />
        <button type="button" className="key full leave" onClick={onClose}>
          {PAGE.back}
        </button>
      </div>
      <AboutLine />
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
