import type { LinkOptions, OpenSocket } from '../../../client/record/link.ts';

/** What the network does to one message on its way to the server. */
export type Fate = 'pass' | 'double' | 'swap' | 'lose' | 'cut';

/**
 * A network between a link and its real server that doubles, swaps and loses messages and cuts connections, as the
 * fates say, one a message; when they are used up it heals. Waits pass a hundred times faster.
 */
export function badNetwork(real: LinkOptions, fates: readonly Fate[]): LinkOptions {
  const left = [...fates];
  const openSocket: OpenSocket = (callbacks) => {
    let open = true;
    const socket = real.openSocket({ ...callbacks, closed: (code) => close(code) });
    const close = (code: number) => {
      if (!open) return;
      open = false;
      socket.close();
      callbacks.closed(code);
    };
    let waiting: string | undefined;
    const send = (text: string) => {
      const drawn = left.shift() ?? 'pass';
      // Doubling and swapping is what a client that sends again does to events; a greeting is said once a connection.
      const fate = text.includes('"hello"') && (drawn === 'double' || drawn === 'swap') ? 'pass' : drawn;
      if (fate === 'cut') return close(1006);
      if (fate === 'lose') return;
      if (fate === 'swap' && waiting === undefined) {
        waiting = text;
        return;
      }
      socket.send(text);
      if (fate === 'double') socket.send(text);
      if (waiting !== undefined) socket.send(waiting);
      waiting = undefined;
    };
    return { send, close: () => close(1000) };
  };
  return {
    random: real.random,
    timers: { set: (milliseconds, elapsed) => real.timers.set(milliseconds / 100, elapsed) },
    openSocket,
  };
}
