import { useState } from 'react';
import { TAKE_OVER } from '../../words/pages/start-words.ts';
import type { Device } from '../session/device.ts';
import type { VisitElsewhere } from '../session/take-over.ts';

interface VisitsElsewhereProps {
  readonly device: Device;
  readonly onTake: (visit: string) => void;
}

/** The open visits that other devices hold: looked for when asked, since it takes the network. */
export function VisitsElsewhere({ device, onTake }: VisitsElsewhereProps) {
  const [found, setFound] = useState<'looking' | readonly VisitElsewhere[] | string>();
  const look = () => {
    setFound('looking');
    device
      .visitsElsewhere()
      .then(setFound, (error: unknown) => setFound(error instanceof Error ? error.message : String(error)));
  };
  return (
    <section data-visits-elsewhere>
      <h2>{TAKE_OVER.title}</h2>
      <button type="button" className="key" onClick={look}>
        {TAKE_OVER.look}
      </button>
      <Found found={found} onTake={onTake} />
    </section>
  );
}

interface FoundProps {
  readonly found: 'looking' | readonly VisitElsewhere[] | string | undefined;
  readonly onTake: (visit: string) => void;
}

function Found({ found, onTake }: FoundProps) {
  if (found === undefined) return null;
  if (typeof found === 'string') return <p role="status">{found === 'looking' ? TAKE_OVER.looking : found}</p>;
  if (found.length === 0) return <p role="status">{TAKE_OVER.none}</p>;
  return (
    <>
      <p>{TAKE_OVER.explain}</p>
      <ul className="open-visits">
        {found.map(({ visit, site, holder, lastReceivedAt }) => (
          <li key={visit}>
            <button type="button" className="key" onClick={() => onTake(visit)}>
              {TAKE_OVER.take(site)}
            </button>
            <span className="quiet">{TAKE_OVER.held(holder, new Date(lastReceivedAt).toLocaleString())}</span>
          </li>
        ))}
      </ul>
    </>
  );
}
