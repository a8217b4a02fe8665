import type { VisitEvent } from '../../../grammar/visit/events.ts';

/** What was given on the page and may not be in the record yet, in its words. */
export interface HeldInput {
  /** The utterance's own in the record; `DRAFT` and `PAD` stand for what was not given yet. */
  readonly id: string;
  readonly by: 'line' | 'touch' | 'pad';
  readonly words: string;
}

/** The line that is being typed. */
export const DRAFT = 'draft';
/** The numbers of a pad that asks for several, as far as they go. */
export const PAD = 'pad';

/**
 * Holds what was typed or touched from before it is given until the record has it: a page that is loaded again, or
 * whose visit stopped, knows what was lost. In the tab's own storage, which is written at once and goes with the tab:
 * what is personal stands there unsealed for no longer than it takes to be written to the record.
 */
export class HeldInputs {
  readonly #place: string;
  #held: readonly HeldInput[];
  #left: readonly HeldInput[] = [];

  constructor(visit: string) {
    this.#place = `readback.held.${visit}`;
    this.#held = readHeld(this.#place);
  }

  /** What was held when the visit was taken up, and its record does not have. The same array until it changes. */
  get left(): readonly HeldInput[] {
    return this.#left;
  }

  hold(input: HeldInput): void {
    this.#keep([...this.#held.filter(({ id }) => id !== input.id), input]);
  }

  drop(ids: readonly string[]): void {
    const stays = ({ id }: HeldInput) => !ids.includes(id);
    this.#keep(this.#held.filter(stays));
    if (!this.#left.every(stays)) this.#left = this.#left.filter(stays);
  }

  /** The record has these. */
  recorded(events: readonly VisitEvent[]): void {
    if (this.#held.length > 0) this.drop(events.flatMap(utteranceOf));
  }

  /** The visit is taken up from all that its record has: what is held now was lost. */
  takenUp(events: readonly VisitEvent[]): void {
    this.recorded(events);
    this.#left = this.#held;
  }

  #keep(held: readonly HeldInput[]): void {
    this.#held = held;
    try {
      sessionStorage.setItem(this.#place, JSON.stringify(held));
    } catch {
      // No room, or none allowed: it is still held until the page goes.
    }
  }
}

function utteranceOf(event: VisitEvent): readonly string[] {
  return event.type === 'input.taken' && event.input.type === 'heard.utterance' ? [event.input.utterance.id] : [];
}

/** Nothing where the browser keeps none, or what it kept is damaged: the visit begins all the same. */
function readHeld(place: string): readonly HeldInput[] {
  try {
    const held: unknown = JSON.parse(sessionStorage.getItem(place) ?? '[]');
    return Array.isArray(held) ? held : [];
  } catch {
    return [];
  }
}
