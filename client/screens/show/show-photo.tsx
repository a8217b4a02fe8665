import { useEffect, useState } from 'react';
import { readFile } from '../../record/browser/kept-files.ts';
import { PHOTO } from '../../words/shown/photo-words.ts';
import { fetchAttachment } from './fetch-attachment.ts';

interface ShowPhotoProps {
  readonly sha256: string;
  /** What it shows. */
  readonly of: string;
  readonly visit: string;
}

/** So many photos are open on a page at once: the one that was opened first is closed for the next. Our choice. */
const MOST_OPEN = 24;
const open: (() => void)[] = [];

/** @returns what takes it out of those that are open */
function keepOpen(close: () => void): () => void {
  open.push(close);
  if (open.length > MOST_OPEN) open.shift()?.();
  return () => {
    const at = open.indexOf(close);
    if (at >= 0) open.splice(at, 1);
  };
}

/** Shows a photo when it is asked for: from this device where it holds it, else from the server. */
export function ShowPhoto({ sha256, of, visit }: ShowPhotoProps) {
  const [address, setAddress] = useState<string>();
  const [problem, setProblem] = useState<string>();
  useEffect(() => {
    if (address === undefined) return;
    const forget = keepOpen(() => setAddress(undefined));
    return () => {
      forget();
      URL.revokeObjectURL(address);
    };
  }, [address]);
  if (problem !== undefined) {
    return (
      <span className="quiet" role="status">
        {problem}
      </span>
    );
  }
  if (address !== undefined)
    return <img className="photo" src={address} alt={of} data-photo={sha256} decoding="async" />;
  const press = async () => {
    const file = (await readFile(sha256).catch(() => undefined)) ?? (await fetchAttachment(visit, sha256));
    if (typeof file === 'string') setProblem(file);
    else setAddress(URL.createObjectURL(new Blob([file], { type: 'image/jpeg' })));
  };
  return (
    <button type="button" className="control" onClick={() => press().catch(() => setProblem(PHOTO.notHere))}>
      {PHOTO.show}
      <span className="reader-only"> {of}</span>
    </button>
  );
}
