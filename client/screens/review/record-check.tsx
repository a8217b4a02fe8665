import { useState } from 'react';
import { CHECK } from '../../words/pages/review-words.ts';

/** What the server answers when it has read a visit anew from its disk. */
interface Checked {
  readonly events: number;
  readonly findings: readonly { readonly stream: string; readonly sentence: string }[];
  readonly notes: readonly string[];
  readonly unknown: readonly string[];
}

/** A key that has the server verify the visit's record, and what came of it. */
export function RecordCheck({ visit }: { readonly visit: string }) {
  const [checked, setChecked] = useState<Checked | 'asking' | 'not asked'>();
  const ask = () => {
    setChecked('asking');
    fetchCheck(visit)
      .then(setChecked)
      .catch(() => setChecked('not asked'));
  };
  return (
    <div className="record-check">
      <button type="button" className="control" onClick={ask} disabled={checked === 'asking'}>
        {CHECK.button}
      </button>
      {checked === undefined ? null : (
        <div role="status" className="record-check-said">
          {typeof checked === 'string' ? (
            <p>{checked === 'asking' ? CHECK.asking : CHECK.notAsked}</p>
          ) : (
            <CheckedWords checked={checked} />
          )}
        </div>
      )}
    </div>
  );
}

function CheckedWords({ checked: { events, findings, notes, unknown } }: { readonly checked: Checked }) {
  return (
    <>
      <p className={findings.length === 0 ? '' : 'notice'}>
        {findings.length === 0 ? CHECK.nothing(events) : CHECK.findings(findings.length)}
      </p>
      <ul>
        {findings.map(({ stream, sentence }) => (
          <li key={`${stream} ${sentence}`}>{sentence}</li>
        ))}
        {[...notes, ...unknown.map(CHECK.unknown)].map((sentence) => (
          <li key={sentence} className="quiet">
            {sentence}
          </li>
        ))}
      </ul>
    </>
  );
}

async function fetchCheck(visit: string): Promise<Checked> {
  const response = await fetch(`/api/visits/${encodeURIComponent(visit)}/check`);
  if (!response.ok) throw new Error(String(response.status));
  return (await response.json()) as Checked;
}
