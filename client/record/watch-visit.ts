import { PROTOCOL, type ServerMessage, type WatchedEvent } from '../../grammar/visit/messages.ts';
import { Link, type LinkOptions, type LinkState } from './link.ts';

export interface WatchOptions extends LinkOptions {
  readonly company: string;
  readonly visit: string;
  /** Events that are here already, by another way: it goes on behind them. */
  readonly held?: readonly Pick<WatchedEvent, 'device' | 'epoch' | 'seq'>[];
  /** Events in order; `level` once the watcher has come level with the server, from then on they are live. */
  readonly events: (events: readonly WatchedEvent[], level: boolean) => void;
  readonly changed?: (state: LinkState) => void;
}

export interface VisitWatch {
  retryNow(): void;
  stop(): void;
}

/** Follows a visit as it grows, from its first event on; after a lost connection it goes on where it was. */
export function watchVisit(options: WatchOptions): VisitWatch {
  /** How far each stream (device and epoch) has come here. */
  const heads = new Map<string, { device: string; epoch: number; seq: number }>();
  for (const { device, epoch, seq } of options.held ?? []) {
    const key = streamKey({ device, epoch });
    heads.set(key, { device, epoch, seq: Math.max(seq, heads.get(key)?.seq ?? 0) });
  }
  const link = new Link(options, {
    opened: () =>
      link.open({
        kind: 'watch',
        protocol: PROTOCOL,
        company: options.company,
        visit: options.visit,
        from: [...heads.values()],
      }),
    received: (message: ServerMessage) => {
      if (message.kind !== 'events') return;
      // The server speaks at least every ten seconds on a watch: silence means that the connection is dead.
      link.expectAnswer();
      const fresh = message.events.filter((event) => event.seq > (heads.get(streamKey(event))?.seq ?? 0));
      for (const event of fresh) {
        heads.set(streamKey(event), { device: event.device, epoch: event.epoch, seq: event.seq });
      }
      options.events(fresh, message.level);
    },
    changed: (state) => options.changed?.(state),
  });
  link.connect();
  return { retryNow: () => link.retryNow(), stop: () => link.stop('ended', 'The watch was ended here.') };
}

function streamKey(event: { readonly device: string; readonly epoch: number }): string {
  return `${event.device}/${event.epoch}`;
}
