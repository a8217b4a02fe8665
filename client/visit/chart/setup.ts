import { setup } from 'xstate';
import type { VisitContext } from './context.ts';
import { GUARDS } from './guards.ts';
import type { MachineEvent } from './messages.ts';
import { type Effect, Turn } from './turn.ts';

type Params<T extends Effect['type']> = Extract<Effect, { type: T }>['params'];

/**
 * The types, guards and edge actions that all states share. Edge actions do nothing here: the machine is moved by the
 * pure `transition()`, and its runner carries them out after the record holds them.
 */
export const visitSetup = setup({
  types: {
    context: {} as VisitContext,
    events: {} as MachineEvent,
    input: {} as VisitContext,
  },
  guards: GUARDS,
  actions: {
    record: (_, _params: Params<'record'>) => {},
    say: (_, _params: Params<'say'>) => {},
    hush: (_, _params: Params<'hush'>) => {},
    'ask diagnosis': (_, _params: Params<'ask diagnosis'>) => {},
    'start timer': (_, _params: Params<'start timer'>) => {},
  },
});

/** An action that runs a turn handler and applies its turn whole: context, effects in order, messages to the step. */
export function act(handle: (turn: Turn, event: MachineEvent) => void) {
  return visitSetup.enqueueActions(({ context, event, enqueue }) => {
    const turn = new Turn(context);
    handle(turn, event);
    enqueue.assign(turn.context);
    for (const effect of turn.effects) enqueue(effect);
    for (const message of turn.raised) enqueue.raise(message);
  });
}
