import type { Trouble } from './trouble.ts';
import { CONTROL } from './troubles-of-control.ts';
import { COOLING } from './troubles-of-cooling.ts';
import { MOTORS } from './troubles-of-motors.ts';
import { POWER } from './troubles-of-power.ts';
import { OUTSIDE } from './troubles-outside.ts';

/** All that can be wrong with a yard. */
export const TROUBLES: readonly Trouble[] = [...POWER, ...MOTORS, ...CONTROL, ...COOLING, ...OUTSIDE];
