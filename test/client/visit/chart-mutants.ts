import { GUARDS } from '../../../client/visit/chart/guards.ts';
import type { visitMachine } from '../../../client/visit/chart/machine.ts';
import { visitSetup } from '../../../client/visit/chart/setup.ts';

type Machine = typeof visitMachine;

/** The statechart of a visit with one thing taken away. */
export interface ChartMutant {
  readonly name: string;
  readonly make: (machine: Machine) => Machine;
}

/** The parts of a state's configuration that are mutated here. */
interface StateConfig {
  readonly id?: string;
  readonly initial?: string;
  readonly entry?: unknown;
  readonly always?: Written;
  readonly on?: Readonly<Record<string, Written>>;
  readonly states?: Readonly<Record<string, StateConfig>>;
}
type Written = OneWritten | readonly OneWritten[];
type OneWritten = string | Transition;
interface Transition {
  readonly target?: string | undefined;
  readonly guard?: unknown;
  readonly actions?: unknown;
}

type Path = readonly string[];
/** Changes one part of the configuration; `undefined` takes it away. */
type Change = (part: unknown) => unknown;

/** Zones share one chart: what is taken away is taken from all of them. */
const EVERY_ZONE = '*';

/**
 * Every mutant of the chart, in the order of its configuration: a region or a state gone, a transition never taken,
 * without its guard or without its actions, an entry that does nothing, a named guard that always says the same. One
 * that no test notices says that the thing is not needed, or that a test is missing.
 */
export function chartMutants(machine: Machine): readonly ChartMutant[] {
  const config = machine.config as StateConfig;
  return [...mutantsOf(config, [], 'visit'), ...guardMutants()];
}

function mutantsOf(state: StateConfig, path: Path, name: string): readonly ChartMutant[] {
  const at = (...more: Path): Path => [...path, ...more];
  const own = [
    ...(state.entry === undefined ? [] : [mutant(`${name}: nothing on entry`, at('entry'), () => undefined)]),
    ...Object.entries(state.on ?? {}).flatMap(([event, written]) =>
      transitionMutants(written, at('on', event), `${name} on ${event}`),
    ),
    ...(state.always === undefined ? [] : transitionMutants(state.always, at('always'), `${name} always`)),
  ];
  const states = Object.entries(state.states ?? {});
  const inner = (name === 'energy' ? states.slice(0, 1) : states).flatMap(([key, one]) => {
    const zone = name === 'energy';
    const called = path.length === 0 ? key : `${name}.${zone ? EVERY_ZONE : key}`;
    const inside = at('states', zone ? EVERY_ZONE : key);
    const gone = zone || key === state.initial ? [] : [removal(`${called}: gone`, at(), key)];
    return [...gone, ...mutantsOf(one, inside, called)];
  });
  return [...own, ...inner];
}

function transitionMutants(written: Written, path: Path, name: string): readonly ChartMutant[] {
  if (!Array.isArray(written)) return oneMutants(written as OneWritten, path, name);
  return written.flatMap((one: OneWritten, index) => oneMutants(one, [...path, `${index}`], `${name}[${index}]`));
}

function oneMutants(written: OneWritten, path: Path, name: string): readonly ChartMutant[] {
  const { target, guard, actions } = asTransition(written);
  const called = target === undefined ? name : `${name} to ${target}`;
  const changed =
    (patch: Partial<Transition>): Change =>
    (one) => ({ ...asTransition(one as OneWritten), ...patch });
  return [
    mutant(`${called}: never taken`, path, changed({ guard: () => false })),
    ...(guard === undefined ? [] : [mutant(`${called}: taken unguarded`, path, changed({ guard: undefined }))]),
    ...(actions === undefined || target === undefined
      ? []
      : [mutant(`${called}: without its actions`, path, changed({ actions: undefined }))]),
  ];
}

function asTransition(written: OneWritten): Transition {
  return typeof written === 'string' ? { target: written } : written;
}

function guardMutants(): readonly ChartMutant[] {
  return Object.keys(GUARDS).flatMap((guard) =>
    [true, false].map((answer) => ({
      name: `guard "${guard}": always ${answer}`,
      make: (machine: Machine) => machine.provide({ guards: { [guard]: () => answer } as never }) as Machine,
    })),
  );
}

function mutant(name: string, path: Path, change: Change): ChartMutant {
  return { name, make: (machine) => machineOf(changedAt(machine.config, path, change)) };
}

/** A state gone; whatever led to it stays where it is, but does what it did on the way. */
function removal(name: string, parent: Path, key: string): ChartMutant {
  const drop: Change = (part) => {
    const { [key]: gone, ...others } = (part as StateConfig).states ?? {};
    const id = [`.${key}`, ...(gone?.id === undefined ? [] : [`#${gone.id}`])];
    return { ...withoutTargets({ ...(part as StateConfig), states: others }, id, key) };
  };
  return { name, make: (machine) => machineOf(changedAt(machine.config, parent, drop)) };
}

/** Takes the targets by id out of a state and all inside it, and the sibling's name out of the states right inside it. */
function withoutTargets(state: StateConfig, ids: readonly string[], sibling?: string): StateConfig {
  const states = Object.entries(state.states ?? {}).map(([key, inner]) => [
    key,
    withoutTargets(sibling === undefined ? inner : staying(inner, [sibling]), ids),
  ]);
  return { ...staying(state, ids), ...(state.states === undefined ? {} : { states: Object.fromEntries(states) }) };
}

function staying(state: StateConfig, targets: readonly string[]): StateConfig {
  const one = (written: OneWritten): OneWritten => {
    const transition = asTransition(written);
    return targets.includes(transition.target ?? '') ? { ...transition, target: undefined } : written;
  };
  const all = (written: Written): Written => (Array.isArray(written) ? written.map(one) : one(written as OneWritten));
  const on = Object.fromEntries(Object.entries(state.on ?? {}).map(([event, written]) => [event, all(written)]));
  return {
    ...state,
    ...(state.on === undefined ? {} : { on }),
    ...(state.always === undefined ? {} : { always: all(state.always) }),
  };
}

function machineOf(config: unknown): Machine {
  return visitSetup.createMachine(config as never) as unknown as Machine;
}

/** A copy in which what stands at the path is changed; `*` stands for every key. */
function changedAt(node: unknown, path: Path, change: Change): unknown {
  const [first, ...rest] = path;
  if (first === undefined) return change(node);
  if (Array.isArray(node)) return node.map((one, index) => (`${index}` === first ? changedAt(one, rest, change) : one));
  const record = node as Readonly<Record<string, unknown>>;
  const keys = first === EVERY_ZONE ? Object.keys(record) : [first];
  return { ...record, ...Object.fromEntries(keys.map((key) => [key, changedAt(record[key], rest, change)])) };
}
