import { type ReactNode, useState } from 'react';
import type { Meaning } from '../../../grammar/phrases/meaning.ts';
import type { CommandId } from '../../../grammar/vocabulary/commands.ts';
import type { SwitchingDevice } from '../../../grammar/vocabulary/devices.ts';
import type { IsolationPlace } from '../../../grammar/vocabulary/isolation-places.ts';
import { PARTS, type PartId } from '../../../grammar/vocabulary/parts.ts';
import type { PointId } from '../../../grammar/vocabulary/points.ts';
import { DIALS, type DialId, LOOKS_SAID } from '../../../grammar/vocabulary/practice-orders.ts';
import type { QuantityId } from '../../../grammar/vocabulary/quantities.ts';
import { TESTS_BY_ID } from '../../../grammar/vocabulary/tests.ts';
import { WORKS } from '../../../grammar/vocabulary/works.ts';
import { DISCHARGED } from '../../practice/discharged.ts';
import type { Exercise } from '../../practice/exercise.ts';
import type { ExerciseInput } from '../../practice/exercise-input.ts';
import { capital } from '../../words/capital.ts';
import { EXERCISE } from '../../words/practice/exercise-words.ts';
import { TOLD } from '../../words/practice/performed-words.ts';
import { PRACTICE } from '../../words/practice/practice-page-words.ts';
import { workWords } from '../../words/things/job-words.ts';
import { meaningWords } from '../../words/things/meaning-words.ts';
import { partWords } from '../../words/things/part-words.ts';
import type { HearingState } from '../session/page-hearing.ts';
import { askedKeys } from './asked-keys.ts';
import type { PracticeSession, Taken } from './practice-session.ts';

interface ExerciseKeysProps {
  readonly session: PracticeSession;
  readonly exercise: Exercise;
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

const call = (observation: 'thermostat-calling' | 'thermostat-not-calling'): Meaning => ({
  kind: 'report',
  report: { type: 'observation', observation },
});

const GROUPS = ['looks', 'single', 'switches', 'repairs'] as const;
type GroupName = (typeof GROUPS)[number];

/** What answers the moment: the visit's own keys, suspects, and going on. */
export function MomentKeys({ session, exercise }: ExerciseKeysProps) {
  const keys = askedKeys(exercise);
  return keys.length === 0 ? null : (
    <div className="keys practice-moment">
      {keys.map(({ give, ...key }) => (
        <Key key={key.label} {...key} press={() => session.give(give, key.label)} />
      ))}
    </div>
  );
}

/** The meter beside the drawing: read it, and what it stands on. */
export function MeterKeys({ session, exercise, taken }: ExerciseKeysProps & { readonly taken: readonly Taken[] }) {
  // Pressed is pressed, though what came before is still worked out.
  const dial = taken.reduce((is, { input }) => dialOf(input) ?? is, exercise.probing.dial);
  return (
    <div className="keys">
      <Key
        first
        label={PRACTICE.read}
        off={exercise.probing.probes.length < 2}
        press={() => session.order({ order: 'read' }, PRACTICE.read)}
      />
      {DIALS.map(({ id }) => (
        <Key
          key={id}
          label={PRACTICE.dial(id)}
          on={dial === id}
          press={() => session.order({ order: 'dial', dial: id }, EXERCISE.dial(id))}
        />
      ))}
      <Key label={PRACTICE.known} press={() => session.order({ order: 'meter-on-source' }, PRACTICE.known)} />
    </div>
  );
}

function dialOf(input: ExerciseInput): DialId | undefined {
  return 'order' in input && input.order.order === 'dial' ? input.order.dial : undefined;
}

/** All else that can be done in an exercise, by touch: in groups by what the hands do, one of them open. */
export function ExerciseKeys({ session, exercise, ear }: ExerciseKeysProps & { readonly ear: HearingState }) {
  const [open, setOpen] = useState<GroupName>();
  const isListening = !['off', 'failed'].includes(ear.ear);
  const command = (name: CommandId, words: string) => () => session.enter({ kind: 'command', command: name }, words);
  return (
    <nav aria-label={PRACTICE.answers} className="practice-keys">
      <div className="keys practice-groups">
        {GROUPS.map((name) => (
          <button
            type="button"
            className="key"
            key={name}
            aria-expanded={open === name}
            onClick={() => setOpen(open === name ? undefined : name)}
          >
            {PRACTICE[name]}
          </button>
        ))}
      </div>
      {open === undefined ? null : (
        <section className="keys practice-group" aria-label={PRACTICE[open]}>
          {keysOf(open, session, exercise)}
        </section>
      )}
      <div className="keys">
        <Key label={PRACTICE.hint} press={() => session.order({ order: 'hint' }, PRACTICE.hint)} />
        <Key label={PRACTICE.ear(isListening)} press={() => void session.toggleEar()} />
        <Key label={PRACTICE.pass} press={command('pass', PRACTICE.pass)} />
        <Key label={PRACTICE.finish} press={command('finish', PRACTICE.finish)} />
        <Key label={PRACTICE.giveUp} press={() => session.order({ order: 'give-up' }, PRACTICE.giveUp)} />
      </div>
    </nav>
  );
}

function keysOf(group: GroupName, session: PracticeSession, exercise: Exercise): readonly ReactNode[] {
  const enter = (meaning: Meaning) => {
    const words = meaningWords(meaning) ?? meaning.kind;
    return <Key key={words} label={capital(words)} press={() => session.enter(meaning, words)} />;
  };
  switch (group) {
    case 'looks':
      return LOOKS_SAID.map(({ test }) => {
        const { name } = TESTS_BY_ID[test];
        return (
          <Key key={test} label={capital(name)} press={() => session.order({ order: 'look', look: test }, name)} />
        );
      });
    case 'single':
      return SINGLE.map(([quantity, point]) => {
        const words = EXERCISE.measuring([point], quantity);
        const measure = { quantity, at: [point] };
        return <Key key={words} label={capital(words)} press={() => session.give({ measure }, words)} />;
      });
    case 'switches':
      return [
        ...[call('thermostat-not-calling'), call('thermostat-calling')].map(enter),
        ...SWITCHES.flatMap(([device, place]) =>
          (['locked', 'closed'] as const).map((state) =>
            enter({ kind: 'report', report: { type: 'energy', device, place, state } }),
          ),
        ),
        <Key
          key="discharged"
          label={PRACTICE.discharged}
          press={() => session.enter(DISCHARGED, PRACTICE.discharged)}
        />,
        <Key key="covers" label={PRACTICE.coversOn} press={() => session.say(TOLD.coversOn)} />,
      ];
    case 'repairs':
      return [
        ...PARTS.map(({ id }) => {
          const words = partWords(id, {});
          return <Key key={id} label={capital(words)} press={() => session.enter(partOf(id, exercise), words)} />;
        }),
        ...WORKS.map(({ id }) => (
          <Key
            key={id}
            label={capital(workWords(id))}
            press={() => session.enter({ kind: 'work', work: id }, workWords(id))}
          />
        )),
      ];
  }
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

interface KeyProps {
  readonly label: string;
  readonly press: () => void;
  readonly first?: boolean;
  readonly warm?: boolean;
  readonly wide?: boolean;
  readonly on?: boolean;
  readonly off?: boolean;
}

function Key({ label, press, first = false, warm = false, wide = false, on, off = false }: KeyProps) {
  return (
    <button
      type="button"
      className={['key', first ? 'first' : '', warm ? 'warm' : '', wide ? 'wide' : ''].join(' ').trim()}
      aria-pressed={on}
      disabled={off}
      onClick={press}
    >
      {label}
    </button>
  );
}
