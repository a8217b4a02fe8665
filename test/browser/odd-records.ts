import { recordedBodies } from './put-visit.ts';

const START = Date.UTC(2026, 5, 15, 14);

/** The time of an event: milliseconds on the running clock and, where it was set, on the wall clock since the visit began. */
export const at = (mono: number, wall = mono) => ({ at: new Date(START + wall).toISOString(), mono });

/** An event as it stands in a record. */
export const body = (type: string, fields: object, time = at(0)) => JSON.stringify({ type, ...fields, time });

export const opened = (site: string, complaint = 'does not cool', time = at(0)) =>
  body(
    'visit.opened',
    { visit: 'x', site, complaint, role: 'technician', unit: { id: 'unknown' }, software: 'other' },
    time,
  );

export const note = (text: string, mono = 1_000, wall = mono) => body('note.taken', { text }, at(mono, wall));

/** Records that are cut, foreign, damaged or strange in another way: what they are, their bodies, and words that the talk shows. */
export const ODD_RECORDS: readonly (readonly [string, readonly string[], string])[] = [
  ['cut in the middle of an entry', [...recordedBodies('library').slice(0, 40), '{"type":"reading.lo'], 'unreadable'],
  ['of another program', ['{"hello":"world"}', '[1,2]', '"text"', '42'], 'unreadable'],
  ['of no readings', [opened('Quiet'), note('nobody home')], 'nobody home'],
  [
    'with a damaged event',
    [opened('Bent'), body('reading.logged', { number: 1 }), note('the lid is bent')],
    'damaged event: reading.logged',
  ],
  [
    'with gaps of three hours',
    [opened('Long'), note('before', 1_000), note('after', 10_801_000), note('later', 21_601_000)],
    'later',
  ],
  ['whose running clock began anew', [opened('Restart'), note('one', 600_000), note('two', 0, 660_000)], 'two'],
  ['of one entry', [opened('Only')], 'Visit opened'],
  ['with a note of 5,000 characters', [opened('Wordy'), note('word '.repeat(1_000))], 'word word'],
  [
    'in right-to-left script and emoji',
    [opened('مبنى المكتبة', 'لا يبرد 🥵'), note('تم الفحص ✅ 😀 done')],
    'تم الفحص',
  ],
];
