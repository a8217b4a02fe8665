import { DiagnosisError } from '../errors.ts';
import { type FaultTable, TABLE_VERSION } from './fault-table.ts';

/**
 * A table as bytes: a line of JSON in which every typed array is a reference, then the arrays, each on a multiple of
 * eight. For tables that are built before they are needed.
 */
const ARRAYS = { Uint8Array, Int32Array, Uint32Array, Float32Array, Float64Array } as const;
type ArrayName = keyof typeof ARRAYS;
type AnyArray = InstanceType<(typeof ARRAYS)[ArrayName]>;

interface Reference {
  readonly array: ArrayName;
  readonly at: number;
  readonly length: number;
}

const isArray = (value: unknown): value is AnyArray => ArrayBuffer.isView(value) && !(value instanceof DataView);
const isReference = (value: unknown): value is Reference =>
  typeof value === 'object' && value !== null && 'array' in value && 'at' in value;
const padded = (length: number) => Math.ceil(length / 8) * 8;

/** Bytes of a table; `readTableBytes` takes them back. */
export function writeTableBytes(table: FaultTable): Uint8Array {
  const arrays: AnyArray[] = [];
  let end = 0;
  const json = JSON.stringify(table, (_, value: unknown) => {
    if (!isArray(value)) return value;
    const reference: Reference = { array: value.constructor.name as ArrayName, at: end, length: value.length };
    arrays.push(value);
    end += padded(value.byteLength);
    return reference;
  });
  const head = padded(json.length + 1);
  const bytes = new Uint8Array(head + end);
  // Ids, names and numbers of a table are plain ASCII.
  for (let i = 0; i < json.length; i += 1) bytes[i] = json.charCodeAt(i);
  bytes[json.length] = 10;
  let at = head;
  for (const array of arrays) {
    bytes.set(new Uint8Array(array.buffer, array.byteOffset, array.byteLength), at);
    at += padded(array.byteLength);
  }
  return bytes;
}

/**
 * The table that the bytes hold.
 * Errors: `bad-table` when they were written by another version, or are no table.
 */
export function readTableBytes(bytes: Uint8Array): FaultTable {
  const line = bytes.indexOf(10);
  if (line < 0) throw new DiagnosisError('bad-table', 'no head');
  let json = '';
  for (let i = 0; i < line; i += 1) json += String.fromCharCode(bytes[i]!);
  // A copy in a buffer of its own: what came from a file may lie anywhere in a larger one.
  const body = new Uint8Array(bytes.subarray(padded(line + 1)));
  const table = JSON.parse(json, (_, value: unknown) =>
    isReference(value) ? new ARRAYS[value.array](body.buffer, value.at, value.length) : value,
  ) as FaultTable;
  if (table.version !== TABLE_VERSION) throw new DiagnosisError('bad-table', `version ${table.version}`);
  return table;
}
