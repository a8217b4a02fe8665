import { describe, expect, it } from 'vitest';
import type { UnitProfile } from '../../grammar/vocabulary/unit-profile.ts';
import type { ZoneId } from '../../grammar/vocabulary/zones.ts';
import { importsOf } from '../house/import-graph.ts';
import { CONTROL_PROOF, HANDLER_PROOF, LINE_SIDE_PROOF, PROOF_BY_POINTS, WHOLE_PROOF } from './lines.ts';
import { told } from './told.ts';

type Role = 'technician' | 'trainee';
type Setting = { readonly unit?: UnitProfile; readonly role?: Role };

const without = (lines: readonly string[], line: string): readonly string[] => lines.filter((one) => one !== line);
const HARD_START: UnitProfile = { id: 'told', hardStart: true };

/** What the oracle has against a zone: rule and reason. */
const against = (zone: ZoneId, lines: readonly string[], setting?: Setting): readonly string[] =>
  told(lines, setting).against[zone].map(({ rule, reason }) => `${rule}: ${reason}`);

describe('the oracle lets a zone be called proven dead', () => {
  it.each<[string, ZoneId, readonly string[], Setting?]>([
    ['the outdoor unit, six pairs in one breath', 'outdoor-load', WHOLE_PROOF],
    ['the outdoor unit, its pairs named one by one', 'outdoor-load', PROOF_BY_POINTS],
    [
      'the outdoor unit, with a leg named beside the breath',
      'outdoor-load',
      [...WHOLE_PROOF.slice(0, 3), `${WHOLE_PROOF[3]}, T one to ground zero volts`, ...WHOLE_PROOF.slice(4)],
    ],
    [
      'the outdoor unit, with the meter proven in between',
      'outdoor-load',
      [...PROOF_BY_POINTS.slice(0, 7), 'meter proves two forty', ...PROOF_BY_POINTS.slice(7)],
    ],
    [
      'the outdoor unit, three values and three more',
      'outdoor-load',
      [
        ...WHOLE_PROOF.slice(0, 3),
        ...Array(2).fill('meter two forty zero zero zero meter two forty'),
        ...WHOLE_PROOF.slice(4),
      ],
    ],
    [
      'v: on the ground of the line side that stays fed',
      'outdoor-load',
      [...WHOLE_PROOF.slice(1, 3), 'line side one to ground one eighteen', ...WHOLE_PROOF.slice(3)],
    ],
    [
      'a unit with a start capacitor, read too',
      'outdoor-load',
      [...WHOLE_PROOF, 'start cap zero volts d c'],
      { unit: HARD_START },
    ],
    ['a capacitor section once it is read', 'capacitor-herm', WHOLE_PROOF],
    ['the line side', 'disconnect-line', LINE_SIDE_PROOF],
    ['the air handler', 'air-handler', HANDLER_PROOF],
    ['the control circuit', 'control', CONTROL_PROOF],
    ['e: a short reload', 'outdoor-load', [...WHOLE_PROOF, '@reload', 'what next']],
    ['e: 20 minutes, then accepted words', 'outdoor-load', [...WHOLE_PROOF, '@wait 20', 'what next']],
    ['f: what denies that a part runs', 'outdoor-load', [...WHOLE_PROOF, 'compressor is not running']],
    ['g: 24 volts in their own zone', 'outdoor-load', [...WHOLE_PROOF, 'coil twenty four volts']],
    ['p: a trainee with the supervisor', 'outdoor-load', ['@supervisor', ...WHOLE_PROOF], { role: 'trainee' }],
    ['w: the breaker above a locked disconnect', 'outdoor-load', [...WHOLE_PROOF, 'panel breaker is on']],
  ])('%s', (_, zone, lines, setting) => {
    expect(against(zone, lines, setting)).toEqual([]);
  });
});

describe('the oracle does not', () => {
  const THREE = 'meter two forty zero zero zero meter two forty';
  const SAME =
    'meter two forty leg one zero leg one zero leg one zero leg one zero leg one zero leg one zero meter two forty';
  const HALF = PROOF_BY_POINTS.slice(0, 7);
  const REST = PROOF_BY_POINTS.slice(7);
  it.each<[string, ZoneId, readonly string[], string, Setting?]>([
    ['by words alone', 'outdoor-load', WHOLE_PROOF.slice(0, 3), 'c: its proof was not begun in order'],
    [
      'without a lock',
      'outdoor-load',
      without(WHOLE_PROOF, 'outdoor disconnect is pulled and locked'),
      'c: its proof was not begun in order',
    ],
    [
      'without the call off',
      'outdoor-load',
      without(WHOLE_PROOF, 'thermostat is not calling'),
      'c: its proof was not begun in order',
    ],
    ['on an untried ground', 'outdoor-load', WHOLE_PROOF.slice(1), 'c: its ground never read a full leg'],
    [
      'on a ground read after isolation',
      'outdoor-load',
      [...WHOLE_PROOF.slice(1, 3), 'leg one to ground one eighteen', ...WHOLE_PROOF.slice(2)],
      'c: its ground never read a full leg',
    ],
    [
      'indoors on a ground outdoors (v)',
      'air-handler',
      ['leg one to ground one eighteen', ...HANDLER_PROOF.slice(1)],
      'c: its ground never read a full leg',
    ],
    [
      'by three values at two sides of a contactor',
      'outdoor-load',
      [...WHOLE_PROOF.slice(0, 3), THREE],
      'c: not every pair was read',
    ],
    ['by one pair six times', 'outdoor-load', [...WHOLE_PROOF.slice(0, 3), SAME], 'c: not every pair was read'],
    [
      'by T1 with L2 for T1 with T2',
      'outdoor-load',
      PROOF_BY_POINTS.map((line) => (line === 'T one to T two zero volts' ? 'leg two to T one zero volts' : line)),
      'c: not every pair was read',
    ],
    [
      'by ohms for volts',
      'outdoor-load',
      PROOF_BY_POINTS.map((line) => (line === 'T one to T two zero volts' ? 'T one to T two zero ohms' : line)),
      'c: not every pair was read',
    ],
    [
      'after a pair is corrected',
      'outdoor-load',
      [...PROOF_BY_POINTS.slice(0, 10), 'correction zero', 'meter proves two forty'],
      'c: not every pair was read',
    ],
    [
      'after a value of the breath is corrected',
      'outdoor-load',
      [...WHOLE_PROOF.slice(0, 4), 'correction zero', ...WHOLE_PROOF.slice(4)],
      'c: a pair of the proof was corrected',
    ],
    [
      'after its pair is taken back',
      'disconnect-line',
      [...LINE_SIDE_PROOF, 'take that back'],
      'c: a part of the proof was taken back',
    ],
    ['without the meter again', 'outdoor-load', PROOF_BY_POINTS.slice(0, 10), 'd: the meter was not proven again'],
    [
      'when the proof took longer than 10 minutes',
      'outdoor-load',
      [...HALF, '@wait 11', ...REST],
      'd: its proof took longer than 10 minutes',
    ],
    [
      'when half a proof is made whole later',
      'outdoor-load',
      [...HALF, '@wait 11', 'meter proves two forty', ...REST],
      'c: not every pair was read',
    ],
    [
      'after half an hour without accepted words',
      'outdoor-load',
      [...WHOLE_PROOF, '@wait 31', '@noise', '@timer'],
      'e: nobody was there for 30 minutes',
    ],
    [
      'after the wall clock went back',
      'outdoor-load',
      [...WHOLE_PROOF, '@clock -5', 'what next'],
      'e: the clock went back',
    ],
    [
      'after the clocks went apart',
      'outdoor-load',
      [...WHOLE_PROOF, '@clock 5', 'what next'],
      'e: the clocks went apart',
    ],
    [
      'after a gap in the record',
      'outdoor-load',
      [...WHOLE_PROOF, '@reload', '@wait 5', 'what next'],
      'e: there is a gap in the record',
    ],
    ...[
      'power is back on',
      'it is live',
      'lock is off',
      'I hear the compressor',
      'somebody flipped it',
      'my helper got shocked',
      'note power is back on',
    ].map((line): [string, ZoneId, readonly string[], string] => [
      `after "${line}"`,
      'outdoor-load',
      [...WHOLE_PROOF, line],
      'f: the words can mean that power is back',
    ]),
    [
      'by a new proof under a lock that was said to be off',
      'outdoor-load',
      [...WHOLE_PROOF, 'lock is off', ...WHOLE_PROOF.slice(3)],
      'c: its proof was not begun in order',
    ],
    [
      'by a proof under a lock that was said to be off',
      'control',
      [
        'service switch is off and locked',
        'lock is off',
        ...without(CONTROL_PROOF, 'service switch is off and locked'),
      ],
      'c: its proof was not begun in order',
    ],
    ['after a shock', 'outdoor-load', [...WHOLE_PROOF, 'I got a shock'], 'f: somebody is hurt'],
    ['after a part runs', 'outdoor-load', [...WHOLE_PROOF, 'outdoor fan is turning'], 'f: a part runs'],
    [
      'after the switch came back',
      'outdoor-load',
      [...WHOLE_PROOF, 'outdoor disconnect is back in'],
      'f: its power or lock came back',
    ],
    [
      'after that was taken back too',
      'outdoor-load',
      [...WHOLE_PROOF, 'outdoor disconnect is back in', 'take that back'],
      'f: its power or lock came back',
    ],
    [
      'b: when the same breath brings power back',
      'disconnect-line',
      [...LINE_SIDE_PROOF.slice(0, 2), `${LINE_SIDE_PROOF[2]}, panel breaker is on`],
      'f: its power or lock came back',
    ],
    ['after volts', 'outdoor-load', [...WHOLE_PROOF, 'T one to ground one fourteen'], 'g: there is live evidence'],
    [
      'h: by direct current read before',
      'outdoor-load',
      [...WHOLE_PROOF.slice(4), ...WHOLE_PROOF.slice(0, 4)],
      'n: a charged section is not read',
    ],
    ['with a section unread', 'outdoor-load', WHOLE_PROOF.slice(0, 5), 'n: a charged section is not read'],
    [
      'with a section taken back',
      'outdoor-load',
      [...WHOLE_PROOF, 'take that back'],
      'n: a charged section is not read',
    ],
    [
      'with a start capacitor unread',
      'outdoor-load',
      WHOLE_PROOF,
      'n: a charged section is not read',
      { unit: HARD_START },
    ],
    ['for a trainee alone', 'outdoor-load', WHOLE_PROOF, 'p: a trainee alone proves nothing', { role: 'trainee' }],
    [
      'w: on the line side of a breaker that closes',
      'disconnect-line',
      [...LINE_SIDE_PROOF, 'panel breaker is on'],
      'f: its power or lock came back',
    ],
  ])('%s', (_, zone, lines, objection, setting) => {
    expect(against(zone, lines, setting)).toEqual([objection]);
  });
});

describe('the oracle wants a warning', () => {
  const UNIT: UnitProfile = {
    id: 'told',
    compressor: { rla: 15.4, lra: 77 } as NonNullable<UnitProfile['compressor']>,
  };
  const FLAMMABLE: UnitProfile = { id: 'told', refrigerant: 'R-32' };
  const OPENED = 'opened the system';
  it.each<[string, readonly string[], Setting?]>([
    ['a: wire moved in a zone not proven', ['lifted the red wire from T one']],
    ['a: jumper in a zone not proven', ['put a jumper across leg one and T one']],
    ['a: part fitted in a zone not proven', ['fitted a contactor']],
    ['a: part out in a zone not proven', ['took the contactor out']],
    ['a: terminal cover off in a zone not proven', ['the terminal cover is off']],
    ['a: ohms in a zone not proven', ['fan common to fan run twelve ohms']],
    ['a: wire moved in a zone not proven', [...WHOLE_PROOF, 'outdoor fan is turning, lifted the red wire from T one']],
    ['e: proof lapsed', [...WHOLE_PROOF, '@clock 5', 'what next']],
    ['f: power back where it was proven dead', [...WHOLE_PROOF, 'it is live']],
    ['f: somebody is hurt', ['I got a shock']],
    ['g: voltage where it was reported off', ['outdoor disconnect is pulled', 'leg one to ground one eighteen']],
    [
      'g: voltage within a proof',
      ['outdoor disconnect is pulled', 'meter two forty zero zero one eighteen meter two forty'],
    ],
    ['h: d.c. of what is live', ['fan section zero volts d c']],
    ['j: grounded winding', [...WHOLE_PROOF, 'compressor common to shell zero ohms']],
    ['j: power back after a trip, windings not read', ['the breaker is tripped', 'panel breaker is on']],
    [
      'j: a second reset',
      [
        ...WHOLE_PROOF,
        'the breaker is tripped',
        'compressor common to shell open',
        'panel breaker is on',
        'panel breaker is on',
      ],
    ],
    ['k: overcurrent device too large', [...LINE_SIDE_PROOF, 'fitted a sixty amp breaker'], { unit: UNIT }],
    [
      'k: overcurrent device too large',
      [...LINE_SIDE_PROOF, 'nameplate max fuse thirty amps', 'fitted a forty amp breaker'],
    ],
    ['l: power with the refrigerant circuit not closed', [OPENED, 'outdoor disconnect is back in']],
    ['l: call with the refrigerant circuit not closed', [OPENED, 'thermostat is calling']],
    ['l: run with the refrigerant circuit not closed', [OPENED, 'compressor is running']],
    ['l: run in vacuum', ['vacuum four hundred microns', 'compressor is running']],
    ['m: flammable refrigerant', [], { unit: FLAMMABLE }],
    ['m: flammable refrigerant', ['nameplate refrigerant R thirty two']],
    ['m: flame on a charged line', ['brazed the joint']],
    ['o: compressor on the bench', ['compressor common to compressor run two ohms on the bench']],
    ['p: live reading of a trainee alone', ['leg one to ground one eighteen'], { role: 'trainee' }],
    ['q: power back with a jumper on', ['put a jumper across leg one and T one', 'outdoor disconnect is back in']],
    ['q: power back with a wire off', ['lifted the red wire from T one', 'outdoor disconnect is back in']],
    ['q: power back with a cover off', ['the terminal cover is off', 'outdoor disconnect is back in']],
    ['q: power back with a lock recorded', ['outdoor disconnect is pulled and locked', 'panel breaker is on']],
    ['r: contactor pressed by hand', ['pressed the contactor by hand']],
    ['r: pressure switch bypassed', ['jumped high switch side one to high switch side two']],
    ['r: hand on a hot shell', ['compressor is too hot to touch']],
  ])('%s', (warning, lines, setting) => {
    expect(told(lines, setting).due.map(({ rule, kind }) => `${rule}: ${kind}`)).toContain(warning);
  });
});

describe('the oracle stands alone', () => {
  it('and reads nothing of the machine', () => {
    const core = ['oracle', 'facts', 'heard-words', 'proof-rules', 'warning-rules', 'live-evidence'];
    const files = [...core, 'take-part', 'take-reading', 'take-report', 'take-back'];
    const lines = files.flatMap((name) => importsOf(`test/oracle/${name}.ts`));
    const others = lines.filter(({ to }) => !/^grammar\/(vocabulary|visit|phrases\/meaning)/.test(to));
    expect(lines.length).toBeGreaterThan(20);
    expect(others.filter(({ to }) => !files.some((name) => to === `test/oracle/${name}.ts`))).toEqual([]);
  });
});

describe('the oracle wants none', () => {
  it.each<[string, readonly string[], Setting?]>([
    ['a: for work in a zone that is proven dead', [...WHOLE_PROOF, 'lifted the red wire from T one']],
    ['a: for ohms there', [...WHOLE_PROOF, 'fan common to fan run twelve ohms']],
    ['a: for a part on the bench', ['herm section forty four microfarads on the bench']],
    ['a: for a filter', ['fitted an air filter']],
    ['e: when nothing was proven', ['@clock 5', 'what next']],
    ['g: for volts of what was never reported off', ['leg one to ground one eighteen']],
    [
      'g: for a leg set right that was read before',
      ['leg one to ground one eighteen', 'outdoor disconnect is pulled', 'correction one seventeen'],
    ],
    ['h: for what is left in a section of a dead unit', WHOLE_PROOF],
    [
      'j: for a reset after the windings were read',
      [
        ...WHOLE_PROOF,
        'the breaker is tripped',
        'compressor common to shell open',
        'outdoor disconnect lock is off',
        'panel breaker is on',
      ],
    ],
    [
      'k: for a device within the plate',
      [...LINE_SIDE_PROOF, 'nameplate max fuse thirty amps', 'fitted a thirty amp breaker'],
    ],
    [
      'l: once it is closed in order',
      [
        'recovered four pounds',
        'opened the system',
        'nitrogen three hundred psi',
        'vacuum four hundred microns',
        'added five pounds',
        'outdoor disconnect is back in',
      ],
    ],
    ['m: for a flame on a recovered line', ['recovered four pounds', 'lit the torch']],
    ['p: for a trainee with the supervisor', ['@supervisor', 'leg one to ground one eighteen'], { role: 'trainee' }],
    [
      'q: once the jumper is off',
      ['put a jumper across leg one and T one', 'removed the jumper', 'outdoor disconnect is back in'],
    ],
  ])('%s', (_, lines, setting) => {
    expect(told(lines, setting).due).toEqual([]);
  });
});
