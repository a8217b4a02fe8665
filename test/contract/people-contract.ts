import { describe, expect, test } from 'vitest';
import type { Code, Device, PeopleStore, Person, Session } from '../../server/people/people-store.ts';

let count = 0;
const fresh = (what: string) => {
  count += 1;
  return `${what}-${count}`;
};

/** What every PeopleStore must do. `reopen` closes the store and opens it again on the same data. */
export function peopleContract(name: string, opened: () => PeopleStore, reopen: () => Promise<void>): void {
  async function company(): Promise<string> {
    const made = fresh('company');
    expect(await opened().addCompany({ company: made, name: 'A company', createdAt: 1 })).toBe(true);
    return made;
  }
  async function person(within: string, given: Partial<Person> = {}): Promise<Person> {
    const made: Person = {
      person: fresh('person'),
      company: within,
      login: fresh('login'),
      name: 'Somebody',
      role: 'technician',
      password: undefined,
      createdAt: 2,
      removedAt: undefined,
      ...given,
    };
    expect(await opened().addPerson(made)).toBe(true);
    return made;
  }
  async function device(of: Person): Promise<Device> {
    const made: Device = {
      device: fresh('device'),
      company: of.company,
      person: of.person,
      publicKey: 'key',
      pairedAt: 3,
      revokedAt: undefined,
    };
    expect(await opened().addDevice(made)).toBe(true);
    return made;
  }
  async function session(of: Person, given: Partial<Session> = {}): Promise<Session> {
    const made: Session = {
      hash: fresh('session'),
      company: of.company,
      person: of.person,
      by: 'password',
      createdAt: 10,
      lastUsedAt: 10,
      ...given,
    };
    await opened().addSession(made);
    return made;
  }

  describe(`${name}: people`, () => {
    test('text that no database need hold harms nothing: it is known by nobody, and told on the trail', async () => {
      const within = await company();
      expect(await opened().personByLogin('ro\u0000bin')).toBeUndefined();
      expect(
        await opened().addPerson({
          ...(await person(within)),
          person: fresh('person'),
          login: fresh('login'),
          name: 'a\u0000b',
        }),
      ).toBe(true);
      await opened().note({
        at: 1,
        company: within,
        person: '',
        device: '',
        deed: 'd',
        outcome: 'refused',
        detail: 'x\u0000y',
        times: 1,
      });
      const [line] = await opened().audit(within, { limit: 1 });
      expect(['x\u0000y', 'x\ufffdy']).toContain(line?.detail);
    });

    test('what is put in comes back, also after opening again', async () => {
      const within = await company();
      const one = await person(within, { name: 'Ünal “½”', password: '$argon2id$…' });
      const phone = await device(one);
      const signedIn = await session(one);
      await reopen();
      expect(await opened().company(within)).toEqual({ company: within, name: 'A company', createdAt: 1 });
      expect(await opened().person(within, one.person)).toEqual(one);
      expect(await opened().personByLogin(one.login)).toEqual(one);
      expect(await opened().people(within)).toEqual([one]);
      expect(await opened().device(phone.device)).toEqual(phone);
      expect(await opened().devices(within)).toEqual([phone]);
      expect(await opened().session(signedIn.hash)).toEqual(signedIn);
      expect(await opened().hasPeople()).toBe(true);
    });

    test('nothing of another company is given out or changed', async () => {
      const [ours, theirs] = [await company(), await company()];
      const stranger = await person(theirs);
      const phone = await device(stranger);
      const held = await session(stranger);
      expect(await opened().person(ours, stranger.person)).toBeUndefined();
      expect(await opened().people(ours)).toEqual([]);
      expect(await opened().devices(ours)).toEqual([]);
      expect(await opened().changePerson(ours, stranger.person, { role: 'keeper' })).toBe('unknown');
      expect(await opened().revokeDevice(ours, phone.device, 5)).toBe(false);
      await opened().endSessionsOf(ours, stranger.person);
      expect(await opened().passkeysOf(ours, stranger.person)).toEqual([]);
      expect(await opened().person(theirs, stranger.person)).toEqual(stranger);
      expect(await opened().device(phone.device)).toEqual(phone);
      expect(await opened().session(held.hash)).toEqual(held);
    });

    test('a name is given once: of a company, to sign in, of a device, over all companies', async () => {
      const within = await company();
      const one = await person(within);
      const phone = await device(one);
      const other = await company();
      expect(await opened().addCompany({ company: within, name: 'Again', createdAt: 9 })).toBe(false);
      expect(await opened().addPerson({ ...one, person: fresh('person'), company: other })).toBe(false);
      expect(await opened().addDevice({ ...phone, company: other })).toBe(false);
      expect(await opened().people(other)).toEqual([]);
      expect(await opened().device(phone.device)).toEqual(phone);
    });

    test('who is removed keeps no way in, and the name to sign in by is free again', async () => {
      const within = await company();
      await person(within, { role: 'keeper' });
      const one = await person(within);
      const phone = await device(one);
      const held = await session(one);
      await opened().addPasskey({ ...held, id: fresh('passkey'), publicKey: 'k', counter: 0 });
      expect(await opened().changePerson(within, one.person, { removedAt: 50 })).toBe('changed');
      expect(await opened().personByLogin(one.login)).toBeUndefined();
      expect(await opened().session(held.hash)).toBeUndefined();
      expect(await opened().passkeysOf(within, one.person)).toEqual([]);
      expect((await opened().device(phone.device))?.revokedAt).toBe(50);
      expect(await opened().changePerson(within, one.person, { name: 'Back' })).toBe('unknown');
      expect((await opened().person(within, one.person))?.removedAt).toBe(50);
      await person(within, { login: one.login });
    });

    test('a company keeps a keeper, whoever goes first', async () => {
      const within = await company();
      const one = await person(within, { role: 'keeper' });
      await person(await company(), { role: 'keeper' });
      for (const change of [{ removedAt: 5 }, { role: 'technician' as const }]) {
        expect(await opened().changePerson(within, one.person, change)).toBe('last-keeper');
      }
      expect(await opened().changePerson(within, one.person, { name: 'Other', role: 'keeper' })).toBe('changed');
      const two = await person(within, { role: 'keeper' });
      const both = [one, two].map(({ person: who }) => opened().changePerson(within, who, { removedAt: 6 }));
      expect((await Promise.all(both)).sort()).toEqual(['changed', 'last-keeper']);
      expect(await opened().people(within)).toHaveLength(1);
    });

    test('a device is revoked once', async () => {
      const within = await company();
      const phone = await device(await person(within));
      expect(await opened().revokeDevice(within, phone.device, 70)).toBe(true);
      expect(await opened().revokeDevice(within, phone.device, 80)).toBe(false);
      expect((await opened().device(phone.device))?.revokedAt).toBe(70);
    });
  });

  describe(`${name}: secrets`, () => {
    const codeFor = (given: Partial<Code> = {}): Code => ({
      kind: 'pairing',
      hash: fresh('code'),
      company: 'c',
      person: 'p',
      detail: 'd',
      expiresAt: 100,
      ...given,
    });

    test('a code is taken once, in time, and for what it was made', async () => {
      const code = codeFor();
      await opened().addCode(code);
      expect(await opened().takeCode('ticket', code.hash, 50)).toBe('unknown');
      expect(await opened().takeCode('pairing', code.hash, 100)).toEqual(code);
      expect(await opened().takeCode('pairing', code.hash, 100)).toBe('used');
      expect(await opened().takeCode('pairing', fresh('code'), 100)).toBe('unknown');
      const late = codeFor();
      await opened().addCode(late);
      expect(await opened().takeCode('pairing', late.hash, 101)).toBe('expired');
      expect(await opened().takeCode('pairing', late.hash, 50)).toBe('used');
    });

    test('of many that take a code at once one has it', async () => {
      const code = codeFor();
      await opened().addCode(code);
      const taken = await Promise.all(Array.from({ length: 20 }, () => opened().takeCode('pairing', code.hash, 1)));
      expect(taken.filter((one) => typeof one !== 'string')).toEqual([code]);
    });

    test('sessions end one by one, and all but one of a person', async () => {
      const one = await person(await company());
      const held = [await session(one), await session(one), await session(one)];
      await opened().noteUse(held[0]!.hash, 30);
      expect((await opened().session(held[0]!.hash))?.lastUsedAt).toBe(30);
      await opened().endSession(held[1]!.hash);
      await opened().endSessionsOf(one.company, one.person, held[2]!.hash);
      const left = await Promise.all(held.map(({ hash }) => opened().session(hash)));
      expect(left).toEqual([undefined, undefined, held[2]]);
    });

    test('a passkey is found by its id and counts on', async () => {
      const { company: within, person: who } = await person(await company());
      const passkey = { id: fresh('passkey'), company: within, person: who, publicKey: 'k', counter: 1, createdAt: 4 };
      await opened().addPasskey(passkey);
      await opened().countPasskey(passkey.id, 7);
      expect(await opened().passkey(passkey.id)).toEqual({ ...passkey, counter: 7 });
      expect(await opened().passkeysOf(within, who)).toEqual([{ ...passkey, counter: 7 }]);
      expect(await opened().passkey('other')).toBeUndefined();
    });

    test('a lease goes to one of two that take it at once, and all that were given are kept', async () => {
      const [ours, theirs, visit] = [fresh('company'), fresh('company'), fresh('visit')];
      const behind = [{ device: 'phone', epoch: 1, seq: 7 }];
      const lease = { company: ours, visit, number: 1, device: 'tablet', person: 'p', takenAt: 5, behind };
      expect(await opened().leases(ours, visit)).toEqual([]);
      const both = await Promise.all(['tablet', 'phone'].map((device) => opened().giveLease({ ...lease, device })));
      expect(both.filter(Boolean)).toHaveLength(1);
      const [held] = await opened().leases(ours, visit);
      const next = { ...lease, number: 2, device: 'third', takenAt: 6 };
      expect(await opened().giveLease({ ...lease, device: 'third' })).toBe(false);
      expect(await opened().giveLease(next)).toBe(true);
      expect(await opened().giveLease({ ...next, takenAt: 7 })).toBe(false);
      await reopen();
      expect(await opened().leases(ours, visit)).toEqual([held, next]);
      expect(await opened().leases(theirs, visit)).toEqual([]);
    });

    test('attempts are counted within a window that begins with the first', async () => {
      const key = fresh('attempt');
      const counted: number[] = [];
      for (const at of [1_000, 1_001, 1_999, 2_000, 2_001]) {
        counted.push(await opened().countAttempt(key, at, 1_000));
      }
      expect(counted).toEqual([1, 2, 3, 1, 2]);
      await opened().forgetAttempts(key);
      expect(await opened().countAttempt(key, 2_002, 1_000)).toBe(1);
    });

    test('what no longer says anything is dropped, and nothing else', async () => {
      const day = 86_400_000;
      const one = await person(await company());
      const idle = await session(one, { createdAt: 0, lastUsedAt: 5 * day });
      const old = await session(one, { createdAt: 0, lastUsedAt: 9 * day });
      const live = await session(one, { createdAt: 5 * day, lastUsedAt: 9 * day });
      const [gone, told] = [codeFor({ expiresAt: 1 }), codeFor({ expiresAt: 9 * day })];
      await opened().addCode(gone);
      await opened().addCode(told);
      const ticket = codeFor({ kind: 'ticket', expiresAt: 9.5 * day - 3_600_001 });
      await opened().addCode(ticket);
      await opened().sweep(9.5 * day, { idleMs: 2 * day, longestMs: 8 * day });
      expect(await opened().session(idle.hash)).toBeUndefined();
      expect(await opened().session(old.hash)).toBeUndefined();
      expect(await opened().session(live.hash)).toEqual(live);
      expect(await opened().takeCode('pairing', gone.hash, 1)).toBe('unknown');
      expect(await opened().takeCode('ticket', ticket.hash, 1)).toBe('unknown');
      expect(await opened().takeCode('pairing', told.hash, 9.5 * day)).toBe('expired');
    });
  });

  describe(`${name}: the trail`, () => {
    test('is read by company, the latest first, in pages', async () => {
      const [ours, theirs] = [fresh('company'), fresh('company')];
      const line = { at: 1, person: 'p', device: '', outcome: 'done' as const, detail: '', times: 1 };
      for (const deed of ['a', 'b', 'c']) {
        await opened().note({ ...line, company: ours, deed });
        await opened().note({ ...line, company: theirs, deed });
      }
      await reopen();
      const first = await opened().audit(ours, { limit: 2 });
      expect(first.map(({ deed }) => deed)).toEqual(['c', 'b']);
      expect(first[0]).toEqual({ ...line, company: ours, deed: 'c', id: first[0]!.id });
      const rest = await opened().audit(ours, { limit: 2, before: first[1]!.id });
      expect(rest.map(({ deed }) => deed)).toEqual(['a']);
      // Refusals of whoever is of no company: each company's keeper reads them.
      await opened().note({ ...line, company: '', person: '', deed: 'knocked', outcome: 'refused' });
      for (const company of [ours, theirs]) {
        expect((await opened().audit(company, { limit: 1 }))[0]).toMatchObject({ company: '', deed: 'knocked' });
      }
    });
  });
}
