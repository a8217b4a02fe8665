import type { LinkOptions } from '../link.ts';

/** What a Link needs in a page, for the server the page came from. */
export function browserLink(page: Location = location): LinkOptions {
  const address = `${page.protocol === 'https:' ? 'wss:' : 'ws:'}//${page.host}/sync`;
  return {
    random: Math.random,
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
