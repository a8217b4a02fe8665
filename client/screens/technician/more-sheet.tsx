import type { ReactNode } from 'react';
import type { CommandId } from '../../../grammar/vocabulary/commands.ts';
import { MORE } from '../../words/pages/key-words.ts';
import { PHOTO } from '../../words/shown/photo-words.ts';
import type { Glance } from '../glance/glance.ts';
import { AboutLine } from '../show/about-line.tsx';
import { KeepingLine } from './keeping-line.tsx';
import { longWord } from './long-word.ts';
import { Sheet } from './sheet.tsx';

export type MoreChoice =
  | 'reading'
  | 'seen'
  | 'switched'
  | 'proof'
  | 'part'
  | 'set-right'
  | 'write'
  | 'dictated'
  | 'photo'
  | 'wires'
  | 'hurt'
  | 'ear'
  | 'sound'
  | 'sound-check'
  | 'phrases'
  | 'screen';

interface MoreSheetProps {
  readonly glance: Glance;
  readonly earOn: boolean;
  readonly onCommand: (command: CommandId) => void;
  readonly onChoose: (choice: MoreChoice) => void;
  readonly onClose: () => void;
}

/** What the hands, or the ears, are at: the keys of a group stand together. */
type MoreGroup = keyof typeof MORE.groups;

interface CommandKey {
  readonly group: MoreGroup;
  readonly label: string;
  /** Absent: always there. */
  readonly isThere?: (glance: Glance) => boolean;
  /** Why it is of no use now, if it is of none. */
  readonly lacks?: (glance: Glance) => string | undefined;
}

/**
 * The key of each order. `of-the-moment`: offered while it answers something; `another-key`: touch does it another way;
 * `by-voice`: it has no key.
 */
const COMMAND_KEYS: Readonly<Record<CommandId, CommandKey | 'of-the-moment' | 'another-key' | 'by-voice'>> = {
  'take-back': {
    group: 'mend',
    label: MORE.takeBack,
    lacks: ({ sheets }) => (sheets.undoable ? undefined : MORE.lacks.said),
  },
  correct: 'another-key',
  'what-next': { group: 'ask', label: MORE.whatNext },
  why: { group: 'ask', label: MORE.why },
  'say-again': { group: 'ask', label: MORE.sayAgain },
  'what-left': { group: 'ask', label: MORE.whatLeft },
  'where-probes': { group: 'ask', label: MORE.whereProbes },
  status: { group: 'ask', label: MORE.status },
  'go-back': { group: 'lead', label: MORE.goBack },
  pass: { group: 'lead', label: MORE.pass },
  'cannot-reach': { group: 'lead', label: MORE.cannotReach },
  hold: { group: 'lead', label: MORE.hold, isThere: ({ held }) => !held },
  'go-on': { group: 'lead', label: MORE.goOn, isThere: ({ held }) => held },
  'short-talk': { group: 'talk', label: MORE.shortTalk, isThere: ({ pace }) => pace === 'full' },
  'full-talk': { group: 'talk', label: MORE.fullTalk, isThere: ({ pace }) => pace !== 'full' },
  finish: { group: 'lead', label: MORE.finish },
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

/** Everything that can be said, by touch: what happened, and orders to Readback itself, by what the hands are at. */
export function MoreSheet({ glance, earOn, onCommand, onChoose, onClose }: MoreSheetProps) {
  const choice = (label: string, chosen: MoreChoice, lacks?: string) => (
    <Choice key={chosen} label={label} onPress={() => onChoose(chosen)} lacks={lacks} />
  );
  const chosen: Readonly<Record<MoreGroup, ReactNode>> = {
    measure: [
      choice(MORE.reading, 'reading'),
      choice(MORE.seen, 'seen'),
      choice(MORE.switched, 'switched'),
      choice(MORE.proof, 'proof'),
    ],
    work: [
      choice(MORE.part, 'part'),
      choice(MORE.wires, 'wires', glance.wires.length === 0 ? MORE.lacks.wires : undefined),
    ],
    mend: choice(MORE.setRight, 'set-right', glance.sheets.toSetRight === undefined ? MORE.lacks.reading : undefined),
    write: [choice(MORE.write, 'write'), choice(MORE.dictated, 'dictated'), choice(PHOTO.title, 'photo')],
    ask: choice(MORE.phrases, 'phrases'),
    lead: null,
    talk: [
      choice(earOn ? MORE.earOff : MORE.earOn, 'ear'),
      choice(MORE.sound, 'sound'),
      choice(MORE.soundCheck, 'sound-check'),
      choice(MORE.screen, 'screen'),
    ],
  };
  return (
    <Sheet title={MORE.title} onClose={onClose} withBack>
      <div className="keys">
        <button type="button" className="key warm full" onClick={() => onChoose('hurt')}>
          {MORE.hurt}
        </button>
      </div>
      {(Object.keys(MORE.groups) as MoreGroup[]).map((group) => (
        <section key={group} className="key-group" aria-label={MORE.groups[group]}>
          <h3>{MORE.groups[group]}</h3>
          <div className="keys">
            {chosen[group]}
            {IN_ORDER.map((command) => (
              <CommandChoice key={command} command={command} group={group} glance={glance} onCommand={onCommand} />
            ))}
          </div>
        </section>
      ))}
      <KeepingLine />
      <AboutLine />
    </Sheet>
  );
}

interface CommandChoiceProps {
  readonly command: CommandId;
  readonly group: MoreGroup;
  readonly glance: Glance;
  readonly onCommand: (command: CommandId) => void;
}

function CommandChoice({ command, group, glance, onCommand }: CommandChoiceProps) {
  const key = COMMAND_KEYS[command];
  if (typeof key === 'string' || key.group !== group || key.isThere?.(glance) === false) return null;
  return <Choice label={key.label} onPress={() => onCommand(command)} lacks={key.lacks?.(glance)} />;
}

interface ChoiceProps {
  readonly label: string;
  readonly onPress: () => void;
  /** Why it cannot be chosen now. */
  readonly lacks: string | undefined;
}

function Choice({ label, onPress, lacks }: ChoiceProps) {
  return (
    <button type="button" className={`key ${longWord(label)}`} onClick={onPress} disabled={lacks !== undefined}>
      {label}
      {lacks === undefined ? null : <small>{lacks}</small>}
    </button>
  );
}
