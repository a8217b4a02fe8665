import { createHash, createPublicKey, verify } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { StreamId } from '../../grammar/visit/envelope.ts';
import type { Acknowledged } from '../../grammar/visit/messages.ts';
import { Guest, withKeepers } from './guest.ts';
import { chainFor, type RawClient, type RunningApp, runApp } from './running-app.ts';

const NOW = Date.UTC(2026, 5, 15, 14);
let server: RunningApp;
let keeper: Guest;
let supervisor: Guest;
let trainee: Guest;
beforeAll(async () => {
  const { store, codes } = await withKeepers(['north'], () => NOW);
  server = await runApp({ peopleStore: store, clock: () => NOW });
  keeper = await new Guest(server).comeIn(codes[0] as string);
  supervisor = await keeper.add('sam', 'supervisor');
  trainee = await (await keeper.add('kim', 'trainee')).pair(keeper, 'phone');
});
afterAll(() => server.stop());

const stream: StreamId = { company: 'north', visit: 'learning', device: 'phone', epoch: 1 };
const acknowledge = (guest: Guest, visit = 'learning') => guest.ask('POST', `/api/visits/${visit}/acknowledge`);

describe('a supervisor’s word for live steps', () => {
  let writing: RawClient;

  test('is told as said to nobody where no device writes the visit', async () => {
    expect((await acknowledge(supervisor)).error).toBe('visit-unknown');
    const opened = await trainee.hello(stream);
    writing = opened.client;
    writing.say({ kind: 'append', ...(await chainFor(stream, ['{"type":"note"}']))[0] });
    expect(await writing.hear()).toMatchObject({ kind: 'ack' });
    writing.socket.close();
    await writing.closed;
    await expect.poll(async () => (await acknowledge(supervisor)).error).toBe('visit-not-live');
  });

  test('reaches the device that writes, at once, by their own name, signed by the server', async () => {
    writing = (await trainee.hello(stream)).client;
    const watching = await supervisor.watch('north', 'learning', undefined);
    expect((await acknowledge(supervisor)).json).toEqual({ devices: 1 });
    const heard = (await writing.hear()) as Acknowledged;
    expect(heard).toMatchObject({ kind: 'acknowledged', supervisor: 'sam’s name' });
    const { person, time, key, signature } = heard.vouched;
    expect([person, time]).toEqual([supervisor.person, NOW]);
    // Checked as anybody may: the key as the server tells it, in the form of RFC 8410, the text written out here.
    const { receiptKey } = (await keeper.ask('GET', '/api/health')).json;
    const text = `readback acknowledgement 1\nnorth/learning\n${person}\nsam’s name\n${NOW}\n`;
    const spki = Buffer.concat([Buffer.from('302a300506032b6570032100', 'hex'), Buffer.from(receiptKey, 'base64url')]);
    const publicKey = createPublicKey({ key: spki, format: 'der', type: 'spki' });
    expect(verify(null, Buffer.from(text), publicKey, Buffer.from(signature, 'base64url'))).toBe(true);
    expect(createHash('sha256').update(Buffer.from(receiptKey, 'base64url')).digest('hex')).toBe(key);
    watching.client.socket.close();
  });

  test('is nobody else’s to give: no technician’s, no trainee’s, no other company’s', async () => {
    const technician = await keeper.add('lee', 'technician');
    for (const guest of [trainee, technician]) expect((await acknowledge(guest)).error).toBe('role-refused');
    expect((await acknowledge(new Guest(server))).error).toBe('sign-in-needed');
    const trail = (await keeper.ask('GET', '/api/audit')).json.lines as { deed: string; person: string }[];
    const said = trail.filter(({ deed }) => deed === 'live steps acknowledged');
    expect(new Set(said.map(({ person }) => person))).toEqual(new Set([supervisor.person]));
    writing.socket.close();
  });
});
