import { describe, expect, it } from 'vitest';
import { type Live, liveValues } from '../../../client/screens/glance/live-values.ts';
import { foldVisit } from '../../../grammar/visit/fold-visit.ts';
import { ARRIVAL, TO_PROVEN_DEAD, TypedVisit } from '../visit/typed-visit.ts';

async function after(...lines: readonly string[]) {
  const visit = await TypedVisit.open();
  await visit.type(...lines);
  const { live, last } = liveValues(foldVisit(visit.events()), visit.run.context);
  return { live: shown(live), last: last?.reading.value };
}

function shown(live: Live): string {
  switch (live.kind) {
    case 'questioned':
      return `${live.reading.at.join(' ')} ${live.reading.value}?`;
    case 'taken':
      return `${live.line.reading.at.join(' ')} ${live.line.reading.value}`;
    case 'unplaced':
      return `${live.value}?`;
    case 'awaited':
      return `${live.at.join(' ')} – ${live.unit}`;
    case 'proof':
      return live.numbers.map(({ value, isNow }) => `${isNow ? '>' : ''}${value ?? '–'}`).join(' ');
    case 'nothing':
      return '';
  }
}

const CALLED = [...ARRIVAL, 'compressor runs then trips', 'live'] as const;
const PULLED = [
  'leg one to ground one eighteen',
  'thermostat is off',
  'outdoor disconnect is pulled and locked',
  'live',
];

/** Steps and their places as the paper of the visit orders them (common practice); values of our own invention. */
describe('what stands large', () => {
  it.each([
    ['what the step asks for, before it is read', [...CALLED], 'L1 ground – V', 80],
    [
      'never what the step before it read',
      ['customer agrees', 'pass', 'three', 'ninety four'],
      'return-air – [degF]',
      94,
    ],
    ['nothing old under a look', ['customer agrees', 'pass', 'three', 'ninety four', 'eighty'], '', 80],
    ['a reading that does not fit, while it is asked', [...CALLED, 'fifty'], 'L1 ground 50?', undefined],
    [
      'what is asked, again, behind a reading of another place',
      [...CALLED, 'suction pressure one eighteen psi'],
      'fan-motor – A',
      118,
    ],
    [
      'the place that was named, while its number is waited for',
      [...CALLED, 'suction pressure'],
      'suction-port – [psi]',
      80,
    ],
    ['the number whose place is asked for', [...ARRIVAL, 'eighty two'], '82?', undefined],
    ['the numbers of a proof, none of them read', [...CALLED, ...PULLED], '>– – – – – – – –', undefined],
    [
      'the numbers of a proof, step by step',
      [...CALLED, ...PULLED, 'two forty', 'zero', 'point two'],
      '240 0 0.2 >– – – – –',
      undefined,
    ],
    ['the second section, once the first is read', [...CALLED, ...TO_PROVEN_DEAD.slice(0, -1)], 'cap-C cap-FAN – V', 0],
  ])('is %s', async (_, lines, live, last) => {
    const now = await after(...lines);
    expect(now.live).toBe(live);
    if (last !== undefined) expect(now.last).toBe(last);
  });
});
