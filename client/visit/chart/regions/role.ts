import { act, visitSetup } from '../setup.ts';

const supervised = act((turn, event) => {
  if (event.type !== 'supervisor.acknowledged') return;
  turn.set({ now: event.time, supervisor: event.supervisor });
  turn.record({ type: 'supervisor.acknowledged', supervisor: event.supervisor });
  turn.raise({ type: 'step.review' });
});

const alone = act((turn) => turn.set({ supervisor: undefined }));

/**
 * Who holds the probes. A trainee's live steps want a supervisor's acknowledgement; it lapses whenever the visit is
 * held or power is put back, so that nobody is counted on who has left.
 */
export const roleRegion = visitSetup.createStateConfig({
  initial: 'technician',
  states: {
    technician: { on: { 'trainee.opened': 'trainee' } },
    trainee: {
      initial: 'alone',
      states: {
        alone: { entry: alone, on: { 'supervisor.acknowledged': { target: 'supervised', actions: supervised } } },
        supervised: { on: { hold: 'alone', 'energy.live': { guard: 'power came back', target: 'alone' } } },
      },
    },
  },
});
