import { PHASES, type Phase } from '../../../grammar/visit/events.ts';
import type { MachineEvent } from '../messages.ts';
import { act, visitSetup } from '../setup.ts';

function enter(phase: Phase) {
  return act((turn) => {
    turn.set({ phase });
    turn.record({ type: 'phase.entered', phase });
  });
}

function goingTo(phase: Phase) {
  return {
    guard: ({ event }: { event: MachineEvent }) => event.type === 'phase.go' && event.to === phase,
    target: phase,
  };
}

const anywhere = PHASES.map(goingTo);

/** What the talk is about. Any phase may follow any other while the visit is open: a second fault sends it back. */
export const phaseRegion = visitSetup.createStateConfig({
  initial: 'arrive',
  states: {
    arrive: { on: { 'phase.go': anywhere } },
    testing: { entry: enter('testing'), on: { 'phase.go': anywhere } },
    repair: { entry: enter('repair'), on: { 'phase.go': anywhere } },
    prove: { entry: enter('prove'), on: { 'phase.go': anywhere } },
    close: { entry: enter('close'), on: { 'phase.go': anywhere } },
    closed: { entry: enter('closed'), type: 'final' },
  },
});
