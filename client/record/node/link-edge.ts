import { WebSocket } from 'ws';
import type { LinkOptions } from '../link.ts';

/**
 * What a Link needs in Node, for the server at `serverUrl` (such as http://127.0.0.1:8470). It names the server's own
 * address as its origin, as a page of that server would: the server refuses a connection without one.
 */
export function nodeLink(serverUrl: string): LinkOptions {
  const server = new URL(serverUrl);
  const address = new URL('/sync', server);
  address.protocol = server.protocol === 'https:' ? 'wss:' : 'ws:';
  return {
    random: Math.random,
    timers: {
      set: (milliseconds, elapsed) => {
        const timer = setTimeout(elapsed, milliseconds);
        return () => clearTimeout(timer);
      },
    },
    openSocket: (callbacks) => {
      const socket = new WebSocket(address, { origin: server.origin, perMessageDeflate: false });
      socket.on('open', callbacks.opened);
      socket.on('message', (data) => callbacks.received(data.toString()));
      socket.on('close', callbacks.closed);
      // 'close' follows every error and is what the link acts on.
      socket.on('error', () => undefined);
      return { send: (text) => socket.send(text), close: () => socket.close() };
    },
  };
}
