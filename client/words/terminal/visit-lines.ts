/** The sign that stands before a typed line. */
export const LINE_SIGN = '> ';

/** What the terminal says of a visit itself, before and after its talk. */
export const VISIT_LINES = {
  goesOn: (visit: string, events: number) => `The visit ${visit} goes on from its record, ${events} events.`,
  ended: (closed: boolean, open: number) =>
    closed
      ? `The visit is closed; open items: ${open}.`
      : `The visit is not closed; a close would name ${open} open items.`,
  tooLong: (bytes: number, most: number) =>
    `This line has ${bytes} bytes and was not taken: write it in lines of at most ${most}.`,
} as const;

/** Why a line that moves the world was not followed, each with what to write instead. */
export const WORLD_REFUSALS = {
  unknown: (word: string, forms: readonly string[]) =>
    `There is no ${word}: write ${forms.slice(0, -1).join(', ')} or ${forms.at(-1)}.`,
  minutes: (word: string, most: number) =>
    `${word} wants minutes, one number above 0 and at most ${most}: as in "${word} 20".`,
  jump: (word: string, most: number) =>
    `${word} wants minutes, one number other than 0 and at most ${most} to either side: as in "${word} -90".`,
  times: (word: string, most: number) => `${word} wants one whole number from 1 to ${most}: as in "${word} 3".`,
  alone: (word: string) => `${word} stands alone: leave out what follows it.`,
  name: (word: string) => `${word} wants a name of at most 80 characters: write it after ${word}.`,
  command: (word: string, commands: readonly string[]) => `${word} wants one of these: ${commands.join(', ')}.`,
} as const;
