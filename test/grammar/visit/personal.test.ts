import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import { foldVisit } from '../../../grammar/visit/fold-visit.ts';
import { isInTheOpen, isSealed, NOT_READABLE, openBody, sealBody } from '../../../grammar/visit/personal.ts';
import { deviceCipher } from '../../server/device-cipher.ts';

const bodiesOf = (name: string) =>
  readFileSync(new URL(`../../../fixtures/visits/${name}/events.jsonl`, import.meta.url), 'utf8')
    .trim()
    .split('\n');
const sealAll = (bodies: readonly string[], cipher = deviceCipher()) =>
  Promise.all(bodies.map((body) => sealBody(body, cipher)));
const openAll = (bodies: readonly string[], cipher?: ReturnType<typeof deviceCipher>) =>
  Promise.all(bodies.map((body) => openBody(body, cipher)));
const fold = (bodies: readonly string[]) => foldVisit(bodies.map((body) => JSON.parse(body) as VisitEvent));

describe.each(['library', 'fuse', 'low-charge', 'one-pole'])('the recorded visit %s, sealed', (name) => {
  const bodies = bodiesOf(name);
  const open = fold(bodies);

  test('opens to what it was, every value of it', async () => {
    const cipher = deviceCipher();
    const opened = await openAll(await sealAll(bodies, cipher), cipher);
    expect(opened.map((body) => JSON.parse(body))).toEqual(bodies.map((body) => JSON.parse(body)));
  });

  test('holds none of the words of people: where, what was complained of, what was heard, who signed', async () => {
    const text = (await sealAll(bodies)).join('\n');
    const personal = [
      open.site,
      open.complaint,
      ...open.heard.map((line) => line.text),
      ...open.notes.map((line) => line.text),
      ...open.signatures.map((line) => line.name),
    ].filter((words) => words.length > 5);
    expect(personal.length).toBeGreaterThan(10);
    // As the value of a name: single words such as a part's name stand elsewhere too.
    for (const words of personal) {
      for (const named of ['site', 'complaint', 'heard', 'text', 'name']) {
        expect(text).not.toContain(`"${named}":${JSON.stringify(words)}`);
      }
    }
    if (open.site.length > 5) expect(text).not.toContain(open.site);
  });

  test('without its key still tells readings, cautions, energy, finding and parts, and no more who or where', async () => {
    const erased = fold(await openAll(await sealAll(bodies)));
    expect(erased.readings).toEqual(open.readings);
    expect(erased.cautions).toEqual(open.cautions);
    expect(erased.energyChanges).toEqual(open.energyChanges);
    expect(erased.finding).toEqual(open.finding);
    expect(erased.parts.map(({ part }) => part)).toEqual(open.parts.map(({ part }) => part));
    expect([erased.unknown, erased.damaged]).toEqual([open.unknown, open.damaged]);
    expect(erased.site).toBe(NOT_READABLE);
    expect(new Set(erased.heard.map(({ text }) => text))).toEqual(new Set([NOT_READABLE]));
  });

  test('has nothing in the open any more; before, each entry had that was changed by sealing', async () => {
    const sealed = await sealAll(bodies);
    expect(sealed.filter(isInTheOpen)).toEqual([]);
    const changed = bodies.filter((body, at) => isSealed(sealed[at] ?? '') && body !== sealed[at]);
    // An empty text is sealed too, and tells nothing in the open.
    const told = changed.filter(isInTheOpen);
    expect(bodies.filter(isInTheOpen)).toEqual(told);
    expect(told.length).toBeGreaterThan(20);
    for (const body of changed.filter((one) => !told.includes(one))) expect(body).toMatch(/:""|\[""/);
  });

  test('by another key, and a text moved to another name, is not readable', async () => {
    const cipher = deviceCipher();
    const sealed = await sealAll(bodies, cipher);
    expect(fold(await openAll(sealed, deviceCipher())).site).toBe(NOT_READABLE);
    const exchange = (body: string) =>
      body.replaceAll('"site":', '"?":').replaceAll('"complaint":', '"site":').replaceAll('"?":', '"complaint":');
    const moved = sealed.map(exchange);
    expect(fold(await openAll(moved, cipher)).complaint).toBe(NOT_READABLE);
  });
});

describe('what is sealed in a body', () => {
  const time = { at: '2026-07-14T13:00:00.000Z', mono: 0 };
  const sealed = async (event: object) =>
    JSON.parse(await sealBody(JSON.stringify({ ...event, time }), deviceCipher()));

  test('is a serial number, and no other line of the plate', async () => {
    const serial = await sealed({ type: 'nameplate.logged', field: 'serial', value: 'A1B2C3' });
    expect(serial.value).toMatch(/^sealed1:/);
    expect((await sealed({ type: 'nameplate.logged', field: 'refrigerant', value: 'R-410A' })).value).toBe('R-410A');
  });

  test('is a name in a meaning within a meaning, in what is asked, and in a list', async () => {
    const note = { kind: 'several', parts: [{ kind: 'note', text: 'ask for Robin Vale' }] };
    expect(
      JSON.stringify(await sealed({ type: 'question.asked', question: { meaning: note }, words: 'x' })),
    ).not.toContain('Robin');
    const closed = {
      type: 'visit.closed',
      summary: { finding: 'none', technical: [], plain: '', openItems: ['Robin'] },
    };
    expect(JSON.stringify(await sealed(closed))).not.toContain('Robin');
  });

  test('is nothing where there is nothing personal, and the bytes are left as they are', async () => {
    const body = '{"type":"phase.entered",  "phase":"testing"}';
    expect(await sealBody(body, deviceCipher())).toBe(body);
    expect(await openBody(body, deviceCipher())).toBe(body);
    for (const odd of ['', '{', 'null', '7', '"sealed1:"', '[]']) {
      expect(await sealBody(odd, deviceCipher())).toBe(odd);
      expect(await openBody(odd, undefined)).toBe(odd);
    }
  });

  test('comes back whatever was said, also what looks sealed itself', async () => {
    const cipher = deviceCipher();
    await fc.assert(
      fc.asyncProperty(fc.oneof(fc.string({ unit: 'grapheme' }), fc.constant('sealed1:AAAA')), async (text) => {
        const body = JSON.stringify({ type: 'note.taken', text, time });
        const kept = await sealBody(body, cipher);
        expect(isSealed(kept)).toBe(true);
        expect(JSON.parse(await openBody(kept, cipher)).text).toBe(text);
      }),
      { numRuns: 100 },
    );
  });
});

test.each([
  ['{"type":"note.taken","text":"behind the shed"}', true],
  ['{"type":"note.taken","text":""}', false],
  ['{"type":"note.taken","text":"sealed1:"}', true],
  ['{"type":"note.taken","text":"sealed1:it only says so, and is read by anybody"}', true],
  ['{"type":"nameplate.logged","field":"serial","value":"A1"}', true],
  ['{"type":"nameplate.logged","field":"model","value":"A1"}', false],
  ['{"type":"of-a-newer-version","text":"who knows"}', false],
  ['no event', false],
])('%s is in the open: %s', (body, open) => expect(isInTheOpen(body)).toBe(open));
