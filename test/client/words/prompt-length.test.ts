import { describe, expect, it } from 'vitest';
import { TEST_IDS, TEST_MODELS } from '../../../client/diagnosis/measuring/test-models.ts';
import { ACTIONS, actionWords, CALL_BOTH_STAGES, repairWords } from '../../../client/words/talk/action-words.ts';
import { ANSWER } from '../../../client/words/talk/answer-words.ts';
import { CAUTIONS, cautionBreath, GATE_WORDS, HAZARD_WORDS } from '../../../client/words/talk/caution-words.ts';
import { chargeWords, noChargeWords } from '../../../client/words/talk/charge-words.ts';
import { NOT_CLOSED, PART_DOUBTS, WIRE_DOUBTS } from '../../../client/words/talk/doubt-words.ts';
import { plateQuestion } from '../../../client/words/talk/plate-words.ts';
import { SAY } from '../../../client/words/talk/prompts.ts';
import { SAY_OF_REFRIGERANT } from '../../../client/words/talk/refrigerant-words.ts';
import { MET_BY_POWER } from '../../../client/words/talk/return-words.ts';
import { standingOf, WHY } from '../../../client/words/talk/status-words.ts';
import { lookStepWords, readingStepWords } from '../../../client/words/talk/step-words.ts';
import { OPEN } from '../../../client/words/talk/summary-words.ts';
import type { Judged } from '../../../grammar/visit/events.ts';
import type { Question } from '../../../grammar/visit/questions.ts';
import { FAULTS } from '../../../grammar/vocabulary/faults.ts';
import { MEASURANDS } from '../../../grammar/vocabulary/measurands.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import { PLATE_LINES } from '../../../grammar/vocabulary/nameplate.ts';
import { OBSERVATIONS } from '../../../grammar/vocabulary/observations.ts';
import { PARTS } from '../../../grammar/vocabulary/parts.ts';
import { UNIT_CHOICES, type UnitChoice } from '../../../grammar/vocabulary/unit-choice.ts';
import { USUAL_UNITS } from '../../../grammar/vocabulary/units.ts';
import { ZONES } from '../../../grammar/vocabulary/zones.ts';

const FAULT_IDS = FAULTS.map(({ id }) => id);
/** About ten seconds beside a fan (2.3 words a second). Our choice. */
const MOST_WORDS = 25;
const wordsIn = (text: string): number => text.split(/\s+/).filter((word) => /\w/.test(word)).length;

/** The functions of a table of words, and for each of them what it may be filled with. */
type Filled<T> = {
  readonly [K in keyof T as T[K] extends (...args: never[]) => string ? K : never]: T[K] extends (
    ...args: infer A
  ) => string
    ? readonly A[]
    : never;
};

/** Every sentence of a table: those that are filled in, filled with each of their arguments. A row left out does not compile. */
function sentencesOf<T extends object>(table: T, filled: Filled<T>): readonly (readonly [string, string])[] {
  return Object.entries(table).flatMap(([name, words]) => {
    if (typeof words === 'string') return [[name, words] as const];
    if (typeof words !== 'function') return nested(name, words);
    const all = (filled as Readonly<Record<string, readonly unknown[][]>>)[name] ?? [];
    expect(all.length, name).toBeGreaterThan(0);
    return all.map((args) => [`${name}(${JSON.stringify(args)})`, String(words(...args))] as const);
  });
}

const nested = (name: string, table: unknown): readonly (readonly [string, string])[] =>
  Object.values(table as object).flatMap((words) => (typeof words === 'string' ? [[name, words] as const] : []));

/** Readings whose words are longest: a value of many words at each place that can be read. */
const READINGS: readonly Reading[] = MEASURANDS.map(({ quantity, at, unit }) => ({
  quantity,
  at,
  value: 277.5,
  unit: unit ?? USUAL_UNITS[quantity],
}));
const each = <T>(items: readonly T[]): readonly [T][] => items.map((one) => [one]);
const REMARK = 'Does not fit.';
const places = READINGS.map(({ at }) => at);
const LONG_NAME = 'capacitor fan section to capacitor common';
const MANY = ['leg one to ground two forty', 'herm section', 'brown wire from capacitor fan', 'T one to ground'];
const fittedWords = PARTS.map(({ name }) => `${name}, herm forty five, fan seven point five, four forty volts`);
const judged = (word: Judged['word']): Judged => ({ word }) as Judged;
const QUESTIONS: readonly Question[] = [
  ...READINGS.map((reading): Question => ({ kind: 'confirm-reading', reading, why: 'x' })),
  { kind: 'which-switch', state: 'open' },
];
const LIKELY = FAULT_IDS.map((fault) => ({ fault, probability: 0.423 }));
const WIRE = { colour: 'brown', size: '10 gauge', to: 'start-cap-1', action: 'landed' } as const;
const allZones = [[ZONES]] as [readonly (typeof ZONES)[number][]][];

const ALL: Readonly<Record<string, readonly (readonly [string, string])[]>> = {
  SAY: sentencesOf(SAY, {
    opened: [['the reading room of the library']],
    takenOver: [['the reading room of the library']],
    carriedOnElsewhere: [[''], ['the second technician']],
    entriesMissing: [[1], [120]],
    units: each(UNIT_CHOICES),
    read: READINGS.flatMap((reading): [Reading, boolean, string][] => [[reading, true, REMARK]]),
    readAsAsked: READINGS.map((reading): [Reading, string] => [reading, REMARK]),
    readInProof: each(READINGS),
    doubtful: READINGS.map((reading): [Reading, string] => [reading, 'This unit is listed without pressure switches.']),
    judged: [[judged('marginal')], [judged('does not fit')]],
    twin: [[[113.5, 130.5]]],
    impossible: each(READINGS),
    rejected: each(READINGS),
    lacks: [['fuses at the disconnect']],
    corrected: READINGS.map((reading): [Reading, string] => [reading, REMARK]),
    proofBack: each(ZONES),
    chargeOpen: each(ZONES),
    takenBack: each(READINGS),
    switchBack: [['outdoor'], ['panel'], ['air-handler']],
    dischargedNow: places.map((at) => [at]),
    itemBack: [['thermostat-as-agreed'], ['leak-found']],
    recommendationBack: [['a new contactor before next summer and two filters']],
    partBack: each(fittedWords),
    deedBack: [[{ type: 'deed', deed: 'contactor-pressed' }]],
    unprovenBack: [[LONG_NAME]],
    wireBack: [[WIRE]],
    leftOut: each(QUESTIONS),
    whichPlace: [
      [277.5, "[in_i'H2O]"],
      [1.25, '[cft_i]/min'],
    ],
    cannotBe: each(fittedWords),
    valueAt: each(places),
    meant: each(fittedWords),
    handsOff: ZONES.flatMap((zone) => places.map((at): [typeof zone, typeof at] => [zone, at])),
    stillPresent: each(places),
    powerIsOn: each(OBSERVATIONS.map(({ id }) => id)),
    notDone: [['locked']],
    powerBack: [[true], [false]],
    dictateWhat: [['saying']],
    dictated: [[true], [false]],
    maybeBack: [
      [ZONES, []],
      [[], ZONES],
    ],
    unproven: allZones,
    stillThere: [[MANY], [MANY.slice(0, 2)]],
    resetAgain: [[3]],
    provenAlready: each(ZONES),
    groundNotSeen: each(ZONES),
    meterProves: [[239.5]],
    meterGoesOn: places.map((at): [number, typeof at] => [239.5, at]),
    provedPairs: [
      [['L1', 'L2', 'T1', 'T2'].map((leg, index) => ({ at: [leg, 'ground'], value: index / 10 })) as never, 2],
    ],
    strangePair: each(places),
    proofTooLong: [[10]],
    dischargedLive: each(ZONES),
    chargedEarly: each(READINGS.filter(({ quantity }) => quantity === 'voltage-dc')),
    acOrDc: each(READINGS.filter(({ quantity }) => quantity === 'voltage-dc')),
    onDc: each(READINGS.filter(({ quantity }) => quantity === 'voltage-dc')),
    timeLeft: [[5]],
    charged: each(READINGS.filter(({ quantity }) => quantity === 'voltage-dc')),
    waits: [[LONG_NAME]],
    supervised: [[places.slice(0, 6), true]],
    notCured: [[undefined], ...each(FAULT_IDS)],
    nothingWithout: [['Leg one to ground, volts.'], ["Open and lock the air handler's switch."]],
    parked: [['Clamps on compressor and fan leads, covers on?']],
    afterWait: [[30, 'Compressor heat.']],
    onceMore: [['Fan section, microfarads, on the bench.']],
    finding: FAULT_IDS.flatMap((fault): [typeof fault, readonly (typeof TEST_IDS)[number][]][] =>
      [...TEST_IDS].map((test): [typeof fault, readonly (typeof TEST_IDS)[number][]] => [fault, [test]]),
    ),
    noneOfTheList: [
      [FAULT_IDS.slice(0, 4)],
      ...FAULT_IDS.map((_, at): [typeof FAULT_IDS] => [FAULT_IDS.slice(at, at + 2)]),
    ],
    runIn: [[15]],
    splitSoon: [[10]],
    split: [[18.5, false]],
    seen: OBSERVATIONS.map(({ id }): [typeof id] => [id]),
    seenAsAsked: OBSERVATIONS.map(({ id }): [typeof id] => [id]),
    item: [['leak-found']],
    deed: [[{ type: 'part-moved', part: 'hard-start', to: 'out' }]],
    work: [['control-wire-repaired']],
    fitted: each(fittedWords),
    partDoubted: [[Object.values(PART_DOUBTS).flatMap((one) => (typeof one === 'string' ? [one] : []))]],
    overcurrentRefused: [
      [[PART_DOUBTS.overLargest(60, 35, 14, 1.5)]],
      [[PART_DOUBTS.tooManyAmps(60, 35), PART_DOUBTS.mostAmpsUnknown]],
    ],
    keptForReason: each(fittedWords),
    fittedBefore: fittedWords.map((words): [string, readonly string[]] => [
      words,
      [PART_DOUBTS.otherMicrofarads('herm section', 35, 45)],
    ]),
    wireMoved: [[WIRE]],
    wireDoubted: [[WIRE, WIRE_DOUBTS.otherTerminal('contactor line terminal one')]],
    plateBack: [['maximum overcurrent protection']],
    recommended: [['a new contactor before next summer and two filters']],
    taken: [['cylinder fourteen A']],
    signed: [['technician', 'Alex Example of the Morning Shift']],
    notClosed: [
      [[NOT_CLOSED.jumper]],
      [[NOT_CLOSED.notLanded(MANY)]],
      [[NOT_CLOSED.unproven('outdoor-load', MANY)]],
      [[NOT_CLOSED.refusedPart(fittedWords[0]!)]],
      [[NOT_CLOSED.jumper, NOT_CLOSED.bypassed, NOT_CLOSED.notLanded(MANY), NOT_CLOSED.locked('air-handler')]],
    ],
    closed: [
      [{ openItems: [] } as never],
      [{ openItems: Object.values(OPEN).filter((one) => typeof one === 'string') } as never],
      [
        {
          openItems: [
            OPEN.partOut('hard-start'),
            OPEN.refrigerant.recovered,
            OPEN.zoneOff('outdoor-load'),
            OPEN.covers,
          ],
        } as never,
      ],
    ],
    checkSet: [[20, true]],
    checkNext: [[20]],
  }),
  ANSWER: sentencesOf(ANSWER, {
    taken: [[LONG_NAME]],
    asked: [[LONG_NAME]],
    notTaken: [['twelve words that nobody here will ever have understood at all today']],
    read: each(READINGS),
    notRead: each(places),
    nothingToPlace: [['Clamps on compressor and fan leads, covers on?']],
    seeWhich: [
      [OBSERVATIONS.slice(0, 4).map(({ id }) => id)],
      ...each(
        TEST_IDS.flatMap((id) => {
          const { measure } = TEST_MODELS[id];
          return measure.kind === 'look' ? [measure.answers] : [];
        }),
      ),
    ],
    means: LIKELY.map((one): [string, typeof one] => ['does not fit', one]),
    mayBe: LIKELY.map((_, at) => [[at, at + 1, at + 2].map((one) => LIKELY[one % LIKELY.length]!.fault)]),
    moreLikely: LIKELY.map((one, at): [typeof one, typeof one] => [one, LIKELY[(at + 1) % LIKELY.length]!]),
    pairsLeft: [[places.slice(0, 8)]],
    sectionsLeft: [[places.slice(0, 3)]],
    goesTo: [['refrigerant']],
  }),
  REFRIGERANT: sentencesOf(SAY_OF_REFRIGERANT, {
    judged: (['pressure-test', 'evacuation', 'decay'] as const).flatMap(
      (check) =>
        UNIT_CHOICES.flatMap((units) => [
          [check, 12.5, 'does not fit', units],
          [check, 0, 'fits', units],
        ]) as never[],
    ),
    standing: [[15]],
    standsStill: [[15]],
    outOfOrder: [['held']],
    notRun: [['held']],
    overLimit: UNIT_CHOICES.flatMap((units): [number, boolean, UnitChoice][] => [
      [350, true, units],
      [350, false, units],
    ]),
    underFloor: UNIT_CHOICES.map((units): [number, UnitChoice] => [150, units]),
    early: [
      ['power', 'held'],
      ['run', 'vacuum'],
    ],
  }),
  STEPS: (['brief', 'full'] as const).flatMap((pace) => [
    ...READINGS.map(
      (reading) =>
        [
          `${pace} ${reading.quantity} ${reading.at}`,
          readingStepWords('', { ...reading, bench: false }, pace),
        ] as const,
    ),
    ...['recovered', 'test-start', 'test-end', 'evacuated', 'decay', 'charged'].map(
      (id) =>
        [id, readingStepWords(`refrigerant.${id}`, { quantity: 'mass', at: ['system'], bench: false }, pace)] as const,
    ),
    ...TEST_IDS.flatMap((test) => {
      const { measure } = TEST_MODELS[test];
      return measure.kind === 'look'
        ? [[`${pace} ${test}`, lookStepWords(test, { test, answers: measure.answers }, pace)] as const]
        : [];
    }),
    ...PLATE_LINES.flatMap(
      (line) =>
        [
          [`${pace} ${line}`, plateQuestion(line, pace)],
          [`${pace} ${line[0]}`, plateQuestion(line.slice(0, 1), pace)],
        ] as const,
    ),
    ...(['part', 'work', 'either', 'charge'] as const).map((by) => [`${pace} ${by}`, repairWords(by, pace)] as const),
    [`${pace} call-on of two stages`, CALL_BOTH_STAGES[pace]] as const,
    ...ACTIONS.flatMap((done) =>
      (['none', ...ZONES] as const).map((zone) => [`${pace} ${done} ${zone}`, actionWords(done, zone, pace)] as const),
    ),
  ]),
  CAUTIONS: [
    ...CAUTIONS.map(({ id, words }) => [id, words] as const),
    ...Object.entries(GATE_WORDS),
    ...CAUTIONS.flatMap((caution) =>
      Object.values(HAZARD_WORDS).map(
        (words) =>
          [
            caution.id,
            cautionBreath([caution], [{ id: 'x', words, source: '' }], 'Leg one to ground, volts.').text,
          ] as const,
      ),
    ),
  ],
  STATUS: [
    ...ZONES.flatMap((zone) =>
      (['unknown', 'live', 'reported-off', 'proving', 'reads-dead', 'proven-dead'] as const).map(
        (state) => [zone, standingOf(zone, state)] as const,
      ),
    ),
    ...LIKELY.map(
      (one, at) => [one.fault, WHY.tellsApart([one, LIKELY[(at + 1) % LIKELY.length]!], READINGS[0])] as const,
    ),
    ...LIKELY.map((one) => [one.fault, WHY.finding(one)] as const),
    ...(['superheat', 'subcooling', 'condensing-over-ambient'] as const).flatMap((figure) => [
      ...UNIT_CHOICES.flatMap((units) =>
        (['outside-the-chart', 'mixed-line', 'outdoors-too-cold', 'no-valid-test'] as const).map(
          (why) => [figure, chargeWords(figure, 12.5, why, units)] as const,
        ),
      ),
      [figure, noChargeWords(figure, 'out-of-range')] as const,
    ]),
    ['met', MET_BY_POWER.coverOff('unit')],
  ],
};

describe('no prompt is longer than it can be kept in mind', () => {
  it.each(Object.entries(ALL))('in %s', (_, sentences) => {
    expect(sentences.length).toBeGreaterThan(5);
    const long = sentences.filter(([, text]) => wordsIn(text) > MOST_WORDS);
    expect(long.map(([name, text]) => `${wordsIn(text)} ${name.slice(0, 60)}: ${text}`)).toEqual([]);
  });
});
