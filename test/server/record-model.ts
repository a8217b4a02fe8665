import { EventEmitter } from 'node:events';
import type { WebSocket } from 'ws';
import type { SocketCallbacks } from '../../client/record/link.ts';
import { openMemoryLog } from '../../client/record/memory-log.ts';
import { sha256 } from '../../client/record/node/sha256.ts';
import { Outbox } from '../../client/record/outbox.ts';
import type { VisitLog } from '../../client/record/visit-log.ts';
import { type StreamId, streamText } from '../../grammar/visit/envelope.ts';
import { PROTOCOL } from '../../grammar/visit/messages.ts';
import type { EventStore, ReceivedEvent } from '../../server/store/event-store.ts';
import { judgeEvent, startHead } from '../../server/store/judge-event.ts';
import { Conversation, type ConversationOptions } from '../../server/sync/conversation.ts';
import { GroupCommit } from '../../server/sync/group-commit.ts';
import { Holders } from '../../server/sync/limits.ts';
import { LiveVisits } from '../../server/sync/live-visits.ts';
import type { ReceiptSigner } from '../../server/sync/receipt-signer.ts';
import { closeReason } from '../../server/sync/refusals.ts';
import { VisitHub } from '../../server/sync/visit-hub.ts';

const turn = () => new Promise<void>((resolve) => setImmediate(resolve));
type Kept = ReadonlyMap<string, readonly ReceivedEvent[]>;

/** A disk on which what is written is there for good only some turns of the event loop later. */
export class ModelDisk {
  durable: Kept = new Map();
  /** Earlier states, as a backup may hold them. */
  readonly backups: Kept[] = [new Map()];

  of(stream: StreamId): readonly ReceivedEvent[] {
    return this.durable.get(streamText(stream)) ?? [];
  }

  keep(state: Kept): void {
    this.durable = state;
    this.backups.push(state);
  }
}

/** Faults that the model must find. */
export interface Faults {
  /** Acknowledges before the disk has it. */
  readonly hasty?: boolean;
  /** Reads a visit by its name, whosever it is. */
  readonly blind?: boolean;
}

/** A company that keeps its visits on the same disk: it may hear nothing of ours. */
const NEIGHBOUR = 'neighbour';

/** A store of one server process over the disk; when the process is gone it writes no more. */
function modelStore(disk: ModelDisk, alive: () => boolean, { hasty = false, blind = false }: Faults) {
  let state: Kept = disk.durable;
  let writing: Promise<void> = Promise.resolve();
  const head = (stream: StreamId) => {
    const last = state.get(streamText(stream))?.at(-1);
    return last === undefined ? startHead(stream) : { seq: last.seq, hash: last.hash };
  };
  const write = async (next: Kept) => {
    await turn();
    await turn();
    if (alive()) disk.keep(next);
  };
  const ofVisit = (company: string, visit: string) =>
    [...state.values()].flat().flatMap((event, arrival) => {
      const { company: own, visit: of, device, epoch } = event.stream;
      return (blind || own === company) && of === visit ? [{ ...event, device, epoch, arrival }] : [];
    });
  const store: Pick<EventStore, 'open' | 'commit' | 'note' | 'beyond'> = {
    // As every store must: where a stream ends is told from the disk, not from what is on its way there.
    open: async (stream) => {
      await writing;
      if (!alive()) await new Promise(() => undefined);
      return { kind: 'open', head: head(stream) };
    },
    note: async () => undefined,
    commit: async (batch) => {
      const outcomes = batch.map((event) => {
        const key = streamText(event.stream);
        const held = state.get(key) ?? [];
        const outcome = judgeEvent(head(event.stream), event, (seq) => held[seq - 1]?.hash);
        if (outcome.kind === 'stored') state = new Map([...state, [key, [...held, event]]]);
        return outcome;
      });
      writing = write(state);
      if (!hasty) await writing;
      if (!alive()) await new Promise(() => undefined);
      return outcomes;
    },
    beyond: async (company, visit, positions, limit) =>
      ofVisit(company, visit)
        .filter(({ device, epoch, seq }) => {
          const at = positions.find((one) => one.device === device && one.epoch === epoch);
          return seq > (at?.seq ?? 0);
        })
        .slice(0, limit),
  };
  return store as EventStore;
}

/** The server's side of a connection, as `ws` has it. */
class ModelSocket extends EventEmitter {
  readonly OPEN = 1;
  readonly CLOSED = 3;
  readyState = 1;
  bufferedAmount = 0;
  readonly #sent: (text: string) => void;
  readonly #closed: (code: number) => void;

  constructor(sent: (text: string) => void, closed: (code: number) => void) {
    super();
    this.#sent = sent;
    this.#closed = closed;
  }

  send(text: string): void {
    this.#sent(text);
  }

  close(code = 1005): void {
    if (this.readyState === this.CLOSED) return;
    this.readyState = this.CLOSED;
    this.emit('close');
    this.#closed(code);
  }

  terminate(): void {
    this.close(1006);
  }
}

interface Wire {
  readonly toServer: string[];
  /** Texts, and at the end the code of a close. */
  readonly toClient: (string | number)[];
  readonly socket: ModelSocket;
  readonly callbacks: SocketCallbacks;
  open: boolean;
}

/** A gate to one company; test/server/who-may.test.ts tries the real one. */
const gateOf = (company: string): ConversationOptions['gate'] => ({
  admit: async (message) => {
    const asked = message.kind === 'hello' ? message.stream.company : message.company;
    return asked === company ? { by: 'here' } : closeReason('company-foreign');
  },
  look: async () => undefined,
});

const SIGNER = {
  sign: async (held: object) => ({ ...held, key: '0'.repeat(64), signature: '' }),
} as unknown as ReceiptSigner;

/** One device and one server that can be cut, killed, set back to a backup; the real outbox and conversation. */
export class ModelWorld {
  readonly disk = new ModelDisk();
  readonly stream: StreamId;
  readonly log: VisitLog;
  outbox!: Outbox;
  /**
   * The server went back to a backup, and the device's program has not been told yet: what it was acknowledged before
   * it knows from its log, until a welcome says otherwise.
   */
  setBack = false;
  #everSetBack = false;
  readonly #faults: Faults;
  /** All that was told to those who asked for another company, or as one. */
  readonly overheard: string[] = [];
  #wire: Wire | undefined;
  #timers: (() => void)[] = [];
  readonly #prying: ModelSocket[] = [];
  #life = 0;
  #accept!: (socket: ModelSocket) => void;
  #acceptNeighbour!: (socket: ModelSocket) => void;

  private constructor(log: VisitLog, faults: Faults) {
    this.log = log;
    this.stream = log.stream;
    this.#faults = faults;
    this.startServer();
    this.reopen();
  }

  static async begin(visit: string, faults: Faults = {}): Promise<ModelWorld> {
    const log = await openMemoryLog({ company: 'local', visit, device: 'phone', epoch: 1 }, sha256);
    return new ModelWorld(log, faults);
  }

  /** The device's program begins anew on its log. */
  reopen(): void {
    this.cut();
    this.outbox?.stop();
    this.setBack = this.#everSetBack;
    this.#timers = [];
    this.outbox = new Outbox({
      log: this.log,
      random: () => 0,
      timers: {
        set: (milliseconds, elapsed) => {
          // Silence is not modelled: a cut says it at once.
          if (milliseconds >= 15_000) return () => undefined;
          this.#timers.push(elapsed);
          return () => {
            this.#timers = this.#timers.filter((one) => one !== elapsed);
          };
        },
      },
      openSocket: (callbacks) => this.#connect(callbacks),
    }).start();
  }

  startServer(): void {
    this.#life += 1;
    const life = this.#life;
    const store = modelStore(this.disk, () => this.#life === life, this.#faults);
    const commits = new GroupCommit(
      store,
      () => undefined,
      async () => undefined,
    );
    const options = {
      store,
      commits,
      hub: new VisitHub(),
      live: new LiveVisits(),
      leases: { elsewhere: async () => undefined },
      saidHeads: { said: () => undefined } as never,
      signer: SIGNER,
      clock: () => 1,
      gate: gateOf('local'),
      helloWithinMs: 2 ** 30,
      silent: new Set<Conversation>(),
      writers: new Holders(),
      watchers: new Holders(),
    };
    this.#accept = (socket) => {
      new Conversation(socket as unknown as WebSocket, options);
    };
    // A server of the other company, over the same store and in the same process.
    this.#acceptNeighbour = (socket) => {
      new Conversation(socket as unknown as WebSocket, { ...options, gate: gateOf(NEIGHBOUR) });
    };
  }

  /** The process is gone, with all that was not on the disk. */
  crash(): void {
    this.startServer();
    this.cut();
  }

  restore(backup: number): void {
    this.disk.durable = this.disk.backups[backup % this.disk.backups.length] ?? new Map();
    this.setBack = true;
    this.#everSetBack = true;
    this.crash();
  }

  /** Somebody asks where they should not: for our visit at the neighbour's, for theirs at ours, as its device or a reader. */
  pry(way: number): void {
    const socket = new ModelSocket(
      (text) => this.overheard.push(text),
      () => undefined,
    );
    const atNeighbours = way % 2 === 0;
    if (atNeighbours) this.#acceptNeighbour(socket);
    else this.#accept(socket);
    const { visit } = this.stream;
    const company = way % 3 === 0 && atNeighbours ? this.stream.company : NEIGHBOUR;
    const asked =
      way % 5 < 3
        ? { kind: 'watch', protocol: PROTOCOL, company, visit, from: [] }
        : { kind: 'hello', protocol: PROTOCOL, stream: { ...this.stream, company } };
    socket.emit('message', Buffer.from(JSON.stringify(asked)), false);
    this.#prying.push(socket);
  }

  cut(): void {
    const wire = this.#wire;
    if (wire?.open !== true) return;
    wire.open = false;
    wire.socket.terminate();
    wire.callbacks.closed(1006);
  }

  /** All waits are over. */
  wait(): void {
    for (const elapsed of this.#timers.splice(0)) elapsed();
  }

  deliver(count: number): void {
    for (let at = 0; at < count; at += 1) this.#deliverOne();
  }

  /** What a client that sends again does to events: one comes twice. */
  double(): void {
    const [first] = this.#wire?.toServer ?? [];
    if (first?.includes('"append"') === true) this.#wire?.toServer.unshift(first);
  }

  swap(): void {
    const [one, other] = this.#wire?.toServer ?? [];
    if (one?.includes('"append"') !== true || other === undefined) return;
    this.#wire?.toServer.splice(0, 2, other, one);
  }

  async turns(count: number): Promise<void> {
    for (let at = 0; at < count; at += 1) await turn();
  }

  end(): void {
    this.outbox.stop();
    for (const socket of this.#prying) socket.close();
  }

  /** The network heals: whether the server then holds all. */
  async converges(): Promise<boolean> {
    for (let round = 0; round < 200; round += 1) {
      if (
        this.outbox.state().acknowledged === this.log.head().seq &&
        this.disk.of(this.stream).length === this.log.head().seq
      )
        return true;
      this.wait();
      this.deliver(100);
      await this.turns(4);
    }
    return false;
  }

  #connect(callbacks: SocketCallbacks) {
    const toClient: (string | number)[] = [];
    const socket = new ModelSocket(
      (text) => toClient.push(text),
      (code) => toClient.push(code),
    );
    const wire: Wire = { toServer: [], toClient, socket, callbacks, open: true };
    this.#wire = wire;
    this.#accept(socket);
    setImmediate(() => {
      if (wire.open) callbacks.opened();
    });
    return {
      send: (text: string) => {
        if (wire.open) wire.toServer.push(text);
      },
      close: () => {
        if (!wire.open) return;
        wire.open = false;
        socket.terminate();
      },
    };
  }

  #deliverOne(): void {
    const wire = this.#wire;
    if (wire?.open !== true) return;
    const up = wire.toServer.shift();
    if (up !== undefined) wire.socket.emit('message', Buffer.from(up), false);
    const down = wire.toClient.shift();
    if (typeof down === 'string') {
      if (down.includes('"welcome"')) this.setBack = false;
      wire.callbacks.received(down);
    } else if (down !== undefined) {
      wire.open = false;
      wire.callbacks.closed(down);
    }
  }
}
