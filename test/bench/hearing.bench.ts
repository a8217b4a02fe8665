import { existsSync } from 'node:fs';
import { TerminalError } from '../../client/terminal/terminal-error.ts';
import type { Bench, Figure } from './figures.ts';
import { behind } from './hearing/behind-set.ts';
import { digits } from './hearing/digits-set.ts';
import { soundFolder } from './hearing/folder-set.ts';
import { foreign, waited } from './hearing/foreign-set.ts';
import { levels } from './hearing/level-set.ts';
import { noises } from './hearing/noise-set.ts';
import { orders } from './hearing/orders-set.ts';
import { planFrom } from './hearing/plan.ts';
import { speed } from './hearing/speed-set.ts';
import { continued, fluent, spliced } from './hearing/spliced-set.ts';
import { expectedReadings, spoken } from './hearing/spoken-set.ts';
import { teach } from './hearing/teach-set.ts';
import { urgent } from './hearing/urgent-set.ts';

/**
 * How well the ear hears. Options: `sets=orders,foreign,waited,digits,teach,readings,spoken,spliced,continued,fluent,level,behind,urgent,noise,speed,folder` · `half=tune|report` (the ear
 * was tuned on one half of recordings, speakers and voices) · `every=N` `from=N` · `at=clean,24,12` decibels over the
 * noise · `people=FOLDER` of spoken orders · `digits=FOLDER` of spoken digits · `folder=FOLDER` of any sound with its
 * words · `models=both|wideband|bundled` · `minutes=N` of each noise · `pace=1.5` times
 * as fast as usual (readings, spoken).
 * Takes about a tenth to a third of the time the sound does. Sets whose recordings are not given are left out.
 */
export const bench: Bench = async (options, progress) => {
  const plan = planFrom(options, progress);
  const figures: Figure[] = [];
  const add = async (set: string, folder: string | undefined, measure: (folder: string) => Promise<Figure[]>) => {
    if (!plan.sets.includes(set) || folder === undefined) return;
    if (!existsSync(folder))
      throw new TerminalError('usage', `${folder} is not there: give ${set} another folder or leave it out.`);
    figures.push(...(await measure(folder)));
  };
  const none = '.';
  await add('speed', none, () => speed(plan));
  await add('orders', plan.people, (folder) => orders(plan, folder));
  await add('foreign', plan.people, (folder) => foreign(plan, folder));
  await add('waited', plan.people, (folder) => waited(plan, folder));
  await add('digits', plan.digits, (folder) => digits(plan, folder));
  await add('teach', plan.digits, (folder) => teach(plan, folder));
  await add('fluent', plan.digits, (folder) => fluent(plan, folder));
  await add('folder', plan.folder, (folder) => soundFolder(plan, folder));
  await add('readings', none, () => expectedReadings(plan));
  await add('spoken', none, () => spoken(plan));
  await add('spliced', none, () => spliced(plan));
  await add('continued', none, () => continued(plan));
  await add('level', none, () => levels(plan));
  await add('behind', none, () => behind(plan));
  await add('urgent', none, () => urgent(plan));
  await add('noise', none, () => noises(plan));
  return figures;
};
