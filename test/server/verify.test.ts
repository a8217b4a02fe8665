import { spawnSync } from 'node:child_process';
import { cpSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import SQLite from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { checkChains } from '../../server/heads/check-chains.ts';
import { heldByDevice, verifyDevice } from '../../server/heads/held-by-device.ts';
import { verifyFolder, verifyServer } from '../../server/heads/verify-all.ts';
import { openSqliteStore } from '../../server/store/sqlite-store.ts';
import { openReceiptSigner } from '../../server/sync/receipt-signer.ts';
import { buildServer, scratchFolder } from './built-server.ts';
import { getJson } from './get-json.ts';
import { BEGAN, entriesOf, makeKeptFolder } from './kept-folder.ts';
import { chainFor, RawClient, type RunningApp, runApp, streamOf } from './running-app.ts';

const scratch = scratchFolder();
const KEPT = join(scratch.path, 'kept');
let program: string;
beforeAll(async () => {
  program = buildServer();
  await makeKeptFolder(KEPT, { north: 20, south: 30 });
}, 120_000);
afterAll(() => scratch.remove());

let copies = 0;
function copyOf(): string {
  copies += 1;
  const folder = join(scratch.path, `copy-${copies}`);
  cpSync(KEPT, folder, { recursive: true });
  return folder;
}

function verify(...args: string[]) {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [program.replace('main.js', 'tools/verify.js'), ...args],
    {
      encoding: 'utf8',
      timeout: 20_000,
    },
  );
  return { code: status, out: stdout, err: stderr };
}

const sentences = (findings: readonly { readonly sentence: string }[]) => findings.map(({ sentence }) => sentence);

describe('what a record holds against itself', { timeout: 60_000 }, () => {
  test('in a folder: kept forks, and streams that are known to be incomplete, also one of which nothing came', async () => {
    const folder = copyOf();
    const store = openSqliteStore(join(folder, 'readback.sqlite'));
    const other = await chainFor(streamOf('north'), ['{"type":"other"}']);
    await store.commit(other.map((entry) => ({ ...entry, stream: streamOf('north'), receivedAt: BEGAN })));
    const head = (seq: number) => ({ seq, hash: 'e'.repeat(64) });
    await store.note([
      { stream: streamOf('south'), head: head(99_999), saidAt: BEGAN },
      { stream: streamOf('never'), head: head(7), saidAt: BEGAN },
    ]);
    await store.close();
    const { findings } = await verifyFolder(folder, []);
    expect(findings.map(({ stream, sentence }) => `${stream}: ${sentence}`)).toEqual([
      'local/north/phone/1: 1 event that contradicts it is kept beside it: two claim one number.',
      'local/south/phone/1: Not complete: 30 held, its device said that it has 99999.',
      'local/never/phone/1: Not complete: 0 held, its device said that it has 7.',
    ]);
  });

  describe('on a running server', () => {
    let server: RunningApp;
    beforeAll(async () => {
      server = await runApp();
    });
    afterAll(() => server.stop());

    test('a kept fork is found by verify and by the check of the visit', async () => {
      const stream = streamOf('twice');
      for (const text of ['one', 'other']) {
        const client = await RawClient.open(server.url);
        await client.hello(stream);
        const [entry] = await chainFor(stream, [`{"text":"${text}"}`]);
        client.say({ kind: 'append', ...entry });
        await client.hear();
        client.socket.close();
      }
      const { findings } = await getJson<{ findings: { sentence: string }[] }>(`${server.url}/api/visits/twice/check`);
      expect(sentences(findings)).toEqual(['1 event that contradicts it is kept beside it: two claim one number.']);
      expect(sentences((await verifyServer(server.url, [])).findings)).toEqual(sentences(findings));
    });
  });
});

describe('the check of a start', () => {
  test('says how far it came, and finds a hole also where its time is over', async () => {
    const folder = copyOf();
    const path = join(folder, 'readback.sqlite');
    const untouched = openSqliteStore(path);
    expect(await checkChains(untouched, -1)).toEqual({ checked: 0, events: 50, findings: [] });
    expect(await checkChains(untouched, 10_000)).toEqual({ checked: 50, events: 50, findings: [] });
    await untouched.close();
    const database = new SQLite(path);
    const drop = database.prepare<[], string>("SELECT sql FROM sqlite_schema WHERE name = 'event_no_delete'").pluck();
    const guard = drop.get() ?? '';
    database.exec('DROP TRIGGER event_no_delete');
    database.exec('DELETE FROM event WHERE stream = 2 AND seq = 9');
    database.exec(guard);
    database.close();
    const store = openSqliteStore(path);
    expect(await checkChains(store, -1)).toMatchObject({
      checked: 30,
      findings: [{ stream: 'local/south/phone/1', seq: 9 }],
    });
    await store.close();
  });
});

describe('heads that were kept elsewhere', { timeout: 60_000 }, () => {
  test('are wrong use where the file is not there, or has none in it', () => {
    const empty = join(scratch.path, 'empty.jsonl');
    writeFileSync(empty, '');
    expect(verify('--data', KEPT, '--heads', join(scratch.path, 'nowhere.jsonl'))).toMatchObject({
      code: 2,
      out: '',
      err: expect.stringMatching(/^There are no heads at /),
    });
    expect(verify('--data', KEPT, '--heads', empty)).toMatchObject({
      code: 2,
      err: expect.stringMatching(/holds no head/),
    });
    expect(verify('--heads', empty, 'visit.jsonl')).toMatchObject({
      code: 2,
      err: expect.stringMatching(/goes with --data/),
    });
  });

  test('do not hide what is wrong with those of the folder', () => {
    const folder = copyOf();
    const path = join(folder, 'heads.jsonl');
    const kept = join(scratch.path, 'kept.jsonl');
    cpSync(path, kept);
    writeFileSync(path, readFileSync(path, 'utf8').replace('"seq":30', '"seq":29'));
    const { code, out } = verify('--data', folder, '--heads', kept);
    expect(code).toBe(1);
    expect(out).toMatch(/^Head 2 in .* does not bear the signature/m);
    expect(out).not.toContain('?:');
  });
});

describe('the file of a device', { timeout: 60_000 }, () => {
  const key = () => openReceiptSigner(join(KEPT, 'receipt-key.pem'));

  /** A file as a device keeps it: so many events, acknowledged at some of them. */
  async function deviceFile(count: number, acknowledged: readonly number[], change = (line: object): object => line) {
    const stream = streamOf('north');
    const entries = await entriesOf('north', count);
    const acks = acknowledged.map(async (seq) => {
      const hash = entries[seq - 1]?.hash ?? '';
      return { kind: 'acknowledged', seq, hash, receipt: await key().sign({ stream, seq, hash, time: BEGAN }) };
    });
    const lines = [{ kind: 'stream', version: 1, stream }, { kind: 'batch', entries }, ...(await Promise.all(acks))];
    const path = join(scratch.path, 'north.jsonl');
    writeFileSync(path, lines.map((line) => `${JSON.stringify(change(line))}\n`).join(''));
    return path;
  }
  const against = async (path: string) => sentences((await verifyFolder(KEPT, [heldByDevice(path)])).findings);
  const alone = async (path: string, publicKey?: string) =>
    sentences(await verifyDevice(heldByDevice(path), publicKey));

  test('is held against the folder by its own end', async () => {
    expect(await against(await deviceFile(20, [20]))).toEqual([]);
    expect(await against(await deviceFile(27, [20]))).toEqual([
      'Not complete: 20 held here, and the device holds 27: the others were not sent, or are gone.',
    ]);
    expect(await against(await deviceFile(5, []))).toEqual([
      'The end is missing on the device: its file holds 5, and 20 are held here.',
    ]);
    expect(await against(await deviceFile(27, [27]))).toEqual([
      'Not complete: 20 held here, and the device was told that 27 were.',
    ]);
  });

  test('from which the receipts were taken is told, one of a later connection is not', async () => {
    const bare = (line: object) => {
      const { receipt: _, ...rest } = line as { receipt?: unknown };
      return rest;
    };
    const path = await deviceFile(20, [4, 20], bare);
    expect(await alone(path, key().publicKey)).toEqual([
      'No receipt is kept for event 20: it did not come, or was taken out.',
    ]);
    const again = await deviceFile(20, [4, 20]);
    const [last = ''] = readFileSync(again, 'utf8').trim().split('\n').slice(-1);
    writeFileSync(again, `${readFileSync(again, 'utf8')}${JSON.stringify(bare(JSON.parse(last)))}\n`);
    expect(await alone(again, key().publicKey)).toEqual([]);
  });

  test('with a receipt of another visit is told, also without a key', async () => {
    const path = await deviceFile(20, [20], (line) => {
      const { receipt } = line as { receipt?: object };
      return receipt === undefined ? line : { ...line, receipt: { ...receipt, stream: streamOf('south') } };
    });
    const told = ['The receipt it keeps for event 20 is one of another event, or of another visit.'];
    expect(await alone(path)).toEqual(told);
    expect(await alone(path, key().publicKey)).toEqual(told);
  });

  test('of a version that is not known is refused', async () => {
    const path = await deviceFile(3, [], (line) => ('version' in line ? { ...line, version: 99 } : line));
    expect(verify(path)).toMatchObject({ code: 2, out: '', err: expect.stringMatching(/record of version 99/) });
    rmSync(path);
  });

  test('with one event is told in words for one', async () => {
    expect(verify(await deviceFile(1, [1])).out).toMatch(/^Nothing speaks against 1 event in 1 stream\./);
  });
});
