import { describe, expect, it } from 'vitest';
import { debriefOf, lookBack } from '../../../client/practice/debrief.ts';
import { runPlanner } from '../../../client/practice/planner-run.ts';
import { DEBRIEF } from '../../../client/words/practice/debrief-words.ts';
import { understand } from '../../../grammar/phrases/understand.ts';
import { diagnosisOf } from '../../made-diagnosis.ts';
import { ARRIVED, PROVEN_DEAD, Practised } from './practise-lines.ts';

const FAN = 'motors-411';

async function proven(name = FAN) {
  const p = await Practised.begin(name);
  await p.type(...ARRIVED, ...PROVEN_DEAD);
  expect(p.exercise.context.energy['outdoor-load']).toBe('proven-dead');
  return p;
}
const counts = (p: Practised) => lookBack(p.exercise).counts;

// Ten numbers in a row are ten faults of one unit; another ten, another unit.
describe('a circuit that was opened and is started too early (40 CFR 82.156, ASHRAE 15; rule l of the conduct)', () => {
  it.each(['motors-411', 'motors-414', 'power-431'])(
    '%s: power is held, and harm when it is given again',
    async (name) => {
      const p = await proven(name);
      await p.type('fitted a compressor');
      const left = p.exercise.unit.isClosed('outdoor');
      expect(await p.type('outdoor disconnect is back in')).toMatch(
        /stop: Held\. Power too early: .*recovery by weight/,
      );
      // Not done: the switch stands as it stood.
      expect(p.exercise.unit.isClosed('outdoor')).toBe(left);
      expect(counts(p)).toMatchObject({ harmful: 0, nearMisses: 1 });
      await p.type('go on', 'outdoor disconnect is back in');
      expect(p.exercise.ended).toBe('stopped');
      expect(counts(p)).toMatchObject({ harmful: 1, nearMisses: 1 });
    },
  );

  it.each(['filter drier', 'valve core'])('a %s opens it as well, and a call starts it', async (part) => {
    const p = await proven();
    await p.type(`fitted a ${part}`);
    expect(await p.type('thermostat is calling')).toMatch(/stop: Held\. Call too early/);
    expect(p.exercise.unit.call).toBe('none');
    expect(counts(p).nearMisses).toBe(1);
  });

  it('is started by nobody who only swapped a contactor', async () => {
    const p = await proven();
    await p.type('fitted a contactor', 'outdoor disconnect is back in');
    expect(counts(p)).toMatchObject({ harmful: 0, nearMisses: 0 });
  });
});

describe('what the visit warns of and is done all the same', () => {
  it.each(['terminal cover is off', 'I am lifting the cover', 'I pulled the brown wire'])(
    '"%s" in a live unit: over',
    async (line) => {
      const p = await Practised.begin(FAN);
      await p.type(...ARRIVED, line);
      expect(p.exercise.ended).toBe('stopped');
      expect(counts(p)).toMatchObject({ harmful: 1, skippedProofs: 1, notSwitchedOff: 1 });
    },
  );

  it('a pull-out opened under load is a near miss; quoted is what was said before it, and nothing that was not', async () => {
    const q = await Practised.begin('cooling-411');
    await q.type(...ARRIVED);
    expect(await q.type('prove the meter')).toMatch(/Call off first/);
    expect(await q.type('outdoor disconnect is pulled and locked')).toMatch(
      /stop: Held\. Done against what was said: "Call off first.*" Pulled with the load on/,
    );
    const p = await Practised.begin('cooling-411');
    await p.type(...ARRIVED);
    const told = await p.type('outdoor disconnect is pulled and locked');
    expect(told).toMatch(/stop: Held\. Pulled with the load on/);
    expect(told).not.toMatch(/Done against/);
    expect(counts(p)).toMatchObject({ harmful: 0, nearMisses: 1, skippedProofs: 0 });
  });
});

describe('measurements that were not asked for', () => {
  it.each(['motors-411', 'power-421'])(
    '%s: each is asked its suspect, counted, and told what it could tell',
    async (name) => {
      const p = await proven(name);
      const before = counts(p);
      for (const line of ['T1 to L2', 'T1 to L2', 'T1 to L2', 'fan section to herm section volts']) {
        expect(await p.type(line)).toMatch(/Whom do you suspect/);
        expect(await p.type('none yet')).toMatch(/it could tell nothing/);
      }
      expect(counts(p).tests).toBe(before.tests + 4);
      expect(counts(p).redundant).toBe(before.redundant + 4);
      expect(counts(p).minutes).toBeGreaterThan(before.minutes + 1);
    },
  );

  it('the pairs that a proof asks are none', async () => {
    const p = await proven();
    expect(counts(p)).toMatchObject({ tests: 1, probesElsewhere: 0, leftOpen: 0 });
  });

  it('probes that stand elsewhere than where a proof asks them, or than is said', async () => {
    const p = await Practised.begin(FAN);
    await p.type(...ARRIVED, ...PROVEN_DEAD.slice(0, 6), 'T1 to L2');
    expect(counts(p).probesElsewhere).toBe(1);
    const q = await Practised.begin(FAN);
    await q.type(...ARRIVED, ...PROVEN_DEAD.slice(0, 6), 'probes on T1 to ground');
    // Told at once that they stay there, and accused of nothing before it is done all the same.
    const before = q.events().length;
    expect(await q.type('leg one to ground')).toMatch(/^exercise: Nothing read: the probes stay on /);
    expect(counts(q).probesElsewhere).toBe(0);
    expect(q.events().length).toBe(before);
    expect(await q.type('leg one to ground')).toMatch(/^meter: /);
    expect(counts(q).probesElsewhere).toBe(1);
  });
});

describe('minutes', () => {
  it('are counted for a proof, parts, switches and waiting, by the table of the planner', async () => {
    const p = await Practised.begin(FAN);
    const minutes: number[] = [];
    for (const lines of [ARRIVED, PROVEN_DEAD, ['fitted a contactor'], ['fitted a fan motor'], ['wait 15 minutes']]) {
      await p.type(...lines);
      minutes.push(counts(p).minutes);
    }
    const took = minutes.map((now, at) => now - (minutes[at - 1] ?? 0));
    // Eleven readings, two meter proofs, a switch, two walks: common practice, no less than five minutes.
    expect(took[1]).toBeGreaterThan(5);
    expect(took[2]).toBeGreaterThanOrEqual(15);
    expect(took[3]).toBeGreaterThanOrEqual(30);
    expect(took[4]).toBe(15);
  });
});

describe('a part that is asked about and left out', () => {
  it.each(['motors-411', 'motors-421'])('%s: is not fitted', async (name) => {
    const p = await proven(name);
    const told = await p.type('fitted a ten over three dual capacitor four forty volt');
    expect(told).toMatch(/Keep it all the same\?/);
    expect(counts(p).needlessParts).toBe(0);
    expect(await p.type('no')).toMatch(/Set aside/);
    expect(counts(p)).toMatchObject({ needlessParts: 0, notProven: 0 });
    // Left unanswered, it is left out by what is said next.
    await p.type('fitted a ten over three dual capacitor four forty volt');
    expect(await p.type('fitted a contactor')).toMatch(/Left out/);
    expect(counts(p)).toMatchObject({ needlessParts: 1 });
  });

  it('is fitted where it is kept, and a near miss', async () => {
    const p = await proven();
    await p.type('fitted a ten over three dual capacitor four forty volt', 'yes');
    expect(counts(p)).toMatchObject({ needlessParts: 1, nearMisses: 1 });
  });
});

describe('the words', () => {
  // Its contactor is open: what floats behind it is far from what a leg is to ground (the unit itself is asked).
  it.each(['control-410', 'control-421', 'motors-411'])(
    '%s: say what an ohmmeter met between its probes',
    async (name) => {
      const p = await Practised.begin(name);
      await p.type(...ARRIVED);
      const [between, ground] = [p.exercise.unit.voltsBetween(['T1', 'L2']), p.exercise.unit.voltsAt(['T1', 'L2'])];
      const told = await p.type('ohms T1 to L2');
      const [, first, second] = /: ([0-9]+) volts between the probes(?:, ([0-9]+) to ground)?/.exec(told) ?? [];
      // A meter reads within 2 %.
      expect(Math.abs(Number(first) - between)).toBeLessThanOrEqual(3 + between / 50);
      if (ground > between + 5) expect(Math.abs(Number(second) - ground)).toBeLessThanOrEqual(5);
      else if (second !== undefined) expect(Number(second)).toBeGreaterThan(Number(first));
    },
  );

  it('take the word that the visit asks for', async () => {
    const p = await Practised.begin(FAN);
    const lines = PROVEN_DEAD.map((line) => (line === 'capacitor is discharged' ? 'discharged' : line));
    await p.type(...ARRIVED, ...lines);
    expect(p.exercise.context.energy['outdoor-load']).toBe('proven-dead');
  });

  it('ask nobody for a number that is the meter’s', async () => {
    const p = await Practised.begin(FAN);
    expect(await p.type(...ARRIVED, 'wibble the frobnicator')).toMatch(/the meter has the number/);
  });
});

describe('the planner’s column', () => {
  // The motors of one unit: what its run says of its repair is what its column counts.
  it.each([411, 412, 413, 414])('of motors-%i is true of its run', async (seed) => {
    const p = await Practised.begin(`motors-${seed}`);
    const { drawn } = p;
    const edges = { diagnosis: diagnosisOf(drawn.profile), understand, software: 'test' };
    const { exercise, lines } = await runPlanner(drawn, edges);
    const { planner } = debriefOf(p.exercise, lookBack(exercise));
    const last = lines.findLast(({ text }) => /^Split .*(fits|not proven by it)/.test(text))?.text ?? '';
    if (/not proven by it/.test(last)) {
      expect(planner.counts.notProven).toBeGreaterThan(0);
      expect(DEBRIEF.ended(planner)).toMatch(/not proven/);
    }
    expect(planner.counts).toMatchObject({ harmful: 0, nearMisses: 0, skippedProofs: 0, leftOpen: 0, unfounded: 0 });
  });
});
