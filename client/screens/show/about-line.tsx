import { PAGE } from '../../words/pages/page-words.ts';

/** The version of these pages, and the licences of what they are made with; a page of its own, so that a visit stays. */
export function AboutLine() {
  return (
    <p className="quiet about">
      {PAGE.version(__VERSION__)}{' '}
      <a href="/third-party-notices.txt" target="_blank" rel="noopener">
        {PAGE.notices}
      </a>
    </p>
  );
}
