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

/** Who has the floor: the technician, a question that stands open, or nobody while the visit is held. */
export const attentionRegion = visitSetup.createStateConfig({
  initial: 'listening',
  states: {
    listening: { on: { 'question.asked': 'asking', hold: { target: 'held', actions: held } } },
    asking: { on: { 'question.closed': 'listening', hold: { target: 'held', actions: held } } },
    held: {
      on: {
        'go.on': [
          { guard: 'question stands open', target: 'asking', actions: resumed },
          { target: 'listening', actions: resumed },
        ],
      },
    },
  },
});
