import { inBaseUnit } from '../vocabulary/in-base-unit.ts';
import type { Reading } from '../vocabulary/measurement.ts';
import type { VisitOutcome } from './events.ts';
import type { VisitFacts } from './facts.ts';
import { OPENS_REFRIGERANT } from './opens-refrigerant.ts';
import type { RefrigerantEntry } from './refrigerant-facts.ts';
import { isWithinTest } from './refrigerant-rules.ts';
import { outdoorFahrenheit } from './refrigerant-work.ts';

type Log = readonly RefrigerantEntry[];
type Of<T extends VisitOutcome['type']> = Extract<VisitOutcome, { type: T }>;

/** What an event adds to the log, changes in it or takes out of it. */
export function logRefrigerant(facts: VisitFacts, event: VisitOutcome): Log {
  const { refrigerantLog: log, readingCount } = facts;
  switch (event.type) {
    case 'reading.logged':
      return [...log, ...entryOf(facts, event.reading, `reading ${event.number}`)];
    case 'reading.corrected':
      // What went in after all was nothing: nothing came out by that.
      return wentIn(event.from) && event.to.value === 0
        ? without(log, `reading ${event.number}`)
        : corrected(facts, event);
    case 'reading.withdrawn':
      return without(log, `reading ${event.number}`);
    case 'part.fitted':
      return opened(log, OPENS_REFRIGERANT[event.part], `part ${event.number ?? readingCount + 1}`);
    case 'part.withdrawn': {
      const number = event.number ?? facts.parts.findLast(({ part }) => part === event.part)?.number;
      return without(log, `part ${number}`);
    }
    case 'work.done':
      return opened(log, OPENS_REFRIGERANT[event.work], `work ${event.number ?? readingCount + 1}`);
    case 'work.withdrawn': {
      const number = event.number ?? facts.works.findLast(({ work }) => work === event.work)?.number;
      return without(log, `work ${number}`);
    }
    case 'item.reported':
      return [...log, ...entryOfItem(facts, event)];
    case 'item.withdrawn': {
      const at = log.findLastIndex(({ from }) => from === `item ${event.item}`);
      return at < 0 ? log : log.toSpliced(at, 1);
    }
    case 'refrigerant.told':
      return event.what === 'flame-lit' ? log : [...log, { is: event.what, from: `told ${event.number}` }];
    case 'refrigerant.untold':
      return without(log, `told ${event.number}`);
    case 'refrigerant.judged':
      return judged(log, event, readingCount);
    default:
      return log;
  }
}

function wentIn({ quantity, value }: Reading): boolean {
  return quantity === 'mass' && typeof value === 'number' && value > 0;
}

function entryOf(facts: VisitFacts, reading: Reading, from: string): Log {
  const { quantity, at } = reading;
  const value = inBaseUnit(reading);
  if (at[0] !== 'system' || value === undefined) return [];
  switch (quantity) {
    case 'mass':
      return [{ is: 'mass', from, ounces: value }];
    case 'vacuum':
      return [{ is: 'vacuum', from }];
    case 'pressure': {
      const fahrenheit = outdoorFahrenheit(facts);
      return [
        { is: 'nitrogen', from, psi: value, within: isWithinTest(facts, value), fahrenheit, mono: facts.now.mono },
      ];
    }
    default:
      return [];
  }
}

function entryOfItem({ now }: VisitFacts, { item }: Of<'item.reported'>): Log {
  const from = `item ${item}`;
  switch (item) {
    case 'circuit-opened':
      return [{ is: 'opened', from }];
    case 'leak-found':
      return [{ is: 'leak', from }];
    case 'no-leak-found':
      return [{ is: 'searched', from }];
    case 'vacuum-isolated':
      return [{ is: 'isolated', from, mono: now.mono }];
    default:
      return [];
  }
}

function opened(log: Log, opens: boolean, from: string): Log {
  return opens ? [...log, { is: 'opened', from }] : log;
}

/** Whatever was judged by it, or by what stood before it, goes with it. */
function without(log: Log, from: string): Log {
  const at = log.findIndex((entry) => entry.from === from);
  if (at < 0) return log;
  const isPressure = log[at]?.is === 'nitrogen';
  return log.filter(
    (entry, index) =>
      entry.from !== from && !(isPressure && index > at && entry.is === 'judged' && entry.check === 'pressure-test'),
  );
}

/** A reading set right was taken when it was taken: its place in the order, and its time, stay. */
function corrected(facts: VisitFacts, { number, to }: Of<'reading.corrected'>): Log {
  const { refrigerantLog: log } = facts;
  const from = `reading ${number}`;
  const was = log.find((entry) => entry.from === from);
  const [now] = entryOf(facts, to, from);
  if (was === undefined) return now === undefined ? log : [...log, now];
  if (now === undefined) return without(log, from);
  const kept = now.is === 'nitrogen' && was.is === 'nitrogen' ? { mono: was.mono, fahrenheit: was.fahrenheit } : {};
  const at = log.indexOf(was);
  const left = without(log, from);
  return left.toSpliced(at, 0, { ...now, ...kept });
}

/** A verdict stands right behind the reading that it was passed on, whenever that was set right. */
function judged(log: Log, event: Of<'refrigerant.judged'>, readingCount: number): Log {
  const from = `reading ${event.reading ?? readingCount}`;
  const fits = event.judged.word !== 'does not fit';
  const at = log.findLastIndex((entry) => entry.from === from);
  const entry: RefrigerantEntry = { is: 'judged', from, check: event.check, value: event.value, fits };
  return at < 0 ? [...log, entry] : log.toSpliced(at + 1, 0, entry);
}
