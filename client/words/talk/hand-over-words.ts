/** A visit that goes from one device to another; said by both. */
export const HAND_OVER = {
  takenOver: (site: string) => `Taken over: ${site}.`,
  carriedOnElsewhere: (name: string) =>
    `${name === '' ? 'Another device' : name} carries this visit on. Nothing more is taken here, and what was proven here has ended.`,
  entriesMissing: (count: number) =>
    `${count === 1 ? 'One entry' : `${count} entries`} of the other device did not arrive. Ask what was done.`,
  provenByAnother: 'Proven by another: prove it dead again before hands go in.',
} as const;
