/** Photos beside a record. */
export const PHOTO = {
  title: 'Photo',
  note: 'It is sealed and kept with the visit; where it was taken is cut out of the file.',
  take: { plate: 'The plate', wiring: 'The wiring, before it is moved', other: 'Something else' },
  of: { plate: 'Photo of the plate', wiring: 'Photo of the wiring', other: 'Photo' },
  taken: (count: number) => `${count} ${count === 1 ? 'photo' : 'photos'} taken on this visit`,
  unreadable: 'This file is no picture that the browser can read: take another one.',
  noRoom: 'There is no room for it on this device: free space, then take it again.',
  show: 'Show',
  notHere: 'it is on the device that took it',
} as const;
