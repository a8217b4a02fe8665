import type { VisitOutcome } from '../../../grammar/visit/events.ts';
import type { TimerId } from '../../../grammar/visit/inputs.ts';
import type { Prompt } from '../../speaking/mouth.ts';
import type { VisitContext } from './context.ts';
import type { InternalEvent } from './messages.ts';

/** What a turn asks of the edges once the record holds it. */
export type Effect =
  | { readonly type: 'record'; readonly params: { readonly event: VisitOutcome } }
  | { readonly type: 'say'; readonly params: { readonly prompt: Prompt } }
  | { readonly type: 'hush'; readonly params: { readonly evenCaution: boolean } }
  | { readonly type: 'ask diagnosis'; readonly params: { readonly forNumber: number } }
  | { readonly type: 'start timer'; readonly params: { readonly timer: TimerId; readonly minutes: number } };

/**
 * One turn of the visit: a draft of the context and the list of what follows from an input, in order. Handlers write
 * on it; the statechart applies it whole, so that what is recorded, said and changed never drift apart.
 */
export class Turn {
  context: VisitContext;
  readonly effects: Effect[] = [];
  readonly raised: InternalEvent[] = [];

  constructor(context: VisitContext) {
    this.context = context;
  }

  set(patch: Partial<VisitContext>): void {
    this.context = { ...this.context, ...patch };
  }

  record(event: VisitOutcome): void {
    this.effects.push({ type: 'record', params: { event } });
  }

  /** Says a sentence and records that it was given to the mouth. Returns the prompt's id. */
  say(kind: Prompt['kind'], text: string): string {
    const id = `p${this.context.promptCount + 1}`;
    this.set({ promptCount: this.context.promptCount + 1, lastPrompt: { id, text } });
    this.record({ type: 'prompt.said', id, kind, text });
    this.effects.push({ type: 'say', params: { prompt: { id, kind, text } } });
    return id;
  }

  hush(evenCaution: boolean): void {
    this.effects.push({ type: 'hush', params: { evenCaution } });
  }

  raise(event: InternalEvent): void {
    this.raised.push(event);
  }

  /** More of the same input follows once the regions have moved: the turn is not over. */
  get goesOn(): boolean {
    return this.raised.some(({ type }) => type === 'input.goes-on' || type === 'meanings.left');
  }

  /** Asks the diagnosis for the latest evidence, once for each. */
  askDiagnosis(): void {
    if (this.context.askedFor === this.context.evidenceNumber && this.context.assessment !== undefined) return;
    this.set({ askedFor: this.context.evidenceNumber });
    this.effects.push({ type: 'ask diagnosis', params: { forNumber: this.context.evidenceNumber } });
  }

  startTimer(timer: TimerId, minutes: number): void {
    this.effects.push({ type: 'start timer', params: { timer, minutes } });
  }
}
