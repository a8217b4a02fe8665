import { PRINTED } from '../../words/pages/review-words.ts';

/** The visit in the forms that other programs read, as the server gives them out. */
export function TakeAway({ visit }: { readonly visit: string }) {
  return (
    <span className="take-away">
      {PRINTED.takeAway}{' '}
      {PRINTED.forms.map(({ file, words }) => (
        <a key={file} href={`/api/visits/${encodeURIComponent(visit)}/${file}`} download={`${visit}-${file}`}>
          {words}
        </a>
      ))}
    </span>
  );
}
