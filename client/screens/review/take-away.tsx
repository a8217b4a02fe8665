import { PRINTED } from '../../words/pages/review-words.ts';

/** The visit in the forms that other programs read, as the server gives them out. */
export function TakeAway({ visit }: { readonly visit: string }) {
  return (
    <details className="take-away">
      <summary className="control">{PRINTED.takeAway}</summary>
      <ul>
        {PRINTED.forms.map(({ file, words }) => (
          <li key={file}>
            <a href={`/api/visits/${encodeURIComponent(visit)}/${file}`} download={`${visit}-${file}`}>
              {words}
            </a>
          </li>
        ))}
      </ul>
    </details>
  );
}
