import type { Meaning } from '../../../grammar/phrases/meaning.ts';
import type { SwitchingDevice, SwitchPlace } from '../../../grammar/vocabulary/devices.ts';
import { MORE, SWITCHED } from '../../words/pages/key-words.ts';
import { PickSheet } from './pick-sheet.tsx';

interface SwitchPickerProps {
  readonly onEnter: (meaning: Meaning, words: string) => void;
  readonly onClose: () => void;
}

type State = 'open' | 'closed' | 'locked' | 'unlocked';
interface Switched {
  readonly device: SwitchingDevice;
  readonly place: SwitchPlace;
  readonly state: State;
}

const SWITCHES = [
  { device: 'disconnect', place: 'outdoor' },
  { device: 'breaker', place: 'panel' },
  { device: 'service-switch', place: 'air-handler' },
] as const satisfies readonly Pick<Switched, 'device' | 'place'>[];
const STATES: readonly State[] = ['locked', 'open', 'closed', 'unlocked'];

/** A device, its place and what was done with it: a word of power counts only with all three. */
export function SwitchPicker({ onEnter, onClose }: SwitchPickerProps) {
  const picks = SWITCHES.flatMap(({ device, place }) =>
    STATES.map((state) => ({
      label: SWITCHED.pick(SWITCHED[device], SWITCHED.states[state]),
      value: { device, place, state },
    })),
  );
  const pick = (switched: Switched) => {
    const words = picks.find(({ value }) => value === switched)?.label ?? '';
    onEnter({ kind: 'report', report: { type: 'energy', ...switched } }, words);
    onClose();
  };
  return <PickSheet title={MORE.switched} picks={picks} onPick={pick} onClose={onClose} />;
}
