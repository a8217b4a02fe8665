import type { TestMade } from '../../practice/exercise-log.ts';
import { capital } from '../../words/capital.ts';
import { DEBRIEF } from '../../words/practice/debrief-words.ts';
import { PRACTICE } from '../../words/practice/practice-page-words.ts';

/** What the last test showed, what each suspect had said that it would show, and who is left. */
export function TestMadePanel({ made }: { readonly made: TestMade }) {
  const { shown, expected, after, before } = made;
  const value =
    typeof shown === 'string' ? DEBRIEF.shown(shown, 'observation') : DEBRIEF.shown(shown.value, shown.unit);
  const share = (among: typeof after, fault: string) => {
    const found = among.find((one) => one.fault === fault);
    return found === undefined ? '–' : `${Math.round(100 * found.probability)} %`;
  };
  const faults = [...new Set([...after, ...before].map(({ fault }) => fault))].slice(0, 8);
  return (
    <section className="practice-made" aria-label={PRACTICE.lastTest} data-redundant={made.redundant}>
      <h2>
        {capital(made.what)} <span className="practice-value">{value}</span>
      </h2>
      <p className={made.redundant ? 'practice-idle' : 'quiet'}>
        {made.redundant ? DEBRIEF.toldNothing : DEBRIEF.couldTell(made.bits, made.open)}
      </p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by the keyboard */}
      <section className="practice-scroll" tabIndex={0} aria-label={PRACTICE.lastTable}>
        <table className="practice-table">
          <thead>
            <tr>
              <th scope="col">{PRACTICE.suspectHead}</th>
              <th scope="col">{PRACTICE.wouldShow}</th>
              <th scope="col">{PRACTICE.before}</th>
              <th scope="col">{PRACTICE.now}</th>
            </tr>
          </thead>
          <tbody>
            {faults.map((fault) => {
              const said = expected.find((one) => one.fault === fault);
              return (
                <tr key={fault}>
                  <th scope="row">
                    {capital(DEBRIEF.suspected(fault))}
                    {made.hypothesis === fault ? <span className="practice-yours"> {PRACTICE.yours}</span> : null}
                  </th>
                  <td>{said === undefined ? '–' : DEBRIEF.shown(said.expected, said.unit)}</td>
                  <td>{share(before, fault)}</td>
                  <td>{share(after, fault)}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </section>
    </section>
  );
}
