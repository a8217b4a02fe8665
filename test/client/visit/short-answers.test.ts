import { describe, expect, it } from 'vitest';
import { short } from '../../../fixtures/utterances/read-utterances.ts';
import { ENGLISH } from '../../../grammar/phrases/languages/english/english.ts';
import { pattern, sentences } from '../../../grammar/phrases/pattern.ts';
import { understand } from '../../../grammar/phrases/understand.ts';
import { ANSWERS } from '../../../grammar/vocabulary/answers.ts';
import { COMMANDS } from '../../../grammar/vocabulary/commands.ts';
import { tries } from '../../how-much.ts';
import { ARRIVAL, TO_PROVEN_DEAD, TypedVisit } from './typed-visit.ts';

/** Natural short answers, common practice: what each kind of step is answered with, and what it means there. */
interface Asked {
  readonly step: string;
  readonly lines: readonly string[];
  /** Answers by what they mean, in the short form of the fixtures. */
  readonly answers: Readonly<Record<string, readonly string[]>>;
}

const FED = ['leg one to ground one nineteen', 'leg two to ground one nineteen'] as const;
const TO_POWER_OFF = [...ARRIVAL, 'compressor runs then trips', ...FED, 'thermostat is not calling'] as const;
const TO_PROOF = [...TO_POWER_OFF, 'outdoor disconnect is pulled and locked', 'live'] as const;
const PAIRS = ['zero', 'zero', 'zero', 'zero', 'zero', 'zero'] as const;
const DEAD = [...ARRIVAL, 'compressor runs then trips', ...TO_PROVEN_DEAD] as const;
const FITTED = [
  ...DEAD,
  'fan section one point one microfarads on the bench',
  'fan section one point two microfarads on the bench',
  'fitted a forty five over five dual capacitor four forty volt',
] as const;
const PROVED = [
  ...FITTED,
  'covers are on',
  'live',
  'outdoor disconnect is back in',
  'thermostat is calling',
  'outdoor fan is turning',
  'compressor amps eleven point two',
  'live',
  'fan amps point nine',
] as const;
const LOCKED = 'energy disconnect outdoor locked';
const OPEN = 'energy disconnect outdoor open';

const STEPS: readonly Asked[] = [
  {
    step: 'arrive.consent',
    lines: [],
    answers: {
      'item consent-given': [
        'they agreed',
        'yes they did',
        'fine with them',
        "it's fine with her",
        'he said go ahead',
        'customer is fine with it',
        'customer says okay',
      ],
      'item consent-refused': ['they declined', 'he said no', "she doesn't want it"],
    },
  },
  {
    step: 'arrive.meter',
    lines: ['customer agrees', 'pass'],
    answers: { 'item meter-category-three': ['three', 'cat three', "it's a category three", 'category three meter'] },
  },
  {
    step: 'arrive.call',
    lines: ARRIVAL.slice(0, 2),
    answers: {
      'seen thermostat-calling': [
        'calling',
        "it's calling",
        "yeah it's calling",
        'still calling',
        "it's on",
        'set to cool',
      ],
      'seen thermostat-not-calling': [
        'not calling',
        "it's not calling",
        "it isn't calling",
        "it's off",
        'no call',
        'satisfied',
      ],
      'seen thermostat-blank': ['blank', "it's blank", 'nothing on the screen', 'no display', 'screen is dead'],
    },
  },
  {
    step: 'arrive.fan',
    lines: ARRIVAL.slice(0, 3),
    answers: {
      'seen fan-turning': [
        'turning',
        "it's spinning",
        'spinning fine',
        'running',
        "it's running now",
        "yep it's going",
        'it spins',
      ],
      'seen fan-not-turning': [
        'not turning',
        "it's not turning",
        "it isn't spinning",
        'stopped',
        "it's just sitting there",
        "it won't spin",
        "nope it's not moving",
        'standing still',
        'nothing',
        'not moving at all',
      ],
      'seen fan-hums': ['humming', 'it just hums', "hums but won't turn", "it's humming but not spinning"],
    },
  },
  {
    step: 'look-compressor',
    lines: ARRIVAL,
    answers: {
      'seen compressor-running': ['running', "it's running", "it's on", 'runs fine'],
      'seen compressor-not-running': ['not running', "it's off", "it won't start", "it doesn't come on", 'nothing'],
      'seen compressor-hums-and-trips': [
        'hums and trips',
        'it just hums',
        "it's trying to start",
        'hums then kicks off',
      ],
      'seen compressor-runs-then-trips': [
        'runs then trips',
        'it starts and then cuts out',
        'ran a while and then quit',
      ],
    },
  },
  {
    step: 'energy.power-off',
    lines: TO_POWER_OFF,
    answers: {
      [LOCKED]: [
        'pulled and locked',
        "it's pulled and locked",
        'locked out',
        'locked and tagged',
        'I pulled it and locked it',
        'out and locked',
        "it's locked out and tagged",
        'my lock is on it',
        'I did',
        'already did',
        'did it',
        'I already did it',
        "that's taken care of",
      ],
      [OPEN]: ['pulled', 'I pulled it', "it's off", "it's out", 'shut it off', 'opened it'],
      'order hold': ['not yet', 'no not yet', "I haven't yet", "I'm working on it"],
    },
  },
  {
    step: 'energy.absence-proved',
    lines: TO_PROOF,
    answers: {
      'meter 240': ['two forty', 'meter two forty', 'two forty on a live source'],
      'meter 0': ['nothing', 'zero', "it's dead"],
    },
  },
  {
    step: 'energy.pair@L1+ground',
    lines: [...TO_PROOF, 'two forty'],
    answers: {
      'voltage L1 ground 0 V': ['zero', 'no voltage', 'zero volts', 'I got nothing', 'no volts', "it's zero"],
      'value 0': ['nothing', 'dead', "it's dead", 'nothing there', 'nope nothing'],
      unclear: [
        'all zeros',
        'dead everywhere',
        'zero across the board',
        'all dead',
        "they're all zero",
        'I did',
        'already did',
      ],
    },
  },
  {
    step: 'energy.meter-again',
    lines: [...TO_PROOF, 'two forty', ...PAIRS],
    answers: { 'meter 239': ['two thirty nine', 'meter two thirty nine'] },
  },
  {
    step: 'energy.capacitors-discharged',
    lines: [...TO_PROOF, 'two forty', ...PAIRS, 'two forty', 'live'],
    answers: {
      'discharged capacitor-herm + discharged capacitor-fan': [
        'I did',
        'already did',
        'did it',
        'they are',
        'discharged',
        'they are all discharged',
        'both discharged',
        'discharged them both',
        'bled them down',
      ],
      'voltage-dc cap-C cap-HERM 0 V': ['zero', 'zero volts', 'nothing'],
    },
  },
  {
    step: 'energy.clamps-placed',
    lines: FITTED,
    answers: {
      'seen covers-on': ["they're on", 'all on', 'back on', 'I did', "they're back on"],
      'cover unit off': ["they're off"],
    },
  },
  {
    step: 'energy.power-on',
    lines: [...FITTED, 'covers are on', 'live'],
    answers: {
      'energy disconnect outdoor closed': [
        "it's in",
        'back in',
        'put it back in',
        "it's on",
        'plugged it back in',
        'I did',
      ],
      'order hold': ['not yet'],
    },
  },
  {
    step: 'energy.call-on',
    lines: [...FITTED, 'covers are on', 'live', 'outdoor disconnect is back in'],
    answers: {
      'seen thermostat-calling': [
        'calling',
        "it's calling",
        "it's on",
        'on',
        'I did',
        "it's calling for cooling",
        'turned it on',
      ],
    },
  },
  {
    step: 'prove.compressor-amps',
    lines: [...FITTED, 'covers are on', 'live', 'outdoor disconnect is back in', 'calling', 'spinning', 'live'],
    answers: {
      'current compressor 11.2 A': [
        'eleven point two',
        'eleven point two amps',
        "it's pulling eleven point two",
        "I'm at eleven point two",
      ],
      'value 0': ['nothing there', 'nothing found'],
    },
  },
  {
    step: 'energy.tug-tested',
    lines: [
      ...DEAD,
      'pulled the brown wire off of fan',
      ...FITTED.slice(DEAD.length),
      'put the brown wire back on fan',
    ],
    answers: { 'order done': ["they're all tight", 'none of them moved', 'nothing moved', 'I did'] },
  },
];

/** Behind the repair and its proof, the questions of the close. */
const CLOSING: readonly Asked[] = [
  {
    step: 'close.thermostat',
    lines: ['covers are on'],
    answers: {
      'item thermostat-as-agreed': [
        'same as before',
        "it's set",
        'set where they want it',
        'I did',
        'it is',
        "it's back how it was",
      ],
    },
  },
  {
    step: 'close.recommend',
    lines: ['thermostat is set as agreed'],
    answers: { 'item nothing-to-recommend': ['nothing', "that's all", "that's it", 'nothing else', 'none'] },
  },
  {
    step: 'close.customer',
    lines: ['nothing to recommend'],
    answers: {
      'item customer-not-present': ['not here', "they're not home", 'nobody home', 'he left', "she's gone"],
    },
  },
  {
    step: 'close.visit-finished',
    lines: ['customer not present', 'pass'],
    answers: { 'order finish': ["that's all", "that's it", "that's everything", 'I did'] },
  },
];

async function at(lines: readonly string[]): Promise<TypedVisit> {
  const visit = await TypedVisit.open();
  await visit.type(...lines);
  return visit;
}

function checkAnswers(visit: TypedVisit, { step, answers }: Asked): void {
  expect(visit.run.context.step?.id).toBe(step);
  for (const [means, said] of Object.entries(answers)) {
    for (const text of said) {
      const { verdict, meaning } = understand(text, visit.run.expectation);
      expect(`${verdict} ${short(meaning)}`, `${step}: "${text}"`).toBe(`logged ${means}`);
    }
  }
}

describe('what a step asks is answered by', () => {
  it.each(STEPS.filter(({ answers }) => Object.keys(answers).length > 0).map((one) => [one.step, one] as const))(
    'natural short words: %s',
    async (_, asked) => checkAnswers(await at(asked.lines), asked),
  );

  it.each(STEPS.filter(({ step }) => step !== 'energy.capacitors-discharged').map((one) => [one.step, one] as const))(
    'no word that names another act: %s',
    async (_, { lines }) => {
      const visit = await at(lines);
      for (const text of ['discharged', "they're all discharged", 'bled them down']) {
        expect(understand(text, visit.run.expectation).verdict, text).toBe('rejected');
      }
    },
  );

  it('natural short words at the close', async () => {
    const visit = await at(PROVED);
    await visit.later(16);
    await visit.type('seventy nine', 'sixty');
    for (const asked of CLOSING) {
      await visit.type(...asked.lines);
      checkAnswers(visit, asked);
    }
  });

  it('what was found of a leak, with its place', async () => {
    const expectation = { readings: [] };
    for (const text of [
      'found a leak at the flare nut',
      'I found a leak on the valve core',
      'leak found at the service valve',
    ]) {
      expect(short(understand(text, expectation).meaning), text).toBe('item leak-found');
    }
  });

  it('a whole visit in nothing but such words', async () => {
    const visit = await at([
      'yep',
      "that's all of it",
      'three',
      'ninety four',
      'eighty',
      "it's calling",
      'not turning',
      'runs then trips',
      ...FED,
      'thermostat is not calling',
      'I did',
      'two forty',
      'zero',
      'nothing',
      'dead',
      'no voltage',
      'nope nothing',
      'zero',
      'two forty',
      'done',
      'zero',
      'zero',
      'one point one',
      'one point two',
      'fitted a forty five over five dual capacitor four forty volt',
      "they're on",
      "it's in",
      'calling',
      "it's spinning",
      'eleven point two',
      'point nine',
    ]);
    expect(visit.run.context.finding?.fault).toBe('fan-capacitor-weak');
    await visit.later(16);
    await visit.type('seventy nine', 'sixty', 'same as before', 'nope', 'nobody home');
    expect(visit.run.context.step?.id).toBe('close.technician');
    expect(visit.mouth.said.filter(({ kind }) => kind === 'question')).toEqual([]);
    expect(visit.of('proof.recorded')).toMatchObject([{ result: 'reads dead' }]);
  });
});

describe('a short answer', () => {
  const said = ANSWERS.map(({ id, say }) => ({
    id,
    said: sentences(pattern(say), ENGLISH.rules, 200_000).map((words) => words.join(' ')),
  }));
  const SAMPLE = tries(40, 400);
  const sampled = said.map(({ id, said: all }) => ({
    id,
    said: all.filter((_, index) => index % Math.max(1, Math.floor(all.length / SAMPLE)) === 0),
  }));

  it('of every kind is what it means where it is expected', () => {
    const means = { kind: 'report', report: { type: 'job-item', item: 'leak-found' } } as const;
    for (const { id, said: lines } of sampled) {
      for (const text of lines) {
        const { verdict, meaning } = understand(text, { readings: [], answers: [{ answer: id, means }] });
        expect(`${verdict} ${short(meaning)}`, `${id}: "${text}"`).toBe('logged item leak-found');
      }
    }
  });

  it('puts nothing on record where nothing is asked', () => {
    for (const { id, said: lines } of sampled) {
      for (const text of lines) {
        const { verdict, meaning } = understand(text, { readings: [] });
        const told = verdict === 'logged' ? short(meaning).split(' ')[0] : 'none';
        expect(['none', 'order', 'seen', 'item', 'note', 'saying'], `${id}: "${text}" → ${short(meaning)}`).toContain(
          told,
        );
      }
    }
  });

  it('takes no order away', () => {
    const orders = COMMANDS.flatMap(({ say }) =>
      sentences(pattern(say), ENGLISH.rules, 50_000).map((words) => words.join(' ')),
    );
    const answers = new Set(said.flatMap(({ said: lines }) => lines));
    // Of a pan, of a thermostat, and the same as "yes": beside their questions these say that.
    expect(orders.filter((text) => answers.has(text))).toEqual(['full', 'yes it is', 'same as before']);
  });
});
