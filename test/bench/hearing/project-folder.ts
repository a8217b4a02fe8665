import { existsSync } from 'node:fs';

/** A folder of the checkout, from its sources and from what was built of them alike. Ends with a slash. */
export function projectFolder(name: string): URL {
  for (let at = new URL('./', import.meta.url); at.pathname !== '/'; at = new URL('../', at)) {
    if (existsSync(new URL('package-lock.json', at))) return new URL(`${name}/`, at);
  }
  throw new Error('this runs inside a checkout only');
}
