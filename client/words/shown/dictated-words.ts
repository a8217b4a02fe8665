import type { Dictation } from '../../../grammar/visit/dictated.ts';

/** What is to be known of the words of a dictation: that they are a guess, what they were written over, their sound. */
export function dictationDetail({ guessed, heard, sound }: Dictation & { readonly heard?: string }): string {
  return [
    guessed === true ? 'words unsure' : '',
    heard === undefined ? '' : `written over “${heard}”`,
    sound === undefined ? '' : `sound kept, ${Math.round(sound.ms / 1000)} s, SHA-256 ${sound.sha256.slice(0, SHOWN)}…`,
  ]
    .filter((part) => part !== '')
    .join(' · ');
}

/** The words themselves; of a guess in quotation marks, as what an ear made of it. */
export function shownWords({ text, guessed }: Dictation & { readonly text: string }): string {
  return guessed === true ? `heard as “${text}”` : text;
}

/** Signs of a hash that are enough to tell one from another by eye. */
const SHOWN = 12;

export const DICTATED = {
  title: 'What was dictated',
  none: 'Nothing was dictated yet.',
  note: 'Note',
  saying: 'The customer says',
  recommendation: 'Recommended',
  technician: 'Signed by the technician',
  customer: 'Signed by the customer',
  play: 'Play',
  notHere: 'its sound is on the device that heard it',
  write: 'Write it over',
} as const;
