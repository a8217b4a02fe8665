import { askedNow } from '../../practice/asked-now.ts';
import type { Exercise } from '../../practice/exercise.ts';
import type { ExerciseInput } from '../../practice/exercise-input.ts';
import { lookFor } from '../../practice/look-named.ts';
import type { Step } from '../../visit/chart/context.ts';
import { capital } from '../../words/capital.ts';
import { EXERCISE } from '../../words/practice/exercise-words.ts';
import { TOLD } from '../../words/practice/performed-words.ts';
import { PRACTICE } from '../../words/practice/practice-page-words.ts';
import { faultWords } from '../../words/things/fault-words.ts';
import type { PadRequest, TouchKey } from '../glance/touch-key.ts';
import { keysFor } from '../glance/touch-keys.ts';

/** A key that answers what is asked now. */
export interface AskedKey {
  readonly label: string;
  readonly first?: boolean;
  /** Answers danger. */
  readonly warm?: boolean;
  readonly wide?: boolean;
  readonly give: ExerciseInput;
}

/** Minutes that pass at the press of a key, where the unit has to run. */
const MINUTES_A_PRESS = 5;

/** The keys of the moment. Those of a visit, but for numbers and looks: the meter and the unit answer these. */
export function askedKeys(exercise: Exercise): readonly AskedKey[] {
  const { kind } = askedNow(exercise);
  if (kind === 'held') return [{ label: PRACTICE.goOn, first: true, wide: true, give: GO_ON }];
  if (kind === 'suspect')
    return [
      ...(exercise.asked ?? []).map(({ fault }) => ({
        ...{ label: capital(faultWords(fault)), wide: true },
        give: { order: { order: 'suspect', suspect: fault } } as const,
      })),
      { label: PRACTICE.none, give: { order: { order: 'suspect', suspect: 'none-yet' } } },
    ];
  if (exercise.context.closeRefused.length > 0)
    return [{ label: PRACTICE.noteAbsent, first: true, wide: true, give: { say: PRACTICE.noteWords } }];
  if (kind === 'time')
    return [
      {
        ...{ label: PRACTICE.letPass(MINUTES_A_PRESS), first: true, wide: true },
        give: { order: { order: 'wait', minutes: MINUTES_A_PRESS } },
      },
    ];
  return kind === 'lead' ? [] : keysOfVisit(exercise);
}

const GO_ON: ExerciseInput = { enter: { kind: 'command', command: 'go-on' }, words: PRACTICE.goOn };

function keysOfVisit({ context }: Exercise): readonly AskedKey[] {
  const { step } = context;
  const seen = context.caution === undefined && step !== undefined ? lookOf(step) : [];
  const others = keysFor(context).filter(({ does }) => seen.length === 0 || does.do === 'command');
  return [...seen, ...others.flatMap((key) => keyOf(key, step))];
}

/** What is seen is the unit's to tell: one key looks there. */
function lookOf(step: Step): readonly AskedKey[] {
  if (step.ask.kind !== 'look') return [];
  const [answer] = step.ask.answers;
  const look = step.test ?? (answer === undefined ? undefined : lookFor(answer));
  if (look === undefined || !look.startsWith('look-')) return [];
  return [{ label: PRACTICE.look, first: true, wide: true, give: { order: { order: 'look', look } } }];
}

function keyOf({ label, tone, width, does }: TouchKey, step: Step | undefined): readonly AskedKey[] {
  const how = { label, first: tone === 'first', warm: tone === 'warm', wide: width === 2 };
  switch (does.do) {
    case 'command':
      return [{ ...how, give: { enter: { kind: 'command', command: does.command }, words: label } }];
    case 'enter':
      return [{ ...how, give: { enter: does.meaning, words: does.words } }];
    case 'pad':
      return keyOfPad(does.pad, step);
    case 'open':
      return [];
  }
}

/** Two probes are put on the drawing; what has one place is read by a key, and refrigerant is weighed. */
function keyOfPad(pad: PadRequest, step: Step | undefined): readonly AskedKey[] {
  if (pad.kind === 'meter' || pad.kind === 'proof')
    return [{ label: PRACTICE.known, wide: true, give: { order: { order: 'meter-on-source' } } }];
  if (pad.kind !== 'reading') return [];
  const { quantity, at } = pad;
  if (quantity === 'mass') {
    const weighed = step?.id.endsWith('recovered') === true ? TOLD.recovered : TOLD.added;
    return [{ label: PRACTICE.scale(weighed), first: true, wide: true, give: { say: weighed } }];
  }
  if (at.length !== 1) return [];
  return [
    { label: capital(EXERCISE.measuring(at, quantity)), first: true, wide: true, give: { measure: { quantity, at } } },
  ];
}
