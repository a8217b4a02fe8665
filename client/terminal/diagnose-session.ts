import { FAULTS, type FaultId } from '../../grammar/vocabulary/faults.ts';
import { HAZARDS } from '../../grammar/vocabulary/hazards.ts';
import { inBaseUnit } from '../../grammar/vocabulary/in-base-unit.ts';
import { OBSERVATIONS, type ObservationId } from '../../grammar/vocabulary/observations.ts';
import { POINTS } from '../../grammar/vocabulary/points.ts';
import type { UnitCode, Value } from '../../grammar/vocabulary/quantities.ts';
import { TESTS, type TestId } from '../../grammar/vocabulary/tests.ts';
import type { Assessment, Diagnosis, Evidence, NextTest } from '../diagnosis/diagnosis.ts';
import { DiagnosisError } from '../diagnosis/errors.ts';
import { beyondLimits } from '../diagnosis/measuring/reading-limits.ts';
import { TEST_MODELS } from '../diagnosis/measuring/test-models.ts';
import { MINUTES } from '../diagnosis/planner/test-cost.ts';
import { type DiagnoseLine, readLine } from './diagnose-line.ts';
import { type Answered, inTenThousandths, type Why, whyOf } from './why-of.ts';

const UNITS: Readonly<Record<NextTest['function'], UnitCode | 'observation'>> = {
  volts: 'V',
  amps: 'A',
  ohms: 'Ohm',
  microfarads: 'uF',
  temperature: '[degF]',
  pressure: '[psi]',
  look: 'observation',
};

/** A test as the tool's lines say it. */
export interface TestLine {
  readonly id: TestId;
  readonly function: NextTest['function'];
  readonly quantity: NextTest['quantity'];
  readonly from?: string;
  readonly to?: string;
  readonly unit: string;
  readonly answers?: readonly ObservationId[];
  readonly needs: NextTest['needs'];
  readonly place: string;
  readonly minutes: number;
  /** Minutes of these to let pass before. */
  readonly wait?: number;
  readonly hazards: readonly string[];
}

export interface StatusLine {
  readonly next: TestLine | null;
  readonly suspects: readonly { readonly fault: FaultId; readonly probability: number }[];
  readonly hazards: readonly string[];
  readonly contradiction?: readonly number[];
  readonly done: boolean;
  /** At the end: the answers that prove the leader, and the tests that would have and could not be done. */
  readonly proof?: { readonly readings: readonly number[]; readonly unproved: readonly TestId[] };
  /** At the end where nothing of the list is left: what the answers exclude. */
  readonly excluded?: readonly FaultId[];
  /** Where it was asked for. */
  readonly why?: Why;
}

export interface ErrorLine {
  readonly error: { readonly code: string; readonly message: string };
}

function testLine(id: TestId, asked?: NextTest): TestLine {
  const model = TEST_MODELS[id];
  const [from, to] = model.at;
  return {
    id,
    function: model.function,
    quantity: model.quantity,
    ...(from ? { from } : {}),
    ...(to ? { to } : {}),
    unit: UNITS[model.function],
    ...(model.measure.kind === 'look' ? { answers: model.measure.answers } : {}),
    needs: model.needs,
    place: model.place,
    minutes: asked?.minutes ?? model.minutes,
    ...(asked?.wait === undefined ? {} : { wait: asked.wait }),
    hazards: asked?.hazards ?? model.hazards,
  };
}

/** Everything that the lines can name, in words: for whoever plugs in a simulator of his own. */
export function listLines(): object[] {
  return [
    ...TESTS.map(({ id, name }) => ({ list: 'test', name, ...testLine(id) })),
    ...FAULTS.map((fault) => ({ list: 'fault', ...fault })),
    ...POINTS.map(({ id, name, zone }) => ({ list: 'point', id, name, zone })),
    ...OBSERVATIONS.map(({ id, name }) => ({ list: 'answer', id, name })),
    ...HAZARDS.map((hazard) => ({ list: 'hazard', ...hazard })),
    { list: 'minutes', ...MINUTES },
  ];
}

/** A talk with the diagnosis, one object in, one object out. A line that is refused changes nothing. */
export class DiagnoseSession {
  private readonly diagnosis: Diagnosis;
  private evidence: readonly Evidence[] = [];
  private skipped: readonly TestId[] = [];
  /** By the number of the answer less one; a repair leaves its place empty. */
  private readonly answered: Answered[] = [];
  private current: Assessment;

  constructor(diagnosis: Diagnosis) {
    this.diagnosis = diagnosis;
    this.current = diagnosis.assess([], []);
  }

  status(): StatusLine {
    const { suspects, next, hazards, contradiction, done, confirm, proof, excluded } = this.current;
    const first = next[0];
    // A part is condemned by a reading only when it was read twice.
    const finished = (done && confirm === undefined) || first === undefined;
    return {
      next: finished ? null : testLine(first.id, first),
      suspects: suspects
        .filter((s, i) => i < 5 || s.probability >= 0.005)
        .map(({ fault, probability }) => ({ fault, probability: inTenThousandths(probability) })),
      hazards,
      ...(contradiction ? { contradiction } : {}),
      done: finished,
      ...(finished && proof ? { proof } : {}),
      ...(finished && excluded ? { excluded } : {}),
    };
  }

  /** One line of JSON in, the answer out. Errors are answered, not thrown. */
  hear(line: string): StatusLine | ErrorLine {
    try {
      const said = readLine(line);
      if (said.kind === 'why') return { ...this.status(), why: this.why() };
      this.take(said);
      return this.status();
    } catch (error) {
      if (error instanceof DiagnosisError) return { error: { code: error.code, message: error.message } };
      throw error;
    }
  }

  private why(): Why {
    const next = this.status().next?.id;
    return whyOf(this.diagnosis, this.evidence, this.current.suspects, this.answered, next);
  }

  private take(line: Exclude<DiagnoseLine, { kind: 'why' }>): void {
    if (line.kind === 'repaired') {
      this.move([...this.evidence, { seq: this.evidence.length + 1, kind: 'repair', fault: line.fault }], []);
      return;
    }
    const test = line.test ?? this.current.next[0]?.id;
    if (!test) throw new DiagnosisError('unknown-test', 'nothing is asked');
    if (line.kind === 'skip') {
      this.move(this.evidence, [...this.skipped, test]);
      return;
    }
    const evidence = this.toEvidence(test, line);
    this.move([...this.evidence, evidence], this.skipped);
    this.answered[evidence.seq - 1] = { answer: evidence.seq, test, reading: line.reading as Value | ObservationId };
  }

  /** Assesses first: only what can be assessed is kept. */
  private move(evidence: readonly Evidence[], skipped: readonly TestId[]): void {
    this.current = this.diagnosis.assess(evidence, skipped);
    this.evidence = evidence;
    this.skipped = skipped;
  }

  private toEvidence(test: TestId, { reading, unit }: Extract<DiagnoseLine, { kind: 'reading' }>): Evidence {
    const { measure, needs, quantity, at, function: fn } = TEST_MODELS[test];
    const seq = this.evidence.length + 1;
    const circumstances = {
      power: needs.power === 'any' ? ('unknown' as const) : needs.power,
      call: needs.call === 'any' ? ('unknown' as const) : needs.call,
      bench: needs.bench,
    };
    if (measure.kind === 'look') {
      const observation = measure.answers.find((a) => a === reading);
      if (!observation) throw new DiagnosisError('bad-reading', `${String(reading)} for ${test}`);
      if (unit) throw new DiagnosisError('wrong-unit', `${unit} for ${test}`);
      return { seq, kind: 'observation', observation, ...circumstances };
    }
    if (typeof reading !== 'number' && reading !== 'open') {
      throw new DiagnosisError('bad-reading', `${reading} for ${test}`);
    }
    const evidence: Evidence = {
      seq,
      kind: 'reading',
      quantity: quantity as Exclude<typeof quantity, 'observation'>,
      at,
      value: reading as Value,
      unit: unit ?? (UNITS[fn] as UnitCode),
      ...circumstances,
    };
    // A unit that measures something else is refused where the reading is taken; what it comes to is held here.
    const own = inBaseUnit(evidence);
    const beyond = own === undefined ? undefined : beyondLimits(test, own);
    if (beyond) throw new DiagnosisError('bad-reading', beyond);
    if (this.diagnosis.testFor(evidence) === undefined) throw new DiagnosisError('point-not-on-unit', test);
    return evidence;
  }
}
