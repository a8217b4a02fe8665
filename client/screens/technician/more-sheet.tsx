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

/** Everything that can be said, by touch: what happened, and orders to Readback itself. */
export function MoreSheet({ context, earOn, onCommand, onChoose, onClose }: MoreSheetProps) {
  const talk = context.pace === 'full' ? 'short-talk' : 'full-talk';
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
        <Choice
          label={MORE.setRight}
          onPress={() => onChoose('set-right')}
          disabled={readingToSetRight(context) === undefined}
        />
        <Choice label={MORE.takeBack} onPress={() => onCommand('take-back')} disabled={context.readings.length === 0} />
        <Choice label={MORE.whatNext} onPress={() => onCommand('what-next')} />
        <Choice label={MORE.why} onPress={() => onCommand('why')} />
        <Choice label={MORE.sayAgain} onPress={() => onCommand('say-again')} />
        <Choice label={MORE.pass} onPress={() => onCommand('pass')} />
        <Choice label={MORE.cannotReach} onPress={() => onCommand('cannot-reach')} />
        <Choice label={MORE.status} onPress={() => onCommand('status')} />
        <Choice
          label={context.held ? MORE.goOn : MORE.hold}
          onPress={() => onCommand(context.held ? 'go-on' : 'hold')}
        />
        <Choice label={talk === 'full-talk' ? MORE.fullTalk : MORE.shortTalk} onPress={() => onCommand(talk)} />
        <Choice label={earOn ? MORE.earOff : MORE.earOn} onPress={() => onChoose('ear')} />
        <Choice label={MORE.sound} onPress={() => onChoose('sound')} />
        <Choice label={MORE.soundCheck} onPress={() => onChoose('sound-check')} />
        <Choice label={MORE.finish} onPress={() => onCommand('finish')} />
        <button type="button" className="key full leave" onClick={onClose}>
          {PAGE.back}
        </button>
      </div>
      <AboutLine />
    </Sheet>
  );
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
