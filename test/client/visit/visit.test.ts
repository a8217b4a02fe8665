import { describe, expect, it } from 'vitest';
import { evidenceOf } from '../../../client/visit/rules/evidence-of.ts';
import { foldVisit } from '../../../grammar/visit/fold-visit.ts';
import { openQuestion } from '../../../grammar/visit/standing.ts';
import { URGENT_WORDS } from '../../../grammar/vocabulary/urgent-words.ts';
import { NEVER_SAID } from './never-said.ts';
import {
  ARRIVAL,
  LIBRARY_VISIT,
  REPAIR_AND_PROOF,
  TO_LIVE_STEP,
  TO_PROVEN_DEAD,
  TypedVisit,
  WEAK_FAN,
  WINDINGS_SOUND,
} from './typed-visit.ts';

const ONE_BY_ONE = [
  'leg one to ground zero volts',
  'leg two to ground zero volts',
  'leg one to leg two zero volts',
  'T one to ground zero volts',
  'T two to ground zero volts',
  'T one to T two zero volts',
] as const;
const SIX_PAIRS = [
  ['L1', 'ground'],
  ['L2', 'ground'],
  ['L1', 'L2'],
  ['T1', 'ground'],
  ['T2', 'ground'],
  ['T1', 'T2'],
];

describe('a live step', () => {
  it('is asked only after its caution was spoken whole and acknowledged', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_LIVE_STEP);
    expect(visit.run.value).toMatchObject({ open: { cautioning: 'awaiting' } });
    const asked = visit.of('step.asked').length;
    await visit.type('what next');
    expect(visit.of('step.asked')).toHaveLength(asked);
    expect(visit.mouth.last()).toBe('Say "live" first.');
    await visit.type('live');
    expect(visit.run.value).toMatchObject({ open: 'asked' });
    const types = visit.events().map((event) => event.type);
    expect(types.lastIndexOf('step.asked')).toBeGreaterThan(types.lastIndexOf('caution.acknowledged'));
    expect(types.lastIndexOf('caution.acknowledged')).toBeGreaterThan(types.lastIndexOf('caution.spoken'));
    // The step was asked in one breath with its caution: nothing is said twice.
    expect(visit.mouth.last()).toBe('Say "live" first.');
  });

  it('speaks a caution that was cut short again, whole', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_LIVE_STEP.slice(0, -1));
    visit.mouth.cutNext = 2;
    await visit.type(...TO_LIVE_STEP.slice(-1));
    expect(visit.of('caution.spoken')).toEqual([]);
    await visit.type('say again');
    const cautions = visit.mouth.said.filter((prompt) => prompt.kind === 'caution').map(({ text }) => text);
    expect(new Set(cautions).size).toBe(3);
    expect(cautions.slice(-3)).toEqual([...new Set(cautions)]);
    expect(visit.of('caution.spoken').length).toBeGreaterThan(0);
  });

  it('ends the standing rules with who governs', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_LIVE_STEP);
    const [, second] = visit.mouth.said.filter((prompt) => prompt.kind === 'caution');
    expect(second?.text).toMatch(/Local codes, maker and licensed practice govern\.$/);
  });
});

describe('a volunteered live reading', () => {
  it('is taken, cautioned at once and recorded as late', async () => {
    const visit = await TypedVisit.open();
    await visit.type('leg one to ground one eighteen');
    expect(visit.of('reading.logged')).toHaveLength(1);
    expect(visit.of('caution.spoken')[0]).toMatchObject({
      caution: 'live-line',
      zone: 'outdoor-load',
      late: 'the reading came first',
    });
    expect(visit.run.context.energy['outdoor-load']).toBe('live');
  });
});

describe('ohms and microfarads', () => {
  it('are refused with value and reason while the zone is not proven dead, and are never evidence', async () => {
    const visit = await TypedVisit.open();
    await visit.type('leg one to ground one eighteen');
    const evidence = evidenceOf(visit.run.context).length;
    await visit.type('fan common to fan run twelve ohms');
    expect(visit.of('reading.refused')[0]).toMatchObject({
      reason: 'not-proven-dead',
      reading: { value: 12, unit: 'Ohm' },
    });
    expect(evidenceOf(visit.run.context)).toHaveLength(evidence);
    expect(visit.mouth.last()).toContain('not proven dead');
  });

  it('are taken on the bench at any time', async () => {
    const visit = await TypedVisit.open();
    await visit.type('herm section forty four point one microfarads on the bench');
    expect(visit.of('reading.logged')[0]).toMatchObject({ reading: { quantity: 'capacitance', bench: true } });
  });

  it('are taken once the zone is proven dead', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_PROVEN_DEAD, 'fan common to fan run twelve ohms');
    expect(visit.of('reading.refused')).toEqual([]);
    expect(visit.of('reading.logged').at(-1)).toMatchObject({ reading: { quantity: 'resistance', value: 12 } });
  });
});

describe('the proof of absence of voltage', () => {
  it('in one breath leads to reads dead, and the discharged sections to proven dead', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_PROVEN_DEAD);
    const line = visit
      .of('energy.changed')
      .filter((event) => event.zone === 'outdoor-load')
      .map((event) => event.to);
    expect(line).toEqual(['live', 'reported-off', 'proving', 'reads-dead', 'proven-dead']);
    expect(visit.of('proof.recorded')[0]).toMatchObject({
      before: 240,
      values: [0, 0, 0, 0, 0, 0],
      at: SIX_PAIRS,
      after: 240,
      result: 'reads dead',
    });
  });

  it('may be said number by number', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_PROVEN_DEAD.slice(0, 4), 'meter proves two forty', ...ONE_BY_ONE, 'meter proves two forty');
    expect(visit.run.context.energy['outdoor-load']).toBe('reads-dead');
  });

  it('is not taken on a word alone', async () => {
    const visit = await TypedVisit.open();
    await visit.type('leg one to ground one eighteen', 'outdoor disconnect is pulled and locked');
    expect(visit.run.context.energy['outdoor-load']).toBe('reported-off');
  });

  it('wants the switch reported and locked first', async () => {
    const visit = await TypedVisit.open();
    await visit.type(
      'leg one to ground one eighteen',
      'thermostat is not calling',
      'meter two forty zero zero zero zero zero zero meter two forty',
    );
    expect(visit.run.context.energy['outdoor-load']).toBe('live');
    await visit.type('outdoor disconnect is pulled', 'meter two forty zero zero zero zero zero zero meter two forty');
    expect(visit.run.context.energy['outdoor-load']).toBe('reported-off');
    expect(visit.mouth.said.at(-2)?.text ?? '').toContain('Lock and tag it');
  });

  it('wants a ground that has read a live leg: an open ground reads a false zero', async () => {
    const visit = await TypedVisit.open();
    await visit.type(
      'thermostat is not calling',
      'outdoor disconnect is pulled and locked',
      'meter two forty zero zero zero zero zero zero meter two forty',
    );
    expect(visit.run.context.energy['outdoor-load']).toBe('reported-off');
    expect(visit.mouth.said.map(({ text }) => text).join(' ')).toContain('a live leg was never read to this ground');
  });

  it('fails when voltage is found, and says so', async () => {
    const visit = await TypedVisit.open();
    await visit.type(
      'leg one to ground one eighteen',
      'outdoor disconnect is pulled and locked',
      'meter two forty zero one eighteen zero zero zero zero meter two forty',
    );
    expect(visit.run.context.energy['outdoor-load']).toBe('live');
    expect(visit.of('proof.recorded')[0]?.result).toBe('voltage present');
  });

  it('fails when the meter does not prove on a known source', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_PROVEN_DEAD.slice(0, 4), 'meter two forty zero zero zero zero zero zero meter zero');
    expect(visit.run.context.energy['outdoor-load']).toBe('reported-off');
    expect(visit.of('proof.recorded')[0]?.result).toBe('meter not proven');
  });

  it('keeps a section that still holds a charge from proven dead', async () => {
    const visit = await TypedVisit.open();
    await visit.type(
      ...TO_PROVEN_DEAD.slice(0, -2),
      'herm section thirty seven volts d c',
      'fan section zero volts d c',
    );
    expect(visit.run.context.energy['outdoor-load']).toBe('reads-dead');
    expect(visit.mouth.said.some((prompt) => prompt.text.includes('Still charged'))).toBe(true);
  });

  it('is lost the moment live evidence comes', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_PROVEN_DEAD, 'leg one to ground one eighteen');
    expect(visit.run.context.energy).toMatchObject({
      'outdoor-load': 'live',
      'capacitor-herm': 'live',
      'capacitor-fan': 'live',
    });
    expect(visit.mouth.said.some((prompt) => prompt.text.startsWith('Hands off: voltage present'))).toBe(true);
  });

  it('is lost when power is reported back', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_PROVEN_DEAD, 'outdoor disconnect is back in');
    expect(visit.run.context.energy['outdoor-load']).toBe('live');
  });

  it('is not lost to 24 volts in its own zone', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_PROVEN_DEAD, 'R to C twenty six');
    expect(visit.run.context.energy).toMatchObject({ control: 'live', 'outdoor-load': 'proven-dead' });
  });
});

describe('a hands-on step', () => {
  it('is not prompted before its zone is proven dead: the steps to it come first, in their order', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...ARRIVAL, 'compressor runs then trips', WEAK_FAN[0], 'yes');
    expect(visit.run.context.phase).toBe('repair');
    const steps = () => visit.of('step.asked').map((event) => event.step);
    expect(steps()).not.toContain('repair.part-fitted');
    await visit.type(...TO_PROVEN_DEAD);
    expect(steps().slice(-4)).toEqual([
      'energy.absence-proved',
      'energy.capacitors-discharged',
      'energy.section@capacitor-fan',
      'repair.part-fitted',
    ]);
  });
});

describe('what was heard wrong', () => {
  it('is set right by a marked correction, as a new event', async () => {
    const visit = await TypedVisit.open();
    await visit.type('leg one to ground one seventeen', 'correction one eighteen');
    expect(visit.of('reading.logged')).toHaveLength(1);
    expect(visit.of('reading.corrected')[0]).toMatchObject({ number: 1, from: { value: 117 }, to: { value: 118 } });
    expect(evidenceOf(visit.run.context).filter((item) => item.kind === 'reading')).toMatchObject([{ value: 118 }]);
  });

  it('is taken back and no longer evidence', async () => {
    const visit = await TypedVisit.open();
    await visit.type('leg one to ground one seventeen', 'take that back');
    expect(visit.of('reading.withdrawn')).toHaveLength(1);
    expect(evidenceOf(visit.run.context)).toEqual([]);
  });

  it('is asked when a teen and a ty both fit, and settled digit by digit', async () => {
    const visit = await TypedVisit.open();
    await visit.hear('compressor amps fourteen');
    expect(visit.of('reading.logged')).toEqual([]);
    expect(visit.mouth.last()).toBe('Was that one four, or four zero?');
    await visit.type('one four');
    expect(visit.of('reading.logged')[0]).toMatchObject({ reading: { value: 14, unit: 'A' } });
  });

  it('is asked when it does not fit its rule, and set aside at a no', async () => {
    const visit = await TypedVisit.open();
    await visit.type('leg one to ground one thirty five');
    expect(visit.of('reading.logged')).toEqual([]);
    expect(openQuestion(visit.run.context)).toMatchObject({ kind: 'confirm-reading', reading: { value: 135 } });
    await visit.type('no');
    expect(visit.of('reading.refused')[0]).toMatchObject({
      reason: 'withdrawn-by-technician',
      reading: { value: 135 },
    });
    expect(visit.run.context.questions).toEqual([]);
  });
});

describe('a bare value', () => {
  it('binds to the one reading that is expected', async () => {
    const visit = await TypedVisit.open();
    await visit.type('outdoor air ninety four', 'eighty');
    expect(visit.of('reading.logged')[1]).toMatchObject({
      reading: { at: ['return-air'], value: 80, unit: '[degF]' },
    });
  });

  it('binds to nothing where the customer or the job is asked after, and a yes goes on with that', async () => {
    const visit = await TypedVisit.open();
    expect(await visit.type('ninety four')).toBe('Ninety four: which place was that?');
    await visit.type('yes');
    expect(visit.of('reading.logged')).toEqual([]);
    expect(visit.of('item.reported')).toMatchObject([{ item: 'consent-given' }]);
    expect(visit.of('question.ended')).toMatchObject([{ how: 'expired' }]);
  });

  it('is taken behind a word that says nothing, typed', async () => {
    const visit = await TypedVisit.open();
    await visit.type('outdoor air ninety four', 'okay eighty');
    expect(visit.of('reading.logged')).toHaveLength(2);
    expect(visit.of('reading.asked')).toEqual([]);
  });

  it('binds to nothing where a look is asked', async () => {
    const visit = await TypedVisit.open();
    await visit.type('outdoor air ninety four', 'return air eighty', 'one eighteen');
    expect(visit.of('reading.logged')).toHaveLength(2);
  });
});

describe('the whole library visit', () => {
  it('finds the weak fan section, proves the repair and closes', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...LIBRARY_VISIT);
    await visit.later(16);
    await visit.type('return air seventy six degrees', 'supply air fifty eight degrees', 'finish the visit');
    expect(visit.run.context.phase).toBe('closed');
    const view = foldVisit(visit.events());
    expect(view.finding?.fault).toBe('fan-capacitor-weak');
    expect(view.finding?.probability).toBeGreaterThan(0.95);
    expect(view.split).toMatchObject({ split: 18, word: 'fits' });
    expect(view.summary?.openItems).toEqual([
      'the thermostat was not reported as agreed',
      'the technician has not signed',
      'the customer has not signed',
    ]);
    expect(view.phases.map((line) => line.phase)).toEqual(['arrive', 'testing', 'repair', 'prove', 'close', 'closed']);
    expect(view.unknown).toEqual([]);
  });

  it('judges the split anew when the supply air is corrected', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...LIBRARY_VISIT);
    await visit.later(16);
    await visit.type('return air seventy six degrees', 'supply air fifty eight degrees', 'correction sixty eight');
    expect(visit.of('split.judged').map(({ split, word }) => [split, word])).toEqual([
      [18, 'fits'],
      [8, 'does not fit'],
    ]);
  });

  it('judges no split before fifteen minutes of running, and reminds every five', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...LIBRARY_VISIT, 'return air seventy six degrees', 'supply air fifty eight degrees');
    expect(visit.of('split.judged')).toEqual([]);
    await visit.later(11);
    expect(visit.mouth.said.filter((prompt) => /^(Ten|Five) more\.$/.test(prompt.text))).toHaveLength(2);
    expect(visit.of('split.judged')).toEqual([]);
  });

  it('refuses to close while a jumper is in place', async () => {
    const visit = await TypedVisit.open();
    await visit.type('jumper on from R to Y', 'finish the visit');
    expect(visit.of('close.refused')).toHaveLength(1);
    await visit.type('jumper off from R to Y', 'finish the visit');
    expect(visit.of('close.refused').at(-1)?.why.join(' ')).toMatch(/^Not proven dead, 24 volt control: jumper on/);
    await visit.type('note the call was put on there for the test');
    expect(visit.run.context.phase).toBe('closed');
  });
});

describe('full talk', () => {
  it('says where the probes go, and after a reading what it did to the suspects', async () => {
    const visit = await TypedVisit.open();
    await visit.type('full talk', ...TO_LIVE_STEP, 'live');
    const placed = visit.mouth.last();
    await visit.type('contactor is pulled in');
    expect(placed).toMatch(/Meter on volts AC, volt jacks\. One probe on /);
    expect(visit.mouth.said.some((prompt) => /^More likely now: /.test(prompt.text))).toBe(true);
  });

  it('keeps that to itself in short talk', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_LIVE_STEP, 'live', 'contactor is pulled in');
    expect(visit.mouth.said.some((prompt) => prompt.text.startsWith('More likely now: '))).toBe(false);
  });
});

describe('every prompt', () => {
  it('holds none of the words that are listened for while the mouth speaks, and never says safe', async () => {
    const visit = await TypedVisit.open();
    await visit.type('full talk', ...LIBRARY_VISIT, 'why', 'status', 'what can i say', 'hold the visit', 'go on');
    expect(visit.mouth.said.length).toBeGreaterThan(40);
    for (const { text } of visit.mouth.said) expect(text).not.toMatch(NEVER_SAID);
  });
});

describe('a proof said number by number', () => {
  const opened = [...TO_PROVEN_DEAD.slice(0, 4), 'meter proves two forty'] as const;

  it('does not count the same pair three times', async () => {
    const visit = await TypedVisit.open();
    const pair = 'leg one to leg two zero volts';
    await visit.type(...opened, pair, pair, pair, 'meter proves two forty');
    expect(visit.run.context.energy['outdoor-load']).toBe('proving');
    expect(visit.of('proof.recorded')).toEqual([]);
    expect(visit.mouth.last()).toBe('Meter two forty volts. Next: leg one to ground.');
  });

  it('does not take two places on one leg for a pair', async () => {
    const visit = await TypedVisit.open();
    await visit.type(
      ...opened,
      'leg one to ground zero volts',
      'T one to ground zero volts',
      'leg one to T one zero volts',
    );
    await visit.type('meter proves two forty');
    expect(visit.run.context.energy['outdoor-load']).toBe('proving');
  });
});

describe('an impossible value', () => {
  it('is asked again and cannot be confirmed', async () => {
    const visit = await TypedVisit.open();
    await visit.type('leg one to ground three forty');
    expect(visit.mouth.last()).toContain('That cannot be. Measure it again.');
    await visit.type('yes');
    expect(visit.of('reading.logged')).toEqual([]);
    expect(visit.of('reading.refused')[0]).toMatchObject({ reason: 'impossible', reading: { value: 340 } });
  });
});

describe('a question that stands open', () => {
  it('takes a bare value as the questioned reading read again, and binds it nowhere else', async () => {
    const visit = await TypedVisit.open();
    await visit.type('leg one to ground one thirty five', 'one eighteen');
    expect(visit.of('reading.logged')).toMatchObject([{ reading: { at: ['L1', 'ground'], value: 118 } }]);
    expect(visit.of('reading.refused')).toMatchObject([{ reason: 'read-again', reading: { value: 135 } }]);
    expect(visit.run.context.questions).toEqual([]);
  });

  it.each(['one thirty five', 'leg one to ground one thirty five'])(
    'takes the same value said again for a yes, and does not ask again: %s',
    async (again) => {
      const visit = await TypedVisit.open();
      await visit.type('leg one to ground one thirty five', again);
      expect(visit.of('reading.logged')).toMatchObject([{ reading: { value: 135 }, confirmed: true }]);
      expect(visit.of('question.asked')).toHaveLength(1);
      expect(visit.run.context.questions).toEqual([]);
    },
  );
});

describe('a correction', () => {
  it('never changes what was measured', async () => {
    const visit = await TypedVisit.open();
    await visit.type('leg one to ground one eighteen', 'correction one nineteen ohms');
    expect(visit.of('reading.corrected')).toEqual([]);
    expect(visit.mouth.last()).toContain('does not belong to this reading');
  });
});

describe('the words that are listened for while the mouth speaks', () => {
  it.each(URGENT_WORDS)('"%s" acknowledges no caution', async (word) => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_LIVE_STEP);
    const before = visit.of('caution.acknowledged');
    await visit.type(word);
    expect(visit.of('caution.acknowledged')).toEqual(before);
    expect(visit.run.value).toMatchObject({ open: { cautioning: 'awaiting' } });
  });
});

describe('power put back after a fuse', () => {
  it('wants the windings read to the shell first, and says in its caution that this is the one reset', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_PROVEN_DEAD, 'fitted a thirty amp fuse', ...WINDINGS_SOUND, 'covers are on');
    expect(visit.mouth.last()).toBe('Hands clear: it may start. One reset, compressor cover on.');
    await visit.type('live');
    expect(visit.of('caution.acknowledged').map((event) => event.caution)).toContain('reset-once');
    expect(visit.of('step.asked').at(-1)?.step).toBe('energy.power-on');
  });

  it('is not spoken of after any other part', async () => {
    const visit = await TypedVisit.open();
    await visit.type(...TO_PROVEN_DEAD, ...REPAIR_AND_PROOF);
    expect(visit.of('caution.spoken').map((event) => event.caution)).not.toContain('reset-once');
  });
});
