import { createServer, type IncomingMessage, request, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';

/**
 * Stands before the server as one that is updated: until `update` it passes everything on, then its pages are of a
 * newer version, told by a mark in their head, and its service worker with them. WebSockets are passed on as they are.
 */
export class VersionsProxy {
  readonly url: string;
  readonly #server: Server;
  #isNewer = false;

  private constructor(server: Server) {
    this.#server = server;
    this.url = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  }

  static async start(target: string): Promise<VersionsProxy> {
    const { hostname, port } = new URL(target);
    let isNewer = () => false;
    const server = createServer((asked, answer) => pass({ hostname, port }, asked, answer, isNewer()));
    server.on('upgrade', (asked, socket, head) => {
      const passed = request({ hostname, port, path: asked.url, headers: asked.headers, method: asked.method });
      passed.on('upgrade', (response, other, rest) => {
        const lines = Object.entries(response.headers).map(([name, value]) => `${name}: ${String(value)}`);
        socket.write(`HTTP/1.1 101 Switching Protocols\r\n${lines.join('\r\n')}\r\n\r\n`);
        other.write(head);
        socket.write(rest);
        other.pipe(socket).pipe(other);
        const end = () => {
          socket.destroy();
          other.destroy();
        };
        socket.on('error', end);
        other.on('error', end);
      });
      passed.on('error', () => socket.destroy());
      passed.end();
    });
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    const proxy = new VersionsProxy(server);
    isNewer = () => proxy.#isNewer;
    return proxy;
  }

  update(): void {
    this.#isNewer = true;
  }

  async stop(): Promise<void> {
    this.#server.closeAllConnections();
    await new Promise((resolve) => this.#server.close(resolve));
  }
}

const MARK = '<meta name="newer-version" content="yes" />';

function pass(
  target: { readonly hostname: string; readonly port: string },
  asked: IncomingMessage,
  answer: ServerResponse,
  isNewer: boolean,
): void {
  const path = asked.url?.split('?')[0] ?? '/';
  const changed = isNewer ? CHANGED[path] : undefined;
  const headers = changed === undefined ? asked.headers : { ...asked.headers, 'accept-encoding': 'identity' };
  for (const name of changed === undefined ? [] : ['if-none-match', 'if-modified-since']) delete headers[name];
  const passed = request({ ...target, path: asked.url, method: asked.method, headers }, (response) => {
    if (changed === undefined) {
      answer.writeHead(response.statusCode ?? 502, response.headers);
      response.pipe(answer);
      return;
    }
    const parts: Buffer[] = [];
    response.on('data', (part: Buffer) => parts.push(part));
    response.on('end', () => {
      const { 'content-length': _length, etag: _etag, ...rest } = response.headers;
      answer.writeHead(response.statusCode ?? 502, rest);
      answer.end(changed(Buffer.concat(parts).toString('utf8')));
    });
  });
  passed.on('error', () => answer.destroy());
  asked.pipe(passed);
}

const marked = (page: string): string => page.replace('<head>', `<head>${MARK}`);
/** What a newer version changes. */
const CHANGED: Readonly<Record<string, (text: string) => string>> = {
  '/': marked,
  '/index.html': marked,
  '/service-worker.js': (script) => script.replace(/(url:"index\.html",revision:")[^"]*"/, '$1newer"'),
};
