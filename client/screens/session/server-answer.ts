import { SIGN_IN } from '../../words/pages/people-words.ts';

/** What the server answers: what was asked for, or its sentence that says what to do. */
export type ServerAnswer<Body> =
  | { readonly ok: true; readonly body: Body }
  | { readonly ok: false; readonly status: number; readonly sentence: string };

/** Asks the server. A network that is away is a sentence too. */
export async function askServer<Body = undefined>(
  method: 'GET' | 'POST' | 'PATCH' | 'DELETE',
  path: string,
  body?: object,
): Promise<ServerAnswer<Body>> {
  try {
    const response = await fetch(path, { method, ...sentAs(body) });
    const answer = response.status === 204 ? undefined : await response.json();
    if (response.ok) return { ok: true, body: answer as Body };
    return { ok: false, status: response.status, sentence: (answer as { sentence: string }).sentence };
  } catch {
    return { ok: false, status: 0, sentence: SIGN_IN.noServer };
  }
}

/** A file goes as it is, by its own type; all else as JSON. */
function sentAs(body: object | undefined): RequestInit {
  if (body === undefined) return {};
  if (body instanceof Blob) return { body, headers: { 'content-type': body.type || 'application/jsonl' } };
  return { body: JSON.stringify(body), headers: { 'content-type': 'application/json' } };
}
