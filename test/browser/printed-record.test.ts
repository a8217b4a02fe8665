import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openMemoryLog } from '../../client/record/memory-log.ts';
import { nodeLink } from '../../client/record/node/link-edge.ts';
import type { LocalServer } from '../../client/record/node/local-server.ts';
import { Outbox } from '../../client/record/outbox.ts';
import { PROJECT_ROOT } from './project-root.ts';
import { DESK, ReadbackBrowser, scratch, startServer } from './readback-browser.ts';

let folder: Awaited<ReturnType<typeof scratch>>;
let server: LocalServer;
let browser: ReadbackBrowser;

beforeAll(async () => {
  folder = await scratch();
  server = await startServer(`${folder.path}/data`);
  browser = await ReadbackBrowser.open({ profile: `${folder.path}/profile`, size: DESK });
}, 60_000);
afterAll(async () => {
  await browser.close();
  await server.stop();
  await folder.remove();
});

/** Puts a recorded visit on the server as its device would; returns the last link of its chain. */
async function send(name: string): Promise<string> {
  const path = join(PROJECT_ROOT, `fixtures/visits/${name}/events.jsonl`);
  const bodies = readFileSync(path, 'utf8').trim().split('\n');
  const stream = { company: 'local', visit: name, device: 'phone', epoch: 1 };
  const log = await openMemoryLog(stream, (bytes) => createHash('sha256').update(bytes).digest());
  const outbox = new Outbox({ log, ...nodeLink(server.url) }).start();
  await outbox.append(bodies);
  await outbox.settled();
  outbox.stop();
  return log.head().hash;
}

describe('the printed record', { timeout: 60_000 }, () => {
  test('is a page and a PDF, with where the chain ends and no key of the page on paper', async () => {
    const hash = await send('low-charge');
    const page = await browser.page(`${server.url}/review?visit=low-charge&print`);
    await page.locator('main[data-printed="true"]').waitFor();
    const text = await page.locator('main').textContent();
    for (const part of ['R-410A', 'four pounds two ounces', hash, 'Sources']) expect(text).toContain(part);
    await page.emulateMedia({ media: 'print' });
    expect(await page.getByRole('button', { name: 'Print, or keep as PDF' }).isVisible()).toBe(false);
    await mkdir(join(PROJECT_ROOT, 'test-results'), { recursive: true });
    const pdf = await page.pdf({ format: 'Letter', path: join(PROJECT_ROOT, 'test-results/printed-record.pdf') });
    expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
    // Each page is an object of that type (ISO 32000-1, 7.7.3.3).
    const pages = pdf.toString('latin1').match(/\/Type\s*\/Page\b/g) ?? [];
    expect(pages.length).toBeGreaterThan(1);
    expect(pages.length).toBeLessThan(8);
    await page.close();
  });
});
