import { TAKE_OVER } from '../../words/pages/start-words.ts';
import type { DeviceVisit } from '../session/device.ts';

interface CarriedOnProps {
  readonly site: string;
  readonly by: { readonly device: string; readonly name: string; readonly time: number };
  readonly onTakeAgain: () => void;
  readonly onBack: () => void;
}

/** A visit that ran here and that another device carries on: nothing more is taken, and it can be taken back. */
export function CarriedOn({ site, by, onTakeAgain, onBack }: CarriedOnProps) {
  return (
    <main className="start" data-carried-on>
      <h1>{site}</h1>
      <p className="notice" role="alert">
        {TAKE_OVER.elsewhere(by.name, by.device, new Date(by.time).toLocaleString())}
      </p>
      <button type="button" className="key first" onClick={onBack}>
        {TAKE_OVER.back}
      </button>
      <button type="button" className="key" onClick={onTakeAgain}>
        {TAKE_OVER.takeAgain}
      </button>
      <p>{TAKE_OVER.explain}</p>
    </main>
  );
}

interface LeftVisitsProps {
  readonly visits: readonly DeviceVisit[];
  readonly onTakeAgain: (visit: string) => void;
}

/** The visits of this device that others carry on. */
export function LeftVisits({ visits, onTakeAgain }: LeftVisitsProps) {
  if (visits.length === 0) return null;
  return (
    <section data-left-visits>
      <h2>{TAKE_OVER.elsewhereTitle}</h2>
      <ul className="open-visits">
        {visits.map(({ stream, folded }) => (
          <li key={stream.visit}>
            <span>{folded.site}</span>
            <button type="button" className="key" onClick={() => onTakeAgain(stream.visit)}>
              {TAKE_OVER.takeAgain}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
