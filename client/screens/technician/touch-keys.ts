import type { Meaning } from '../../../grammar/phrases/meaning.ts';
import type { CommandId } from '../../../grammar/vocabulary/commands.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import { OBSERVATIONS, type ObservationId } from '../../../grammar/vocabulary/observations.ts';
import type { PointId } from '../../../grammar/vocabulary/points.ts';
import type { QuantityId } from '../../../grammar/vocabulary/quantities.ts';
import type { ActionDone, Question, Step, VisitContext } from '../../visit/context.ts';
import { showUnit } from '../show/show-reading.ts';

/** What a number pad is opened for. */
export type PadRequest =
  | {
      readonly kind: 'reading';
      readonly quantity: QuantityId;
      readonly at: readonly PointId[];
      readonly bench: boolean;
    }
  | { readonly kind: 'set-right'; readonly reading: Reading }
  | { readonly kind: 'proof' }
  | { readonly kind: 'discharge' };

/** What a key does when it is pressed. */
export type KeyDoes =
  | { readonly do: 'command'; readonly command: CommandId }
  | { readonly do: 'enter'; readonly meaning: Meaning; readonly words: string }
  | { readonly do: 'pad'; readonly pad: PadRequest }
  | { readonly do: 'open'; readonly sheet: 'part' };

export interface TouchKey {
  readonly label: string;
  readonly tone: 'first' | 'warm' | 'plain';
  readonly width: 1 | 2 | 3;
  readonly does: KeyDoes;
}

function command(
  label: string,
  id: CommandId,
  tone: TouchKey['tone'] = 'plain',
  width: TouchKey['width'] = 1,
): TouchKey {
  return { label, tone, width, does: { do: 'command', command: id } };
}

/** A report by touch: the same meaning that the sentence would have. */
function report(label: string, meaning: Meaning, width: TouchKey['width'] = 1): TouchKey {
  return { label, tone: width === 1 ? 'plain' : 'first', width, does: { do: 'enter', meaning, words: label } };
}

export function observed(observation: ObservationId, width: TouchKey['width'] = 1): TouchKey {
  const name = OBSERVATIONS.find((one) => one.id === observation)?.name ?? observation;
  return report(name, { kind: 'report', report: { type: 'observation', observation } }, width);
}

function pad(label: string, request: PadRequest, width: TouchKey['width'] = 2): TouchKey {
  return { label, tone: 'first', width, does: { do: 'pad', pad: request } };
}

/** The few keys of the moment: an open caution or question first, then what answers the step. */
export function keysFor(context: VisitContext): readonly TouchKey[] {
  if (context.phase === 'closed') return [];
  if (context.held) return [command('Go on with the visit', 'go-on', 'first', 2)];
  if (context.caution !== undefined) return [command('Live – I have it', 'live', 'warm', 2)];
  if (context.question !== undefined) return keysForQuestion(context.question);
  if (context.step !== undefined) return keysForStep(context.step);
  return [command('What next', 'what-next', 'first', 2)];
}

function keysForQuestion(question: Question): readonly TouchKey[] {
  if (question.kind === 'confirm-meaning') return [command('Yes', 'yes', 'first'), command('No', 'no')];
  const { reading } = question;
  if (question.kind === 'confirm-reading') {
    return [
      command('Yes, it shows that', 'yes', 'first'),
      command('No', 'no'),
      pad('Other value', { kind: 'set-right', reading }, 1),
    ];
  }
  const { quantity, at, bench } = reading;
  return [
    ...question.options.map((value) =>
      report(`${value} ${showUnit(reading.unit)}`, { kind: 'value', value, unit: reading.unit }),
    ),
    pad('Neither', { kind: 'reading', quantity, at, bench: bench === true }, 1),
  ];
}

function keysForStep(step: Step): readonly TouchKey[] {
  const pass = command('Pass', 'pass');
  switch (step.ask.kind) {
    case 'reading':
      return [
        pad('Enter it', { kind: 'reading', quantity: step.ask.quantity, at: step.ask.at, bench: step.needs.bench }),
        pass,
      ];
    case 'look':
      return [...step.ask.answers.map((answer) => observed(answer)), pass];
    case 'action':
      return [...keysForAction(step.ask.done), ...(step.ask.done === 'visit-finished' ? [] : [pass])];
  }
}

function keysForAction(done: ActionDone): readonly TouchKey[] {
  switch (done) {
    case 'call-on':
      return [observed('thermostat-calling', 2)];
    case 'call-off':
      return [observed('thermostat-not-calling', 2)];
    case 'power-off':
      return [
        report(
          'Outdoor disconnect is pulled and locked',
          {
            kind: 'report',
            report: { type: 'energy', device: 'disconnect', place: 'outdoor', state: 'locked' },
          },
          2,
        ),
      ];
    case 'absence-proved':
      return [pad('Enter the five numbers', { kind: 'proof' })];
    case 'capacitors-discharged':
      return [
        report('Both sections discharged', {
          kind: 'several',
          parts: (['capacitor-herm', 'capacitor-fan'] as const).map((zone) => ({
            kind: 'report',
            report: { type: 'discharged', zone },
          })),
        }),
        pad('Enter volts d.c.', { kind: 'discharge' }, 1),
      ];
    case 'part-fitted':
      return [{ label: 'Part is fitted', tone: 'first', width: 2, does: { do: 'open', sheet: 'part' } }];
    case 'covers-on':
      return [observed('covers-on', 2)];
    case 'power-on':
      return [
        report(
          'Outdoor disconnect is back in',
          {
            kind: 'report',
            report: { type: 'energy', device: 'disconnect', place: 'outdoor', state: 'closed' },
          },
          2,
        ),
      ];
    case 'visit-finished':
      return [command('Finish the visit', 'finish', 'first', 2)];
  }
}
