import { useEffect, useState } from 'react';
import { REVIEW } from '../../words/pages/review-words.ts';

interface Streams {
  readonly streams: readonly { readonly head: { readonly seq: number }; readonly said?: number }[];
}

const ASK_EVERY_MS = 10_000;

/**
 * Says that devices have more of the visit than the server holds, as far as they told.
 *
 * @param held how many events came, so that it is asked again as they come
 */
export function Incomplete({ visit, held }: { readonly visit: string; readonly held: number }) {
  const [missing, setMissing] = useState<{ readonly held: number; readonly said: number }>();
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked anew as events come
  useEffect(() => {
    let shown = true;
    const ask = () =>
      fetchMissing(visit).then(
        (found) => shown && setMissing(found),
        // What was shown last stays; the link says that the server is gone.
        () => undefined,
      );
    void ask();
    const timer = setInterval(ask, ASK_EVERY_MS);
    return () => {
      shown = false;
      clearInterval(timer);
    };
  }, [visit, Math.ceil(held / 100)]);
  if (missing === undefined) return null;
  return (
    <p className="notice" role="status" data-incomplete>
      {REVIEW.notComplete(missing.held, missing.said)}
    </p>
  );
}

async function fetchMissing(visit: string): Promise<{ held: number; said: number } | undefined> {
  const response = await fetch(`/api/visits/${encodeURIComponent(visit)}`);
  if (!response.ok) return undefined;
  const { streams } = (await response.json()) as Streams;
  const held = streams.reduce((sum, { head }) => sum + head.seq, 0);
  const said = streams.reduce((sum, { head, said = head.seq }) => sum + said, 0);
  return said > held ? { held, said } : undefined;
}
