import type { ReactNode } from 'react';
import type { Meaning, ReadAt } from '../../../grammar/phrases/meaning.ts';
import type { CommandId } from '../../../grammar/vocabulary/commands.ts';
import type { SwitchingDevice } from '../../../grammar/vocabulary/devices.ts';
import type { IsolationPlace } from '../../../grammar/vocabulary/isolation-places.ts';
import { PARTS, type PartId } from '../../../grammar/vocabulary/parts.ts';
import type { PointId } from '../../../grammar/vocabulary/points.ts';
import { DIALS, LOOKS_SAID } from '../../../grammar/vocabulary/practice-orders.ts';
import type { QuantityId } from '../../../grammar/vocabulary/quantities.ts';
import { TESTS_BY_ID } from '../../../grammar/vocabulary/tests.ts';
import { WORKS, type WorkId } from '../../../grammar/vocabulary/works.ts';
import type { Exercise } from '../../practice/exercise.ts';
import { CAPACITOR_ZONES } from '../../visit/rules/isolation.ts';
import { capital } from '../../words/capital.ts';
import { EXERCISE } from '../../words/practice/exercise-words.ts';
import { TOLD } from '../../words/practice/performed-words.ts';
import { PRACTICE } from '../../words/practice/practice-page-words.ts';
import { workWords } from '../../words/things/job-words.ts';
import { meaningWords } from '../../words/things/meaning-words.ts';
import { partWords } from '../../words/things/part-words.ts';
import type { HearingState } from '../session/page-hearing.ts';
import type { PracticeSession } from './practice-session.ts';

interface ExerciseKeysProps {
  readonly session: PracticeSession;
  readonly exercise: Exercise;
  readonly ear: HearingState;
}

/** Instruments that have one place: what they read, and where. */
const SINGLE: readonly (readonly [QuantityId, PointId])[] = [
  ['temperature', 'outdoor-air'],
  ['temperature', 'return-air'],
  ['wet-bulb', 'return-air'],
  ['temperature', 'supply-air'],
  ['temperature', 'condenser-air-out'],
  ['temperature', 'suction-line'],
  ['temperature', 'liquid-line'],
  ['temperature', 'discharge-line'],
  ['pressure', 'suction-port'],
  ['pressure', 'liquid-port'],
  ['current', 'compressor'],
  ['current', 'fan-motor'],
  ['current', 'blower-motor'],
];

const SWITCHES: readonly (readonly [SwitchingDevice, IsolationPlace])[] = [
  ['disconnect', 'outdoor'],
  ['breaker', 'panel'],
  ['service-switch', 'air-handler'],
];

const DISCHARGED: Meaning = {
  kind: 'several',
  parts: CAPACITOR_ZONES.map((zone) => ({ kind: 'report', report: { type: 'discharged', zone } })),
};
const call = (observation: 'thermostat-calling' | 'thermostat-not-calling'): Meaning => ({
  kind: 'report',
  report: { type: 'observation', observation },
});

/** All that can be done in an exercise, by touch: what is wanted now first, the rest in groups by what the hands do. */
export function ExerciseKeys({ session, exercise, ear }: ExerciseKeysProps) {
  const { context, halted, probes } = exercise;
  const isListening = !['off', 'failed'].includes(ear.ear);
  const enter = (meaning: Meaning) => () => session.enter(meaning, wordsOf(meaning));
  const order = (command: CommandId, words: string) => () => session.enter({ kind: 'command', command }, words);
  const wantsReason = context.closeRefused.length > 0;
  return (
    <nav aria-label={PRACTICE.answers} className="practice-keys">
      <div className="keys">
        {halted ? <Key first label={PRACTICE.goOn} press={order('go-on', PRACTICE.goOn)} /> : null}
        {context.caution === undefined ? null : (
          <Key first label={PRACTICE.live} press={order('live', PRACTICE.live)} />
        )}
        {wantsReason ? <Key first label={PRACTICE.noteAbsent} press={() => session.say(PRACTICE.noteWords)} /> : null}
        <Key
          label={PRACTICE.read}
          off={probes.length < 2}
          press={() => session.order({ order: 'read' }, PRACTICE.read)}
        />
        <Key label={PRACTICE.hint} press={() => session.order({ order: 'hint' }, PRACTICE.hint)} />
        <Key label={PRACTICE.ear(isListening)} press={() => void session.toggleEar()} />
      </div>
      <Group title={PRACTICE.dials}>
        {DIALS.map(({ id }) => (
          <Key
            key={id}
            label={PRACTICE.dial(id)}
            on={exercise.dial === id}
            press={() => session.order({ order: 'dial', dial: id }, EXERCISE.dial(id))}
          />
        ))}
        <Key label={PRACTICE.known} press={() => session.order({ order: 'meter-on-source' }, PRACTICE.known)} />
      </Group>
      <Group title={PRACTICE.looks}>
        {LOOKS_SAID.map(({ test }) => (
          <Key
            key={test}
            label={capital(TESTS_BY_ID[test].name)}
            press={() => session.order({ order: 'look', look: test }, TESTS_BY_ID[test].name)}
          />
        ))}
      </Group>
      <Group title={PRACTICE.single}>
        {SINGLE.map(([quantity, point]) => (
          <Key
            key={`${quantity} ${point}`}
            label={capital(EXERCISE.measuring([point], quantity))}
            press={() =>
              session.give({ measure: { quantity, at: [point] } as ReadAt }, EXERCISE.measuring([point], quantity))
            }
          />
        ))}
      </Group>
      <Group title={PRACTICE.switches}>
        {[call('thermostat-not-calling'), call('thermostat-calling')].map((meaning) => (
          <Key key={wordsOf(meaning)} label={capital(wordsOf(meaning))} press={enter(meaning)} />
        ))}
        {SWITCHES.flatMap(([device, place]) =>
          (['locked', 'closed'] as const).map((state) => {
            const meaning: Meaning = { kind: 'report', report: { type: 'energy', device, place, state } };
            return <Key key={wordsOf(meaning)} label={capital(wordsOf(meaning))} press={enter(meaning)} />;
          }),
        )}
        <Key label={PRACTICE.discharged} press={() => session.enter(DISCHARGED, PRACTICE.discharged)} />
        <Key label={PRACTICE.coversOn} press={() => session.say(TOLD.coversOn)} />
      </Group>
      <Group title={PRACTICE.repairs}>
        {PARTS.map(({ id }) => (
          <Key
            key={id}
            label={capital(partWords(id, {}))}
            press={() => session.enter(partOf(id, exercise), partWords(id, {}))}
          />
        ))}
        {WORKS.map(({ id }) => (
          <Key
            key={id}
            label={capital(workWords(id))}
            press={() => session.enter({ kind: 'work', work: id as WorkId }, workWords(id))}
          />
        ))}
      </Group>
      <div className="keys">
        <Key label={PRACTICE.finish} press={order('finish', PRACTICE.finish)} />
        <Key label={PRACTICE.giveUp} press={() => session.order({ order: 'give-up' }, PRACTICE.giveUp)} />
      </div>
    </nav>
  );
}

/** A part by the plate of the unit. */
function partOf(part: PartId, { drawn }: Exercise): Meaning {
  const { capacitor } = drawn.profile;
  const ratings =
    part === 'dual-capacitor' && capacitor !== undefined
      ? { 'herm-uF': capacitor.herm, 'fan-uF': capacitor.fan, volts: 440 }
      : {};
  return { kind: 'part', part, ratings: ratings as Readonly<Record<string, number>> };
}

const wordsOf = (meaning: Meaning): string => meaningWords(meaning) ?? meaning.kind;

interface KeyProps {
  readonly label: string;
  readonly press: () => void;
  readonly first?: boolean;
  readonly on?: boolean;
  readonly off?: boolean;
}

function Key({ label, press, first = false, on, off = false }: KeyProps) {
  return (
    <button
      type="button"
      className={`key ${first ? 'first full' : ''}`}
      aria-pressed={on}
      disabled={off}
      onClick={press}
    >
      {label}
    </button>
  );
}

function Group({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <details className="practice-group">
      <summary className="key">{title}</summary>
      <div className="keys">{children}</div>
    </details>
  );
}
