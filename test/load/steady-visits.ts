import { WebSocket } from 'ws';
import { sha256 } from '../../client/record/node/sha256.ts';
import { bytesToHex, type Head, LOCAL_COMPANY, linkBytes, type StreamId } from '../../grammar/visit/envelope.ts';
import type { ServerMessage } from '../../grammar/visit/messages.ts';

export interface SteadyLoad {
  readonly url: string;
  readonly visits: number;
  /** Events a second of each visit. */
  readonly rate: number;
  readonly seconds: number;
  /** Apart from other loads on the same record. */
  readonly named?: string;
}

export interface SteadyResult {
  /** Milliseconds from sending an event to its acknowledgement, which comes after the write to the disk. */
  readonly latencies: readonly number[];
  readonly sent: number;
  readonly acknowledged: number;
}

/** An event of a visit as long as most are. */
const BODY = JSON.stringify({
  kind: 'reading.logged',
  at: ['L1', 'ground'],
  value: 118,
  unit: 'V',
  pad: 'x'.repeat(160),
});

/** Many visits that each write at a steady rate, spread evenly over time; by hand, so that the load itself costs little. */
export async function runSteadyVisits({
  url,
  visits,
  rate,
  seconds,
  named = 'steady',
}: SteadyLoad): Promise<SteadyResult> {
  const latencies: number[] = [];
  const clients: SteadyClient[] = [];
  for (let at = 0; at < visits; at += 1) {
    const stream = {
      company: LOCAL_COMPANY,
      visit: `${named}-${visits}-${at}`,
      device: `${named}-load-${at}`,
      epoch: 1,
    };
    clients.push(new SteadyClient(url, stream, latencies));
    if (at % 50 === 49) await Promise.all(clients.slice(-50).map((client) => client.welcomed));
  }
  await Promise.all(clients.map((client) => client.welcomed));
  const interval = 1_000 / rate;
  const end = performance.now() + seconds * 1_000;
  let turn = 0;
  const started = performance.now();
  while (performance.now() < end) {
    const due = Math.floor(((performance.now() - started) / interval) * visits);
    for (; turn < due; turn += 1) clients[turn % visits]?.send();
    await new Promise((resolve) => setTimeout(resolve, 2));
  }
  await Promise.all(clients.map((client) => client.settled()));
  for (const client of clients) client.close();
  return { latencies, sent: turn, acknowledged: latencies.length };
}

class SteadyClient {
  readonly welcomed: Promise<void>;
  readonly #socket: WebSocket;
  readonly #latencies: number[];
  readonly #sentAt = new Map<number, number>();
  #head: Head = { seq: 0, hash: '' };
  #settled: () => void = () => undefined;

  constructor(url: string, stream: StreamId, latencies: number[]) {
    this.#latencies = latencies;
    this.#socket = new WebSocket(`${url.replace('http', 'ws')}/sync`, { origin: url, perMessageDeflate: false });
    this.#socket.on('open', () => this.#socket.send(JSON.stringify({ kind: 'hello', protocol: 1, stream })));
    this.welcomed = new Promise((resolve, reject) => {
      this.#socket.on('error', reject);
      this.#socket.on('message', (data) => {
        const message = JSON.parse(data.toString()) as ServerMessage;
        if (message.kind === 'ack') this.#acknowledged(message.seq);
        else if (message.kind === 'welcome') {
          this.#head = message.head;
          resolve();
        } else reject(new Error(JSON.stringify(message)));
      });
    });
  }

  send(): void {
    const seq = this.#head.seq + 1;
    const hash = bytesToHex(sha256(linkBytes(seq, this.#head.hash, BODY)));
    this.#head = { seq, hash };
    this.#sentAt.set(seq, performance.now());
    this.#socket.send(JSON.stringify({ kind: 'append', seq, hash, body: BODY }));
  }

  settled(): Promise<void> {
    if (this.#sentAt.size === 0) return Promise.resolve();
    return new Promise((resolve) => {
      this.#settled = resolve;
    });
  }

  close(): void {
    this.#socket.close();
  }

  #acknowledged(upTo: number): void {
    for (const [seq, sentAt] of this.#sentAt) {
      if (seq > upTo) break;
      this.#latencies.push(performance.now() - sentAt);
      this.#sentAt.delete(seq);
    }
    if (this.#sentAt.size === 0) this.#settled();
  }
}
