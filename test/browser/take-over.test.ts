import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { accessFaults, overflow } from './look-over.ts';
import { picture, ReadbackBrowser, scratch, startServer } from './readback-browser.ts';
import { Technician } from './technician.ts';

let folder: Awaited<ReturnType<typeof scratch>>;
let server: LocalServer;
let phone: ReadbackBrowser;
let tablet: ReadbackBrowser;
beforeAll(async () => {
  folder = await scratch();
  server = await startServer(`${folder.path}/data`);
  phone = await ReadbackBrowser.open({ profile: `${folder.path}/phone` });
  tablet = await ReadbackBrowser.open({ profile: `${folder.path}/tablet` });
});
afterAll(async () => {
  await phone.close();
  await tablet.close();
  await server.stop();
  await folder.remove();
});

describe('a visit on two devices', () => {
  test('is carried on by the second, said on both, taken up after a reload, and taken back', async () => {
    const first = new Technician(await phone.page(server.url));
    await first.openAs('technician');
    await first.type('leg one to ground one eighteen');
    await first.sent();

    const other = await tablet.page(server.url);
    await other.getByRole('button', { name: 'Look for visits on other devices' }).click();
    const take = other.getByRole('button', { name: 'Carry on here: Reading room' });
    await take.waitFor();
    await picture(other, 'visits-elsewhere');
    expect(await accessFaults(other)).toEqual([]);
    expect(await overflow(other)).toBeLessThanOrEqual(0);
    await take.click();
    const second = new Technician(other);
    await other.locator('main.visit').waitFor();
    await second.settled();
    expect(await other.locator('.so-far').textContent()).toContain('118');

    await first.page.locator('[data-carried-on]').waitFor();
    expect(await first.page.locator('.notice').textContent()).toContain('carries this visit on');
    await picture(first.page, 'carried-on-elsewhere');
    expect(await accessFaults(first.page)).toEqual([]);
    // It stays so after a reload: the visit does not begin to talk there again.
    await first.page.reload();
    await first.page.locator('[data-left-visits]').waitFor();

    await second.type('leg two to ground one nineteen');
    await second.sent();
    await other.reload();
    await other.locator('main.visit').waitFor();
    await second.settled();
    const readings = await other.locator('.so-far').textContent();
    expect(readings).toContain('118');
    expect(readings).toContain('119');

    await first.page.getByRole('button', { name: 'Carry on here again' }).click();
    await first.page.locator('main.visit').waitFor();
    await first.settled();
    await other.locator('[data-carried-on]').waitFor();
    expect(await first.page.locator('.so-far').textContent()).toContain('119');
    await first.type('leg one to leg two two thirty eight');
    await first.sent();

    const record = await first.page.evaluate(async () => {
      const [{ visit }] = (await (await fetch('/api/visits')).json()).visits;
      return (await fetch(`/api/visits/${visit}/record.json`)).json();
    });
    expect(record.readings.map(({ reading }: { reading: { value: number } }) => reading.value)).toEqual([
      118, 119, 238,
    ]);
    expect(record.takeOvers).toHaveLength(2);
    const review = await tablet.page(`${server.url}/review?visit=${record.visit}`);
    await review.getByText('Carried on by another device').first().waitFor();
    expect(phone.errors).toEqual([]);
    expect(tablet.errors).toEqual([]);
  });
});
