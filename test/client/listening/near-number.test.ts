import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import createSpeechModule from 'soundswallower';
import { describe, expect, test } from 'vitest';
import type { Gate } from '../../../client/listening/recogniser/gate.ts';
import { GATES } from '../../../client/listening/recogniser/gates.ts';
import { Recogniser } from '../../../client/listening/recogniser/recogniser.ts';
import type { Recognition } from '../../../client/listening/recogniser/recognition.ts';
import type { SpeechModule } from '../../../client/listening/recogniser/speech-module.ts';
import { makeDither } from '../../../client/listening/sound/dither.ts';
import { standsFor } from '../../../client/listening/visit-hearing.ts';
import { speak } from '../../../fixtures/speak.ts';

const FOLDER = join(dirname(createRequire(import.meta.url).resolve('soundswallower')), 'model', 'en-us');
const grammar = (rule: string): string => `#JSGF V1.0;\ngrammar test;\npublic <one> = ${rule};\n`;
const NUMBERS = grammar('(one | two) (three | five) (five | nine)');
/** Words of an order that sound as numbers do. */
const AS_NUMBERS = { wonn: ['W AH N'], fivv: ['F AY V'] };
const ORDERS = grammar('was that bad | say that again');

/** What is made of "one five five" by an ear that rejects below a margin. */
async function heardBy(reject: number, expected: string | undefined, sure = GATES.bundled.sure): Promise<Recognition> {
  const gate: Gate = { ...GATES.bundled, reject, short: 0, sure };
  const model = { id: 'bundled', folder: FOLDER } as const;
  const module = (await createSpeechModule()) as unknown as SpeechModule;
  const recogniser = await Recogniser.open(module, model, AS_NUMBERS, gate, standsFor);
  recogniser.setEverything(expected === undefined ? NUMBERS : ORDERS);
  recogniser.setExpected(expected);
  const said = speak({ name: 'slt' }, 'one five five');
  const sound = new Float32Array(said.length + 16_000);
  sound.set(said, 8_000);
  makeDither()(sound);
  recogniser.begin();
  recogniser.feed(sound);
  const heard = recogniser.end(Math.round(said.length / 160));
  recogniser.close();
  return heard;
}

describe('a number that fits a little less than is asked for', { timeout: 240_000 }, () => {
  test('is asked where one is expected, and rejected far below or where nothing is', async () => {
    const { text, margin, accepted } = await heardBy(-100, NUMBERS);
    expect({ text, accepted }).toEqual({ text: 'one five five', accepted: true });

    expect(await heardBy(margin + 3, NUMBERS)).toMatchObject({ text, accepted: true, doubtful: true });
    expect(await heardBy(margin + 7, NUMBERS)).toMatchObject({ accepted: false });
    expect(await heardBy(margin + 3, undefined)).toMatchObject({ text, accepted: false });
  });

  test('is asked beside an order that sounds like it, where the order is not sure', async () => {
    const either = grammar('wonn fivv fivv | one five nine');
    const order = await heardBy(-100, either, 1_000);
    expect(order.text).toBe('wonn fivv fivv');
    expect(order.alternatives).toContain('one five nine');
    expect((await heardBy(-100, either, -1_000)).alternatives).toEqual([]);
  });

  test('an order is never taken so', async () => {
    const { margin } = await heardBy(-100, ORDERS);
    expect(await heardBy(margin + 3, ORDERS)).toMatchObject({ accepted: false });
  });
});
