import { type Configuration, isLoopback } from './configuration.ts';

/** Which pages may connect, and under which names the server may be asked. */
export type OriginRule =
  /** Reached from this machine only: any loopback name, so that a page elsewhere cannot pose under a name of its own. */
  | { readonly kind: 'loopback' }
  /** Our own certificate vouches for the name. */
  | { readonly kind: 'tls' }
  | { readonly kind: 'proxy'; readonly origin: string };

export function originRule(configuration: Configuration): OriginRule {
  if (configuration.proxyOrigin !== undefined) return { kind: 'proxy', origin: configuration.proxyOrigin };
  if (configuration.tls !== undefined) return { kind: 'tls' };
  return { kind: 'loopback' };
}

/** True where nobody but this machine reaches the server: it then needs nobody to sign in. */
export function onlyThisMachine({ host, proxyOrigin }: Pick<Configuration, 'host' | 'proxyOrigin'>): boolean {
  return isLoopback(host) && proxyOrigin === undefined;
}

/** True where the Host header is a name this server goes by. A browser cannot be made to send another page's. */
export function allowedHost(rule: OriginRule, host: string | undefined): boolean {
  if (host === undefined) return false;
  if (rule.kind !== 'loopback') return true;
  return isLoopback(host.replace(/:\d+$/, ''));
}

/**
 * True where the page that connects is one of ours. A WebSocket is not held back by the same-origin policy, so the
 * Origin must be there and match; programs that are no browser name the server's own address.
 */
export function allowedOrigin(rule: OriginRule, origin: string | undefined, host: string | undefined): boolean {
  if (origin === undefined || !allowedHost(rule, host)) return false;
  switch (rule.kind) {
    case 'proxy':
      return origin === rule.origin;
    case 'tls':
      return origin === `https://${host}`;
    case 'loopback':
      return origin === `http://${host}`;
  }
}

/** The address to open instead. */
export function ownAddress(rule: OriginRule, host: string | undefined): string {
  if (rule.kind === 'proxy') return rule.origin;
  const scheme = rule.kind === 'tls' ? 'https' : 'http';
  return `${scheme}://${allowedHost(rule, host) ? host : '127.0.0.1'}`;
}
