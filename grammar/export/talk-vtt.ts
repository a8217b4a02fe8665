import type { FoldedVisit } from '../visit/fold-visit.ts';

/** A cue stands until the next one, and no longer than this. */
const LONGEST_MS = 6_000;
/** A cue has some length, also where two come at once. */
const SHORTEST_MS = 500;

interface Spoken {
  readonly seq: number;
  readonly at: string;
  readonly voice: 'Technician' | 'Readback';
  readonly text: string;
}

/**
 * The talk of a visit as WebVTT (W3C): a cue for all that was heard and said, with its voice, on the visit's clock, which
 * begins with the first event. A clock that was set back on the way stands still until it is past that.
 */
export function talkVtt({ heard, said, first }: Pick<FoldedVisit, 'heard' | 'said' | 'first'>): string {
  const spoken: Spoken[] = [
    ...heard.map(({ seq, time, text }) => ({ seq, at: time.at, voice: 'Technician' as const, text })),
    ...said.map(({ seq, time, text }) => ({ seq, at: time.at, voice: 'Readback' as const, text })),
  ].sort((a, b) => a.seq - b.seq);
  const began = Date.parse(first?.time.at ?? '');
  let latest = 0;
  const starts = spoken.map(({ at }) => {
    latest = Math.max(latest, Date.parse(at) - began || 0);
    return latest;
  });
  const cues = spoken.map(({ seq, voice, text }, at) => {
    const from = starts[at] ?? 0;
    const next = starts.find((start) => start > from) ?? Number.POSITIVE_INFINITY;
    const to = Math.max(from + SHORTEST_MS, Math.min(next, from + LONGEST_MS));
    return `${seq}\n${clock(from)} --> ${clock(to)}\n<v ${voice}>${escaped(text)}\n`;
  });
  return ['WEBVTT\n', ...cues].join('\n');
}

function clock(ms: number): string {
  const part = (value: number, digits: number) => String(Math.floor(value)).padStart(digits, '0');
  return `${part(ms / 3_600_000, 2)}:${part((ms / 60_000) % 60, 2)}:${part((ms / 1_000) % 60, 2)}.${part(ms % 1_000, 3)}`;
}

/** A cue's text ends at an empty line, and its own signs are escaped. */
function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll(/\s+/g, ' ').trim();
}
