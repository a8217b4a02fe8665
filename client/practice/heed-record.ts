import type { Meaning } from '../../grammar/phrases/meaning.ts';
import type { VisitEvent, VisitOutcome } from '../../grammar/visit/events.ts';
import type { VisitContext } from '../visit/chart/context.ts';
import { IN_PROOF } from '../visit/rules/isolation.ts';
import { actionWords } from '../words/talk/action-words.ts';
import { SAY } from '../words/talk/prompts.ts';
import type { ExerciseDeed, LoggedDeed } from './exercise-log.ts';
import { againstWords, type Stop, stopsHands } from './judge-safety.ts';
import type { SimulatedUnit } from './simulated-unit.ts';

/** What was written of something that was done. */
export interface Written {
  readonly events: readonly VisitEvent[];
  /** What the visit had said before it, in its order. */
  readonly said: readonly string[];
}

/**
 * What the visit recorded against an act that was done all the same, the first of it: hands where nothing was proven, a
 * circuit started too early, a part kept against what was held against it, and whatever else it warned of while
 * somebody did it. What a reading or a look finds is nobody's act.
 *
 * @param meaning what was said or touched; undefined where it was a reading or a look of the exercise's own
 */
export function stopsRecorded(
  { events, said }: Written,
  meaning: Meaning | undefined,
  unit: SimulatedUnit,
  context: VisitContext,
  log: readonly LoggedDeed[],
): Stop | undefined {
  const volts = unit.voltsIn('outdoor-load');
  for (const event of events as readonly VisitOutcome[]) {
    if (event.type === 'work.unproven') {
      const { what, zone } = event;
      const met = stopsHands([zone], what, unit, context);
      return met ?? { error: 'not-proven-dead', weight: 'near-miss', zone, volts: unit.voltsIn(zone), what };
    }
    if (event.type === 'circuit.early') {
      const { words } = event;
      return againstWords(
        { error: 'circuit-open', weight: 'near-miss', zone: 'outdoor-load', volts, what: words, words },
        log,
      );
    }
    if (event.type === 'part.fitted' && event.doubts !== undefined && event.doubts.length > 0) {
      const words = event.doubts.join(' ');
      const what = event.words ?? event.part;
      return { error: 'against-warning', weight: 'near-miss', zone: 'outdoor-load', volts, what, words, said: words };
    }
    if (event.type === 'hazard.warned' && meaning !== undefined && isAct(meaning) && !tellsOfProof(event, events)) {
      const { words, zone } = event;
      const before = saidAgainst(words, said);
      return {
        ...{ error: 'against-warning', weight: 'near-miss', zone, volts: unit.voltsIn(zone), what: words, words },
        ...(before === undefined ? {} : { said: before }),
      };
    }
  }
  return undefined;
}

/** What asks for the load to be taken off before a pull-out is pulled. */
const LOAD_OFF = [
  SAY.callOffFirst,
  ...(['call-off', 'breaker-off'] as const).flatMap((done) =>
    (['brief', 'full'] as const).map((pace) => actionWords(done, 'none', pace)),
  ),
];

/** What was said last against what is warned of: a warning that comes with the act itself warned nobody before it. */
function saidAgainst(warning: string, said: readonly string[]): string | undefined {
  const against = warning === SAY.pulledUnderLoad ? [warning, ...LOAD_OFF] : [warning];
  return said.flatMap((text) => against.find((words) => text.includes(words)) ?? []).at(-1);
}

/** That power may be back where a proof stood: it costs the proof, and is asked by the visit itself where a breaker is reset. */
function tellsOfProof(
  { zone }: Extract<VisitOutcome, { type: 'hazard.warned' }>,
  events: readonly VisitEvent[],
): boolean {
  return (events as readonly VisitOutcome[]).some(
    (event) => event.type === 'energy.changed' && event.zone === zone && IN_PROOF.includes(event.from),
  );
}

/** Something that hands do, and not what is seen, read or only guessed of it. */
function isAct(meaning: Meaning): boolean {
  switch (meaning.kind) {
    case 'several':
      return meaning.parts.some(isAct);
    case 'part':
    case 'wire':
    case 'work':
      return true;
    case 'report':
      return ['energy', 'part-moved', 'cover', 'deed'].includes(meaning.report.type);
    default:
      return false;
  }
}

/** What is begun as a repair; undefined where nothing is. A filter is changed on any visit. */
export function repairBegun(
  meaning: Meaning,
  what: string,
  { finding }: VisitContext,
): Extract<ExerciseDeed, { type: 'repair-begun' }> | undefined {
  const begun = repairIn(meaning);
  if (begun === undefined || (begun.kind === 'part' && begun.part === 'filter')) return undefined;
  return { type: 'repair-begun', what, found: finding !== undefined };
}

function repairIn(meaning: Meaning): Extract<Meaning, { kind: 'part' | 'work' }> | undefined {
  if (meaning.kind === 'several') return meaning.parts.map(repairIn).find((one) => one !== undefined);
  return meaning.kind === 'part' || meaning.kind === 'work' ? meaning : undefined;
}
