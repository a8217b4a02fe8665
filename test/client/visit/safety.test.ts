import fc from 'fast-check';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { transition } from 'xstate';
import { getShortestPaths } from 'xstate/graph';
import type { VisitContext } from '../../../client/visit/chart/context.ts';
import { newVisit, visitMachine } from '../../../client/visit/chart/machine.ts';
import { phaseChart } from '../../../client/visit/chart/phase-chart.ts';
import { visitSetup } from '../../../client/visit/chart/setup.ts';
import { STEP_STATES } from '../../../client/visit/chart/step-states.ts';
import { ENERGY_CHARTS } from '../../../client/visit/chart/zone-energy.ts';
import { cautionsFor } from '../../../client/visit/rules/cautions-due.ts';
import { needsDead } from '../../../client/visit/steps/choose-step.ts';
import { understand } from '../../../grammar/phrases/understand.ts';
import { cautionKey } from '../../../grammar/visit/facts.ts';
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

/** Every state of a chart, as dotted paths. */
function statesOf(node: StateNode): readonly string[] {
  const inner = Object.values(node.states).flatMap((one) => statesOf(one));
  return node.path.length === 0 ? inner : [node.path.join('.'), ...inner];
}

/** Those of the visit, of the phases and of the energy of each zone. */
function allStates(): readonly string[] {
  return [
    ...statesOf(visitMachine.root),
    ...statesOf(phaseChart.root).map((phase) => `phase.${phase}`),
    ...Object.entries(ENERGY_CHARTS).flatMap(([zone, chart]) => statesOf(chart.root).map((one) => `${zone}.${one}`)),
  ];
}

describe('over seeded random walks of the visit', () => {
  const walked = firstBroken(visitMachine, tries(100, 450));

  it('keeps every interlock', () => {
    expect(walked.broken).toBeUndefined();
    expect(walked.steps).toBeGreaterThanOrEqual(tries(4_000, 20_000));
  });

  it('enters every state of every chart', () => {
    expect(allStates().length).toBeGreaterThan(45);
    expect(allStates().filter((state) => !walked.states.has(state))).toEqual([]);
  });
});

describe('a walk over a machine with one guard taken away', () => {
  it.each([
    ['caution due', () => false, 'no live step is prompted without its caution spoken and acknowledged'],
    ['supervisor due', () => false, "no trainee's live step is prompted without a supervisor"],
  ])('of "%s" breaks a property', (guard, replaced, property) => {
    const mutant = visitMachine.provide({ guards: { [guard]: replaced } as never }) as Machine;
    const { broken } = firstBroken(mutant, 120);
    expect(broken).toBe(property);
  });

  it('of a caution that was cut breaks a property', () => {
    const over = { target: 'awaiting' };
    const speaking = { ...STEP_STATES.cautioning.states.speaking, on: { 'caution.over': over, 'caution.cut': over } };
    const { config } = visitMachine as unknown as { config: { states: { open: object } } };
    const cautioning = { ...STEP_STATES.cautioning, states: { ...STEP_STATES.cautioning.states, speaking } };
    const open = { ...config.states.open, states: { ...STEP_STATES, cautioning } };
    const mutant = visitSetup.createMachine({ ...config, states: { ...config.states, open } } as never);
    const { broken } = firstBroken(mutant as unknown as Machine, 120);
    expect(broken).toBe('a caution is acknowledged only after it was spoken whole');
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
    newVisit(),
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
      state.context.energy,
      state.context.phase,
      state.context.isolation,
      // A search for a source is the same whenever it began.
      state.context.step?.id.replace(/#\d+$/, ''),
      [...state.context.acknowledged].sort(),
      state.context.caution?.prompts.length,
    ]);

  it('prompts nothing live without its caution acknowledged and nothing hands-on outside proven dead', {
    timeout: 240_000,
  }, () => {
    const paths = getShortestPaths(visitMachine as never, {
      input: newVisit().context as never,
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
          : [{ type: 'mouth.finished', time, prompt: state.context.caution.prompts[0], outcome: 'spoken' }]),
      ]) as never,
    }) as unknown as readonly { readonly state: { value: { open?: unknown }; context: VisitContext } }[];
    expect(paths.length).toBeGreaterThan(300);
    for (const { state } of paths) {
      const { step } = state.context;
      if (state.value.open !== 'asked' || step === undefined) continue;
      for (const id of cautionsFor(step)) expect(state.context.acknowledged).toContain(cautionKey(id, step.zone));
      if (needsDead(step.needs)) expect(state.context.energy['outdoor-load']).toBe('proven-dead');
    }
  });
});
