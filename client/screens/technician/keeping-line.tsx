import { useState, useSyncExternalStore } from 'react';
import { KEEPING } from '../../words/pages/start-words.ts';
import { keeping, startNewerVersion } from '../session/keep-for-offline.ts';

/** How much of the program is on the device, while it comes; and that a newer version waits. */
export function KeepingLine({ mayStart = false }: { readonly mayStart?: boolean }) {
  const { bytes, waits } = useSyncExternalStore(keeping.subscribe, keeping.state);
  const [isRefused, setRefused] = useState(false);
  return (
    <>
      {bytes === undefined ? null : bytes.kept < bytes.of ? (
        <p className="quiet" role="status" data-keeping={bytes.kept} data-keeping-of={bytes.of}>
          {KEEPING.comes(bytes.kept, bytes.of)}{' '}
          <progress value={bytes.kept} max={bytes.of} aria-label={KEEPING.label} />
        </p>
      ) : (
        <p className="quiet" data-kept={bytes.of}>
          {KEEPING.here(bytes.of)}
        </p>
      )}
      {waits ? (
        <div className="notice" role="status" data-newer-version>
          <p>{isRefused ? KEEPING.visitRuns : mayStart ? KEEPING.waits : KEEPING.waitsForVisit}</p>
          {mayStart ? (
            <button
              type="button"
              className="control"
              onClick={() => void startNewerVersion().then((begun) => setRefused(!begun))}
            >
              {KEEPING.start}
            </button>
          ) : null}
        </div>
      ) : null}
    </>
  );
}
