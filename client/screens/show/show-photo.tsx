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

/** Shows a photo when it is asked for: from this device where it holds it, else from the server. */
export function ShowPhoto({ sha256, of, visit }: ShowPhotoProps) {
  const [address, setAddress] = useState<string>();
  const [problem, setProblem] = useState<string>();
  useEffect(() => () => (address === undefined ? undefined : URL.revokeObjectURL(address)), [address]);
  if (problem !== undefined) {
    return (
      <span className="quiet" role="status">
        {problem}
      </span>
    );
  }
  if (address !== undefined) return <img className="photo" src={address} alt={of} data-photo={sha256} />;
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
