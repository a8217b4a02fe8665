import { describe, expect, it } from 'vitest';
import type { DeviceEntry } from '../../../grammar/visit/device-entry.ts';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import type { LastEntry } from '../../../grammar/visit/inputs.ts';
import { joinDevices } from '../../../grammar/visit/join-devices.ts';
import type { Leases, StreamEnd } from '../../../grammar/visit/leases.ts';

const HASH = 'a'.repeat(64);
const time = (minute: number) => ({ at: new Date(Date.UTC(2026, 5, 15, 14, minute)).toISOString(), mono: minute });
const opened = (minute: number) => ({ type: 'visit.opened', time: time(minute) }) as unknown as VisitEvent;
const note = (minute: number) => ({ type: 'note.taken', time: time(minute) }) as unknown as VisitEvent;
const remark = (minute: number) =>
  ({ type: 'remark.made', author: 'S. Visor', text: '', time: time(minute) }) as VisitEvent;
const takeOver = (minute: number, lease: number | undefined, device: string, seq: number, epoch = 1) => {
  const from: LastEntry = { device, epoch, seq, hash: HASH };
  const input = { type: 'took.over.visit', from, lease, time: time(minute) };
  return { type: 'input.taken', input, outcomes: 0 } as unknown as VisitEvent;
};
const end = (device: string, seq: number, epoch = 1) => ({ device, epoch, seq });
/** The opener is the phone, p; each lease by its device and where the streams ended then. */
const given = (...steps: readonly (readonly [string, ...StreamEnd[]])[]): Leases => ({
  opener: 'p',
  steps: steps.map(([device, ...behind], at) => ({ number: at + 1, device, behind })),
});

/** An input of which so many outcomes come. */
const input = (minute: number, outcomes: number) =>
  ({ type: 'input.taken', input: { type: 'heard.utterance', time: time(minute) }, outcomes }) as unknown as VisitEvent;
/** The entries as numbered behind so many others. */
const behind = (seq: number) => (entry: DeviceEntry) => ({ ...entry, seq: entry.seq + seq });

/** Each device's entries numbered from 1; named by device and number. */
function of(device: string, ...events: readonly VisitEvent[]): DeviceEntry[] {
  return events.map((event, at) => ({ device, epoch: 1, seq: at + 1, event }));
}
const names = (entries: readonly DeviceEntry[]) => entries.map(({ device, seq }) => `${device}${seq}`).join(' ');

describe('a visit of several devices', () => {
  const phone = of('p', opened(0), note(1), note(2), note(5), note(6));
  const tablet = of('t', takeOver(3, 1, 'p', 3), note(4), note(7));
  const once = given(['t', end('p', 3)]);

  it('is what each wrote while it held the lease; what the first wrote later does not count, and is counted', () => {
    for (const leases of [undefined, once]) {
      for (const all of [
        [...phone, ...tablet],
        [...tablet, ...phone],
      ]) {
        const joined = joinDevices(all, leases);
        expect(names(joined.entries)).toBe('p1 p2 p3 t1 t2 t3');
        expect(joined.holder).toBe('t');
        expect(joined.writer).toBe('t');
        expect(joined.leftOut).toEqual([{ device: 'p', count: 2 }]);
      }
    }
  });

  it('comes back to the first where that takes it over again', () => {
    const back = [...phone, ...of('p', takeOver(8, 2, 't', 2), note(9)).map(behind(5))];
    for (const leases of [undefined, given(['t', end('p', 3)], ['p', end('p', 5), end('t', 2)])]) {
      const joined = joinDevices([...back, ...tablet], leases);
      expect(names(joined.entries)).toBe('p1 p2 p3 t1 t2 p6 p7');
      expect(joined.holder).toBe('p');
      expect(joined.leftOut).toEqual([
        { device: 'p', count: 2 },
        { device: 't', count: 1 },
      ]);
    }
  });

  it('goes by files beside each other to one where two claim the same lease', () => {
    const third = of('x', takeOver(4, 1, 'p', 3), note(5));
    expect(names(joinDevices([...phone, ...third, ...tablet]).entries)).toBe('p1 p2 p3 t1 t2 t3');
  });

  it('stays with who took it back before the other wrote anything, whatever comes of that one later', () => {
    const back = of('p', takeOver(8, 2, 'p', 5)).map(behind(5));
    const leases = given(['t', end('p', 3)], ['p', end('p', 5)], ['x', end('p', 6)]);
    const joined = joinDevices([...phone, ...back, ...tablet], { ...leases, steps: leases.steps.slice(0, 2) });
    expect(names(joined.entries)).toBe('p1 p2 p3 p4 p5 p6');
    expect(joined.leftOut).toEqual([{ device: 't', count: 3 }]);
    const again = joinDevices([...phone, ...back, ...tablet, ...of('x', takeOver(9, 3, 'p', 6), note(10))], leases);
    expect(names(again.entries)).toBe('p1 p2 p3 p4 p5 p6 x1 x2');
  });

  describe('by the server’s word', () => {
    it('is not moved by who was never given the lease, or goes by the lease of another', () => {
      for (const lease of [1, 2, 0, -1, 1.5]) {
        const thief = of('x', takeOver(4, lease, 'p', 3), note(5));
        expect(names(joinDevices([...phone, ...tablet, ...thief], once).entries)).toBe('p1 p2 p3 t1 t2 t3');
        expect(names(joinDevices([...phone, ...thief], given()).entries)).toBe('p1 p2 p3 p4 p5');
      }
    });

    it('is not moved by who held it once: a lease is good for one take-over', () => {
      // The tablet held it, the third holds it; the tablet writes another take-over that nobody gave.
      const leases = given(['t', end('p', 3)], ['x', end('p', 5), end('t', 2)]);
      const third = of('x', takeOver(5, 2, 't', 2), note(6));
      for (const [lease, device, seq] of [
        [1, 'x', 2],
        [2, 'x', 2],
        [3, 'x', 2],
        [1, 'p', 5],
        [3, 't', 3],
      ] as const) {
        const again = of('t', takeOver(9, lease, device, seq), note(10)).map(behind(3));
        const joined = joinDevices([...phone, ...tablet, ...third, ...again], leases);
        expect(names(joined.entries)).toBe('p1 p2 p3 t1 t2 x1 x2');
        expect(joined.holder).toBe('x');
      }
    });

    it('counts all that the server had: a take-over that names an earlier entry is void', () => {
      const early = of('t', takeOver(3, 1, 'p', 1), note(4));
      expect(names(joinDevices([...phone, ...early], once).entries)).toBe('p1 p2 p3');
      // One that passes over the holder before, of whom the server had something, too.
      const leases = given(['t', end('p', 3)], ['x', end('p', 5), end('t', 2)]);
      const over = of('x', takeOver(5, 2, 'p', 5), note(6));
      expect(names(joinDevices([...phone, ...tablet, ...over], leases).entries)).toBe('p1 p2 p3 t1 t2');
    });

    it('may name later entries, and leave out a batch of which not all had come', () => {
      const later = of('t', takeOver(7, 1, 'p', 5), note(8));
      expect(names(joinDevices([...phone, ...later], once).entries)).toBe('p1 p2 p3 p4 p5 t1 t2');
      const cut = [...phone, ...of('p', input(7, 2), note(8)).map(behind(5))];
      const cutBefore = of('t', takeOver(9, 1, 'p', 5), note(10));
      const leases = given(['t', end('p', 7)]);
      expect(names(joinDevices([...cut, ...cutBefore], leases).entries)).toBe('p1 p2 p3 p4 p5 t1 t2');
      const whole = [...cut, ...of('p', note(8)).map(behind(7))];
      expect(names(joinDevices([...whole, ...cutBefore], given(['t', end('p', 8)])).entries)).toBe(
        'p1 p2 p3 p4 p5 p6 p7 p8',
      );
    });

    it('waits with what the one before writes later, where the one that took it has written nothing yet', () => {
      const joined = joinDevices(phone, once);
      expect(names(joined.entries)).toBe('p1 p2 p3');
      expect([joined.writer, joined.holder]).toEqual(['p', 't']);
      expect(joined.leftOut).toEqual([{ device: 'p', count: 2 }]);
    });

    it('is not moved by a device that writes the take-over of its lease again and again', () => {
      const leases = given(['t', end('p', 3)], ['x', end('p', 3), end('t', 3)]);
      const third = of('x', takeOver(5, 2, 't', 3), note(6));
      const again = of('t', ...Array.from({ length: 1_500 }, () => takeOver(7, 1, 'p', 3))).map(behind(3));
      for (const all of [
        [...phone, ...tablet, ...third, ...again],
        [...again, ...third, ...tablet, ...phone].toSorted((a, b) => a.seq - b.seq),
      ]) {
        expect(names(joinDevices(all, leases).entries)).toBe('p1 p2 p3 t1 t2 t3 x1 x2');
      }
    });

    it('counts the first take-over by a lease that may: one that names too early an entry can be set right', () => {
      const set = of('t', takeOver(3, 1, 'p', 1), takeOver(4, 1, 'p', 3), note(5));
      expect(names(joinDevices([...phone, ...set], once).entries)).toBe('p1 p2 p3 t2 t3');
    });

    it('counts nothing that was written before the lease by which it goes was given', () => {
      const before = of('t', takeOver(1, 1, 'p', 3), note(2));
      const leases = given(['t', end('p', 3), end('t', 2)]);
      expect(names(joinDevices([...phone, ...before], leases).entries)).toBe('p1 p2 p3');
      const since = of('t', takeOver(4, 1, 'p', 3), note(5)).map(behind(2));
      expect(names(joinDevices([...phone, ...before, ...since], leases).entries)).toBe('p1 p2 p3 t3 t4');
    });

    it('passes over a holder of whom not one whole batch had come', () => {
      const { event } = of('t', takeOver(3, 1, 'p', 3))[0] as DeviceEntry;
      const half = of('t', { ...event, outcomes: 2 } as VisitEvent);
      const leases = given(['t', end('p', 3)], ['x', end('p', 3), end('t', 1)]);
      const third = of('x', takeOver(5, 2, 'p', 3), note(6));
      expect(names(joinDevices([...phone, ...half, ...third], leases).entries)).toBe('p1 p2 p3 x1 x2');
    });

    it('takes none that names an entry otherwise than by its numbers', () => {
      for (const seq of ['3', [3], { valueOf: 3 }, null, 3.5]) {
        const t = of('t', takeOver(3, 1, 'p', seq as number), note(4));
        expect(names(joinDevices([...phone, ...t], given(['t', end('p', 3)])).entries)).not.toContain('t');
      }
    });

    it('believes take-overs without a number where the visit is older than the numbers, in their order', () => {
      const old = (minute: number, device: string, seq: number) => takeOver(minute, undefined, device, seq);
      const t = of('t', old(3, 'p', 3), note(4));
      const x = of('x', old(5, 't', 2), note(6));
      const back = of('p', old(8, 'x', 2), note(9)).map(behind(5));
      const all = [...phone, ...back, ...t, ...x];
      expect(names(joinDevices(all, { ...given(), older: 'p' }).entries)).toBe('p1 p2 p3 t1 t2 x1 x2 p6 p7');
      expect(names(joinDevices(all, given()).entries)).toBe('p1 p2 p3 p4 p5 p6 p7');
      // What leads on from who held it then was never given.
      expect(names(joinDevices(all, { ...given(), older: 'x' }).entries)).toBe('p1 p2 p3 t1 t2 x1 x2');
      expect(joinDevices([...phone, ...t], { ...given(), older: 't' }).holder).toBe('t');
    });

    it('loses no take-over to a device that writes ever so many without a number', () => {
      const flood = of('p', ...Array.from({ length: 3_000 }, () => takeOver(-60, undefined, 'p', 1))).map(behind(5));
      const t = of('t', takeOver(3, undefined, 'p', 3), note(4));
      const x = of('x', takeOver(9, 1, 't', 2), note(10));
      const leases: Leases = { ...given(['x', end('p', 5), end('t', 2)]), older: 't' };
      const { entries } = joinDevices([...phone, ...flood, ...t, ...x], leases);
      expect(names(entries)).toBe('p1 p2 p3 t1 t2 x1 x2');
    });

    // Within the time that a test may take: it was minutes.
    it('is read to its end whatever a device writes: take-overs without number, many leases, remarks of another day', () => {
      const many = 4_000;
      const notes = of('t', takeOver(3, 1, 'p', 3), ...Array.from({ length: many }, () => note(4)));
      const remarks = of('p', ...Array.from({ length: many }, () => remark(-60 * 24 * 365))).map(behind(5));
      const claims = of('p', ...Array.from({ length: many }, (_, at) => takeOver(at, undefined, 't', many))).map(
        behind(5),
      );
      const leases = given(
        ...Array.from({ length: 500 }, (_, at) => ['xt'[at % 2] as string, end('p', 5), end('t', many)] as const),
      );
      const steps = of('x', ...Array.from({ length: many }, (_, at) => takeOver(at, (at % 250) * 2 + 1, 'p', 5)));
      for (const [all, by] of [
        [[...phone, ...notes, ...remarks], once],
        [[...phone, ...notes, ...claims], { ...given(), older: 't' }],
        [[...phone, ...notes, ...claims], undefined],
        [[...phone, ...notes, ...steps], leases],
      ] as const) {
        const { entries } = joinDevices(all, by);
        expect(new Set(entries).size).toBe(entries.length);
      }
    });

    it('takes the device that opened it from the server, whatever another device says that it opens', () => {
      const other = of('x', opened(0), note(1));
      expect(names(joinDevices([...other, ...phone], given()).entries)).toBe('p1 p2 p3 p4 p5');
    });
  });

  it('is not moved by who names an entry that is not there, or names themself', () => {
    const wrong = of('x', takeOver(3, 1, 'p', 99), takeOver(3, 2, 'q', 1), takeOver(3, 3, 'x', 1));
    for (const leases of [undefined, given(['x', end('p', 3)], ['x', end('p', 3)], ['x', end('p', 3)])]) {
      const joined = joinDevices([...phone, ...wrong], leases);
      expect(names(joined.entries)).toBe(leases === undefined ? 'p1 p2 p3 p4 p5' : 'p1 p2 p3');
      expect(joined.leftOut.at(-1)).toEqual({ device: 'x', count: 3 });
    }
  });

  it('comes to an end whatever take-overs name, and counts no entry twice', () => {
    const one = of('p', opened(0), takeOver(1, 2, 't', 2), note(2));
    const two = of('t', takeOver(1, 1, 'p', 2), takeOver(2, 3, 'p', 2), note(3));
    const { entries } = joinDevices([...one, ...two]);
    expect(new Set(entries).size).toBe(entries.length);
    const many = ['a', 'b', 'c'].flatMap((device, n) =>
      of(
        device,
        ...Array.from({ length: 1_000 }, (_, at) =>
          takeOver(at, (at * 31 + n) % 997, 'abc'[(n + at) % 3] as string, (at * 7) % 1_000),
        ),
      ),
    );
    const joined = joinDevices([...of('p', opened(0), note(1)), ...many]).entries;
    expect(new Set(joined).size).toBe(joined.length);
  });

  it('is not moved by a take-over that names nothing', () => {
    for (const from of [undefined, null, 'p', 7, {}]) {
      const event = { type: 'input.taken', input: { type: 'took.over.visit', from, lease: 1, time: time(3) } };
      expect(joinDevices([...phone, ...of('x', event as unknown as VisitEvent)]).holder).toBe('p');
    }
  });

  it('is not moved by who names an entry by another hash', () => {
    const hashed = phone.map((entry) => ({ ...entry, hash: 'b'.repeat(64) }));
    expect(names(joinDevices([...hashed, ...tablet]).entries)).toBe('p1 p2 p3 p4 p5');
    const right = phone.map((entry) => ({ ...entry, hash: HASH }));
    expect(names(joinDevices([...right, ...tablet]).entries)).toBe('p1 p2 p3 t1 t2 t3');
  });

  it('tells epochs of a device apart', () => {
    const later = [note(3), note(4)].map((event, at) => ({ device: 'p', epoch: 2, seq: at + 1, event }));
    const all = [...phone.slice(0, 2), ...later, ...of('t', takeOver(5, 1, 'p', 1, 2), note(6))];
    for (const leases of [undefined, given(['t', end('p', 2), end('p', 1, 2)])]) {
      const joined = joinDevices(all, leases);
      expect(joined.entries.map(({ device, epoch, seq }) => `${device}${epoch}.${seq}`).join(' ')).toBe(
        'p1.1 p1.2 p2.1 t1.1 t1.2',
      );
    }
    expect(names(joinDevices(all, given(['t', end('p', 2), end('p', 2, 2)])).entries)).toBe('p1 p2 p1 p2');
  });

  it('keeps remarks of the server and of who held it once, and of nobody else', () => {
    const late = [...phone, ...of('p', remark(9)).map(behind(5))];
    const joined = joinDevices([...late, ...tablet, ...of('s', remark(1)), ...of('remarks-7', remark(1))], once);
    expect(names(joined.entries)).toContain('p6');
    expect(names(joined.entries)).toContain('remarks-71');
    expect(joined.leftOut).toEqual([
      { device: 'p', count: 2 },
      { device: 's', count: 1 },
    ]);
    // Of files beside each other, whose devices nobody can tell, all are taken.
    expect(names(joinDevices([...late, ...of('s', remark(1))]).entries)).toContain('s1');
  });

  it('of no entries is nothing', () => {
    const nothing = { entries: [], writer: undefined, holder: undefined, leftOut: [] };
    expect(joinDevices([])).toEqual(nothing);
    expect(joinDevices([], once)).toEqual(nothing);
  });
});
