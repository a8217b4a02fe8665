import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { SEED, tries } from '../how-much.ts';
import { tellFigure } from '../promises/tell-figure.ts';
import { chainFor, RawClient, type RunningApp, runApp, streamOf } from './running-app.ts';

let server: RunningApp;
beforeAll(async () => {
  server = await runApp();
});
afterAll(() => server.stop());

const hash = fc.stringMatching(/^[0-9a-f]{64}$/);
const odd = fc.oneof(fc.jsonValue(), fc.constantFrom(1e300, -1, 1.5, '', null, '../..', 'x'.repeat(300)));
const stream = fc.record({
  company: fc.constantFrom('local', 'other', ''),
  visit: fc.constantFrom('fuzzed', '__proto__'),
  device: fc.constant('phone'),
  epoch: fc.oneof(fc.constant(1), odd),
});
/** Near to what is said: whole messages, and such with something else in one place. */
const near = fc.oneof(
  fc.record(
    {
      kind: fc.constant('hello'),
      protocol: fc.oneof(fc.constant(1), odd),
      stream: fc.oneof(stream, odd),
      clock: odd,
      head: odd,
    },
    { requiredKeys: ['kind'] },
  ),
  fc.record(
    {
      kind: fc.constant('append'),
      seq: fc.oneof(fc.nat(3), odd),
      hash: fc.oneof(hash, odd),
      body: fc.oneof(fc.string(), odd),
    },
    { requiredKeys: ['kind'] },
  ),
  fc.record(
    {
      kind: fc.constant('watch'),
      protocol: fc.constant(1),
      company: fc.constant('local'),
      visit: fc.oneof(fc.constant('fuzzed'), odd),
      from: fc.oneof(fc.constant([]), odd),
    },
    { requiredKeys: ['kind'] },
  ),
);
const frame = fc.oneof(
  near.map((message) => JSON.stringify(message)),
  fc.json(),
  fc.string({ unit: 'binary' }),
  fc.uint8Array({ maxLength: 200 }).map((bytes) => Buffer.from(bytes)),
);

describe('frames of any kind', { timeout: 1_800_000 }, () => {
  test('neither stop the server nor leave anything but what a device could have said', async () => {
    const frames = tries(3_000, 50_000);
    let sent = 0;
    const lots = fc.sample(fc.array(frame, { minLength: 5, maxLength: 20 }), {
      numRuns: Math.ceil(frames / 5),
      seed: SEED,
    });
    for (const lot of lots) {
      if (sent >= frames) break;
      const client = await RawClient.open(server.url);
      for (const one of lot) {
        client.socket.send(one);
        sent += 1;
      }
      client.socket.close();
      await client.closed;
    }
    expect(sent).toBeGreaterThanOrEqual(frames);
    tellFigure('fuzzed frames', sent);
    const after = await RawClient.open(server.url);
    const own = streamOf('after-the-frames');
    const [entry] = await chainFor(own, ['{"n":1}']);
    await after.hello(own);
    after.say({ kind: 'append', ...entry });
    expect(await after.hear()).toMatchObject({ kind: 'ack', seq: 1 });
    after.socket.close();
    const { findings } = (await (await fetch(`${server.url}/api/visits/after-the-frames/check`)).json()) as {
      findings: unknown[];
    };
    expect(findings).toEqual([]);
  });
});
