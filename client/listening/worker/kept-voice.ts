import { type DBSchema, openDB } from 'idb';
import type { Learnt } from '../profile/learn-voice.ts';

/** What was learnt of the voice of whoever uses this device, and when. */
export interface KeptVoice extends Learnt {
  /** Milliseconds since 1970. */
  readonly learntAt: number;
}

interface VoiceSchema extends DBSchema {
  voice: { key: 'own'; value: KeptVoice };
}

/** On this device alone, and nowhere else: it is sent to nobody. */
const NAME = 'readback-voice';

export async function readKeptVoice(): Promise<KeptVoice | undefined> {
  const database = await openVoice();
  try {
    return await database.get('voice', 'own');
  } finally {
    database.close();
  }
}

export async function keepVoice(voice: KeptVoice): Promise<void> {
  const database = await openVoice();
  try {
    await database.put('voice', voice, 'own');
  } finally {
    database.close();
  }
}

export async function forgetVoice(): Promise<void> {
  const database = await openVoice();
  try {
    await database.delete('voice', 'own');
  } finally {
    database.close();
  }
}

function openVoice() {
  return openDB<VoiceSchema>(NAME, 1, {
    upgrade: (database) => {
      database.createObjectStore('voice');
    },
  });
}
