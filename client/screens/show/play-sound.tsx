import { useEffect, useState } from 'react';
import type { KeptSound } from '../../../grammar/visit/kept-sound.ts';
import { KeptSounds } from '../../record/browser/kept-sounds.ts';
import { RecordDatabase } from '../../record/browser/record-database.ts';
import { DICTATED } from '../../words/shown/dictated-words.ts';

/** Plays the sound of a dictation where this device holds it, and says so where it does not. */
export function PlaySound({ sound, of }: { readonly sound: KeptSound; readonly of: string }) {
  const [file, setFile] = useState<Uint8Array<ArrayBuffer> | 'looking' | 'not here'>('looking');
  useEffect(() => {
    let gone = false;
    const database = new RecordDatabase();
    new KeptSounds(database)
      .read(sound.sha256)
      .catch(() => undefined)
      .then((found) => {
        void database.close();
        if (!gone) setFile(found ?? 'not here');
      });
    return () => {
      gone = true;
    };
  }, [sound.sha256]);
  if (file === 'looking') return null;
  if (file === 'not here') return <span className="quiet">{DICTATED.notHere}</span>;
  return (
    <button type="button" className="control" data-sound={sound.sha256} onClick={() => void play(file)}>
      {DICTATED.play}
      <span className="reader-only"> {of}</span>
    </button>
  );
}

async function play(file: Uint8Array<ArrayBuffer>): Promise<void> {
  const context = new AudioContext();
  const source = context.createBufferSource();
  // Decoding takes its buffer away: it is given a copy.
  source.buffer = await context.decodeAudioData(file.slice().buffer);
  source.connect(context.destination);
  source.onended = () => void context.close();
  source.start();
}
