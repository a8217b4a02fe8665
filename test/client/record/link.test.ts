import { describe, expect, test } from 'vitest';
import { Link, type LinkState, type SocketCallbacks } from '../../../client/record/link.ts';
import { readServerMessage } from '../../../client/record/read-server-message.ts';

/** A link whose network and clock are moved by hand. */
function handDriven() {
  const sockets: (SocketCallbacks & { sent: string[]; closes: number })[] = [];
  const timers = new Set<{ milliseconds: number; elapsed: () => void }>();
  const states: LinkState[] = [];
  const link = new Link(
    {
      random: () => 1,
      timers: {
        set: (milliseconds, elapsed) => {
          const timer = { milliseconds, elapsed };
          timers.add(timer);
          return () => timers.delete(timer);
        },
      },
      openSocket: (callbacks) => {
        const socket = { ...callbacks, sent: [] as string[], closes: 0 };
        sockets.push(socket);
        return {
          send: (text) => socket.sent.push(text),
          close: () => {
            socket.closes += 1;
          },
        };
      },
    },
    { opened: () => undefined, received: () => undefined, changed: (state) => states.push(state) },
  );
  const elapse = () => {
    const [timer] = timers;
    if (timer === undefined) throw new Error('no timer runs');
    timers.delete(timer);
    timer.elapsed();
    return timer.milliseconds;
  };
  const latest = () => sockets.at(-1) as (typeof sockets)[number];
  return { link, sockets, timers, states, elapse, latest };
}
const ack = '{"kind":"ack","seq":1,"hash":"h"}';

describe('a link that is lost', () => {
  test('comes back after growing waits, up to half a minute, and starts over once it was answered', () => {
    const { link, elapse, latest } = handDriven();
    link.connect();
    const waits = [];
    for (let round = 0; round < 10; round += 1) {
      latest().closed(1006);
      waits.push(elapse());
    }
    expect(waits).toEqual([250, 500, 1_000, 2_000, 4_000, 8_000, 16_000, 30_000, 30_000, 30_000]);
    latest().opened();
    latest().received(ack);
    latest().closed(1012);
    expect(elapse()).toBe(250);
  });

  test('is tried at once when asked to, and only while it waits', () => {
    const { link, sockets, latest } = handDriven();
    link.connect();
    link.retryNow();
    expect(sockets).toHaveLength(1);
    latest().closed(1006);
    link.retryNow();
    expect(sockets).toHaveLength(2);
  });

  test('counts as dead after silence where an answer is due, and a late close of the old one is passed over', () => {
    const { link, sockets, elapse, latest, states } = handDriven();
    link.connect();
    latest().opened();
    link.send({ kind: 'watch', protocol: 1, company: 'c', visit: 'v', from: [] });
    expect(elapse()).toBe(15_000);
    expect(sockets[0]?.closes).toBe(1);
    expect(states.at(-1)).toMatchObject({ link: 'waiting' });
    elapse();
    latest().opened();
    sockets[0]?.closed(1006);
    expect(link.state()).toEqual({ link: 'open' });
  });

  test('may be silent where nothing is due', () => {
    const { link, timers, latest } = handDriven();
    link.connect();
    latest().opened();
    latest().received(ack);
    expect(timers.size).toBe(0);
  });
});

describe('a link that is refused', () => {
  test.each([1002, 1003, 1007, 1008, 1009])('stops at close %d, with the sentence the server gave', (code) => {
    const { link, timers, latest } = handDriven();
    link.connect();
    latest().opened();
    latest().received('{"kind":"error","code":"chain-broken","sentence":"Do this."}');
    latest().closed(code);
    expect(link.state()).toEqual({ link: 'stopped', code: 'chain-broken', sentence: 'Do this.' });
    expect(timers.size).toBe(0);
    link.connect();
    expect(link.state()).toMatchObject({ link: 'stopped' });
  });

  test.each([1001, 1006, 1011, 1012, 1013])('waits and tries again at close %d', (code) => {
    const { link, latest } = handDriven();
    link.connect();
    latest().opened();
    latest().closed(code);
    expect(link.state()).toMatchObject({ link: 'waiting' });
  });

  test.each(['not json', '[]', '{"kind":"song"}', '{"kind":"ack","seq":"1","hash":"h"}', '{"kind":"welcome"}', 'null'])(
    'stops at an answer it does not know: %s',
    (text) => {
      const { link, latest } = handDriven();
      link.connect();
      latest().opened();
      latest().received(text);
      expect(link.state()).toMatchObject({ link: 'stopped', code: 'server-unknown' });
    },
  );

  test('passes over fields that a newer server adds', () => {
    expect(readServerMessage('{"kind":"ack","seq":1,"hash":"h","colour":"red"}')).toMatchObject({
      kind: 'ack',
      seq: 1,
    });
  });
});
