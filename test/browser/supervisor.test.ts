import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { accessFaults } from './look-over.ts';
import { PROJECT_ROOT } from './project-root.ts';
import { DESK, picture, ReadbackBrowser, scratch, startServer } from './readback-browser.ts';
import { Technician } from './technician.ts';

let folder: Awaited<ReturnType<typeof scratch>>;
let server: LocalServer;
let desk: ReadbackBrowser;
let phone: ReadbackBrowser;
beforeAll(async () => {
  folder = await scratch();
  server = await startServer(`${folder.path}/data`);
  desk = await ReadbackBrowser.open({ profile: `${folder.path}/desk`, size: DESK });
  phone = await ReadbackBrowser.open({ profile: `${folder.path}/phone` });
});
afterAll(async () => {
  await desk.close();
  await phone.close();
  await server.stop();
  await folder.remove();
});

/** Asks as the page does, with its cookies. */
async function post(
  page: Page,
  path: string,
  body: object = {},
): Promise<{ code: string; person: { person: string } }> {
  return page.evaluate(
    async ([to, sent]) => {
      const answer = await fetch(to as string, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(sent),
      });
      return answer.json();
    },
    [path, body] as const,
  );
}

describe('a trainee’s visit, two devices', () => {
  test('the supervisor acknowledges from their own, live, and the record says whose word it was', async () => {
    const tool = join(PROJECT_ROOT, '.build/server/tools/keeper.js');
    const args = [tool, '--data', `${folder.path}/data`, '--url', server.url, '--name', 'Robin Keeper', 'robin'];
    const said = execFileSync(process.execPath, args, { encoding: 'utf8' });
    const page = await desk.page(/http\S+/.exec(said)?.[0] ?? '');
    await page.locator('[data-signed-in="keeper"]').waitFor();
    const sam = await post(page, '/api/people', { login: 'sam', name: 'Sam Supervisor', role: 'supervisor' });
    const kim = await post(page, '/api/people', { login: 'kim', name: 'Kim Trainee', role: 'trainee' });
    const { code } = await post(page, `/api/people/${kim.person.person}/pairing`);

    const held = await phone.page(`${server.url}/pair#${code}`);
    await held.getByRole('button', { name: 'Pair this device' }).click();
    await held.locator('[data-paired]').waitFor();
    await held.goto(server.url);
    const trainee = new Technician(held);
    await trainee.openAs('trainee');
    await trainee.sent();

    await page.goto(`${server.url}/sign-in`);
    await page.getByRole('button', { name: 'Sign out' }).click();
    await page.getByRole('button', { name: 'Sign in', exact: true }).waitFor();
    await page.goto(`${server.url}/sign-in#${sam.code}`);
    await page.locator('[data-signed-in="supervisor"]').waitFor();
    await page.goto(`${server.url}/review`);
    await page.locator('.visit-card').click();
    await page.locator('[data-acknowledge]').waitFor();
    await picture(page, 'review-acknowledge');
    expect(await accessFaults(page)).toEqual([]);
    await page.getByRole('button', { name: 'Acknowledge the live steps' }).click();
    await page.getByText('The record of the visit says: acknowledged by Sam Supervisor.').waitFor();

    const { bodies } = await page.evaluate(async () => {
      const visit = new URLSearchParams(location.search).get('visit');
      const { events } = await (await fetch(`/api/visits/${visit}/events`)).json();
      return { bodies: events.map((event: { body: string }) => JSON.parse(event.body)) };
    });
    const event = bodies.find(({ type }: { type: string }) => type === 'supervisor.acknowledged');
    expect(event).toMatchObject({ supervisor: 'Sam Supervisor', from: 'own-device' });
    const input = bodies.find(({ input }: { input?: { type: string } }) => input?.type === 'supervisor.acknowledged');
    expect(input.input.vouched).toMatchObject({
      person: sam.person.person,
      signature: expect.stringMatching(/^[\w-]{86}$/),
    });
  });
});
