import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import type { Moment } from '../measuring/test-model.ts';
import { TEST_MODELS } from '../measuring/test-models.ts';
import { predict } from './predict.ts';

/** What the draws of one fault read in one test: numbers (`answers` 0), or chances of a look's answers. */
export interface Drawn {
  readonly answers: number;
  readonly mean: Float32Array;
  readonly spread: Float32Array;
  /** The same before something tripped; NaN where nothing does. Empty for what does not change by it. */
  readonly meanBefore: Float32Array;
  readonly spreadBefore: Float32Array;
  readonly chance: Float32Array;
}

/** Room for so many draws; undefined for readings that only set what is expected of others. */
export function roomFor(test: TestId, draws: number): Drawn | undefined {
  const { measure } = TEST_MODELS[test];
  if (measure.kind === 'condition') return undefined;
  const answers = measure.kind === 'look' ? measure.answers.length : 0;
  const numbers = answers > 0 ? 0 : draws;
  const changes = measure.kind === 'volts' || measure.kind === 'volts-float' || measure.kind === 'amps';
  return {
    answers,
    mean: new Float32Array(numbers),
    spread: new Float32Array(numbers),
    meanBefore: new Float32Array(changes ? numbers : 0).fill(Number.NaN),
    spreadBefore: new Float32Array(changes ? numbers : 0).fill(Number.NaN),
    chance: new Float32Array(answers * draws),
  };
}

/** Writes down what the k-th draw reads. */
export function writeDraw(room: Drawn, test: TestId, moment: Moment, k: number): void {
  const { measure } = TEST_MODELS[test];
  if (measure.kind === 'look') {
    room.chance.set(measure.chances(moment), k * room.answers);
    return;
  }
  const { mean, spread, before } = predict(measure, moment);
  room.mean[k] = mean;
  room.spread[k] = spread;
  if (!before) return;
  room.meanBefore[k] = before.mean;
  room.spreadBefore[k] = before.spread;
}
