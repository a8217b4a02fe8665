import { generateKeyPairSync, type KeyObject, sign } from 'node:crypto';
import { cpSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import SQLite from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { Dice } from '../../client/practice/plant/dice.ts';
import { type Entry, parseStreamText, type StreamId } from '../../grammar/visit/envelope.ts';
import { headText, type SignedHead } from '../../grammar/visit/signed-head.ts';
import { headHash } from '../../server/heads/heads-file.ts';
import { headsInFolder } from '../../server/heads/heads-in-folder.ts';
import { heldByDevice, verifyDevice } from '../../server/heads/held-by-device.ts';
import { heldInFolder } from '../../server/heads/held-in-folder.ts';
import { keepHeads } from '../../server/heads/keep-heads.ts';
import { verifyFolder } from '../../server/heads/verify-all.ts';
import { openSqliteStore } from '../../server/store/sqlite-store.ts';
import { openReceiptSigner } from '../../server/sync/receipt-signer.ts';
import { SEED, tries } from '../how-much.ts';
import { tellFigure } from '../promises/tell-figure.ts';
import { scratchFolder } from './built-server.ts';
import { chainFor, streamOf } from './running-app.ts';

const scratch = scratchFolder();
const ORIGINAL = join(scratch.path, 'original');
const VISITS = ['north', 'south', 'east', 'west'];
const EVENTS = 30;
/** Milliseconds since 1970; any will do. */
const BEGAN = 1_780_000_000_000;
const signer = () => openReceiptSigner(join(ORIGINAL, 'receipt-key.pem'));
const deviceFile = (folder: string, visit: string) => join(folder, `${visit}.jsonl`);
const bodyOf = (visit: string, index: number) => JSON.stringify({ type: 'note.taken', text: `${visit} ${index}` });

/** A record of four visits as a server leaves it at its end, and the files of the devices that wrote them. */
async function makeRecord(): Promise<void> {
  mkdirSync(ORIGINAL);
  const store = openSqliteStore(join(ORIGINAL, 'readback.sqlite'));
  const signs = signer();
  const keeper = await keepHeads({
    place: headsInFolder(ORIGINAL),
    store,
    signer: signs,
    clock: () => BEGAN,
    acceptLoss: false,
  });
  for (const visit of VISITS) {
    const stream = streamOf(visit);
    const entries = await chainFor(
      stream,
      Array.from({ length: EVENTS }, (_, index) => bodyOf(visit, index)),
    );
    await store.commit(entries.map((entry, index) => ({ ...entry, stream, receivedAt: BEGAN + index * 1000 })));
    await keeper.stored();
    const acknowledged = async (at: number) => {
      const { seq, hash } = entries.at(at) as Entry;
      return { kind: 'acknowledged', seq, hash, receipt: await signs.sign({ stream, seq, hash, time: BEGAN + seq }) };
    };
    const lines = [
      { kind: 'stream', version: 1, stream },
      ...entries.map((entry) => ({ kind: 'batch', entries: [entry] })),
      await acknowledged(4),
      await acknowledged(-1),
    ];
    writeFileSync(deviceFile(ORIGINAL, visit), lines.map((line) => `${JSON.stringify(line)}\n`).join(''));
  }
  await keeper.close();
  await store.close();
}

beforeAll(makeRecord, 60_000);
afterAll(() => scratch.remove());

/** Heads that fit the tables as they are now, signed by another key: what an enemy makes who can write and has no key. */
async function signAnew(folder: string, key: string, privateKey: KeyObject): Promise<void> {
  const path = join(folder, 'heads.jsonl');
  const held = new Map((await heldInFolder(folder)).streams.map((one) => [one.stream, one.events]));
  const heads: SignedHead[] = [];
  for (const line of readFileSync(path, 'utf8').trim().split('\n')) {
    const old = JSON.parse(line) as SignedHead;
    const before = heads.at(-1);
    const streams = old.streams.map((one) => ({ ...one, hash: held.get(one.stream)?.[one.seq - 1]?.hash ?? '' }));
    const head = { ...old, streams, key, previous: before === undefined ? old.previous : headHash(before) };
    const signature = sign(null, Buffer.from(headText(head), 'utf8'), privateKey).toString('base64url');
    heads.push({ ...head, signature });
  }
  writeFileSync(path, heads.map((head) => `${JSON.stringify(head)}\n`).join(''));
}

/** The tables without what forbids to change them, and with it again afterwards, as a careful enemy leaves them. */
function withTables(
  folder: string,
  change: (database: SQLite.Database, stream: number, seq: number) => void,
  dice: Dice,
) {
  const database = new SQLite(join(folder, 'readback.sqlite'));
  const triggers = database
    .prepare<[], { name: string; sql: string }>("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'")
    .all();
  for (const { name } of triggers) database.exec(`DROP TRIGGER ${name}`);
  database.pragma('foreign_keys = OFF');
  change(database, 1 + Math.floor(dice.roll() * VISITS.length), 1 + Math.floor(dice.roll() * (EVENTS - 1)));
  for (const { sql } of triggers) database.exec(sql);
  database.close();
}

/** Bodies of a stream with one changed, and their chain made anew: whole in itself. */
async function madeAnew(visit: string, from: number): Promise<readonly Entry[]> {
  const bodies = Array.from({ length: EVENTS }, (_, index) => bodyOf(index + 1 === from ? 'forged' : visit, index));
  return chainFor(streamOf(visit), bodies);
}

/** What an enemy does to the tables. */
const IN_TABLES: Readonly<Record<string, (folder: string, dice: Dice) => Promise<void> | void>> = {
  'a body is changed': (folder, dice) =>
    withTables(
      folder,
      (db, stream, seq) =>
        db
          .prepare('UPDATE event SET body = ? WHERE stream = ? AND seq = ?')
          .run(Buffer.from('{"type":"x"}'), stream, seq),
      dice,
    ),
  'a hash is changed': (folder, dice) =>
    withTables(
      folder,
      (db, stream, seq) =>
        db.prepare('UPDATE event SET hash = ? WHERE stream = ? AND seq = ?').run('a'.repeat(64), stream, seq),
      dice,
    ),
  'an event is deleted': (folder, dice) =>
    withTables(
      folder,
      (db, stream, seq) => db.prepare('DELETE FROM event WHERE stream = ? AND seq = ?').run(stream, seq),
      dice,
    ),
  'two events change places': (folder, dice) =>
    withTables(
      folder,
      (db, stream, seq) => {
        const move = db.prepare('UPDATE event SET seq = ? WHERE stream = ? AND seq = ?');
        move.run(9999, stream, seq);
        move.run(seq, stream, seq + 1);
        move.run(seq + 1, stream, 9999);
      },
      dice,
    ),
  'an event is put in at the end': (folder, dice) =>
    withTables(
      folder,
      (db, stream) =>
        db
          .prepare('INSERT INTO event (stream, seq, hash, body, received_at) VALUES (?, ?, ?, ?, ?)')
          .run(stream, EVENTS + 1, 'b'.repeat(64), Buffer.from('{}'), BEGAN),
      dice,
    ),
  'the tail is cut': (folder, dice) =>
    withTables(
      folder,
      (db, stream, seq) => db.prepare('DELETE FROM event WHERE stream = ? AND seq > ?').run(stream, seq),
      dice,
    ),
  'a stream is written anew as a whole': async (folder, dice) => {
    const visit = dice.pick(VISITS);
    const entries = await madeAnew(visit, 1 + Math.floor(dice.roll() * EVENTS));
    withTables(
      folder,
      (db) => {
        const id = db.prepare<[string], number>('SELECT id FROM stream WHERE visit = ?').pluck().get(visit);
        const write = db.prepare('UPDATE event SET hash = ?, body = ? WHERE stream = ? AND seq = ?');
        for (const { seq, hash, body } of entries) write.run(hash, Buffer.from(body), id, seq);
      },
      dice,
    );
  },
  'a visit is deleted': (folder, dice) =>
    withTables(
      folder,
      (db, stream) => {
        db.prepare('DELETE FROM event WHERE stream = ?').run(stream);
        db.prepare('DELETE FROM stream WHERE id = ?').run(stream);
      },
      dice,
    ),
  'a time of receipt is changed': (folder, dice) =>
    withTables(
      folder,
      (db, stream, seq) =>
        db
          .prepare('UPDATE event SET received_at = received_at + ? WHERE stream = ? AND seq = ?')
          .run(1 + Math.floor(dice.span(0, 5000)), stream, seq),
      dice,
    ),
  'a visit is given to another': (folder, dice) =>
    withTables(folder, (db, stream) => db.prepare("UPDATE stream SET visit = 'other' WHERE id = ?").run(stream), dice),
  'a stream is said to carry on another': (folder, dice) =>
    withTables(
      folder,
      (db, stream) =>
        db
          .prepare('UPDATE stream SET follows_epoch = 1, follows_seq = 2, follows_hash = ? WHERE id = ?')
          .run('c'.repeat(64), stream),
      dice,
    ),
  'the order of arrival of two events is changed': (folder, dice) =>
    withTables(
      folder,
      (db, stream, seq) => {
        const at = db
          .prepare<[number, number], number>('SELECT arrival FROM event WHERE stream = ? AND seq = ?')
          .pluck();
        const move = db.prepare('UPDATE event SET arrival = ? WHERE arrival = ?');
        const [one, next] = [Number(at.get(stream, seq)), Number(at.get(stream, seq + 1))];
        move.run(-1, one);
        move.run(one, next);
        move.run(next, -1);
      },
      dice,
    ),
  'what forbids a change is taken away': (folder, dice) => {
    const database = new SQLite(join(folder, 'readback.sqlite'));
    database.exec(`DROP TRIGGER ${dice.pick(['event_no_update', 'event_no_replace', 'stream_no_delete'])}`);
    database.close();
  },
  'something is put in that swallows events': (folder) => {
    const database = new SQLite(join(folder, 'readback.sqlite'));
    database.exec('CREATE TRIGGER swallow BEFORE INSERT ON event BEGIN SELECT RAISE(IGNORE); END');
    database.close();
  },
  'a stream is written anew, and the heads signed with a key that nobody has': async (folder, dice) => {
    await IN_TABLES['a stream is written anew as a whole']?.(folder, dice);
    await signAnew(folder, 'a'.repeat(64), generateKeyPairSync('ed25519').privateKey);
  },
  'a stream is written anew, and the heads signed with a key put in the place of its own': async (folder, dice) => {
    await IN_TABLES['a stream is written anew as a whole']?.(folder, dice);
    const { privateKey } = generateKeyPairSync('ed25519');
    writeFileSync(join(folder, 'receipt-key.pem'), privateKey.export({ type: 'pkcs8', format: 'pem' }));
    await signAnew(folder, openReceiptSigner(join(folder, 'receipt-key.pem')).keyName, privateKey);
  },
  'a stream is written anew, and the key is gone': async (folder, dice) => {
    await IN_TABLES['a stream is written anew as a whole']?.(folder, dice);
    await signAnew(folder, 'a'.repeat(64), generateKeyPairSync('ed25519').privateKey);
    rmSync(join(folder, 'receipt-key.pem'));
  },
  'it was copied while it was written, without its log': (folder) => {
    const database = new SQLite(join(folder, 'readback.sqlite'));
    database.pragma(`user_version = ${1000 + Number(database.pragma('user_version', { simple: true }))}`);
    database.pragma('wal_checkpoint(TRUNCATE)');
    database.close();
  },
  'a head is changed': (folder, dice) => {
    const path = join(folder, 'heads.jsonl');
    const lines = readFileSync(path, 'utf8').split('\n');
    const at = Math.floor(dice.roll() * (lines.length - 1));
    const head = JSON.parse(lines[at] as string);
    writeFileSync(path, lines.with(at, JSON.stringify({ ...head, time: head.time + 1 })).join('\n'));
  },
};

/** What an enemy does to the file of a device, whose acknowledged head stays. */
const IN_FILES: Readonly<Record<string, (lines: string[], dice: Dice, visit: string) => Promise<string[]> | string[]>> =
  {
    'a body is changed': (lines, dice) => {
      const at = place(lines, dice);
      return lines.with(at, (lines[at] as string).replace('note.taken', 'note.token'));
    },
    'a line is deleted': (lines, dice) => lines.toSpliced(place(lines, dice), 1),
    'two lines change places': (lines, dice) => {
      const at = Math.min(place(lines, dice), EVENTS - 1);
      return lines.with(at, lines[at + 1] as string).with(at + 1, lines[at] as string);
    },
    'a line is put in': (lines, dice) => {
      const at = place(lines, dice);
      return lines.toSpliced(at, 0, lines[at] as string);
    },
    'the tail is cut': (lines, dice) => {
      const at = place(lines, dice);
      return [...lines.slice(0, at), lines.at(-1) as string];
    },
    'it is written anew as a whole': async (lines, dice, visit) => {
      const entries = await madeAnew(visit, 1 + Math.floor(dice.roll() * EVENTS));
      return [
        lines[0] as string,
        ...entries.map((entry) => JSON.stringify({ kind: 'batch', entries: [entry] })),
        lines.at(-1) as string,
      ];
    },
    'it is written anew, with the head that was acknowledged': async (lines, dice, visit) => {
      const entries = await madeAnew(visit, 1 + Math.floor(dice.roll() * EVENTS));
      const { receipt } = JSON.parse(lines.at(-1) as string);
      const { seq, hash } = entries.at(-1) as Entry;
      return [
        lines[0] as string,
        ...entries.map((entry) => JSON.stringify({ kind: 'batch', entries: [entry] })),
        JSON.stringify({ kind: 'acknowledged', seq, hash, receipt }),
      ];
    },
    'the time of an earlier receipt is changed': (lines) => {
      const at = lines.findIndex((line) => line.includes('"acknowledged"'));
      const line = JSON.parse(lines[at] as string);
      return lines.with(at, JSON.stringify({ ...line, receipt: { ...line.receipt, time: line.receipt.time + 1 } }));
    },
    'an earlier acknowledgement is of another hash': (lines) => {
      const at = lines.findIndex((line) => line.includes('"acknowledged"'));
      const line = JSON.parse(lines[at] as string);
      return lines.with(at, JSON.stringify({ ...line, hash: 'd'.repeat(64) }));
    },
    'the time of the receipt is changed': (lines) => {
      const line = JSON.parse(lines.at(-1) as string);
      const receipt = { ...line.receipt, time: line.receipt.time + 1 };
      return lines.with(-1, JSON.stringify({ ...line, receipt }));
    },
  };
/** A line that holds an event: the first names the stream, the last two are what was acknowledged. */
const place = (lines: readonly string[], dice: Dice): number => 1 + Math.floor(dice.roll() * (lines.length - 3));

/** As whoever kept the public key from the first day looks. */
const findingsIn = (folder: string) => verifyFolder(folder, [], { key: signer().publicKey });

const ROUNDS = tries(3, 20);
let tried = 0;
let found = 0;

describe('a record beside the heads that were signed for it', () => {
  test('nothing speaks against it as it is', async () => {
    expect(await findingsIn(ORIGINAL)).toMatchObject({
      streams: VISITS.length,
      events: VISITS.length * EVENTS,
      findings: [],
    });
    for (const visit of VISITS) {
      expect(await verifyDevice(heldByDevice(deviceFile(ORIGINAL, visit)), signer().publicKey)).toEqual([]);
    }
  });

  test.each(Object.entries(IN_TABLES))('%s: it is found, each time', async (name, edit) => {
    for (let round = 0; round < ROUNDS; round += 1) {
      const copy = join(scratch.path, 'copy');
      rmSync(copy, { recursive: true, force: true });
      cpSync(ORIGINAL, copy, { recursive: true });
      await edit(copy, new Dice(SEED + round));
      const { findings } = await findingsIn(copy);
      tried += 1;
      expect(findings, `${name}, round ${round}`).not.toEqual([]);
      found += 1;
    }
  });

  test.each(Object.entries(IN_FILES))('in the file of a device, %s: it is found, each time', async (name, edit) => {
    for (let round = 0; round < ROUNDS; round += 1) {
      const dice = new Dice(SEED + round);
      const visit = dice.pick(VISITS);
      const lines = readFileSync(deviceFile(ORIGINAL, visit), 'utf8').trim().split('\n');
      const path = join(scratch.path, 'edited.jsonl');
      writeFileSync(path, `${(await edit(lines, dice, visit)).join('\n')}\n`);
      const findings = await verifyDevice(heldByDevice(path), signer().publicKey);
      tried += 1;
      expect(findings, `${name}, round ${round}`).not.toEqual([]);
      found += 1;
    }
  });
});

afterAll(() => {
  tellFigure('edits tried', tried);
  tellFigure('of these found', found);
});

test('a contradicting event whose text was changed is told of, since no head speaks of its text', async () => {
  const copy = join(scratch.path, 'forked');
  cpSync(ORIGINAL, copy, { recursive: true });
  const store = openSqliteStore(join(copy, 'readback.sqlite'));
  const stream = streamOf('north');
  const other = await chainFor(stream, ['{"type":"other"}']);
  await store.commit(other.map((entry) => ({ ...entry, stream, receivedAt: BEGAN })));
  await store.close();
  // What its visits hold in the open is noted as well.
  const notes = async () => (await findingsIn(copy)).notes.filter((note) => !note.includes('written in the open'));
  expect(await notes()).toEqual([]);
  withTables(copy, (db) => db.prepare('UPDATE fork SET body = ?').run(Buffer.from('{"type":"forged"}')), new Dice(1));
  expect(await notes()).toEqual([expect.stringMatching(/north.*contradicting event 1 does not fit/)]);
});

describe('a record that no head was kept of', () => {
  test('is told so, and not called whole', async () => {
    const copy = join(scratch.path, 'no-heads');
    cpSync(ORIGINAL, copy, { recursive: true });
    rmSync(join(copy, 'heads.jsonl'));
    const { findings, unknown } = await findingsIn(copy);
    expect(findings).toEqual([]);
    expect(unknown.join(' ')).toMatch(/^No head was kept/);
  });

  test('names the first event that is wrong', async () => {
    const copy = join(scratch.path, 'first');
    cpSync(ORIGINAL, copy, { recursive: true });
    withTables(copy, (db) => db.prepare('DELETE FROM event WHERE stream = 2 AND seq IN (7, 9)').run(), new Dice(1));
    const [first] = (await findingsIn(copy)).findings;
    expect(first).toMatchObject({ stream: 'local/south/phone/1', seq: 7 });
    expect(parseStreamText(first?.stream ?? '')).toMatchObject({ visit: 'south' } satisfies Partial<StreamId>);
    expect(existsSync(copy)).toBe(true);
  });
});
