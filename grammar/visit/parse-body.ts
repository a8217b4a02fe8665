/**
 * Lists and records within each other that a body may have; the events of every version have less than a quarter of it.
 * What lies deeper is no event, and whoever goes through one needs no bound of their own.
 */
export const MOST_NESTED = 64;

/** What a body of a record holds; undefined where it is no JSON, or is nested deeper than any event. */
export function parseBody(body: string): unknown {
  if (isTooDeep(body)) return undefined;
  try {
    return JSON.parse(body);
  } catch {
    return undefined;
  }
}

/** Whether it is nested deeper than any event; without parsing it, and without going into it. */
export function isTooDeep(body: string): boolean {
  // Nearly every body has fewer of these at all.
  if (!hasMoreThan(body, MOST_NESTED)) return false;
  let [depth, inText] = [0, false];
  for (let at = 0; at < body.length; at += 1) {
    const code = body.charCodeAt(at);
    if (inText) {
      if (code === BACKSLASH) at += 1;
      else if (code === QUOTE) inText = false;
    } else if (code === QUOTE) inText = true;
    else if (code === LIST || code === RECORD) {
      depth += 1;
      if (depth > MOST_NESTED) return true;
    } else if (code === LIST_END || code === RECORD_END) depth -= 1;
  }
  return false;
}

const [QUOTE, BACKSLASH, LIST, LIST_END, RECORD, RECORD_END] = [0x22, 0x5c, 0x5b, 0x5d, 0x7b, 0x7d];

/** Whether so many lists and records begin in it, wherever. */
function hasMoreThan(body: string, most: number): boolean {
  let count = 0;
  for (const begin of ['[', '{']) {
    for (let at = body.indexOf(begin); at >= 0; at = body.indexOf(begin, at + 1)) {
      count += 1;
      if (count > most) return true;
    }
  }
  return false;
}
