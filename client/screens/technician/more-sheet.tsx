import type { CommandId } from '../../../grammar/vocabulary/commands.ts';
import type { VisitContext } from '../../visit/chart/context.ts';
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
        <Choice label="Take it back" onPress={() => onCommand('take-back')} disabled={context.readings.length === 0} />
        <Choice label="What next" onPress={() => onCommand('what-next')} />
        <Choice label="Why" onPress={() => onCommand('why')} />
        <Choice label="Say again" onPress={() => onCommand('say-again')} />
        <Choice label="Pass on this" onPress={() => onCommand('pass')} />
        <Choice label="Cannot reach it" onPress={() => onCommand('cannot-reach')} />
        <Choice label="Where are we" onPress={() => onCommand('status')} />
        <Choice
          label={context.held ? 'Go on' : 'Hold the visit'}
          onPress={() => onCommand(context.held ? 'go-on' : 'hold')}
        />
        <Choice label={talk === 'full-talk' ? 'Full talk' : 'Short talk'} onPress={() => onCommand(talk)} />
        <Choice label={earOn ? 'Ear off' : 'Ear on'} onPress={() => onChoose('ear')} />
        <Choice label="Sound" onPress={() => onChoose('sound')} />
        <Choice label="Sound check" onPress={() => onChoose('sound-check')} />
        <Choice label="Finish the visit" onPress={() => onCommand('finish')} />
        <button type="button" className="key full leave" onClick={onClose}>
          Back
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
