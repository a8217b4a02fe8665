import { describe, expect, it } from 'vitest';
import { isRefrigerantOpened } from '../../../grammar/visit/refrigerant-work.ts';
import { TypedVisit } from './typed-visit.ts';

const warned = (visit: TypedVisit) => visit.mouth.said.filter(({ kind }) => kind === 'warning').map(({ text }) => text);
async function typed(...lines: readonly string[]): Promise<TypedVisit> {
  const visit = await TypedVisit.open();
  await visit.type(...lines);
  return visit;
}

/** What opens a circuit is common practice; that it is recovered first, 40 CFR 82 subpart F. None is a phrase of the grammar's. */
const OPENED = [
  'replaced the t x v',
  'swapped out the metering device',
  'changed the piston',
  'cut out the old drier',
  'unsweated the filter dryer',
  'pulled the liquid line drier',
  'broke the flare nut loose',
  'cut the suction line',
  'took out the accumulator',
  'put in a new reversing valve',
  'pulled the schrader core',
  'removed the valve core',
  'the new evap coil is in now',
  'cracked open the service valve',
  'brazed in a new cap tube',
  'opened up the lines',
  'the system is wide open',
] as const;

/** The same words, and nothing was opened. */
const NOT_OPENED = [
  "haven't replaced the t x v",
  'the t x v needs to be replaced',
  'I am going to cut out the drier',
  'should I pull the schrader core',
  'somebody replaced the drier last year',
  'did not open the lines',
  'pulled the compressor wires',
  'took off the compressor terminal cover',
  'pulled the condenser fan',
  'put my probe on the suction line',
  'got the liquid line temperature',
  'the suction line is cold',
  'liquid line is hot',
  'I never opened the system',
  'cleaned the condenser coil',
] as const;

describe('the refrigerant circuit, in words that are no phrase', () => {
  it.each(OPENED)('counts as opened, aloud, until it is taken back: "%s"', async (line) => {
    const visit = await typed(line);
    // What names a part is asked first.
    if (!isRefrigerantOpened(visit.run.context)) await visit.type('yes');
    expect(isRefrigerantOpened(visit.run.context)).toBe(true);
    await visit.type('take that back');
    expect(isRefrigerantOpened(visit.run.context)).toBe(false);
  });

  it.each(NOT_OPENED)('is not opened by "%s"', async (line) => {
    expect(isRefrigerantOpened((await typed(line)).run.context)).toBe(false);
  });

  it.each(['power is back on', 'compressor kicked on', 'breaker is back on', 'the unit is running again'])(
    'and power before its order is done is too early: "%s"',
    async (line) => {
      const visit = await typed('cut out the old drier', line);
      expect(warned(visit).filter((words) => /too early/.test(words))).toHaveLength(1);
      expect(visit.run.context.earlyStarts).toHaveLength(1);
    },
  );

  it.each([
    'I let the rest of the charge go',
    'vented the refrigerant',
    'dumped the charge',
    'blew off all the gas',
    'bled off the last of the freon',
  ])('let out is warned of (40 CFR 82.154): "%s"', async (line) => {
    expect(warned(await typed(line))).toContainEqual(expect.stringMatching(/never let out/));
  });

  it.each([
    'put shop air in it for the leak test',
    'pressurised it with oxygen',
    'testing with compressed air',
    'hooked up the oxygen bottle',
  ])('filled with what explodes is warned of (common practice): "%s"', async (line) => {
    expect(warned(await typed(line))).toContainEqual(expect.stringMatching(/Never oxygen or air/));
  });

  it.each(['recovered the refrigerant', 'did not let the charge go', 'no oxygen in here'])(
    'warns of nothing by "%s"',
    async (line) => {
      expect(warned(await typed(line)).filter((words) => /never/i.test(words))).toEqual([]);
    },
  );
});

/** NEC 440.12 and 430.109: what opens under load is rated for it; a pull-out often is not (common practice). */
describe('a load that nothing drops', () => {
  it.each([
    ['contacts are welded'],
    ['contactor will not drop out'],
    ['the contactor is stuck in'],
    ['compressor runs without a call'],
    ["compressor won't shut off"],
    ['thermostat is off', 'compressor is running'],
    ['thermostat is off', 'contactor is pulled in'],
  ])('is to be opened at the breaker, said when it is told: %s %s', async (...lines) => {
    expect(warned(await typed(...lines))).toContainEqual(expect.stringMatching(/at the breaker, not under load/));
  });

  it.each([['thermostat is calling', 'compressor is running'], ['contactor is pulled in'], ['thermostat is off']])(
    'is none where a call is on or nothing holds: %s %s',
    async (...lines) => {
      expect(warned(await typed(...lines))).not.toContainEqual(expect.stringMatching(/at the breaker/));
    },
  );
});
