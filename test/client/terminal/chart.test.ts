import { describe, expect, it } from 'vitest';
import { type AnyStateNode, setup } from 'xstate';
import { drawChart } from '../../../client/terminal/draw-chart.ts';
import { visitMachine } from '../../../client/visit/chart/machine.ts';
import { phaseChart } from '../../../client/visit/chart/phase-chart.ts';
import { conductorChart, sectionChart } from '../../../client/visit/chart/zone-energy.ts';
import { type ReadBlock, readChart } from './mermaid-chart.ts';

const CHARTS = [visitMachine, phaseChart, conductorChart, sectionChart];
const text = drawChart(...CHARTS);
const { blocks } = readChart(text);
const labels = new Map(blocks.flatMap((block) => [...block.labels]));
const keyOf = (id: string): string => labels.get(id) ?? id;

/** Boxes that stand for several states; a block of that text stands for parts that are alike. */
const standsForMany = (id: string): boolean => / or |^any/.test(keyOf(id)) && !blocks.some((block) => block.id === id);

/** The states of a block: those with a block of their own, and whatever its arrows and texts name. */
function statesOf(block: ReadBlock): readonly string[] {
  const inner = blocks.filter(({ parent }) => parent === block.id).map(({ id }) => id);
  const deeper = new Set(inner.flatMap((id) => statesOf(blocks.find((one) => one.id === id) as ReadBlock)));
  const named = [
    ...(block.initial === undefined ? [] : [block.initial]),
    ...block.finals,
    ...block.labels.keys(),
    ...block.arrows.flatMap(({ from, to }) => [from, to]),
  ];
  return [...new Set([...inner, ...named])].filter((id) => !standsForMany(id) && !deeper.has(id));
}

/** The paths a drawn state stands for: one, or that of every part that is drawn as one. */
function pathsOf(id: string): readonly string[] {
  const home = blocks.find((block) => statesOf(block).includes(id));
  if (home === undefined) throw new Error(`${id} stands in no block`);
  const above = home.id === '' ? [''] : pathsOf(home.id);
  const note = home.notes.find(({ of }) => of === id && keyOf(id).startsWith('each of'));
  const keys = note === undefined ? [keyOf(id)] : note.text.split(', ');
  return above.flatMap((path) => keys.map((key) => (path === '' ? key : `${path}.${key}`)));
}

/** Every drawn arrow, taken apart: one for each state it starts from, each guard, each part it is drawn for. */
function drawnArrows(): readonly string[] {
  return blocks.flatMap((block) =>
    block.arrows.flatMap(({ from, to, label }) => {
      const leavable = statesOf(block).filter((id) => !block.finals.includes(id));
      const sources = !standsForMany(from)
        ? [from]
        : keyOf(from) === 'any'
          ? leavable
          : keyOf(from) === 'any other'
            ? leavable.filter((id) => id !== to)
            : keyOf(from).split(/, | or /);
      const [, event = '', guards] = /^(\S*?)\s?(?:\[(.+)\])?$/.exec(label) ?? [];
      const conditions = guards === undefined ? [''] : guards.split(' or ');
      return sources.flatMap((source) =>
        pathsOf(to).flatMap((target) => {
          const part = target.split('.').slice(0, 3).join('.');
          const starts = pathsOf(source).filter((path) => pathsOf(to).length === 1 || path.startsWith(`${part}.`));
          return starts.flatMap((start) => conditions.map((guard) => `${start} -${event}[${guard}]> ${target}`));
        }),
      );
    }),
  );
}

const within = (node: AnyStateNode): readonly AnyStateNode[] =>
  Object.values(node.states).flatMap((child: AnyStateNode) => [child, ...within(child)]);
const all = CHARTS.flatMap(({ root }) => [root as AnyStateNode, ...within(root)]);
const pathOf = (node: AnyStateNode): string => [node.machine.id, ...node.path].join('.');

/** Every arrow of the machine, in the same form. */
function machineArrows(): readonly string[] {
  return all.flatMap((node) =>
    [...node.transitions, ['', node.always ?? []] as const].flatMap(([event, taken]) =>
      taken.flatMap(({ guard, target }, at) =>
        (target ?? []).flatMap((to: AnyStateNode) => {
          // An arrow into its own inside starts from wherever one is in there.
          const inside = to.parent === node;
          const sources = inside
            ? Object.values(node.states).filter((child: AnyStateNode) => child.type !== 'final')
            : [node];
          const { type, params }: { readonly type: string; readonly params?: object } =
            guard === undefined ? { type: at > 0 ? 'else' : '' } : (guard as never);
          const named = typeof guard === 'string' ? guard : [type, ...Object.values(params ?? {})].join(' ');
          return sources.map((source) => `${pathOf(source as AnyStateNode)} -${event}[${named}]> ${pathOf(to)}`);
        }),
      ),
    ),
  );
}

describe('the chart of a visit', () => {
  it('draws every state of the machine once', () => {
    const drawn = blocks.flatMap(statesOf).flatMap(pathsOf);
    expect(drawn.toSorted()).toEqual(all.map(pathOf).toSorted());
  });

  it('draws every transition of the machine once', () => {
    const machine = machineArrows();
    expect(machine.length).toBeGreaterThan(60);
    expect(drawnArrows().toSorted()).toEqual(machine.toSorted());
  });

  it('begins where each chart does', () => {
    const begins = blocks.flatMap(({ initial }) => (initial === undefined ? [] : pathsOf(initial)));
    const first = all.flatMap((node) =>
      (node.initial?.target ?? []).filter(() => node.type === 'compound').map(pathOf),
    );
    expect(begins.toSorted()).toEqual(first.toSorted());
    expect(blocks.filter(({ parent }) => parent === '').map(({ id }) => id)).toEqual(CHARTS.map(({ id }) => id));
  });

  it('names what is taken without moving', () => {
    const staying = all.flatMap((node) =>
      [...node.transitions].flatMap(([event, taken]) => (taken.some(({ target }) => target) ? [] : [event])),
    );
    const noted = blocks.flatMap(({ notes }) =>
      notes.flatMap(({ text: words }) => /^takes (.+) and stays$/.exec(words)?.[1]?.split(', ') ?? []),
    );
    expect(noted.toSorted()).toEqual(staying.toSorted());
  });

  it('stays short enough for the guide', () => {
    expect(text.length).toBeLessThan(4_000);
  });
});

describe('any machine', () => {
  const small = setup({ guards: { due: () => true } });

  it('gives states of one key, and words of the language, names of their own', () => {
    const drawn = drawChart(
      small.createMachine({
        id: 'm',
        type: 'parallel',
        states: {
          a: {
            initial: 'end',
            states: { end: { on: { go: [{ guard: 'due', target: 'on' }, { target: 'end' }] } }, on: {} },
          },
          b: { initial: 'on', states: { on: {} } },
        },
      }),
    );
    expect(readChart(drawn).blocks.map(({ id }) => id)).toEqual(['', 'm', 'a', 'b']);
    expect(drawn).toContain('state "end" as a_end');
    expect(drawn).toContain('a_end --> on : go [due]');
    expect(drawn).toContain('a_end --> a_end : go [else]');
    expect(drawn).toContain('[*] --> b_on');
  });

  it('wants every guard to have a name', () => {
    const machine = small.createMachine({
      id: 'm',
      initial: 'a',
      states: { a: { on: { go: { guard: () => true, target: 'b' } } }, b: {} },
    });
    expect(() => drawChart(machine)).toThrow(/has no name/);
  });
});
