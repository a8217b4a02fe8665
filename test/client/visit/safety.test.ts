import fc from 'fast-check';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { initialTransition, transition } from 'xstate';
import { getShortestPaths } from 'xstate/graph';
import type { VisitContext } from '../../../client/visit/chart/context.ts';
import { emptyContext, visitMachine } from '../../../client/visit/chart/machine.ts';
import { needsDead } from '../../../client/visit/steps/choose-step.ts';
import { cautionKey, cautionsFor } from '../../../client/visit/words/cautions.ts';
import { understand } from '../../../grammar/phrases/understand.ts';
import type { VisitInput } from '../../../grammar/visit/inputs.ts';
import { SEED, tries } from '../../how-much.ts';
import { LIBRARY_UNIT } from './typed-visit.ts';
import { LINES, type Machine, type Move, RANKED, walk } from './walk.ts';

const move: fc.Arbitrary<Move> = fc.oneof(
  { weight: 12, arbitrary: fc.record({ do: fc.constant('say' as const), line: fc.nat(LINES.length - 1) }) },
  {
    weight: 4,
    arbitrary: fc.record({
      do: fc.constant('mouth' as const),
      outcome: fc.constantFrom('spoken' as const, 'spoken' as const, 'cut' as const),
    }),
  },
  {
    weight: 4,
    arbitrary: fc.record({ do: fc.constant('rank' as const), first: fc.nat(RANKED.length - 1), done: fc.boolean() }),
  },
  {
    weight: 1,
    arbitrary: fc.record({ do: fc.constant('minutes' as const), minutes: fc.integer({ min: 1, max: 40 }) }),
  },
  { weight: 1, arbitrary: fc.constant({ do: 'supervise' as const }) },
);

/** A technician who follows the prompts now and then, so that walks get deep: the road to proven dead and the repair. */
const ROAD_LINES = [
  'leg one to ground one eighteen',
  'thermostat is not calling',
  'outdoor disconnect is pulled and locked',
  'meter two forty zero zero zero meter two forty',
  'herm section zero volts d c',
  'fan section zero volts d c',
] as const;
const ARRIVAL_LINES = [
  'outdoor air ninety four degrees',
  'return air eighty degrees',
  'thermostat is calling',
  'outdoor fan is not turning',
] as const;
const PROOF_LINES = [
  'fitted a forty five over five dual capacitor four forty volt',
  'outdoor disconnect is back in',
  'thermostat is calling',
  'outdoor fan is turning',
  'compressor amps eleven point two',
  'fan amps point nine',
] as const;
const INDOOR_ROAD_LINES = [
  'air handler leg one to ground one nineteen',
  'air handler switch is off and locked',
  'meter two forty zero zero zero meter two forty at the air handler',
  'blower capacitor zero volts d c',
  'control circuit meter twenty five zero meter twenty five',
  'disconnect line one to ground one nineteen',
  'breaker at the panel is off and locked',
  'meter two forty zero zero zero meter two forty at the disconnect line side',
] as const;
const asMoves = (lines: readonly string[]): Move[] =>
  lines.map((line): Move => ({ do: 'say', line: LINES.indexOf(line as (typeof LINES)[number]) }));

const ROADS: readonly (readonly Move[])[] = [
  asMoves(ARRIVAL_LINES),
  asMoves(ARRIVAL_LINES),
  asMoves(ROAD_LINES),
  asMoves(INDOOR_ROAD_LINES),
  [
    ...asMoves(PROOF_LINES),
    { do: 'minutes', minutes: 16 },
    ...asMoves(['return air eighty degrees', 'supply air sixty one degrees']),
  ],
];

/** A ranking, the mouth's outcome, the technician's word: the way through a caution. */
const cautioned = fc
  .tuple(fc.nat(RANKED.length - 1), fc.constantFrom('spoken' as const, 'cut' as const))
  .map(([first, outcome]): Move[] => [
    { do: 'rank', first, done: false },
    { do: 'mouth', outcome },
    { do: 'say', line: LINES.indexOf('live') },
  ]);

const walks = fc.tuple(
  fc.constantFrom('technician' as const, 'trainee' as const),
  fc.array(
    fc.oneof(
      { weight: 6, arbitrary: move.map((one) => [one]) },
      { weight: 2, arbitrary: fc.constantFrom(...ROADS) },
      { weight: 2, arbitrary: cautioned },
    ),
    {
      minLength: 20,
      maxLength: 60,
    },
  ),
);

/** The first property broken by any of many seeded walks, and how many steps were walked. */
function firstBroken(
  machine: Machine,
  runs: number,
): { readonly broken: string | undefined; readonly steps: number; readonly states: ReadonlySet<string> } {
  let steps = 0;
  let broken: string | undefined;
  const states = new Set<string>();
  fc.assert(
    fc.property(walks, ([role, parts]) => {
      if (broken !== undefined) return;
      const moves = parts.flat();
      steps += moves.length;
      const walked = walk(machine, moves, role, machine === visitMachine);
      broken ??= walked.broken;
      for (const state of walked.states) states.add(state);
    }),
    { seed: SEED, numRuns: runs, endOnFailure: true },
  );
  return { broken, steps, states };
}

interface StateNode {
  readonly path: readonly string[];
  readonly states: Readonly<Record<string, StateNode>>;
}

/** Every state of the chart, as dotted paths. */
function allStates(node: StateNode = visitMachine.root): readonly string[] {
  const inner = Object.values(node.states).flatMap((one) => allStates(one));
  return node.path.length === 0 ? inner : [node.path.join('.'), ...inner];
}

describe('over seeded random walks of the visit', () => {
  const walked = firstBroken(visitMachine, tries(100, 450));

  it('keeps every interlock', () => {
    expect(walked.broken).toBeUndefined();
    expect(walked.steps).toBeGreaterThanOrEqual(tries(4_000, 20_000));
  });

  it('enters every state of every region', () => {
    expect(allStates().length).toBeGreaterThan(50);
    expect(allStates().filter((state) => !walked.states.has(state))).toEqual([]);
  });
});

describe('a walk over a machine with one guard taken away', () => {
  it.each([
    ['caution due', () => false, 'no live step is prompted without its caution spoken and acknowledged'],
    [
      'caution was spoken',
      ({ event }: { event: { type: string } }) => event.type === 'mouth.finished',
      'a caution is acknowledged only after it was spoken whole',
    ],
    ['supervisor due', () => false, "no trainee's live step is prompted without a supervisor"],
    [
      'concerns zone',
      ({ event }: { event: { type: string } }, { zone }: { zone: string }) =>
        zone !== 'outdoor-load' && event.type.startsWith('energy.'),
      undefined,
    ],
  ])('of "%s" breaks a property', (guard, replaced, property) => {
    const mutant = visitMachine.provide({ guards: { [guard]: replaced } as never }) as Machine;
    const { broken } = firstBroken(mutant, 120);
    if (property === undefined) expect(broken).toBeDefined();
    else expect(broken).toBe(property);
  });
});

describe('a walk over code with one check taken away', () => {
  afterEach(() => {
    vi.resetModules();
    vi.doUnmock('../../../client/visit/steps/choose-step.ts');
  });

  it('of "proven dead" breaks the rule of ohms and hands', async () => {
    vi.resetModules();
    vi.doMock('../../../client/visit/steps/choose-step.ts', async (original) => ({
      ...(await original<Record<string, unknown>>()),
      isProvenDead: () => true,
    }));
    const mutated = await import('../../../client/visit/chart/machine.ts');
    const { broken } = firstBroken(mutated.visitMachine as Machine, 120);
    expect(broken).toMatch(/proven dead/);
  });
});

describe('over the shortest paths of an abstracted product of the regions', () => {
  const time = { at: '2026-06-15T14:00:00.000Z', mono: 1000 };
  const say = (text: string): VisitInput => ({
    type: 'heard.utterance',
    time,
    utterance: { id: text, ear: 'typed', accepted: true, confidence: 1, understanding: understand(text) },
  });
  const opening: VisitInput = {
    type: 'opened.visit',
    time,
    visit: 'v',
    site: 's',
    complaint: 'c',
    role: 'technician',
    unit: LIBRARY_UNIT,
    software: 't',
  };
  const arrived = [opening, ...ARRIVAL_LINES.map(say)].reduce(
    (state, input) => transition(visitMachine, state, input)[0],
    initialTransition(visitMachine, emptyContext())[0],
  );
  const inputs = [
    ...ROAD_LINES.map(say),
    ...[
      'live',
      'outdoor disconnect is back in',
      'thermostat is calling',
      'yes',
      'hold the visit',
      'go on with the visit',
    ].map(say),
    say('fan section one point one microfarads on the bench'),
    say('fitted a forty five over five dual capacitor four forty volt'),
  ];
  /** What tells two snapshots apart here: the regions, the switch, and which cautions are acknowledged. */
  const abstract = (state: { value: unknown; context: VisitContext }): string =>
    JSON.stringify([
      state.value,
      state.context.isolation,
      state.context.step?.id,
      [...state.context.acknowledged].sort(),
    ]);

  it('prompts nothing live without its caution acknowledged and nothing hands-on outside proven dead', {
    timeout: 240_000,
  }, () => {
    const paths = getShortestPaths(visitMachine as never, {
      input: emptyContext() as never,
      fromState: arrived as never,
      serializeState: abstract as never,
      events: ((state: { context: VisitContext }) => [
        ...inputs,
        {
          type: 'diagnosis.answered',
          time,
          answer: {
            version: 'paths',
            forSeq: state.context.evidenceNumber,
            suspects: [],
            next: RANKED,
            hazards: [],
            done: false,
          },
        },
        ...(state.context.caution === undefined
          ? []
          : [{ type: 'mouth.finished', time, prompt: state.context.caution.prompt, outcome: 'spoken' }]),
      ]) as never,
    }) as unknown as readonly { readonly state: { value: { step: unknown }; context: VisitContext } }[];
    expect(paths.length).toBeGreaterThan(300);
    for (const { state } of paths) {
      const { step } = state.context;
      if (state.value.step !== 'asked' || step === undefined) continue;
      for (const id of cautionsFor(step)) expect(state.context.acknowledged).toContain(cautionKey(id, step.zone));
      if (needsDead(step.needs)) expect(state.context.energy['outdoor-load']).toBe('proven-dead');
    }
  });
});
