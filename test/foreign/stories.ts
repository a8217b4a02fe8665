import { CAUSES_OUTSIDE } from '../../client/practice/plant/causes-outside.ts';
import { CAUSES_INSIDE, type ForeignCase } from '../../client/practice/plant/hidden-case.ts';
import type { Build } from '../../client/practice/plant/plant.ts';
import { STORIES_OF_COOLING } from './stories-of-cooling.ts';
import { STORIES_OF_CURRENT } from './stories-of-current.ts';
import type { Story } from './story.ts';

export const STORIES: readonly Story[] = [...STORIES_OF_CURRENT, ...STORIES_OF_COOLING];

/** The unit that most stories happen at. */
const USUAL: Build = {
  tons: 3,
  refrigerant: 'R-410A',
  valve: true,
  heatPump: false,
  fused: true,
  supply: 240,
  legVolts: 120,
  tap: 240,
  handlerAt120: false,
  poles: 2,
  switchedPole: 1,
  commonOn: 1,
  heater: false,
  heaterAcrossPole: false,
  float: 'breaks-Y',
  pressureSwitches: true,
  hardStart: false,
  twoStage: false,
  commonGrounded: true,
  thermostatOnBattery: false,
  thermostatHasC: true,
  electronicBlower: false,
  coilOhms: 12,
  coilReactance: 70,
  plate: { herm: 40, fan: 5, blower: 7.5, rla: 15.1, lra: 78, fla: 1.1, subcooling: 10 },
};

export const buildOf = (story: Story): Build => ({ ...USUAL, ...story.build });

/** A story as a case: its own unit, what is hidden in it, and always the same draw. */
export function caseOf(story: Story): ForeignCase {
  const known = [...CAUSES_INSIDE, ...CAUSES_OUTSIDE];
  return {
    build: buildOf(story),
    seed: 4711,
    hidden: story.hidden.map(([id, severity]) => {
      const cause = known.find((c) => c.id === id);
      if (!cause) throw new Error(`no cause ${id}`);
      return { cause, severity };
    }),
  };
}
