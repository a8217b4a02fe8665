import { type Admission, NotAdmitted } from '../admission.ts';
import type { LinkOptions } from '../link.ts';
import { readPairing, signAs } from './device-key.ts';

/** What a Link needs in a page, for the server the page came from. */
export function browserLink(page: Location = location): LinkOptions {
  const address = `${page.protocol === 'https:' ? 'wss:' : 'ws:'}//${page.host}/sync`;
  return {
    random: Math.random,
    admit: askForTicket,
    timers: {
      set: (milliseconds, elapsed) => {
        const timer = setTimeout(elapsed, milliseconds);
        return () => clearTimeout(timer);
      },
    },
    openSocket: (callbacks) => {
      const socket = new WebSocket(address);
      socket.addEventListener('open', () => callbacks.opened());
      socket.addEventListener('message', (event) => callbacks.received(String(event.data)));
      socket.addEventListener('close', (event) => callbacks.closed(event.code));
      return { send: (text) => socket.send(text), close: () => socket.close() };
    },
  };
}

/** Statuses by which the server says that someone must act: sign in, or pair this device. */
const TURNED_AWAY: ReadonlySet<number> = new Set([401, 403]);

/** A ticket for one connection or request, as whoever is signed in here and as the device that this browser is paired as. */
export async function askForTicket(): Promise<Admission | undefined> {
  const pairing = await readPairing();
  const response = await fetch('/api/ticket', {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(pairing === undefined ? {} : { device: pairing.device }),
  });
  if (TURNED_AWAY.has(response.status)) {
    const { error, sentence } = (await response.json()) as { error: string; sentence: string };
    throw new NotAdmitted(error, sentence);
  }
  if (!response.ok) throw new Error(`no ticket: ${response.status}`);
  const { ticket } = (await response.json()) as { ticket?: string };
  if (ticket === undefined) return undefined;
  return pairing === undefined ? { ticket } : { ticket, sign: (text: string) => signAs(pairing, text) };
}

/** Calls back when trying again at once is worth it: the network is back, or the page is looked at again. */
export function onReachable(reachable: () => void): () => void {
  const shown = () => {
    if (document.visibilityState === 'visible') reachable();
  };
  addEventListener('online', reachable);
  document.addEventListener('visibilitychange', shown);
  return () => {
    removeEventListener('online', reachable);
    document.removeEventListener('visibilitychange', shown);
  };
}
