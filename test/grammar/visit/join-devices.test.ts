import { describe, expect, it } from 'vitest';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import type { LastEntry } from '../../../grammar/visit/inputs.ts';
import { type DeviceEntry, joinDevices } from '../../../grammar/visit/join-devices.ts';

const HASH = 'a'.repeat(64);
const time = (minute: number) => ({ at: new Date(Date.UTC(2026, 5, 15, 14, minute)).toISOString(), mono: minute });
const opened = (minute: number) => ({ type: 'visit.opened', time: time(minute) }) as unknown as VisitEvent;
const note = (minute: number) => ({ type: 'note.taken', time: time(minute) }) as unknown as VisitEvent;
const remark = (minute: number) =>
  ({ type: 'remark.made', author: 'S. Visor', text: '', time: time(minute) }) as VisitEvent;
const takeOver = (minute: number, device: string, seq: number, epoch = 1) => {
  const from: LastEntry = { device, epoch, seq, hash: HASH };
  return { type: 'input.taken', input: { type: 'took.over.visit', from, time: time(minute) } } as unknown as VisitEvent;
};

/** Each device's entries numbered from 1; named by device and number. */
function of(device: string, ...events: readonly VisitEvent[]): DeviceEntry[] {
  return events.map((event, at) => ({ device, epoch: 1, seq: at + 1, event }));
}
const names = (entries: readonly DeviceEntry[]) => entries.map(({ device, seq }) => `${device}${seq}`).join(' ');

describe('a visit of several devices', () => {
  const phone = of('p', opened(0), note(1), note(2), note(5), note(6));
  const tablet = of('t', takeOver(3, 'p', 3), note(4), note(7));

  it('is what each wrote while it held the lease; what the first wrote later does not count, and is counted', () => {
    for (const all of [
      [...phone, ...tablet],
      [...tablet, ...phone],
    ]) {
      const joined = joinDevices(all);
      expect(names(joined.entries)).toBe('p1 p2 p3 t1 t2 t3');
      expect(joined.holder).toBe('t');
      expect(joined.leftOut).toEqual([{ device: 'p', count: 2 }]);
    }
  });

  it('comes back to the first where that takes it over again', () => {
    const back = [...phone, { device: 'p', epoch: 1, seq: 6, event: takeOver(8, 't', 2) }];
    const joined = joinDevices([...back, { device: 'p', epoch: 1, seq: 7, event: note(9) }, ...tablet]);
    expect(names(joined.entries)).toBe('p1 p2 p3 t1 t2 p6 p7');
    expect(joined.holder).toBe('p');
    expect(joined.leftOut).toEqual([
      { device: 'p', count: 2 },
      { device: 't', count: 1 },
    ]);
  });

  it('goes to one where two claim it behind the same entry, and to the earlier entry where two name others', () => {
    const third = of('x', takeOver(4, 'p', 3), note(5));
    expect(names(joinDevices([...phone, ...tablet, ...third]).entries)).toBe('p1 p2 p3 t1 t2 t3');
    const later = of('y', takeOver(4, 'p', 5));
    expect(names(joinDevices([...phone, ...later, ...tablet]).entries)).toBe('p1 p2 p3 t1 t2 t3');
  });

  it('stays with who took it back before the other wrote anything, whatever comes of that one later', () => {
    const back = { device: 'p', epoch: 1, seq: 6, event: takeOver(8, 'p', 5) };
    const joined = joinDevices([...phone, back, ...tablet]);
    expect(names(joined.entries)).toBe('p1 p2 p3 p4 p5 p6');
    expect(joined.leftOut).toEqual([{ device: 't', count: 3 }]);
    const again = joinDevices([...phone, back, ...tablet, ...of('x', takeOver(9, 'p', 6), note(10))]);
    expect(names(again.entries)).toBe('p1 p2 p3 p4 p5 p6 x1 x2');
  });

  it('is not moved by who names an entry that is not there, or names themself', () => {
    const wrong = of('x', takeOver(3, 'p', 99), takeOver(3, 'q', 1), takeOver(3, 'x', 1));
    const joined = joinDevices([...phone, ...wrong]);
    expect(names(joined.entries)).toBe('p1 p2 p3 p4 p5');
    expect(joined.leftOut).toEqual([{ device: 'x', count: 3 }]);
  });

  it('comes to an end where two name each other in a circle, and counts no entry twice', () => {
    const one = of('p', opened(0), takeOver(1, 't', 2), note(2));
    const two = of('t', takeOver(1, 'p', 2), takeOver(2, 'p', 2), note(3));
    const { entries } = joinDevices([...one, ...two]);
    expect(new Set(entries).size).toBe(entries.length);
    const many = ['a', 'b', 'c'].flatMap((device, n) =>
      of(device, ...Array.from({ length: 40 }, (_, at) => takeOver(at, 'abc'[(n + at) % 3] as string, (at * 7) % 40))),
    );
    const joined = joinDevices([...of('p', opened(0), note(1)), ...many]).entries;
    expect(new Set(joined).size).toBe(joined.length);
  });

  it('is not moved by a take-over that names nothing', () => {
    for (const from of [undefined, null, 'p', 7, {}]) {
      const event = { type: 'input.taken', input: { type: 'took.over.visit', from, time: time(3) } };
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
    const joined = joinDevices([...phone.slice(0, 2), ...later, ...of('t', takeOver(5, 'p', 1, 2), note(6))]);
    expect(joined.entries.map(({ device, epoch, seq }) => `${device}${epoch}.${seq}`).join(' ')).toBe(
      'p1.1 p1.2 p2.1 t1.1 t1.2',
    );
  });

  it('keeps remarks of whoever holds no lease, and of who held it once', () => {
    const late = [...phone, { device: 'p', epoch: 1, seq: 6, event: remark(9) }];
    const joined = joinDevices([...late, ...tablet, ...of('s', remark(1))]);
    expect(names(joined.entries)).toContain('p6');
    expect(names(joined.entries)).toContain('s1');
    expect(joined.leftOut).toEqual([{ device: 'p', count: 2 }]);
  });

  it('of no entries is nothing', () => {
    expect(joinDevices([])).toEqual({ entries: [], holder: undefined, leftOut: [] });
  });
});
