import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { getJson } from './get-json.ts';
import { chainFor, RawClient, type RunningApp, runApp, streamOf } from './running-app.ts';

let server: RunningApp;
beforeAll(async () => {
  server = await runApp();
});
afterAll(() => server.stop());

interface Listed {
  readonly visits: readonly { readonly visit: string; readonly events: number; readonly said?: number }[];
}
const listed = async (visit: string) =>
  (await getJson<Listed>(`${server.url}/api/visits`)).visits.find((one) => one.visit === visit);
/** Longer than the server waits for what a device said that it has. */
const waited = () => new Promise((resolve) => setTimeout(resolve, 400));

/** A device that says how many events it has and sends the first `sent` of them. */
async function device(visit: string, has: number, sent: number): Promise<RawClient> {
  const stream = streamOf(visit);
  const chain = await chainFor(
    stream,
    Array.from({ length: has }, (_, at) => `{"n":${at}}`),
  );
  const last = chain[has - 1];
  const client = await RawClient.open(server.url);
  client.say({ kind: 'hello', protocol: 1, stream, head: { seq: has, hash: last?.hash } });
  await client.hear();
  for (const entry of chain.slice(0, sent)) client.say({ kind: 'append', ...entry });
  for (let acknowledged = 0; acknowledged < sent; ) {
    const message = await client.hear();
    if (message.kind === 'ack') acknowledged = message.seq;
  }
  return client;
}

describe('what a device said that it has', () => {
  test('a visit whose end is not held is told as not complete: 25 held, the device said 42', async () => {
    const client = await device('cut-short', 42, 25);
    await waited();
    client.socket.close();
    expect(await listed('cut-short')).toMatchObject({ events: 25, said: 42 });
    expect(await getJson(`${server.url}/api/visits/cut-short`)).toMatchObject({
      streams: [{ head: { seq: 25 }, said: 42, flags: ['not-complete'] }],
    });
    const { findings } = await getJson<{ findings: { sentence: string }[] }>(
      `${server.url}/api/visits/cut-short/check`,
    );
    expect(findings).toMatchObject([{ sentence: 'Not complete: 25 held, its device said that it has 42.' }]);
  });

  test('a visit of which nothing came is told too', async () => {
    (await device('nothing-came', 7, 0)).socket.close();
    await waited();
    expect(await listed('nothing-came')).toMatchObject({ events: 0, said: 7 });
    const { findings } = await getJson<{ findings: { sentence: string }[] }>(
      `${server.url}/api/visits/nothing-came/check`,
    );
    expect(findings).toMatchObject([{ sentence: 'Not complete: 0 held, its device said that it has 7.' }]);
  });

  test('a visit that came whole is told as it always was', async () => {
    (await device('whole', 5, 5)).socket.close();
    await waited();
    expect(await listed('whole')).toMatchObject({ events: 5 });
    expect((await listed('whole'))?.said).toBeUndefined();
  });
});
