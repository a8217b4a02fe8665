/** How this device listens and speaks. */
export const SOUND = {
  title: 'Sound',
  counts: 'What is said counts',
  always: 'always: a reading needs no word before it',
  push: 'while the key, the space bar or a headset’s button is pressed',
  wake: 'after your wake word',
  stopAlways: '“Stop” is heard at any time.',
  recogniser: 'Recogniser',
  models: {
    both: 'our own, on this device (9 MB once)',
    wideband: 'our own with its 16 kHz model alone: for a slow phone',
    bundled: 'our own with its 8 kHz model alone: for a slow phone and a narrow headset (5 MB once)',
  },
  browser: 'the browser’s',
  browserWarning:
    'The browser’s recogniser may send the sound to its maker. It needs the network, and may fail in silence.',
  onlyHere: 'only if the browser promises to keep it on this device',
  voice: 'Voice',
  voices: {
    silent: 'silent: shown only',
    slower: 'spoken slower',
    normal: 'spoken',
    faster: 'spoken faster',
    muchFaster: 'spoken much faster',
  },
  keep: 'Keep',
} as const;

export const WAKE_WORD = {
  title: 'Wake word (Porcupine)',
  note: 'It needs a key and two files of your own from its maker. Key and files stay on this device; its program asks its maker’s host (kmp1.picovoice.net) whether the key may be used. Without a key nothing is asked of it. The sound is not sent.',
  key: 'Access key',
  model: 'Model file (.pv)',
  keyword: 'Keyword file (.ppn)',
  cannot: (detail: string) => `The wake word cannot be used (${detail}). Listening always instead.`,
  needsOffline: 'it needs the offline recogniser',
  filesMissing: 'its files are missing',
} as const;

/** To be said and heard in a sound check: a number with no twin that sounds like it. */
export const TEST_NUMBER = { words: 'two forty five', digits: '245' } as const;

export const SOUND_CHECK = {
  title: 'Sound check',
  /** The one prompt of the page's own. */
  spoken: 'Sound check. Please say the number on the screen.',
  ready: 'It takes ten seconds: the place, this device’s voice, and a number that you say.',
  asked: {
    quiet: 'Be quiet for a moment: listening to the place.',
    echo: 'Listening to this device’s own voice.',
    number: `Now say: “${TEST_NUMBER.words}”`,
  },
  impossible: 'The sound cannot be measured: switch the ear on with our own recogniser first.',
  begin: 'Begin',
  again: 'Again',
  place: 'the place',
  yourVoice: 'your voice',
  ownVoice: 'this device’s voice',
  /** With a minus sign that is read as one. */
  level: (db: number, over: number | undefined) =>
    `${db} dBFS`.replace('-', '−') + (over === undefined ? '' : `, ${over} dB over it`),
  fine: 'The number was heard as said. Nothing here hinders hearing just now.',
} as const;

/** Reading aloud, so that the ear learns a voice. */
export const LEARN = {
  title: 'Learn my voice',
  open: 'Learn my voice',
  ready:
    'Two minutes: you read numbers and orders aloud, and the ear on this device learns how you say them. It is kept on this device alone, the sound is not kept at all, and you can throw it away.',
  needsOffline: 'It needs our own recogniser: choose it above, keep, and switch the ear on.',
  noSound: 'Nothing was heard for half a minute: speak nearer, or try again later.',
  begin: 'Begin',
  again: 'Begin anew',
  sayNow: 'Read aloud',
  place: (number: number, of: number) => `${number} of ${of}`,
  repeat: 'Say the last again',
  enough: 'That is enough',
  tooFew: (more: number) => `at least ${more} more`,
  working: (share: number) => `Learning: ${Math.round(share * 100)} % done. It takes a minute or two.`,
  gained: (before: number, after: number, of: number) =>
    of === 0
      ? 'Too little was read to learn words from: only the mean of your voice was.'
      : `Numbers that it was not learnt from: ${before} of ${of} words heard right before, ${after} of ${of} after.`,
  kept: 'Kept on this device. The ear uses it from its next start on.',
  notKept: 'It did not help, so nothing was kept: the ear stays as it was.',
  since: (day: string) => `Learnt on ${day}.`,
  forget: 'Throw it away',
  forgotten: 'Thrown away. The ear hears as for anybody from its next start on.',
  failed: (detail: string) => `It could not be learnt (${detail}): try again with the server in reach.`,
} as const;

/** What is wrong with a place, and what to do about it. */
export const PLACE_ADVICE = {
  loud: 'It is loud here: use a headset, bring the microphone nearer, or enter by touch.',
  'others-talk': 'Others talk here: hold a key to talk (More, Sound), use a headset, or enter by touch.',
  far: 'You are far from the microphone: bring it nearer, or use a headset.',
  clipped: 'You are too near: hold the microphone a hand farther away.',
  echo: 'The microphone hears this device’s own voice: to break in, say “stop” or use a headset.',
  misheard: 'Another number was heard: speak it again a little slower, nearer, or use a headset.',
  unheard: 'The number was not heard: speak nearer, use a headset, hold a key to talk, or enter by touch.',
} as const;
