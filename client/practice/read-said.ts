import type { ReadAt, Understanding } from '../../grammar/phrases/meaning.ts';
import type { CommandId } from '../../grammar/vocabulary/commands.ts';
import type { PointId } from '../../grammar/vocabulary/points.ts';
import type { EarUtterance, VisitEdges } from '../visit/run/visit-run.ts';
import { type Order, probesPut, readOrder, type SaidPlace, splitPlace, suspectIn } from './read-order.ts';

/** What was said in an exercise: an order of its own, or words of the visit with what was said beside a place. */
export type Said =
  | { readonly order: Order }
  /** Where the probes stand from then on. */
  | { readonly probes: readonly PointId[] }
  | { readonly understanding: Understanding; readonly beside: Partial<SaidPlace> };

/**
 * Reads what was accepted by an ear.
 *
 * @param asks whether a suspect is asked for: a bare number or a no answers then
 * @param understand the grammar of the visit, with what it expects
 */
export async function readSaid(
  heard: EarUtterance,
  asks: boolean,
  understand: (text: string) => ReturnType<VisitEdges['understand']>,
): Promise<Said> {
  const order = readOrder(heard.text);
  if (order !== undefined) return { order };
  const put = probesPut(heard.text);
  const [stands] = put === undefined ? [] : (placesOf(await understand(put)) ?? []);
  if (stands !== undefined) return { probes: stands.at };
  const beside = splitPlace(heard.text);
  // What was said beside a place belongs to it only where a place is left.
  const place = beside.place === heard.text ? undefined : await understand(beside.place);
  const isPlace = place !== undefined && placesOf(place) !== undefined;
  const understanding = isPlace ? place : await understand(heard.text);
  const suspect = asks ? suspectSaid(heard.text, understanding) : undefined;
  if (suspect !== undefined) return { order: { order: 'suspect', suspect } };
  return { understanding, beside: isPlace ? beside : {} };
}

/** To the question for a suspect, what an ear hears that knows the words of a visit alone. */
const NOBODY: readonly CommandId[] = ['pass', 'unsure', 'no'];

function suspectSaid(
  text: string,
  { meaning }: Understanding,
): Extract<Order, { order: 'suspect' }>['suspect'] | undefined {
  const named = suspectIn(text);
  if (named !== undefined) return named;
  if (meaning.kind === 'value') return Number(meaning.value);
  return meaning.kind === 'command' && NOBODY.includes(meaning.command) ? 'none-yet' : undefined;
}

/** The places that were named, with or without a number: the meter has its own. */
export function placesOf({ meaning, reason }: Understanding): readonly ReadAt[] | undefined {
  if (meaning.kind === 'unclear' && reason === 'no-value') return meaning.of;
  return meaning.kind === 'reading' && isMetered(meaning.reading.quantity) ? [meaning.reading] : undefined;
}

/** What an instrument of the exercise shows; weights and times are told by the trainee. */
const isMetered = (quantity: string): boolean =>
  !['mass', 'time', 'airflow', 'humidity', 'static-pressure', 'difference', 'frequency'].includes(quantity);
