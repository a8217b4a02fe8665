import { act, visitSetup } from '../setup.ts';

const changed = act((turn, event) => {
  if (event.type !== 'talk.to') return;
  turn.set({ pace: event.pace });
  turn.record({ type: 'talk.changed', pace: event.pace });
});

function to(pace: 'brief' | 'full') {
  return { guard: { type: 'to pace', params: { pace } }, actions: changed, target: pace } as const;
}

/** Short or full talk, switched by voice or touch. */
export const paceRegion = visitSetup.createStateConfig({
  initial: 'brief',
  states: {
    brief: { on: { 'talk.to': to('full') } },
    full: { on: { 'talk.to': to('brief') } },
  },
});
