import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import { AIR_FAULTS } from './air-faults.ts';
import { CONTROL_FAULTS } from './control-faults.ts';
import { type FaultModel, USUAL_LOSS } from './fault-model.ts';
import { LINE_FAULTS } from './line-faults.ts';
import { LOAD_FAULTS } from './load-faults.ts';

/** Every fault the vocabulary names: its weight, what a wrong repair of it costs, what it does to a healthy unit. */
export const FAULT_MODELS: Readonly<Record<FaultId, FaultModel>> = {
  ...LINE_FAULTS,
  ...LOAD_FAULTS,
  ...CONTROL_FAULTS,
  ...AIR_FAULTS,
  'nothing-wrong': {
    weight: 0.5,
    source: 'our weight: a complaint is seldom empty',
    graded: false,
    lostMinutes: USUAL_LOSS,
    apply: () => undefined,
  },
  'something-else': {
    weight: 1.5,
    source: 'our weight: room for what the list does not hold',
    graded: false,
    lostMinutes: USUAL_LOSS,
    apply: () => undefined,
  },
};
