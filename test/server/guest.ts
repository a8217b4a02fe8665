import { createHash, generateKeyPairSync, sign } from 'node:crypto';
import { openingText, pairingText, REQUEST_HEADERS, requestText } from '../../grammar/visit/device-texts.ts';
import type { StreamId } from '../../grammar/visit/envelope.ts';
import type { Hello, Watch } from '../../grammar/visit/messages.ts';
import type { Role } from '../../grammar/visit/roles.ts';
import { People } from '../../server/people/people.ts';
import { RawClient, type RunningApp } from './running-app.ts';
import { freshPeople } from './stores-of-run.ts';

export interface Answer {
  readonly status: number;
  readonly error: string | undefined;
  readonly text: string;
  // biome-ignore lint/suspicious/noExplicitAny: each test says what it expects of an answer.
  readonly json: any;
  readonly cookies: readonly string[];
}

type Method = 'GET' | 'HEAD' | 'POST' | 'PATCH' | 'PUT' | 'DELETE';
const HOST = 'localhost:8470';

/** A browser at the door of a server: it keeps cookies, and may hold a device's key. */
export class Guest {
  readonly #server: RunningApp;
  readonly cookies = new Map<string, string>();
  /** Who it came in as. */
  person = '';
  readonly key = generateKeyPairSync('ec', { namedCurve: 'P-256' });
  device: string | undefined;

  constructor(server: RunningApp) {
    this.#server = server;
  }

  async ask(
    method: Method,
    url: string,
    body?: object | string,
    headers: Record<string, string> = {},
  ): Promise<Answer> {
    const answer = await this.#server.fastify.inject({
      method,
      url,
      headers: { host: HOST, origin: `http://${HOST}`, ...headers },
      cookies: Object.fromEntries(this.cookies),
      ...(body === undefined ? {} : { payload: body }),
    });
    for (const { name, value } of answer.cookies) {
      if (value === '') this.cookies.delete(name);
      else this.cookies.set(name, value);
    }
    const isJson = /^application\/json(;|$)/.test(String(answer.headers['content-type']));
    const json = isJson && answer.body !== '' ? answer.json() : undefined;
    const set = answer.headers['set-cookie'];
    return {
      status: answer.statusCode,
      error: answer.statusCode >= 400 ? json?.error : undefined,
      text: answer.body,
      json,
      cookies: set === undefined ? [] : [set].flat(),
    };
  }

  /** Comes in by a set-up link. */
  async comeIn(code: string): Promise<this> {
    const { status, text } = await this.ask('POST', '/api/set-up', { code });
    if (status !== 204) throw new Error(text);
    this.person = (await this.ask('GET', '/api/who')).json.person.person;
    return this;
  }

  /** Adds somebody, as a keeper does, and lets them in. */
  async add(login: string, role: Role): Promise<Guest> {
    const { status, json, text } = await this.ask('POST', '/api/people', { login, name: `${login}’s name`, role });
    if (status !== 201) throw new Error(text);
    return new Guest(this.#server).comeIn(json.code);
  }

  pairing(code: string, device: string): object {
    return { code, device, publicKey: this.publicKey(), signature: this.sign(pairingText(code, device)) };
  }

  /** Pairs itself as a device of that name by a code that a keeper makes. */
  async pair(keeper: Guest, device: string): Promise<this> {
    const { code } = (await keeper.ask('POST', `/api/people/${this.person}/pairing`)).json;
    const { status, text } = await this.ask('POST', '/api/pair', this.pairing(code, device));
    if (status !== 201) throw new Error(text);
    this.device = device;
    return this;
  }

  publicKey(): string {
    return this.key.publicKey.export({ type: 'spki', format: 'der' }).toString('base64url');
  }

  sign(text: string): string {
    const key = { key: this.key.privateKey, dsaEncoding: 'ieee-p1363' } as const;
    return sign('sha256', Buffer.from(text), key).toString('base64url');
  }

  /** A ticket for one connection, as `device` where one is named. */
  async ticket(device: string | undefined = this.device): Promise<string> {
    return (await this.ask('POST', '/api/ticket', device === undefined ? {} : { device })).json.ticket;
  }

  /** The message with what lets it in: its own ticket, signed by its own key. */
  async withTicket<Message extends Hello | Watch>(message: Message, device = this.device): Promise<Message> {
    const ticketed = { ...message, ticket: await this.ticket(device) };
    return { ...ticketed, signature: this.sign(openingText(ticketed)) };
  }

  /** Hands in what is kept beside events, as a device does: signed for this one request, by its own ticket and key. */
  async handIn(path: string, body: Uint8Array, device = this.device): Promise<Answer> {
    const ticket = await this.ticket(device);
    const hash = createHash('sha256').update(body).digest('hex');
    return this.ask('PUT', path, Buffer.from(body), {
      'content-type': 'application/octet-stream',
      [REQUEST_HEADERS.ticket]: ticket,
      [REQUEST_HEADERS.signature]: this.sign(requestText({ ticket, method: 'PUT', path, body: hash })),
    });
  }

  /** Opens a connection and says hello; resolves to it and to what was answered. */
  async hello(stream: StreamId, device = this.device) {
    return this.say(await this.withTicket({ kind: 'hello', protocol: 1, stream }, device));
  }

  async watch(company: string, visit: string, device = this.device) {
    return this.say(await this.withTicket({ kind: 'watch', protocol: 1, company, visit, from: [] }, device));
  }

  async say(message: Hello | Watch) {
    const client = await RawClient.open(this.#server.url);
    client.say(message);
    return { client, heard: await client.hear() };
  }
}

/** A store of people that holds one keeper for each company, and the codes by which they come in. */
export async function withKeepers(companies: readonly string[], clock = Date.now, path = ':memory:') {
  const store = await freshPeople(path);
  const people = new People({ store, clock, loopback: false });
  const codes: string[] = [];
  for (const company of companies) {
    const login = `${company}-keeper`;
    codes.push((await people.addPerson({ company }, { login, name: login, role: 'keeper' })).code);
  }
  return { store, codes };
}
