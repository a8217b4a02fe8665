import type { VisitOutcome } from '../../../grammar/visit/events.ts';
import { evolve } from '../../../grammar/visit/evolve.ts';
import type { HeardUtterance, TimerId, VisitInput } from '../../../grammar/visit/inputs.ts';
import type { Question, QuestionEnd } from '../../../grammar/visit/questions.ts';
import type { ToldDanger } from '../../../grammar/vocabulary/danger-signs.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import type { Prompt } from '../../speaking/mouth.ts';
import { namingScale } from '../../words/things/chosen-words.ts';
import { hasStartCapacitor } from '../rules/charged-sections.ts';
import type { Talk, VisitContext } from './context.ts';
import type { InternalEvent } from './messages.ts';
import { ENERGY_CHARTS, type EnergyMove, energyAfter } from './zone-energy.ts';

/** What a turn asks of the edges once the record holds it. */
export type Effect =
  | { readonly type: 'record'; readonly params: { readonly event: VisitOutcome } }
  | { readonly type: 'say'; readonly params: { readonly prompt: Prompt } }
  | { readonly type: 'hush'; readonly params: { readonly evenCaution: boolean } }
  | { readonly type: 'ask diagnosis'; readonly params: { readonly forNumber: number } }
  | { readonly type: 'start timer'; readonly params: { readonly timer: TimerId; readonly minutes: number } };

/** A question that nobody answers in so many minutes is let go (our choice). */
export const QUESTION_MINUTES = 1;
/** How often the time to the split is called (our choice). */
export const SPLIT_CALL_MINUTES = 5;
/** More prompts than one turn gives. */
const LATELY = 12;

/**
 * One turn of the visit: a draft of what holds and the list of what follows from an input, in order. Handlers decide
 * and record; what they record holds at once, so that whatever is judged next is judged by it. The statechart applies
 * the turn whole.
 */
export class Turn {
  context: VisitContext;
  readonly effects: Effect[] = [];
  readonly raised: InternalEvent[] = [];
  /** What was heard in this turn. */
  heard: HeardUtterance | undefined;

  constructor(context: VisitContext) {
    this.context = context;
  }

  /** The input itself: its time holds, and what it tells whatever is made of it. */
  take(input: VisitInput): void {
    if (input.type === 'heard.utterance') this.heard = input.utterance;
    this.context = evolve(this.context, { type: 'input.taken', input });
  }

  /** Records what came of it; the facts have evolved by it when this returns. */
  record(event: VisitOutcome): void {
    this.effects.push({ type: 'record', params: { event } });
    this.context = evolve(this.context, { ...event, time: this.context.now });
  }

  /** Changes the talk; facts change by `record` alone. */
  talk(patch: Partial<Talk>): void {
    this.context = { ...this.context, ...patch };
  }

  /** Moves a zone's energy where its chart knows the move. Returns whether it moved. */
  move(zone: ZoneId, move: EnergyMove, why: string): boolean {
    // Where there is no start capacitor, there is nothing to tell of it.
    if (zone === 'capacitor-start' && !hasStartCapacitor(this.context)) return false;
    const from = this.context.energy[zone];
    const to = energyAfter(ENERGY_CHARTS[zone], from, move);
    if (to === from) return false;
    this.record({ type: 'energy.changed', zone, from, to, why });
    return true;
  }

  /** Says a sentence and records that it was given to the mouth. Returns the prompt's id. */
  say(kind: Prompt['kind'], words: string): string {
    const text = namingScale(words, this.context.units);
    const id = `p${this.context.promptCount + 1}`;
    this.record({ type: 'prompt.said', id, kind, text });
    const prompt: Prompt = { id, kind, text };
    this.effects.push({ type: 'say', params: { prompt } });
    this.talk({ lately: [...this.context.lately, prompt].slice(-LATELY), silenced: [] });
    if (kind === 'warning') this.talk({ warnedAt: this.context.now.mono });
    return id;
  }

  /** Warns of a hazard aloud; recorded where a zone is known that it stands in. */
  warn(words: string, zone: ZoneId | undefined, danger?: ToldDanger): void {
    if (zone !== undefined)
      this.record({ type: 'hazard.warned', words, zone, ...(danger === undefined ? {} : { danger }) });
    this.say('warning', words);
  }

  /** Puts a question; where one stands open, it waits its turn. */
  ask(question: Question, words: string): void {
    const asked = namingScale(words, this.context.units);
    this.record({ type: 'question.asked', number: this.context.questionCount + 1, question, words: asked });
    this.putQuestion();
  }

  /** The question that is put comes to its end; one that waits behind it is put when the turn is over. */
  endQuestion(how: QuestionEnd, number = this.context.questions[0]?.number): void {
    if (number !== undefined) this.record({ type: 'question.ended', number, how });
  }

  /** Puts the first of the questions that stand open, once. */
  putQuestion(): void {
    const [first] = this.context.questions;
    if (first === undefined || first.number === this.context.put?.number || this.context.waits) return;
    this.talk({ put: { number: first.number, mono: this.context.now.mono } });
    this.say('question', first.words);
    this.startTimer('question', QUESTION_MINUTES);
  }

  /** Once the turn is over the step that stands is asked again: something else was talked of since it was asked. */
  repeatStep(): void {
    this.talk({ repeatsStep: true });
  }

  /** What is still being said ends; a warning that the same words brought about does not. */
  hush(evenCaution: boolean): void {
    if (this.context.warnedAt === this.context.now.mono) return;
    this.effects.push({ type: 'hush', params: { evenCaution } });
  }

  raise(event: InternalEvent): void {
    this.raised.push(event);
  }

  /** More of the same breath follows once the step has heeded what was said before it: the turn is not over. */
  get goesOn(): boolean {
    return this.raised.some(({ type }) => type === 'meanings.left');
  }

  /** Asks the diagnosis for the latest evidence, once for each. */
  askDiagnosis(): void {
    const { askedFor, evidenceNumber, assessment } = this.context;
    if (askedFor === evidenceNumber && assessment !== undefined) return;
    this.talk({ askedFor: evidenceNumber });
    this.effects.push({ type: 'ask diagnosis', params: { forNumber: evidenceNumber } });
  }

  /** While the unit runs for its split the time is called every five minutes, once for each run. */
  callSplitTime(): void {
    const { runningSince, timedRun, phase } = this.context;
    if (phase !== 'prove' || runningSince === undefined || runningSince === timedRun) return;
    this.talk({ timedRun: runningSince });
    this.startTimer('split-reminder', SPLIT_CALL_MINUTES);
  }

  startTimer(timer: TimerId, minutes: number): void {
    this.effects.push({ type: 'start timer', params: { timer, minutes } });
  }
}
