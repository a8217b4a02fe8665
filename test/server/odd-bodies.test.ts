import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { VisitRecordSchema } from '../../grammar/export/visit-record-schema.ts';
import { RECORDED, recordedBodies } from '../browser/put-visit.ts';
import { type RunningApp, runApp } from './running-app.ts';
import { writeBodies } from './write-visit.ts';

const time = { at: '2026-06-15T15:00:00.000Z', mono: 3_600_000 };
const nested = (depth: number, inside = '') => `${'['.repeat(depth)}${inside}${']'.repeat(depth)}`;
const odd = (type: string, fields: string) => `{"type":"${type}",${fields},"time":${JSON.stringify(time)}}`;
const heard = (meaning: string) =>
  `{"type":"input.taken","input":{"type":"heard.utterance","utterance":{"understanding":{"heard":"x","verdict":"logged","meaning":${meaning}},"accepted":true,"text":"x","confidence":1},"time":${JSON.stringify(time)}},"outcomes":0}`;
const ranked = (suspects: unknown) =>
  odd('suspects.ranked', `"version":"1","forSeq":1,"hazards":[],"suspects":${JSON.stringify(suspects)}`);

/** What any device may send into a visit of its own: each is an event by its form, and means nothing. */
const ODD: Readonly<Record<string, readonly string[]>> = {
  'a meaning nested deep': [heard(`{"kind":"x","y":${nested(5_000)}}`)],
  'an unknown event nested deep': [odd('zzz', `"x":${nested(5_000)}`)],
  'a known event nested deep, with many texts': Array(20).fill(
    odd('visit.held', `"x":${nested(2_000, Array(9_000).fill('""').join(','))}`),
  ),
  'sealed beside what is nested deep': [odd('note.taken', `"z":"sealed1:AAAA","text":${nested(5_000)}`)],
  'an opening with a deep unit': [
    odd(
      'visit.opened',
      `"visit":"v","site":"s","complaint":"c","role":"r","software":"1","unit":{"model":${nested(5_000)}}`,
    ),
  ],
  'chances that are no numbers': [
    ranked([{ fault: 'contactor-coil-open', probability: 'x' }]),
    ranked([{ probability: {} }]),
  ],
  'chances beyond all': [ranked([{ fault: 'contactor-coil-open', probability: 1e300 }])],
  'suspects that are none': [ranked([null]), ranked([[]]), ranked([5])],
  'a finding with a text for its chance': [odd('finding.stated', '"fault":"x","probability":"x","evidence":[]')],
  'times of other forms': [JSON.stringify({ type: 'visit.held', time: { at: 'June 15, 2026', mono: 1 } })],
};
const [base] = RECORDED;
const nameOf = (at: number) => `odd-${at}`;

let server: RunningApp;
const ask = (path: string, method = 'GET') =>
  fetch(`${server.url}${path}`, { method, headers: { origin: server.url } });
// biome-ignore lint/suspicious/noExplicitAny: each test says what it expects of an answer
const told = async (path: string): Promise<any> => (await ask(path)).json();

beforeAll(async () => {
  server = await runApp();
  await writeBodies(server.url, 'sound', recordedBodies(base));
  for (const [at, bodies] of Object.values(ODD).entries()) {
    await writeBodies(server.url, nameOf(at), [...recordedBodies(base), ...bodies]);
    await writeBodies(server.url, `${nameOf(at)}-alone`, bodies);
  }
}, 120_000);
afterAll(() => server.stop());

const isRecord = new Ajv2020({ strict: false }).compile(JSON.parse(JSON.stringify(VisitRecordSchema)));

describe('what no program of ours writes harms its own visit alone', { timeout: 120_000 }, () => {
  test.each(Object.keys(ODD).map((what, at) => [what, at] as const))('%s', async (_, at) => {
    for (const visit of [nameOf(at), `${nameOf(at)}-alone`]) {
      for (const path of ['', '/record.json', '/readings.csv', '/talk.vtt', '/check', '/events', '/same-unit']) {
        expect([path, (await ask(`/api/visits/${visit}${path}`)).status]).toEqual([path, 200]);
      }
      const record = await told(`/api/visits/${visit}/record.json`);
      expect([isRecord(record), isRecord.errors]).toEqual([true, null]);
    }
    const whole = await told(`/api/visits/${nameOf(at)}/record.json`);
    const sound = await told('/api/visits/sound/record.json');
    expect(whole.readings).toEqual(sound.readings);
  });

  test('the list and the fleet name them all, the sound one as it is', async () => {
    const lines: { visit: string; finding?: string }[] = [];
    for (;;) {
      const { visits = [], behind, sentence } = await told('/api/list?limit=200');
      expect(sentence).toBeUndefined();
      lines.splice(0, lines.length, ...visits);
      if (behind === 0) break;
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
    expect(lines).toHaveLength(1 + 2 * Object.keys(ODD).length);
    const [sound, ...others] = lines
      .filter(({ visit }) => !visit.endsWith('-alone'))
      .toSorted((a, b) => (a.visit < b.visit ? 1 : -1));
    for (const other of others) expect(other.finding).toBe(sound?.finding);
    expect((await ask('/api/fleet')).status).toBe(200);
  });

  test('each can be erased', async () => {
    for (const at of Object.keys(Object.values(ODD))) {
      const answer = await ask(`/api/visits/${nameOf(Number(at))}/erase`, 'POST');
      expect([at, answer.status]).toEqual([at, 200]);
    }
  });
});

describe('numbers beyond all', () => {
  test.each([
    '/api/list?limit=1e999',
    '/api/list?offset=1e999',
    '/api/list?limit=Infinity',
    '/api/visits?limit=1e999',
    '/api/visits?offset=1e999',
    '/api/visits/sound/events?limit=1e999',
    '/api/visits/sound/events?after=1e999',
    '/api/visits/sound/devices/phone/epochs/1e999/record',
    '/api/audit?limit=1e999',
    '/api/audit?before=-1e999',
  ])('%s is refused in a sentence', async (path) => {
    const answer = await ask(path);
    expect([400, 404]).toContain(answer.status);
    expect(((await answer.json()) as { sentence: string }).sentence).toMatch(/\.$/);
  });
});
