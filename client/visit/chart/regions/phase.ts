import { FOCUSES, type Focus, PHASES, type Phase } from '../../../../grammar/visit/events.ts';
import { act, visitSetup } from '../setup.ts';

function enter(phase: Phase) {
  return act((turn) => {
    turn.set({ phase, ...(phase === 'testing' ? {} : { focus: undefined }) });
    turn.record({ type: 'phase.entered', phase });
  });
}

function goingTo(phase: Phase) {
  return { guard: { type: 'to phase', params: { phase } }, target: phase } as const;
}

const anywhere = PHASES.map(goingTo);

function focusing(focus: Focus) {
  return { guard: { type: 'to focus', params: { focus } }, target: `.${focus}` } as const;
}

function enterFocus(focus: Focus) {
  return act((turn) => {
    if (turn.context.focus === focus) return;
    turn.set({ focus });
    turn.record({ type: 'focus.moved', focus });
  });
}

/**
 * What the talk is about. Any phase may follow any other while the visit is open: a second fault sends it back. While
 * testing, the focus says which part of the unit is searched; the planner's next test moves it, in any order.
 */
export const phaseRegion = visitSetup.createStateConfig({
  initial: 'arrive',
  states: {
    arrive: { on: { 'phase.go': anywhere } },
    testing: {
      entry: enter('testing'),
      on: { 'phase.go': anywhere, 'focus.on': FOCUSES.map(focusing) },
      initial: 'open',
      states: {
        open: {},
        'air-side': { entry: enterFocus('air-side') },
        'control-circuit': { entry: enterFocus('control-circuit') },
        'line-circuit': { entry: enterFocus('line-circuit') },
        loads: { entry: enterFocus('loads') },
        refrigerant: { entry: enterFocus('refrigerant') },
      },
    },
    repair: { entry: enter('repair'), on: { 'phase.go': anywhere } },
    prove: { entry: enter('prove'), on: { 'phase.go': anywhere } },
    close: { entry: enter('close'), on: { 'phase.go': anywhere } },
    closed: { entry: enter('closed'), type: 'final' },
  },
});
