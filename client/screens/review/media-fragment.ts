/**
 * The moment that an address names, in seconds: the temporal dimension of W3C Media Fragments URI 1.0, section 4.2.1
 * (`#t=12.5`, `#t=npt:0:02:03.5`, `#t=10,20`). Undefined where there is none or it does not follow the grammar; the
 * end of a range is read and passed over, since a replay goes on.
 */
export function momentOf(fragment: string): number | undefined {
  const pairs = fragment.replace(/^#/, '').split('&');
  // Where a name comes twice, the last one counts (section 5.1.1 of the specification: later overrides).
  const value = pairs.findLast((pair) => pair.startsWith('t='))?.slice(2);
  if (value === undefined) return undefined;
  const range = decoded(value)?.replace(/^npt:/, '');
  if (range === undefined) return undefined;
  const [start = '', end] = range.split(',');
  if (start === '') return end === undefined ? undefined : seconds(end) === undefined ? undefined : 0;
  const from = seconds(start);
  if (from === undefined || end === undefined) return from;
  const to = seconds(end);
  return to === undefined || to <= from ? undefined : from;
}

export function fragmentOf(moment: number): string {
  return `#t=${Math.round(moment * 10) / 10}`;
}

function decoded(text: string): string | undefined {
  try {
    return decodeURIComponent(text);
  } catch {
    return undefined;
  }
}

const SECONDS = /^\d+(\.\d*)?$/;
const MINUTES = /^([0-5]\d):([0-5]\d(?:\.\d*)?)$/;
const HOURS = /^(\d+):([0-5]\d):([0-5]\d(?:\.\d*)?)$/;

/** Normal play time: seconds, mm:ss or hh:mm:ss, each with a fraction. */
function seconds(text: string): number | undefined {
  if (SECONDS.test(text)) return Number(text);
  const minutes = MINUTES.exec(text);
  if (minutes !== null) return Number(minutes[1]) * 60 + Number(minutes[2]);
  const hours = HOURS.exec(text);
  return hours === null ? undefined : Number(hours[1]) * 3600 + Number(hours[2]) * 60 + Number(hours[3]);
}
