import { randomBytes } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import type { Attachment, PersonalStore } from '../../server/personal/personal-store.ts';

let count = 0;
const fresh = (what: string) => {
  count += 1;
  return `${what}-${count}`;
};

/** What every PersonalStore must do. `reopen` closes the store and opens it again on the same data. */
export function personalContract(name: string, opened: () => PersonalStore, reopen: () => Promise<void>): void {
  const key = (of: { company: string; visit: string; device?: string; createdAt?: number }) => ({
    device: 'phone',
    createdAt: 5,
    ...of,
    key: new Uint8Array(randomBytes(32)),
    erasedAt: undefined,
  });
  async function file(
    company: string,
    visit: string,
    parts: readonly Buffer[],
    more: Partial<Pick<Attachment, 'kind' | 'device' | 'sha256'>> = {},
  ) {
    const { kind = 'sound', device = 'phone', sha256 = randomBytes(32).toString('hex') } = more;
    const of = { company, visit, device, sha256 };
    const bytes = parts.reduce((sum, part) => sum + part.length, 0);
    await opened().beginAttachment({ ...of, kind, media: 'audio/wav', bytes });
    let at = 0;
    for (const part of parts) {
      expect(await opened().addPart(of, at, part)).toBe(true);
      at += part.length;
    }
    return { ...of, bytes };
  }

  describe(`${name}: keys of visits`, () => {
    test('are kept byte for byte over a reopening, one a device; the same again is the same, another one is told', async () => {
      const [company, visit] = [fresh('company'), fresh('visit')];
      const first = key({ company, visit });
      const second = key({ company, visit, device: 'another' });
      expect(await opened().addKey(first)).toBe('added');
      expect(await opened().addKey(second)).toBe('added');
      expect(await opened().addKey(first)).toBe('same');
      expect(await opened().addKey({ ...first, key: second.key })).toBe('other');
      await reopen();
      expect(await opened().keys(company, visit)).toEqual([second, first]);
    });

    test('of two that come at once, one is kept', async () => {
      const [company, visit] = [fresh('company'), fresh('visit')];
      const both = [key({ company, visit }), key({ company, visit })];
      const outcomes = await Promise.all(both.map((one) => opened().addKey(one)));
      expect(outcomes.toSorted()).toEqual(['added', 'other']);
    });

    test('are told of their own company and visit alone', async () => {
      const [company, visit] = [fresh('company'), fresh('visit')];
      await opened().addKey(key({ company, visit }));
      expect(await opened().keys(fresh('company'), visit)).toEqual([]);
      expect(await opened().keys(company, fresh('visit'))).toEqual([]);
    });

    test('once erased are gone, with every file of the visit, and no later one is taken', async () => {
      const [company, visit] = [fresh('company'), fresh('visit')];
      const kept = key({ company, visit });
      const beside = key({ company, visit: fresh('visit') });
      await opened().addKey(kept);
      await opened().addKey(beside);
      const sound = await file(company, visit, [randomBytes(10)]);
      await opened().endAttachment(sound, 7);
      const part = await file(company, visit, [randomBytes(3)]);
      expect(await opened().eraseVisit(company, visit, ['phone', 'never-came'], 9)).toEqual({ keys: 1, files: 2 });
      await reopen();
      expect(await opened().keys(company, visit)).toMatchObject([
        { device: 'never-came', key: undefined, erasedAt: 9 },
        { device: 'phone', key: undefined, erasedAt: 9 },
      ]);
      for (const one of [sound, part]) {
        expect(await opened().attachment(one)).toMatchObject({ held: 0, erasedAt: 9 });
        expect((await opened().data(one)).length).toBe(0);
        expect(await opened().addPart(one, 0, randomBytes(3))).toBe(false);
      }
      expect([await opened().isErased(company, visit), await opened().isErased(company, beside.visit)]).toEqual([
        true,
        false,
      ]);
      expect(await opened().isErased(fresh('company'), visit)).toBe(false);
      expect(await opened().overwriteErased()).toEqual([]);
      expect(await opened().addKey(kept)).toBe('erased');
      expect(await opened().addKey(key({ company, visit, device: 'never-came' }))).toBe('erased');
      expect(await opened().keys(company, beside.visit)).toEqual([beside]);
      // Again: nothing is left, and when it was stays.
      expect(await opened().eraseVisit(company, visit, ['phone'], 11)).toEqual({ keys: 0, files: 0 });
      const told = (await opened().erasures()).filter((one) => one.company === company);
      expect(told.map(({ device, erasedAt }) => [device, erasedAt])).toEqual([
        ['never-came', 9],
        ['phone', 9],
      ]);
    });

    test('that come while the visit is erased are not left there, whichever is first', async () => {
      const company = fresh('company');
      for (let round = 0; round < 20; round += 1) {
        const visit = fresh('visit');
        const devices = ['one', 'two', 'three'];
        const [outcomes] = await Promise.all([
          Promise.all(devices.map((device) => opened().addKey(key({ company, visit, device })))),
          opened().eraseVisit(company, visit, ['one'], 9),
        ]);
        expect(outcomes.every((outcome) => outcome === 'added' || outcome === 'erased')).toBe(true);
        expect((await opened().keys(company, visit)).filter((kept) => kept.key !== undefined)).toEqual([]);
      }
    });

    test('that are older than a time are found, without their secret', async () => {
      const [company, old, young] = [fresh('company'), fresh('visit'), fresh('visit')];
      await opened().addKey(key({ company, visit: old, createdAt: 100 }));
      await opened().addKey(key({ company, visit: young, createdAt: 200 }));
      const found = (await opened().keysBefore(200)).filter((one) => one.company === company);
      expect(found.map(({ visit }) => visit)).toEqual([old]);
      expect(Object.keys(found[0] ?? {})).not.toContain('key');
    });
  });

  describe(`${name}: sounds and photos`, () => {
    test('grow by their parts in order, over a reopening, and come back byte for byte', async () => {
      const parts = [randomBytes(1000), randomBytes(1), randomBytes(70_000)];
      const one = await file(fresh('company'), fresh('visit'), parts);
      expect(await opened().attachment(one)).toMatchObject({ held: 71_001, receivedAt: undefined });
      await reopen();
      expect(Buffer.from(await opened().data(one)).equals(Buffer.concat(parts))).toBe(true);
      await opened().endAttachment(one, 12);
      expect(await opened().attachments(one.company, one.visit)).toMatchObject([
        { sha256: one.sha256, receivedAt: 12 },
      ]);
    });

    test('take no part that begins elsewhere than they end, and of two at once one', async () => {
      const one = await file(fresh('company'), fresh('visit'), [randomBytes(10)]);
      expect(await opened().addPart(one, 9, randomBytes(2))).toBe(false);
      expect(await opened().addPart(one, 11, randomBytes(2))).toBe(false);
      const both = await Promise.all([0, 1].map(() => opened().addPart(one, 10, randomBytes(2))));
      expect(both.toSorted()).toEqual([false, true]);
      expect((await opened().data(one)).length).toBe(12);
    });

    test('are dropped to be sent anew', async () => {
      const one = await file(fresh('company'), fresh('visit'), [randomBytes(10)]);
      await opened().dropParts(one);
      expect(await opened().attachment(one)).toMatchObject({ held: 0 });
      expect(await opened().addPart(one, 0, randomBytes(10))).toBe(true);
    });

    test('are known by company, visit, device and hash together', async () => {
      const one = await file(fresh('company'), fresh('visit'), [randomBytes(10)]);
      expect(await opened().attachment({ ...one, company: fresh('company') })).toBeUndefined();
      expect(await opened().attachment({ ...one, visit: fresh('visit') })).toBeUndefined();
      expect(await opened().attachment({ ...one, device: 'another' })).toBeUndefined();
      expect((await opened().data({ ...one, company: fresh('company') })).length).toBe(0);
    });

    test('of two devices that send the same stand in nobody’s way, whoever begins first and says whatever of it', async () => {
      const [company, visit] = [fresh('company'), fresh('visit')];
      const theirs = { device: 'another', sha256: randomBytes(32).toString('hex') };
      const part = randomBytes(4);
      const first = await file(company, visit, [randomBytes(900)], theirs);
      const second = await file(company, visit, [part, part], { ...theirs, device: 'phone' });
      await opened().endAttachment(second, 12);
      await reopen();
      expect(await opened().attachments(company, visit)).toMatchObject([
        { device: 'phone', bytes: 8, held: 8, receivedAt: 12 },
        { device: 'another', bytes: 900, held: 900, receivedAt: undefined },
      ]);
      await opened().dropParts(first);
      expect(Buffer.from(await opened().data(second)).equals(Buffer.concat([part, part]))).toBe(true);
      expect(await opened().eraseVisit(company, visit, [], 13)).toEqual({ keys: 0, files: 2 });
    });

    test('are deleted by age and kind: those that were whole before the time, once', async () => {
      const company = fresh('company');
      const [old, young, photo, part] = [
        await file(company, 'a', [randomBytes(4)]),
        await file(company, 'b', [randomBytes(4)]),
        await file(company, 'a', [randomBytes(4)], { kind: 'photo' }),
        await file(company, 'a', [randomBytes(4)]),
      ];
      await opened().endAttachment(old, 100);
      await opened().endAttachment(young, 200);
      await opened().endAttachment(photo, 100);
      const mine = async () =>
        (await opened().eraseBefore('sound', 200, 300))
          .filter((one) => one.company === company)
          .map(({ sha256 }) => sha256);
      expect(await mine()).toEqual([old.sha256]);
      expect(await mine()).toEqual([]);
      for (const kept of [young, photo, part]) expect((await opened().data(kept)).length).toBe(4);
    });
  });
}
