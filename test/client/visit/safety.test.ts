import fc from 'fast-check';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { initialTransition, transition } from 'xstate';
import { getShortestPaths } from 'xstate/graph';
import type { VisitContext } from '../../../client/visit/chart/context.ts';
import { emptyContext, visitMachine } from '../../../client/visit/chart/machine.ts';
import { cautionKey, cautionsFor } from '../../../client/visit/rules/cautions-due.ts';
import { needsDead } from '../../../client/visit/steps/choose-step.ts';
import { understand } from '../../../grammar/phrases/understand.ts';
import type { VisitInput } from '../../../grammar/visit/inputs.ts';
import { SEED, tries } from '../../how-much.ts';
import { ARRIVAL_LINES, ROAD_LINES, walks } from './random-walks.ts';
import { LIBRARY_UNIT } from './typed-visit.ts';
import { type Machine, RANKED, walk } from './walk.ts';

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
