import { randomUUID } from 'node:crypto';
import type pg from 'pg';
import type { ServerMessage } from '../../grammar/visit/messages.ts';
import type { PostgresDatabase } from '../database/open-postgres.ts';
import { reportFault } from '../report-fault.ts';
import type { PeerEars, Peers, VisitName } from './peers.ts';

/** The channel on which servers tell each other. */
const CHANNEL = 'readback';
/** By which a server's listening connection is known among those of the database. */
const LISTENER = 'readback listener';
/** PostgreSQL takes less than 8,000 bytes at once. */
const MOST_BYTES = 7_900;
/** So long the others have to answer how many devices they told. */
const ANSWER_MS = 2_000;
const AGAIN_MS = 500;
/** A connection that went silent is found by asking it something. */
const LOOK_MS = 30_000;

type Told =
  | { readonly kind: 'grown'; readonly visits: readonly VisitName[] | 'all' }
  | { readonly kind: 'changed' }
  | { readonly kind: 'say'; readonly id: string; readonly visit: VisitName; readonly message: ServerMessage }
  | { readonly kind: 'said'; readonly id: string; readonly devices: number };

/** Tells the other servers of a PostgreSQL database by NOTIFY, beside the commit, and hears them by LISTEN. */
export class PostgresPeers implements Peers {
  readonly #database: PostgresDatabase;
  readonly #self = randomUUID();
  readonly #asked = new Map<string, (devices: number) => void>();
  #ears: PeerEars | undefined;
  #listener: pg.Client | undefined;
  #looking: NodeJS.Timeout | undefined;
  #closed = false;
  /** What has grown since the telling that is under way began; one that did twice is told once. */
  #due = new Map<string, VisitName>();
  #telling: Promise<void> | undefined;

  constructor(database: PostgresDatabase) {
    this.#database = database;
  }

  grown(visits: readonly VisitName[]): void {
    for (const { company, visit } of visits) this.#due.set(`${company}/${visit}`, { company, visit });
    if (this.#due.size > 0) this.#telling ??= this.#tellGrown();
  }

  changed(): void {
    this.#tell({ kind: 'changed' }).catch(reportFault);
  }

  async say(visit: VisitName, message: ServerMessage): Promise<number> {
    const others = (await this.#countListeners()) - 1;
    if (others <= 0) return 0;
    const id = randomUUID();
    let devices = 0;
    let waiting = others;
    const answered = new Promise<void>((resolve) => {
      const timer = setTimeout(resolve, ANSWER_MS);
      this.#asked.set(id, (more) => {
        devices += more;
        waiting -= 1;
        if (waiting > 0) return;
        clearTimeout(timer);
        resolve();
      });
    });
    await this.#tell({ kind: 'say', id, visit, message });
    await answered;
    this.#asked.delete(id);
    return devices;
  }

  async listen(ears: PeerEars): Promise<void> {
    this.#ears = ears;
    await this.#connect();
    this.#looking = setInterval(() => {
      this.#listener?.query('SELECT 1').catch(() => undefined);
    }, LOOK_MS);
    this.#looking.unref();
  }

  async close(): Promise<void> {
    this.#closed = true;
    clearInterval(this.#looking);
    await this.#telling;
    await this.#listener?.end().catch(() => undefined);
  }

  async #connect(): Promise<void> {
    const client = await this.#database.connect(LISTENER);
    client.on('notification', ({ payload }) => this.#heard(payload ?? ''));
    const ended = new Promise((resolve) => client.once('end', resolve));
    await client.query(`LISTEN ${CHANNEL}`);
    this.#listener = client;
    void ended.then(() => this.#connectAgain());
  }

  /** What was told meanwhile is not heard any more: all may have changed. */
  async #connectAgain(): Promise<void> {
    while (!this.#closed) {
      await new Promise((resolve) => setTimeout(resolve, AGAIN_MS));
      if (this.#closed) return;
      try {
        await this.#connect();
        this.#ears?.grown('all');
        this.#ears?.changed();
        return;
      } catch {
        // The database is away: tried again.
      }
    }
  }

  #heard(payload: string): void {
    const [from, text] = [payload.slice(0, this.#self.length), payload.slice(this.#self.length)];
    if (from === this.#self || this.#ears === undefined) return;
    const told = parse(text);
    if (told?.kind === 'grown') this.#ears.grown(told.visits);
    else if (told?.kind === 'changed') this.#ears.changed();
    else if (told?.kind === 'said') this.#asked.get(told.id)?.(told.devices);
    else if (told?.kind === 'say') {
      const devices = this.#ears.say(told.visit, told.message);
      this.#tell({ kind: 'said', id: told.id, devices }).catch(reportFault);
    }
  }

  async #tellGrown(): Promise<void> {
    while (this.#due.size > 0) {
      const visits = [...this.#due.values()];
      this.#due = new Map();
      await this.#tell({ kind: 'grown', visits }).catch(reportFault);
    }
    this.#telling = undefined;
  }

  async #tell(told: Told): Promise<void> {
    const payload = this.#self + JSON.stringify(told);
    const fits = Buffer.byteLength(payload) < MOST_BYTES;
    const sent = fits ? payload : this.#self + JSON.stringify({ kind: 'grown', visits: 'all' } satisfies Told);
    await this.#database.pool.query({ name: 'notify', text: 'SELECT pg_notify($1, $2)', values: [CHANNEL, sent] });
  }

  async #countListeners(): Promise<number> {
    const { rows } = await this.#database.pool.query<{ readonly count: number }>(
      'SELECT count(*) FROM pg_stat_activity WHERE datname = current_database() AND application_name = $1',
      [LISTENER],
    );
    return rows[0]?.count ?? 0;
  }
}

/** Anybody who may connect to the database may tell: what does not fit is passed over. */
function parse(text: string): Told | undefined {
  try {
    return JSON.parse(text) as Told;
  } catch {
    return undefined;
  }
}
