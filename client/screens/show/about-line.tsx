/** The version of these pages, and the licences of what they are made with; a page of its own, so that a visit stays. */
export function AboutLine() {
  return (
    <p className="quiet about">
      Readback {__VERSION__}.{' '}
      <a href="/third-party-notices.txt" target="_blank" rel="noopener">
        Third-party notices
      </a>
    </p>
  );
}
