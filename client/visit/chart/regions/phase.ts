import type { Phase } from '../../../../grammar/visit/events.ts';
import type { InternalEvent } from '../messages.ts';
import { act, visitSetup } from '../setup.ts';

function enter(phase: Phase) {
  return act((turn) => {
    turn.set({ phase, ...(phase === 'testing' ? {} : { focus: undefined }) });
    turn.record({ type: 'phase.entered', phase });
  });
}

type Later = Extract<InternalEvent, { type: 'phase.go' }>['to'];

/**
 * Where each phase leads: on with the work, back to the repair when its part is taken back, and to the close at the
 * customer's or the technician's word. Arrival never comes again, and nothing leads back to testing.
 */
const LEADS_TO: Readonly<Record<Exclude<Phase, 'closed'>, readonly Later[]>> = {
  arrive: ['testing', 'prove', 'close', 'closed'],
  testing: ['repair', 'prove', 'close', 'closed'],
  repair: ['prove', 'close', 'closed'],
  prove: ['repair', 'close', 'closed'],
  close: ['repair', 'prove', 'closed'],
};

function onward(from: keyof typeof LEADS_TO) {
  return LEADS_TO[from].map((to) => ({ guard: { type: 'to phase', params: { phase: to } }, target: to }) as const);
}

/** What the talk is about. */
export const phaseRegion = visitSetup.createStateConfig({
  initial: 'arrive',
  states: {
    arrive: { on: { 'phase.go': onward('arrive') } },
    testing: { entry: enter('testing'), on: { 'phase.go': onward('testing') } },
    repair: { entry: enter('repair'), on: { 'phase.go': onward('repair') } },
    prove: { entry: enter('prove'), on: { 'phase.go': onward('prove') } },
    close: { entry: enter('close'), on: { 'phase.go': onward('close') } },
    closed: { entry: enter('closed'), type: 'final' },
  },
});
