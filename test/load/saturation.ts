import { WebSocket } from 'ws';
import { sha256 } from '../../client/record/node/sha256.ts';
import { bytesToHex, LOCAL_COMPANY, linkBytes, type StreamId, startBytes } from '../../grammar/visit/envelope.ts';
import { MAX_IN_FLIGHT, type ServerMessage } from '../../grammar/visit/messages.ts';

export interface Saturation {
  readonly url: string;
  readonly devices: number;
  /** Events of each device. */
  readonly events: number;
  readonly body: string;
}

/**
 * Devices that each send all they have as fast as acknowledgements let them; frames are made before the clock starts, so
 * that the load itself costs little.
 *
 * @returns seconds from the first event sent to the last acknowledged
 */
export async function saturate({ url, devices, events, body }: Saturation): Promise<number> {
  const senders = Array.from({ length: devices }, (_, at) => {
    const stream = { company: LOCAL_COMPANY, visit: `full-${at}`, device: `load-${at}`, epoch: 1 };
    return new Sender(url, stream, framesOf(stream, events, body));
  });
  await Promise.all(senders.map(({ welcomed }) => welcomed));
  const started = performance.now();
  await Promise.all(senders.map((sender) => sender.sendAll()));
  const seconds = (performance.now() - started) / 1_000;
  for (const sender of senders) sender.close();
  return seconds;
}

function framesOf(stream: StreamId, events: number, body: string): readonly string[] {
  let hash = bytesToHex(sha256(startBytes(stream)));
  return Array.from({ length: events }, (_, at) => {
    hash = bytesToHex(sha256(linkBytes(at + 1, hash, body)));
    return JSON.stringify({ kind: 'append', seq: at + 1, hash, body });
  });
}

class Sender {
  readonly welcomed: Promise<void>;
  readonly #socket: WebSocket;
  readonly #frames: readonly string[];
  #sent = 0;
  #acknowledged = 0;
  #done: () => void = () => undefined;
  #failed: (error: Error) => void = () => undefined;

  constructor(url: string, stream: StreamId, frames: readonly string[]) {
    this.#frames = frames;
    this.#socket = new WebSocket(`${url.replace('http', 'ws')}/sync`, { origin: url, perMessageDeflate: false });
    this.#socket.on('open', () => this.#socket.send(JSON.stringify({ kind: 'hello', protocol: 1, stream })));
    this.welcomed = new Promise((resolve, reject) => {
      this.#socket.on('error', reject);
      this.#socket.on('message', (data) => {
        const message = JSON.parse(data.toString()) as ServerMessage;
        if (message.kind === 'welcome') return resolve();
        if (message.kind !== 'ack') return this.#failed(new Error(JSON.stringify(message)));
        this.#acknowledged = message.seq;
        this.#sendOn();
      });
    });
  }

  sendAll(): Promise<void> {
    return new Promise((resolve, reject) => {
      this.#done = resolve;
      this.#failed = reject;
      this.#sendOn();
    });
  }

  close(): void {
    this.#socket.close();
  }

  #sendOn(): void {
    if (this.#acknowledged === this.#frames.length) return this.#done();
    const upTo = Math.min(this.#frames.length, this.#acknowledged + MAX_IN_FLIGHT);
    for (; this.#sent < upTo; this.#sent += 1) this.#socket.send(this.#frames[this.#sent] as string);
  }
}
