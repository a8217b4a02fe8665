import type { VisitEvent } from '../../../grammar/visit/events.ts';
import { visitFolding } from '../../../grammar/visit/fold-visit.ts';
import { readBodies } from '../../../grammar/visit/read-bodies.ts';
import { type VisitEdges, VisitRun } from '../../visit/run/visit-run.ts';
import { glanceOf } from '../glance/glance.ts';
import { ToldClock } from './told-clock.ts';
import type { Beginning, EdgeQuestion, EdgeValues, FromVisit, Given, ToVisit } from './visit-messages.ts';

declare const self: DedicatedWorkerGlobalScope;

const tell = (message: FromVisit) => self.postMessage(message);
const sentenceOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

const folding = visitFolding();
const clock = new ToldClock((minutes, callback) => void ask({ edge: 'wait', minutes }).then(callback));
const asked = new Map<number, { resolve(value: never): void; reject(error: Error): void }>();
let run: VisitRun | undefined;
let questions = 0;
let isPagesHush = false;

self.onmessage = ({ data: { now, number, given } }: MessageEvent<ToVisit>) => {
  tell({ came: number });
  clock.told(now);
  if ('begin' in given) void begin(given.begin).catch((error: unknown) => tell({ failed: sentenceOf(error) }));
  else if ('answered' in given) settle(given);
  else if ('take' in given) run?.take(given.take);
  else if ('hear' in given) run?.hear(given.hear);
  else if ('touch' in given) run?.touch(given.touch);
  else if ('hush' in given) hush(given.hush);
  else tellSettled(given.settle);
};

async function begin(beginning: Beginning): Promise<void> {
  const bodies = beginning.as === 'opened' ? [] : beginning.bodies;
  folding.take(readBodies(bodies));
  run = await runOf(beginning, EDGES);
  run.onView(({ events: brought }) => show(brought));
  show([]);
}

async function runOf(beginning: Beginning, edges: VisitEdges): Promise<VisitRun> {
  switch (beginning.as) {
    case 'opened':
      return VisitRun.open(edges, beginning.opening);
    case 'taken-over':
      return VisitRun.takeOver(edges, beginning.bodies, beginning.taking);
    case 'restored':
      return VisitRun.restore(edges, beginning.bodies);
  }
}

/** Its edges are the page's. */
const EDGES: VisitEdges = {
  clock,
  understand: (text, expectation, options) => ask({ edge: 'understand', text, expectation, options }),
  diagnose: (unit, evidence, parked) => ask({ edge: 'diagnose', unit, evidence, parked }),
  mouth: {
    speak: (prompt) => ask({ edge: 'speak', prompt }),
    hush: (evenCaution) => {
      if (!isPagesHush) tell({ hush: evenCaution });
    },
  },
  append: async (bodies) => {
    await ask({ edge: 'append', bodies });
    folding.take(readBodies(bodies));
  },
};

/** The page has silenced its mouth already: what waits here is dropped, and it is told from when on it may speak. */
function hush(evenCaution: boolean): void {
  isPagesHush = true;
  run?.hush(evenCaution);
  isPagesHush = false;
  tell({ hushed: true });
}

function ask<Q extends EdgeQuestion>(question: Q): Promise<EdgeValues[Q['edge']]> {
  questions += 1;
  const number = questions;
  return new Promise((resolve, reject) => {
    asked.set(number, { resolve, reject });
    tell({ asks: number, question });
  });
}

function settle(answer: Extract<Given, { answered: number }>): void {
  const waiting = asked.get(answer.answered);
  asked.delete(answer.answered);
  if ('sentence' in answer) waiting?.reject(new Error(answer.sentence));
  else waiting?.resolve(answer.value as never);
}

function show(events: readonly VisitEvent[]): void {
  if (run === undefined) return;
  tell({ shown: { events, expectation: run.expectation, glance: glanceOf(folding.view(), run.context) } });
}

function tellSettled(settled: number): void {
  run?.settled().then(
    () => tell({ settled }),
    (error: unknown) => tell({ settled, sentence: sentenceOf(error) }),
  );
}
