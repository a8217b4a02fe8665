import { PEOPLE } from '../../words/pages/people-words.ts';
import { showTime } from './device-table.tsx';

export interface TrailLine {
  readonly id: number;
  /** Milliseconds since 1970. */
  readonly at: number;
  readonly person: string;
  readonly device: string;
  readonly deed: string;
  readonly outcome: 'done' | 'refused';
  readonly detail: string;
  readonly times: number;
}

interface TrailProps {
  readonly lines: readonly TrailLine[];
  readonly nameOf: (person: string) => string | undefined;
}

/** What was done and what was refused, the latest first. */
export function Trail({ lines, nameOf }: TrailProps) {
  return (
    <section>
      <h2>{PEOPLE.trail}</h2>
      <div className="wide-table">
        <table>
          <thead>
            <tr>
              <th scope="col">{PEOPLE.at}</th>
              <th scope="col">{PEOPLE.who}</th>
              <th scope="col">{PEOPLE.what}</th>
              <th scope="col">{PEOPLE.state}</th>
            </tr>
          </thead>
          <tbody>
            {lines.map(({ id, at, person, device, deed, outcome, detail, times }) => (
              <tr key={id}>
                <td>{showTime(at)}</td>
                <td>{nameOf(person) ?? (person || device || PEOPLE.nobody)}</td>
                <td>
                  {deed} <span className="quiet">{detail}</span>
                </td>
                <td>
                  {outcome === 'refused' ? PEOPLE.refused : PEOPLE.done}
                  {PEOPLE.times(times)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}
