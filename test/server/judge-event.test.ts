import { hash } from 'node:crypto';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { linkBytes } from '../../grammar/visit/envelope.ts';
import { judgeEvent, startHead } from '../../server/store/judge-event.ts';
import { tries } from '../how-much.ts';

const stream = { company: 'local', visit: 'v', device: 'd', epoch: 1 };
const start = startHead(stream).hash;
const nothing = () => undefined;

test('any body at any number is hashed as the grammar writes it, one after the other', () => {
  const text = fc.string({ unit: 'binary', maxLength: 400 });
  const before = fc.integer({ min: 0, max: Number.MAX_SAFE_INTEGER - 1 });
  fc.assert(
    fc.property(text, before, (body, seq) => {
      const event = { seq: seq + 1, hash: hash('sha256', linkBytes(seq + 1, start, body)), body };
      expect(judgeEvent({ seq, hash: start }, event, nothing).kind).toBe('stored');
      expect(judgeEvent({ seq, hash: start }, { ...event, body: `${body} ` }, nothing).kind).toBe('broken');
    }),
    { numRuns: tries(300, 5_000) },
  );
});

test('a lone surrogate has no bytes, and is not taken for what would be written in its place', () => {
  // U+FFFD is what stands for it in UTF-8 (Unicode 15, 3.9, practice of replacing).
  for (const lone of ['\ud800', 'a\udfff', '\udc00\ud800']) {
    const asReplaced = hash('sha256', linkBytes(1, start, lone.replaceAll(/\p{Surrogate}/gu, '\ufffd')));
    expect(judgeEvent({ seq: 0, hash: start }, { seq: 1, hash: asReplaced, body: lone }, nothing).kind).toBe('broken');
  }
});

test('a body longer than any frame is hashed all the same', () => {
  const body = 'ü'.repeat(70_000);
  const event = { seq: 1, hash: hash('sha256', linkBytes(1, start, body)), body };
  expect(judgeEvent({ seq: 0, hash: start }, event, nothing).kind).toBe('stored');
});
