import { useState } from 'react';
import type { KeptSound } from '../../../grammar/visit/kept-sound.ts';
import { readFile } from '../../record/browser/kept-files.ts';
import { KeptSounds } from '../../record/browser/kept-sounds.ts';
import { RecordDatabase } from '../../record/browser/record-database.ts';
import { DICTATED } from '../../words/shown/dictated-words.ts';
import { fetchAttachment } from './fetch-attachment.ts';

interface PlaySoundProps {
  readonly sound: KeptSound;
  /** What was said. */
  readonly of: string;
  readonly visit: string;
}

/**
 * Plays the sound of an utterance: from this device where it holds it, else from the server, which puts that on its trail.
 * Where neither gives it, why stands in its place.
 */
export function PlaySound({ sound, of, visit }: PlaySoundProps) {
  const [problem, setProblem] = useState<string>();
  const [playing, setPlaying] = useState<number>();
  if (problem !== undefined) {
    return (
      <span className="quiet" role="status">
        {problem}
      </span>
    );
  }
  const press = async () => {
    const file = (await readHere(sound)) ?? (await fetchSound(sound, visit));
    if (typeof file === 'string') setProblem(file);
    else setPlaying(await play(file));
  };
  return (
    <button
      type="button"
      className="control"
      data-sound={sound.sha256}
      data-played={playing}
      onClick={() => press().catch(() => setProblem(DICTATED.notHere))}
    >
      {DICTATED.play}
      <span className="reader-only"> {of}</span>
    </button>
  );
}

async function readHere({ sha256, sealed }: KeptSound): Promise<Uint8Array<ArrayBuffer> | undefined> {
  if (sealed === true) return readFile(sha256).catch(() => undefined);
  const database = new RecordDatabase();
  try {
    return await new KeptSounds(database).read(sha256);
  } catch {
    return undefined;
  } finally {
    void database.close();
  }
}

/** The file, or the sentence that says why there is none. */
async function fetchSound({ sha256, sealed }: KeptSound, visit: string): Promise<Uint8Array<ArrayBuffer> | string> {
  if (sealed !== true) return DICTATED.notHere;
  return fetchAttachment(visit, sha256);
}

/** Begins to play; resolves to how many milliseconds it lasts. */
async function play(file: Uint8Array<ArrayBuffer>): Promise<number> {
  const context = new AudioContext();
  const source = context.createBufferSource();
  // Decoding takes its buffer away: it is given a copy.
  source.buffer = await context.decodeAudioData(file.slice().buffer);
  source.connect(context.destination);
  source.onended = () => void context.close();
  source.start();
  return Math.round(source.buffer.duration * 1000);
}
