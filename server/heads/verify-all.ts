import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { type SignedHead, standBy } from '../../grammar/visit/signed-head.ts';
import { ServerError } from '../errors.ts';
import { erasureWords } from '../personal/read-erasures.ts';
import { KEY_FILE, openReceiptSigner, verifierOf } from '../sync/receipt-signer.ts';
import { againstDevices } from './against-devices.ts';
import { GIVEN_UP_FILE, type GivenUp, readGivenUp } from './given-up.ts';
import { checkHeads, type KeptHeads, readHeads } from './heads-file.ts';
import { HEADS_FILE } from './heads-in-folder.ts';
import { type HeldByDevice, verifyDevice } from './held-by-device.ts';
import { heldByServer } from './held-by-server.ts';
import { heldInFolder } from './held-in-folder.ts';
import { type Verification, verifyRecord } from './verify-record.ts';
import { eventsWords, type Finding, type HeldStream, streamWords } from './verify-stream.ts';

/** What somebody kept elsewhere than the record. */
export interface KeptElsewhere {
  /** The path of a file of heads. */
  readonly heads?: string | undefined;
  /** The server's public key, 32 bytes in base64url. */
  readonly key?: string | undefined;
}

/**
 * Holds a data folder, as it stands, against its chains, its heads, what was kept elsewhere and what devices have.
 * @throws {ServerError} tool-wrong, data-unwritable, data-foreign, data-newer, key-damaged.
 */
export async function verifyFolder(
  folder: string,
  devices: readonly HeldByDevice[],
  kept: KeptElsewhere = {},
): Promise<Verification> {
  const keyPath = join(folder, KEY_FILE);
  const ownKey = existsSync(keyPath) ? openReceiptSigner(keyPath).publicKey : undefined;
  const own = readHeads(join(folder, HEADS_FILE), verifierFor(kept.key ?? ownKey));
  // After the heads: a server that writes on meanwhile signs for what is then not yet read.
  const { streams, findings, notes } = await heldInFolder(folder);
  const lost = ownKey === undefined && own.heads.length > 0;
  const key: Finding[] = lost ? [{ stream: '', sentence: 'The key that signed its heads is gone.' }] : [];
  return verifyHeld(streams, devices, {
    own,
    ownKey,
    kept,
    findings: [...findings, ...key],
    notes: [...notes, ...givenUpWords(folder), ...erasureWords(folder)],
  });
}

/**
 * The same of what a running server gives out.
 * @throws {ServerError} tool-wrong, where nothing answers as a Readback server does.
 */
export async function verifyServer(
  url: string,
  devices: readonly HeldByDevice[],
  kept: KeptElsewhere = {},
): Promise<Verification> {
  const { streams, heads, publicKey } = await heldByServer(url);
  const own = checkHeads(heads, url, verifierFor(kept.key ?? publicKey));
  return verifyHeld(streams, devices, { own, ownKey: publicKey, kept, findings: [], notes: [] });
}

/** What starts went on without, by an explicit word, and heads that were put aside then. */
function givenUpWords(folder: string): readonly string[] {
  const aside = readdirSync(folder).filter((name) => name.startsWith(`${HEADS_FILE}.set-aside-`));
  return [
    ...readGivenUp(join(folder, GIVEN_UP_FILE)).map(givenUpLine),
    ...aside.map((name) => `heads that were not as they were signed were put aside (${name}).`),
  ];
}

/** What was given up, in a line. */
export function givenUpLine({ stream, sentence, time }: GivenUp): string {
  const of = stream === '' ? '' : `${streamWords(stream)}: `;
  return `given up at a start on ${new Date(time).toISOString().slice(0, 10)}: ${of}${sentence}`;
}

export const verifierFor = (key: string | undefined) => (key === undefined ? undefined : verifierOf(key));

/** What is held against a record beside its own chains. */
interface Against {
  /** The heads that stand where the record does, and the key there. */
  readonly own: KeptHeads;
  readonly ownKey: string | undefined;
  readonly kept: KeptElsewhere;
  /** What was found before. */
  readonly findings: readonly Finding[];
  readonly notes: readonly string[];
}

/** Holds what was read against all that is at hand. */
export async function verifyHeld(
  streams: readonly HeldStream[],
  devices: readonly HeldByDevice[],
  { own, ownKey, kept, findings: before, notes }: Against,
): Promise<Verification> {
  const key = kept.key ?? ownKey;
  const heads = kept.heads === undefined ? own : headsKeptElsewhere(kept.heads, verifierFor(key));
  const record = await verifyRecord(streams, heads);
  const ofDevices = await Promise.all(devices.map((device) => verifyDevice(device, key)));
  const findings = [
    ...before,
    // What is wrong with the folder's own heads is told beside those that were kept elsewhere.
    ...(heads === own || own.sentence === undefined ? [] : [{ stream: '', sentence: own.sentence }]),
    ...changedHeads(own, heads),
    ...changedKey(heads, key, ownKey),
    ...record.findings,
    ...ofDevices.flat(),
    ...againstDevices(streams, devices),
  ];
  const unknown = key === undefined ? ['No key is at hand: signatures of heads and receipts were not checked.'] : [];
  return {
    ...record,
    findings,
    notes: [...notes, ...begunAnew(heads.heads), ...record.notes],
    unknown: [...record.unknown, ...unknown],
  };
}

/** Where heads begin anew behind others, and what they no longer speak of: it was given up then. */
function begunAnew(heads: readonly SignedHead[]): readonly string[] {
  return heads.flatMap(({ number, anew }, at) => {
    if (at === 0 || !anew) return [];
    const now = standBy(heads.slice(0, at + 1));
    const gone = [...standBy(heads.slice(0, at)).values()].flatMap(({ stream, seq }) => {
      const left = now.get(stream)?.seq ?? 0;
      return left < seq ? [`${streamWords(stream)}, ${eventsWords(seq - left)} of ${seq}`] : [];
    });
    const what =
      gone.length === 0 ? 'no event of what was signed for was given up by it' : `given up were ${gone.join('; ')}`;
    return [`at head ${number} the heads began anew: ${what}.`];
  });
}

/** @throws {ServerError} tool-wrong, where the file is not there or has nothing in it: it would be held against nothing. */
function headsKeptElsewhere(path: string, verifier: ReturnType<typeof verifierFor>): KeptHeads {
  if (!existsSync(path))
    throw new ServerError('tool-wrong', `There are no heads at ${path}: name the file as it was kept.`);
  const read = readHeads(path, verifier);
  if (read.heads.length > 0 || read.sentence !== undefined) return read;
  throw new ServerError('tool-wrong', `${path} holds no head: name a heads.jsonl as it was kept.`);
}

/** The latest head must be of the key that is at hand, and the record's own key the one that was named. */
function changedKey(kept: KeptHeads, key: string | undefined, ownKey: string | undefined): readonly Finding[] {
  if (key === undefined) return [];
  const latest = kept.heads.at(-1);
  const [named, other] = [verifierOf(key).keyName, ownKey !== undefined && ownKey !== key];
  return [
    ...(other ? [{ stream: '', sentence: 'The key of the record is not the one that was named.' }] : []),
    ...(latest !== undefined && latest.key !== named
      ? [{ stream: '', sentence: `Head ${latest.number} is not signed by the key that is at hand.` }]
      : []),
  ];
}

/** Heads kept elsewhere against those of the server: the same ones must stand there, in the same order. */
function changedHeads(own: KeptHeads, kept: KeptHeads): readonly Finding[] {
  const other = kept.heads.find((head, at) => !sameHead(head, own.heads[at]));
  if (other === undefined) return [];
  return [{ stream: '', sentence: `Head ${other.number} as it was kept is not the one that the server has.` }];
}

function sameHead(one: SignedHead, other: SignedHead | undefined): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}
