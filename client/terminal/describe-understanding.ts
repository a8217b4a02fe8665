import type { Understanding } from '../../grammar/phrases/meaning.ts';

/** An understanding as one flat JSON object: what was heard, its kind and verdict, then the meaning's own fields. */
export type Described = { heard: string; kind: string; verdict: string; [field: string]: unknown };

/**
 * Flattens an understanding for the tools that print one JSON object a line. A value that belongs nowhere is `unclear`
 * to whoever reads such a line: there is nothing it could be logged on.
 */
export function describeUnderstanding(understood: Understanding): Described {
  const { heard, verdict, meaning, confidence, repaired, reason, twin } = understood;
  const { kind, ...fields } =
    meaning.kind === 'value'
      ? { ...meaning, kind: 'unclear' as const, reason: reason ?? 'no-place', alternatives: [] }
      : meaning;
  return {
    heard,
    kind,
    verdict,
    ...fields,
    ...(reason && { reason }),
    ...(twin !== undefined && { twin }),
    ...(repaired && { repaired }),
    confidence: Math.round(confidence * 1000) / 1000,
  };
}
