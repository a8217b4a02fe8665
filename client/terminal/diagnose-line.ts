import { FAULTS, type FaultId } from '../../grammar/vocabulary/faults.ts';
import type { UnitCode } from '../../grammar/vocabulary/quantities.ts';
import { TESTS, type TestId } from '../../grammar/vocabulary/tests.ts';
import { UNITS } from '../../grammar/vocabulary/units.ts';
import { DiagnosisError } from '../diagnosis/errors.ts';

/** What one line says. `test` and `unit` only where the line names them. */
export type DiagnoseLine =
  | { readonly kind: 'reading'; readonly reading: number | string; readonly unit?: UnitCode; readonly test?: TestId }
  | { readonly kind: 'skip'; readonly test?: TestId }
  | { readonly kind: 'repaired'; readonly fault: FaultId }
  | { readonly kind: 'why' };

/** What may stand beside what the line is about. */
const BESIDE = {
  reading: ['test', 'unit'],
  skip: ['test'],
  repaired: [],
  why: [],
} as const satisfies Readonly<Record<DiagnoseLine['kind'], readonly string[]>>;
const KINDS = Object.keys(BESIDE) as DiagnoseLine['kind'][];

/**
 * Reads a line of the protocol: one JSON object that says one thing, and nothing that is not known.
 * Errors (DiagnosisError): `bad-line`, `unknown-test`, `unknown-fault`, `unknown-unit`, `bad-reading`.
 */
export function readLine(line: string): DiagnoseLine {
  const said = parse(line);
  const kinds = KINDS.filter((kind) => kind in said);
  const kind = kinds[0];
  if (kind === undefined) throw new DiagnosisError('bad-line', 'no reading, skip, repaired or why');
  if (kinds.length > 1) throw new DiagnosisError('bad-line', `${kinds.join(' and ')} in one line`);
  const beside: readonly string[] = BESIDE[kind];
  const stranger = Object.keys(said).find((field) => field !== kind && !beside.includes(field));
  if (stranger !== undefined) throw new DiagnosisError('bad-line', `"${stranger}" beside ${kind}`);
  const test = testIn(said);
  switch (kind) {
    case 'reading':
      return { kind, reading: readingIn(said), ...unitIn(said), ...test };
    case 'skip':
      isTrue(said, kind);
      return { kind, ...test };
    case 'why':
      isTrue(said, kind);
      return { kind };
    case 'repaired':
      return { kind, fault: faultIn(said) };
  }
}

function parse(line: string): Readonly<Record<string, unknown>> {
  let value: unknown;
  try {
    value = JSON.parse(line);
  } catch {
    throw new DiagnosisError('bad-line', line.trim().slice(0, 80) || 'nothing');
  }
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    throw new DiagnosisError('bad-line', line.trim().slice(0, 80) || 'nothing');
  return value as Readonly<Record<string, unknown>>;
}

const shown = (value: unknown): string => JSON.stringify(value).slice(0, 80);

function isTrue(said: Readonly<Record<string, unknown>>, field: 'skip' | 'why'): void {
  if (said[field] !== true) throw new DiagnosisError('bad-line', `${field} is ${shown(said[field])}, not true`);
}

function readingIn(said: Readonly<Record<string, unknown>>): number | string {
  const { reading } = said;
  if (typeof reading === 'number' || typeof reading === 'string') return reading;
  throw new DiagnosisError('bad-reading', shown(reading));
}

function unitIn(said: Readonly<Record<string, unknown>>): { readonly unit?: UnitCode } {
  if (!('unit' in said)) return {};
  const unit = UNITS.find(({ code }) => code === said['unit'])?.code;
  if (!unit) throw new DiagnosisError('unknown-unit', shown(said['unit']));
  return { unit };
}

function testIn(said: Readonly<Record<string, unknown>>): { readonly test?: TestId } {
  if (!('test' in said)) return {};
  const test = TESTS.find(({ id }) => id === said['test'])?.id;
  if (!test) throw new DiagnosisError('unknown-test', String(said['test']));
  return { test };
}

function faultIn(said: Readonly<Record<string, unknown>>): FaultId {
  const fault = FAULTS.find(({ id }) => id === said['repaired'])?.id;
  if (!fault) throw new DiagnosisError('unknown-fault', String(said['repaired']));
  if (fault === 'nothing-wrong') throw new DiagnosisError('bad-line', `${fault} is nothing to repair`);
  return fault;
}
