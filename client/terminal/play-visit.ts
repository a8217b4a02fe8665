import type { Expectation, Understanding } from '../../grammar/phrases/meaning.ts';
import { understand } from '../../grammar/phrases/understand.ts';
import type { Utterance } from '../listening/ear.ts';
import type { Prompt } from '../speaking/mouth.ts';
import { SteppedClock } from '../visit/run/stepped-clock.ts';
import { type VisitEdges, VisitRun, type VisitView } from '../visit/run/visit-run.ts';
import { diagnoseFor } from '../visit/steps/diagnose-for.ts';
import { letPass } from './let-pass.ts';
import { PrintedMouth } from './printed-mouth.ts';
import type { VisitScript } from './visit-script.ts';

/** What the player tells as it goes, in order. */
export type Played =
  | { readonly type: 'line'; readonly number: number; readonly of: number }
  | { readonly type: 'later'; readonly minutes: number }
  | {
      readonly type: 'heard';
      readonly utterance: Utterance;
      readonly understood: Understanding;
      readonly right: boolean;
    }
  /** How much of the unit's table is built, 0…1. */
  | { readonly type: 'building'; readonly share: number }
  | { readonly type: 'said'; readonly prompt: Prompt }
  | { readonly type: 'view'; readonly view: VisitView };

/** The edges that differ between the demo and its tests. */
export interface PlayerEdges {
  /** Turns a sound file to utterances, expecting what the visit expects. */
  readonly listen: (sound: string, expectation: Expectation) => Promise<readonly Utterance[]>;
  readonly append: VisitEdges['append'];
  readonly tell: (played: Played) => void;
  /** Called before each line, with its number from 1: a place to pull a plug. */
  readonly beforeLine?: (number: number) => Promise<void>;
}

export interface PlayedVisit {
  readonly run: VisitRun;
  /** Utterances whose meaning is that of the words the script says were spoken, of all. */
  readonly right: number;
  readonly spoken: number;
  readonly verdictMs: readonly number[];
  readonly realTimeFactors: readonly number[];
}

/**
 * Plays a recorded visit from its sound through the visit itself: ear, grammar, statechart, diagnosis and record are
 * those of a live visit; only the clock is stepped and the mouth prints. The script's words are compared, never used.
 */
export async function playVisit(
  script: VisitScript,
  visit: string,
  software: string,
  edges: PlayerEdges,
): Promise<PlayedVisit> {
  const clock = new SteppedClock(Date.now());
  const mouth = new PrintedMouth((prompt) => edges.tell({ type: 'said', prompt }));
  const run = VisitRun.open(
    {
      understand,
      diagnose: diagnoseFor((share) => edges.tell({ type: 'building', share })),
      mouth,
      clock,
      append: edges.append,
    },
    {
      type: 'opened.visit',
      visit,
      site: script.site,
      complaint: script.complaint,
      role: script.role,
      unit: script.unit,
      software,
    },
  );
  run.onView((view) => edges.tell({ type: 'view', view }));
  await run.settled();

  const played = { right: 0, spoken: 0, verdictMs: [] as number[], realTimeFactors: [] as number[] };
  for (const [index, line] of script.lines.entries()) {
    await edges.beforeLine?.(index + 1);
    edges.tell({ type: 'line', number: index + 1, of: script.lines.length });
    if (line.kind === 'later') {
      edges.tell({ type: 'later', minutes: line.minutes });
      await letPass(run, clock, line.minutes);
      continue;
    }
    const { expectation } = run;
    const utterances = await edges.listen(line.sound, expectation);
    const meant = JSON.stringify(understand(line.words, expectation).meaning);
    const understood = utterances.map((utterance) => understand(utterance.text, expectation));
    played.spoken += 1;
    if (understood.length === 1 && utterances[0]?.accepted === true && JSON.stringify(understood[0]?.meaning) === meant)
      played.right += 1;
    for (const [which, utterance] of utterances.entries()) {
      const understanding = understood[which];
      if (understanding === undefined) continue;
      const right = utterance.accepted && JSON.stringify(understanding.meaning) === meant;
      played.verdictMs.push(utterance.verdictMs);
      played.realTimeFactors.push(utterance.realTimeFactor);
      edges.tell({ type: 'heard', utterance, understood: understanding, right });
      run.hear(utterance);
      await run.settled();
    }
  }
  return { run, ...played };
}
