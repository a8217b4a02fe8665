import { execFile } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { Validator } from '@seriousme/openapi-schema-validator';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { toVisitRecord } from '../../grammar/export/visit-record.ts';
import type { VisitEvent } from '../../grammar/visit/events.ts';
import { foldVisit } from '../../grammar/visit/fold-visit.ts';
import { chainFor, RawClient, type RunningApp, runApp, streamOf } from './running-app.ts';

const bodies = readFileSync(new URL('../../fixtures/visits/library/events.jsonl', import.meta.url), 'utf8')
  .trim()
  .split('\n');
const events = bodies.map((body) => JSON.parse(body) as VisitEvent);
let server: RunningApp;
const ask = (path: string) => fetch(`${server.url}${path}`);

beforeAll(async () => {
  server = await runApp();
  const stream = streamOf('library');
  const client = await RawClient.open(server.url);
  await client.hello(stream);
  const chain = await chainFor(stream, bodies);
  for (let acknowledged = 0; acknowledged < chain.length; ) {
    for (const entry of chain.slice(acknowledged, acknowledged + 64)) client.say({ kind: 'append', ...entry });
    const until = Math.min(acknowledged + 64, chain.length);
    while (acknowledged < until) {
      const message = await client.hear();
      if (message.kind === 'ack') acknowledged = message.seq;
    }
  }
  client.socket.close();
}, 60_000);
afterAll(() => server.stop());

describe('a visit to take away', () => {
  test('as one document, valid by the schema that is given out with it', async () => {
    const schema = (await (await ask('/api/visit-record.schema.json')).json()) as { $id: string };
    expect(schema.$id).toBe('urn:readback:visit-record:1');
    const document = await (await ask('/api/visits/library/record.json')).json();
    expect(new Ajv2020({ strict: true }).compile(schema)(document)).toBe(true);
    expect(document).toEqual(JSON.parse(JSON.stringify(toVisitRecord(events))));
  });

  test('its readings as CSV: every line as many cells as the first, every value as it was logged', async () => {
    const response = await ask('/api/visits/library/readings.csv');
    expect(response.headers.get('content-type')).toContain('text/csv');
    const [head, ...rows] = parseCsv(await response.text());
    expect(new Set(rows.map((row) => row.length))).toEqual(new Set([head?.length]));
    const { readings } = foldVisit(events);
    expect(rows.map((row) => [Number(row[0]), row[5]])).toEqual(
      readings.map(({ number, reading }) => [number, String(reading.value)]),
    );
  });

  test('its talk as WebVTT: cues in order, each as long as it says, all that was heard and said', async () => {
    const talk = await (await ask('/api/visits/library/talk.vtt')).text();
    const [head, ...cues] = talk.trim().split('\n\n');
    // W3C WebVTT: the file begins with its name; hours, minutes, seconds with three decimals; a voice tag.
    expect(head).toBe('WEBVTT');
    const { heard, said } = foldVisit(events);
    expect(cues).toHaveLength(heard.length + said.length);
    let before = '';
    for (const cue of cues) {
      const found =
        /^\d+\n(\d\d:\d\d:\d\d\.\d{3}) --> (\d\d:\d\d:\d\d\.\d{3})\n<v (?:Technician|Readback)>[^<>]+$/.exec(cue);
      expect(found, cue).not.toBeNull();
      expect((found?.[1] ?? '') >= before && (found?.[2] ?? '') > (found?.[1] ?? '')).toBe(true);
      before = found?.[1] ?? '';
    }
    expect(talk).toContain('<v Technician>outdoor air ninety four degrees');
  });

  test('its chain as a record file, which the verifier takes as what the server holds', async () => {
    const chain = await (await ask('/api/visits/library/streams/phone/1/chain.jsonl')).text();
    const file = join(server.folder, 'taken.jsonl');
    writeFileSync(file, chain);
    const tool = new URL('../../.build/server/tools/verify.js', import.meta.url).pathname;
    const { stdout } = await promisify(execFile)(process.execPath, [tool, file]);
    expect(stdout).toContain(`Nothing speaks against ${bodies.length} events in 1 stream.`);
    writeFileSync(file, chain.replace('ninety four', 'ninety five'));
    await expect(promisify(execFile)(process.execPath, [tool, file])).rejects.toMatchObject({ code: 1 });
  });

  test('what is not there is answered in a sentence', async () => {
    for (const file of ['record.json', 'readings.csv', 'talk.vtt', 'streams/phone/1/chain.jsonl']) {
      const response = await ask(`/api/visits/nowhere/${file}`);
      expect(response.status).toBe(404);
      expect(await response.json()).toMatchObject({ error: 'visit-unknown' });
    }
  });
});

describe('/api', () => {
  test('describes every address there is as OpenAPI 3.1, valid by its published schema', async () => {
    const document = (await (await ask('/api')).json()) as { openapi: string; paths: Record<string, object> };
    expect(document.openapi).toBe('3.1.0');
    expect(await new Validator().validate(document)).toMatchObject({ valid: true });
    // The table of addresses in server/README.md.
    const readme = readFileSync(new URL('../../server/README.md', import.meta.url), 'utf8');
    const named = [...readme.matchAll(/^\| `(\/api\/[^`]+)`/gm)].map(([, path = '']) =>
      path.replaceAll(/[A-Z][A-Z0-9]{2,}/g, (name) => `{${name.toLowerCase()}}`),
    );
    expect(Object.keys(document.paths).toSorted()).toEqual(named.toSorted());
    expect(named.length).toBeGreaterThanOrEqual(11);
  });
});

/** RFC 4180, section 2. */
function parseCsv(text: string): readonly (readonly string[])[] {
  return text
    .trimEnd()
    .split('\r\n')
    .map((line) =>
      [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^",]*))/g)].map(
        ([, quoted, plain]) => quoted?.replaceAll('""', '"') ?? plain ?? '',
      ),
    );
}
