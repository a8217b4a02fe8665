import { useEffect, useState } from 'react';
import type { SentSoFar } from '../../record/send-unsent.ts';
import { KEPT } from '../../words/pages/start-words.ts';
import type { Device, DeviceVisit } from '../session/device.ts';
import { UNSENT_CHANGED } from '../session/send-in-background.ts';
import { ReadingTable } from '../show/reading-table.tsx';

interface KeptVisitsProps {
  readonly device: Device;
  /** Closed visits of this device. */
  readonly visits: readonly DeviceVisit[];
  readonly onRead: (visit: DeviceVisit) => void;
}

/** The closed visits on this device, each with what the server does not have of it yet. */
export function KeptVisits({ device, visits, onRead }: KeptVisitsProps) {
  const unsent = useUnsent(device);
  if (visits.length === 0) return null;
  return (
    <section>
      <h2>{KEPT.title}</h2>
      <ul className="kept-visits">
        {visits.map((visit) => (
          <li key={visit.stream.visit}>
            <button type="button" className="key" onClick={() => onRead(visit)}>
              {KEPT.visit(visit.folded.site, visit.folded.complaint)}
            </button>
            <span className="quiet">
              {sentWords(unsent.filter(({ stream }) => stream.visit === visit.stream.visit))}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

function sentWords(unsent: readonly SentSoFar[]): string {
  const count = unsent.reduce((sum, { written, acknowledged }) => sum + written - acknowledged, 0);
  return count === 0 ? KEPT.sent : KEPT.unsent(count);
}

/** What is unsent on this device, as it is sent. */
export function useUnsent(device: Device): readonly SentSoFar[] {
  const [unsent, setUnsent] = useState<readonly SentSoFar[]>([]);
  useEffect(() => {
    const look = () => {
      device.unsent().then(setUnsent, () => undefined);
    };
    look();
    addEventListener(UNSENT_CHANGED, look);
    return () => removeEventListener(UNSENT_CHANGED, look);
  }, [device]);
  return unsent;
}

/** One closed visit as it was left: what was found, for the next technician and in plain words, and its readings. */
export function KeptVisit({ visit, onBack }: { readonly visit: DeviceVisit; readonly onBack: () => void }) {
  const { folded } = visit;
  const { summary } = folded;
  return (
    <main className="start" data-kept-visit>
      <h1>{KEPT.visit(folded.site, folded.complaint)}</h1>
      <button type="button" className="key" onClick={onBack}>
        {KEPT.back}
      </button>
      {summary === undefined ? null : (
        <>
          <p>{summary.plain}</p>
          <h2>{KEPT.open}</h2>
          <ul>
            {summary.openItems.map((item) => (
              <li key={item}>{item}</li>
            ))}
          </ul>
        </>
      )}
      <ReadingTable readings={folded.readings} />
    </main>
  );
}
