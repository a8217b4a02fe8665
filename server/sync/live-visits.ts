import type { ServerMessage } from '../../grammar/visit/messages.ts';

/** Which visits are written at this moment, and the way to their devices. */
export class LiveVisits {
  readonly #visits = new Map<string, Set<(message: ServerMessage) => void>>();

  /** To be called by a connection that was welcomed to a stream; what is returned is called when it ends. */
  join(company: string, visit: string, send: (message: ServerMessage) => void): () => void {
    const name = `${company}/${visit}`;
    const writing = this.#visits.get(name) ?? new Set();
    this.#visits.set(name, writing.add(send));
    return () => {
      writing.delete(send);
      if (writing.size === 0) this.#visits.delete(name);
    };
  }

  /** Says it to every device that writes the visit; how many that are. */
  say(company: string, visit: string, message: ServerMessage): number {
    const writing = this.#visits.get(`${company}/${visit}`) ?? new Set();
    for (const send of writing) send(message);
    return writing.size;
  }
}
