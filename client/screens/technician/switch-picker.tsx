import type { Meaning } from '../../../grammar/phrases/meaning.ts';
import type { SwitchingDevice, SwitchPlace } from '../../../grammar/vocabulary/devices.ts';
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

const SWITCHES: readonly { readonly device: SwitchingDevice; readonly place: SwitchPlace; readonly name: string }[] = [
  { device: 'disconnect', place: 'outdoor', name: 'Outdoor disconnect' },
  { device: 'breaker', place: 'panel', name: 'Breaker in the panel' },
  { device: 'service-switch', place: 'air-handler', name: 'Air handler switch' },
];
const STATES: readonly { readonly state: State; readonly words: string }[] = [
  { state: 'locked', words: 'open and locked' },
  { state: 'open', words: 'open' },
  { state: 'closed', words: 'closed' },
  { state: 'unlocked', words: 'unlocked' },
];

/** A device, its place and what was done with it: a word of power counts only with all three. */
export function SwitchPicker({ onEnter, onClose }: SwitchPickerProps) {
  const picks = SWITCHES.flatMap(({ device, place, name }) =>
    STATES.map(({ state, words }) => ({ label: `${name} ${words}`, value: { device, place, state } })),
  );
  const pick = (switched: Switched) => {
    const words = picks.find(({ value }) => value === switched)?.label ?? '';
    onEnter({ kind: 'report', report: { type: 'energy', ...switched } }, words);
    onClose();
  };
  return <PickSheet title="Power switched" picks={picks} onPick={pick} onClose={onClose} />;
}
