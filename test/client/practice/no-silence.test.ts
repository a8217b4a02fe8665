import { describe, expect, it } from 'vitest';
import { askedNow } from '../../../client/practice/asked-now.ts';
import { lookBack } from '../../../client/practice/debrief.ts';
import { Dice } from '../../../client/practice/plant/dice.ts';
import { printDebrief } from '../../../client/terminal/print-debrief.ts';
import { DEBRIEF } from '../../../client/words/practice/debrief-words.ts';
import { SEED, tries } from '../../how-much.ts';
import { ARRIVED, PROVEN_DEAD, Practised } from './practise-lines.ts';

// motors-412: a compressor that is seized. motors-411: an outdoor fan with seized bearings.
const COMPRESSOR = 'motors-412';
const FAN = 'motors-411';

async function arrived(name: string, ...lines: readonly string[]) {
  const p = await Practised.begin(name);
  await p.type(...ARRIVED, ...lines);
  return p;
}

/** What trainees say in no order: answers without a question, places, switches, looks, orders, words of no sense. */
const SAID = [
  ...['1', 'two', '12 volts', 'yes', 'no', 'live', 'got it', 'done', 'pass', 'go on', 'here', 'the same', 'go back'],
  ...['take that back', 'say again', 'what next', 'hint', 'none yet', 'read', 'prove the meter', 'meter on volts'],
  ...['leg one to ground', 'leg two to ground', 'T1 to T2', 'herm section', 'suction pressure', 'compressor amps'],
  ...['probes on T1 to ground', 'probes on leg one to leg two', 'power is back on', 'disconnect is pulled'],
  ...['thermostat is calling', 'thermostat is not calling', 'outdoor disconnect is pulled and locked', 'one oh'],
  ...[
    'look at the fan',
    'look at the filter',
    'look at the compressor',
    'wait 5 minutes',
    'banana',
    'finish the visit',
  ],
  ...[
    'suspect one',
    'it is dead',
    'model number',
    '4 pounds',
    'covers are on',
    'leg one to ground 118',
    'wait a minute',
  ],
] as const;

const PLACE = 'leg one to ground';
/** What somebody says to what is asked, who wants to read a place. */
const TO_READ = { held: 'go on', suspect: 'none yet', caution: 'live', step: PLACE, time: PLACE, lead: PLACE } as const;

/** What was said and told until the meter showed something, by nothing but answers to what is asked; empty if it did. */
async function keptFromReading(p: Practised): Promise<readonly string[]> {
  const talk: string[] = [];
  for (let line = 0; line < 12; line += 1) {
    const { kind } = askedNow(p.exercise);
    // To a question: a no, that the visit goes on, or the place itself.
    const says = kind === 'question' ? (['no', 'go on', PLACE] as const)[line % 3]! : TO_READ[kind];
    const told = await p.type(says);
    if (/^meter: /m.test(told)) return [];
    talk.push(`${kind}: ${says} > ${told}`);
  }
  return talk;
}

describe('whatever is said', () => {
  it('is answered, wherever the exercise stands, and never keeps the meter from being read after it', async () => {
    for (let seed = SEED; seed < SEED + tries(4, 60); seed += 1) {
      const dice = new Dice(seed);
      const pick = <T>(of: readonly T[]): T => of[Math.floor(dice.roll() * of.length)]!;
      const p = await Practised.begin(pick([COMPRESSOR, FAN, 'cooling-411', 'power-421', 'control-431']));
      const said: string[] = [...pick([[], ARRIVED, [...ARRIVED, ...PROVEN_DEAD]])];
      await p.type(...said);
      for (let line = 0; line < 40 && p.exercise.ended === undefined; line += 1) {
        said.push(pick(SAID));
        if (dice.roll() < 0.2) p.exercise.probing.put(pick(['L1', 'L2', 'T1', 'ground', 'cap-HERM']));
        expect(await p.type(said.at(-1)!), `seed ${seed}: ${said.slice(-6).join(' | ')}`).not.toBe('');
      }
      if (p.exercise.ended !== undefined) continue;
      expect(await keptFromReading(p), `seed ${seed}: ${said.join(' | ')}`).toEqual([]);
    }
  });
});

describe('a number without a place', () => {
  it.each(['1', '> 1', 'one eighteen', '12 volts'])(
    '"%s" leaves no question open, and the next place is read',
    async (said) => {
      const p = await arrived(COMPRESSOR);
      expect(await p.type(said)).toMatch(/^exercise: The meter says the number/);
      expect(p.exercise.context.questions).toEqual([]);
      expect(await p.type('leg one to ground')).toMatch(/Whom do you suspect/);
      await p.type('none yet');
      expect(await p.type('live')).toMatch(/^meter: 1\d\d V/);
    },
  );
});

describe('a question of the visit that stands open', () => {
  it('is put again to a place, which is read once it is answered', async () => {
    const p = await arrived(FAN, 'power is back on');
    const [open] = p.exercise.context.questions;
    expect(open?.question.kind).toBe('which-switch');
    await p.type('leg one to ground');
    expect(await p.type('none yet')).toContain(open?.words);
    expect(await p.type('hint')).not.toMatch(/Left out/);
    await p.type('take that back');
    expect(await p.type('live')).toMatch(/^meter: 1\d\d V/);
  });

  it('is not left out for a hint where the visit leads, and the hint says what is asked', async () => {
    const p = await Practised.begin(FAN);
    await p.type('disconnect is pulled');
    const [open] = p.exercise.context.questions;
    expect(await p.type('hint')).toBe(`exercise: Nothing to hint at: first answer what is asked. ${open?.words}`);
    expect(p.exercise.context.questions).toHaveLength(1);
  });
});

describe('an answer to nothing', () => {
  it('"live" to the question for a suspect is told what is asked, and the test goes on waiting', async () => {
    const p = await arrived(FAN, 'leg one to ground');
    expect(await p.type('live')).toMatch(/Whom do you suspect/);
    expect(p.exercise.asked).toBeDefined();
    await p.type('none yet');
    expect(await p.type('live')).toMatch(/^meter: 1\d\d V/);
  });
});

describe('probes that were put by touch', () => {
  const touched = async () => {
    const p = await arrived(FAN);
    p.exercise.probing.put('L1');
    p.exercise.probing.put('T1');
    return p;
  };

  it('stay where they are, which is told at once; nothing is read and nobody is accused', async () => {
    const p = await touched();
    expect(await p.type('herm section')).toMatch(/^exercise: Nothing read: the probes stay on .*"probes on (.+)"/);
    expect(p.exercise.probing.probes).toEqual(['L1', 'T1']);
    expect(lookBack(p.exercise).counts).toMatchObject({ probesElsewhere: 0, tests: 0 });
  });

  it.each(['herm section', 'leg two to ground', 'T1 to T2', 'compressor common to run'])(
    'go to "%s" by the words that are offered',
    async (place) => {
      const p = await touched();
      const offered = /"(probes on .+?)"/.exec(await p.type(place))?.[1] ?? '';
      expect(await p.type(offered)).toMatch(/^exercise: Probes on/);
      expect(await p.type(place)).not.toMatch(/Nothing read/);
      expect(lookBack(p.exercise).counts.probesElsewhere).toBe(0);
    },
  );

  it('follow what is said once they were read, and never hold up another instrument', async () => {
    const p = await touched();
    expect(await p.type('return air')).toMatch(/^meter: [0-9.]+ °F/);
    await p.type('read', 'none yet', 'live');
    expect(await p.type('leg two to ground')).not.toMatch(/Nothing read/);
  });

  it('stand under a heading of their own in the debrief, and under no near miss', async () => {
    const p = await touched();
    await p.type('leg two to ground', 'leg two to ground', 'none yet');
    // Not before it is read.
    expect(lookBack(p.exercise).counts.probesElsewhere).toBe(0);
    await p.type('live');
    const back = lookBack(p.exercise);
    expect(back.counts).toMatchObject({ probesElsewhere: 1, nearMisses: 0 });
    const printed = printDebrief({ hidden: [], trainee: back, planner: back });
    const at = (line: string) => printed.findIndex((one) => one.startsWith(line));
    expect(printed[at(DEBRIEF.stops) + 1]).toContain(DEBRIEF.noStops);
    expect(printed[at(DEBRIEF.elsewhereTitle) + 1]).toMatch(/Told as/);
  });
});

describe('who is left', () => {
  it('is never called certain by rounding', () => {
    expect(DEBRIEF.remains([{ fault: 'low-charge', probability: 0.997 }])).toMatch(/99 %$/);
  });
});
