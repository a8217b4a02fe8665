import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { getJson } from './get-json.ts';
import { chainFor, RawClient, type RunningApp, runApp, streamOf } from './running-app.ts';

const NOW = 1_760_000_000_000;
const THREE_YEARS = 3 * 365 * 86_400_000;
let now = NOW;
let server: RunningApp;
beforeAll(async () => {
  server = await runApp({ clock: () => now });
});
afterAll(() => server.stop());

const flagsOf = async (visit: string) => {
  const { streams } = await getJson<{ streams: { flags: string[] }[] }>(`${server.url}/api/visits/${visit}`);
  return streams.flatMap((stream) => stream.flags);
};
const clockOf = async () => (await getJson<{ clock: string }>(`${server.url}/api/health`)).clock;

/** One connection that sends the events, at the device's clock where it tells one. */
async function send(visit: string, bodies: readonly string[], from: number, clock?: number): Promise<void> {
  const client = await RawClient.open(server.url);
  client.say({ kind: 'hello', protocol: 1, stream: streamOf(visit), ...(clock === undefined ? {} : { clock }) });
  expect(await client.hear()).toMatchObject({ kind: 'welcome', clock: now });
  for (const entry of (await chainFor(streamOf(visit), bodies)).slice(from)) {
    client.say({ kind: 'append', ...entry });
    expect(await client.hear()).toMatchObject({ kind: 'ack', seq: entry.seq });
  }
  client.socket.close();
}

describe('clocks that disagree', () => {
  test('a server whose clock falls back three years takes the events, and flags them', async () => {
    await send('v-back', ['one'], 0);
    expect(await flagsOf('v-back')).toEqual([]);
    expect(await clockOf()).toBe('ok');
    now = NOW - THREE_YEARS;
    await send('v-back', ['one', 'two'], 1);
    expect(await flagsOf('v-back')).toEqual(['received-backwards']);
    now = NOW - THREE_YEARS - 1;
    expect(await clockOf()).toBe('behind');
    now = NOW;
    const { events } = await getJson<{ events: { body: string }[] }>(`${server.url}/api/visits/v-back/events`);
    expect(events.map((event) => event.body)).toEqual(['one', 'two']);
  });

  test('a server whose clock runs three years ahead takes the events, and flags them once it is set right', async () => {
    now = NOW + THREE_YEARS;
    await send('v-ahead', ['one'], 0);
    now = NOW;
    await send('v-ahead', ['one', 'two'], 1);
    expect(await flagsOf('v-ahead')).toEqual(['received-backwards']);
    const { events } = await getJson<{ events: { body: string }[] }>(`${server.url}/api/visits/v-ahead/events`);
    expect(events.map((event) => event.body)).toEqual(['one', 'two']);
  });

  test.each([
    [-THREE_YEARS, ['clock-differs']],
    [THREE_YEARS, ['clock-differs']],
    [600_000, ['clock-differs']],
    [60_000, []],
    [undefined, []],
  ])('a device %s ms off is taken; flagged: %o', async (offset, flags) => {
    const visit = `v-device-${offset ?? 'silent'}`.replace('--', '-minus-');
    await send(visit, ['one'], 0, offset === undefined ? undefined : NOW + offset);
    expect(await flagsOf(visit)).toEqual(flags);
  });
});
