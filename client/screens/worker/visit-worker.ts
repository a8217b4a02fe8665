import type { VisitEvent } from '../../../grammar/visit/events.ts';
import { visitFolding } from '../../../grammar/visit/fold-visit.ts';
import { readBodies } from '../../../grammar/visit/read-bodies.ts';
import { type VisitEdges, VisitRun } from '../../visit/run/visit-run.ts';
import { glanceOf } from '../glance/glance.ts';
import { PageClock } from './page-clock.ts';
import type { Beginning, EdgeQuestion, EdgeValues, FromVisit, ToVisit } from './visit-messages.ts';

declare const self: DedicatedWorkerGlobalScope;

const tell = (message: FromVisit) => self.postMessage(message);
const sentenceOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

const folding = visitFolding();
const asked = new Map<number, { resolve(value: never): void; reject(error: Error): void }>();
let run: VisitRun | undefined;
let questions = 0;
let isPagesHush = false;

self.onmessage = ({ data }: MessageEvent<ToVisit>) => {
  if ('begin' in data) void begin(data.begin).catch((error: unknown) => tell({ failed: sentenceOf(error) }));
  else if ('answered' in data) settle(data);
  else if ('take' in data) run?.take(data.take);
  else if ('hear' in data) run?.hear(data.hear);
  else if ('touch' in data) run?.touch(data.touch);
  else if ('hush' in data) hush(data.hush);
  else tellSettled(data.settle);
};

async function begin(beginning: Beginning): Promise<void> {
  const bodies = beginning.as === 'opened' ? [] : beginning.bodies;
  const events = readBodies(bodies);
  folding.take(events);
  run = await runOf(beginning, edgesFrom(events));
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

/** Its edges are the page's but for the clock, which goes here too. */
function edgesFrom(events: readonly VisitEvent[]): VisitEdges {
  return {
    clock: new PageClock(timeOf(events.at(-1))),
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
}

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

function settle(answer: Extract<ToVisit, { answered: number }>): void {
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

function timeOf(event: VisitEvent | undefined) {
  return event?.type === 'input.taken' ? event.input.time : event?.time;
}
