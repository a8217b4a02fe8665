import { act, visitSetup } from '../setup.ts';

const held = act((turn) => {
  turn.set({ held: true });
  turn.record({ type: 'visit.held' });
});
const resumed = act((turn) => {
  turn.set({ held: false });
  turn.record({ type: 'visit.resumed' });
  turn.raise({ type: 'step.wanted' });
});

/** Whether the visit goes on or is held: while it is held no step is offered. An open question stands through it. */
export const attentionRegion = visitSetup.createStateConfig({
  initial: 'listening',
  states: {
    listening: { on: { hold: { target: 'held', actions: held } } },
    held: { on: { 'go.on': { target: 'listening', actions: resumed } } },
  },
});
