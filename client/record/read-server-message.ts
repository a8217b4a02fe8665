import type { ServerMessage } from '../../grammar/visit/messages.ts';

type Shape = Readonly<Record<string, 'string' | 'number' | 'boolean' | 'object'>>;

/** The fields without which a message cannot be acted on. Unknown fields are passed over: a newer server may send more. */
const SHAPES: Readonly<Record<ServerMessage['kind'], Shape>> = {
  welcome: { protocol: 'number', head: 'object', clock: 'number' },
  ack: { seq: 'number', hash: 'string' },
  gap: { need: 'number' },
  fork: { seq: 'number', held: 'string', sentence: 'string' },
  error: { code: 'string', sentence: 'string' },
  acknowledged: { supervisor: 'string', vouched: 'object' },
  'taken-over': { device: 'string', name: 'string', time: 'number' },
  events: { events: 'object', level: 'boolean' },
};

/** The server's message in a frame, or undefined where the frame holds none that is known. */
export function readServerMessage(text: string): ServerMessage | undefined {
  let message: unknown;
  try {
    message = JSON.parse(text);
  } catch {
    return undefined;
  }
  if (typeof message !== 'object' || message === null || !('kind' in message)) return undefined;
  const shape = Object.entries(SHAPES).find(([kind]) => kind === message.kind)?.[1];
  if (shape === undefined) return undefined;
  const fields = message as Readonly<Record<string, unknown>>;
  const fits = Object.entries(shape).every(([field, type]) => typeof fields[field] === type && fields[field] !== null);
  return fits ? (message as ServerMessage) : undefined;
}
