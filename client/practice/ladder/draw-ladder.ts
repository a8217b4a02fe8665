import { POINTS, POINTS_BY_ID, type PointId } from '../../../grammar/vocabulary/points.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import { BRANCHES, type BranchName, type NodeName } from '../../diagnosis/circuit/topology.ts';
import { POINT_NODES } from '../../diagnosis/measuring/point-nodes.ts';
import { type Known, LADDER_ELEMENTS, type LadderElement, type Sign } from './ladder-elements.ts';

export const LADDER_SECTIONS = ['supply', 'outdoor', 'indoor', 'control'] as const;
export type LadderSection = (typeof LADDER_SECTIONS)[number];

/** One thing of a rung, from left to right: a place for a probe, or a part between two. */
export type RungItem =
  | { readonly kind: 'terminal'; readonly point: PointId }
  | {
      readonly kind: 'part';
      readonly branch: BranchName;
      readonly sign: Sign;
      readonly known: Exclude<Known, 'not-there'>;
    };

/** A line from one rail to the other. */
export interface Rung {
  /** What it hangs on, left and right. */
  readonly rails: readonly [PointId | undefined, PointId | undefined];
  readonly items: readonly RungItem[];
}

export interface Ladder {
  readonly sections: Readonly<Record<LadderSection, readonly Rung[]>>;
  /** Parts of which nobody has said whether the unit has them: drawn, and named as such. */
  readonly notSaid: readonly BranchName[];
}

/** What a rung is drawn for, and the rails that it hangs between. */
interface Wanted {
  readonly section: LadderSection;
  readonly load?: BranchName;
  readonly left: readonly NodeName[];
  readonly right: readonly NodeName[];
}

const SUPPLIED: readonly [readonly NodeName[], readonly NodeName[]] = [
  ['T1', 'L1'],
  ['T2', 'L2'],
];
const RUNGS: readonly Wanted[] = [
  { section: 'supply', left: ['service-1'], right: ['T1'] },
  { section: 'supply', left: ['service-2'], right: ['T2'] },
  ...(['crankcase-heater', 'compressor-run', 'compressor-start', 'hard-start', 'fan-run', 'fan-start'] as const).map(
    (load): Wanted => ({ section: 'outdoor', load, left: SUPPLIED[0], right: SUPPLIED[1] }),
  ),
  ...(['transformer-magnetising', 'blower-run', 'blower-winding-start'] as const).map(
    (load): Wanted => ({ section: 'indoor', load, left: ['service-1'], right: ['service-2'] }),
  ),
  { section: 'control', left: ['secondary-hot'], right: ['R-handler'] },
  { section: 'control', load: 'R-wire-outdoors', left: ['R-handler'], right: ['R-condenser'] },
  ...(
    [
      'thermostat-electronics',
      'contactor-coil',
      'blower-relay-coil',
      'reversing-valve-coil',
      'unloader-solenoid',
    ] as const
  ).map((load): Wanted => ({ section: 'control', load, left: ['R-handler'], right: ['C-handler'] })),
];

/** What uses power: a way to a rail leads through none of them. */
const USES: readonly Sign[] = ['winding', 'coil', 'heater', 'supply'];
interface Edge {
  readonly branch: BranchName;
  readonly from: NodeName;
  readonly to: NodeName;
  readonly element: LadderElement;
}
const EDGES: readonly Edge[] = BRANCHES.flatMap(({ id, from, to }) => {
  const element = LADDER_ELEMENTS[id];
  return element === undefined ? [] : [{ branch: id, from, to, element }];
});

/** Whether a capacitor may lie on the way: only where what is drawn is fed through it. */
const passes = ({ element }: Edge, load: BranchName | undefined): boolean =>
  !USES.includes(element.sign) &&
  (element.sign !== 'capacitor' || load?.endsWith('-start') === true) &&
  element.ends?.[0] !== 'start-cap-1';

interface Way {
  readonly nodes: readonly NodeName[];
  readonly edges: readonly Edge[];
}

/** The shortest way from a node to one of the rails. */
function wayTo(start: NodeName, rails: readonly NodeName[], load: BranchName | undefined): Way {
  const seen = new Set<NodeName>([start]);
  let ways: Way[] = [{ nodes: [start], edges: [] }];
  while (ways.length > 0) {
    const there = ways.find(({ nodes }) => rails.includes(nodes.at(-1)!));
    if (there !== undefined) return there;
    ways = ways.flatMap(({ nodes, edges }) =>
      EDGES.filter((edge) => passes(edge, load)).flatMap((edge) => {
        const here = nodes.at(-1)!;
        const next = edge.from === here ? edge.to : edge.to === here ? edge.from : undefined;
        if (next === undefined || seen.has(next)) return [];
        seen.add(next);
        return [{ nodes: [...nodes, next], edges: [...edges, edge] }];
      }),
    );
  }
  return { nodes: [start], edges: [] };
}

function wayOf({ load, left, right }: Wanted): Way {
  if (load === undefined) return wayTo(left[0]!, right, undefined);
  const edge = EDGES.find(({ branch }) => branch === load)!;
  const before = wayTo(edge.from, left, load);
  const after = wayTo(edge.to, right, load);
  return {
    nodes: [...[...before.nodes].reverse(), ...after.nodes],
    edges: [...[...before.edges].reverse(), edge, ...after.edges],
  };
}

/** Terminals of a node of the circuit, in the order of the points. */
const pointsOf = (node: NodeName): readonly PointId[] =>
  POINTS.filter(({ id }) => POINT_NODES[id] === node).map(({ id }) => id);
const NOT_AT_RUNGS: readonly PointId[] = ['ground', 'neutral', 'shell', 'fan-frame'];
/** Terminals that stand by themselves, or at their own part. */
const APART: readonly PointId[] = [...NOT_AT_RUNGS, ...EDGES.flatMap(({ element }) => element.ends ?? [])];

/**
 * The unit's ladder diagram, made of the circuit that the diagnosis solves. Each terminal stands once, beside the part
 * that it belongs to. A part that the unit has not is left out; one that nobody told of is drawn, and said to be open.
 *
 * @param commonOn the leg that the commons of compressor and fan hang on, where the wiring sheet says it: 1 or 2
 */
export function drawLadder(unit: UnitProfile, commonOn: 1 | 2 = 2): Ladder {
  const shown = new Set<PointId>();
  const notSaid = new Set<BranchName>();
  const sections: Record<LadderSection, Rung[]> = { supply: [], outdoor: [], indoor: [], control: [] };
  const ways = RUNGS.map((wanted) => ({ wanted, way: wayOf(wanted) }));
  const isWhole = ({ wanted }: (typeof ways)[number]) =>
    wanted.load === undefined || knownOf(wanted.load, unit) !== 'not-there';
  const drawn = ways.filter(isWhole);
  const hasPlace = (point: PointId) =>
    drawn.some(({ way }) => way.nodes.some((node, at) => POINT_NODES[point] === node && isBeside(point, way, at)));
  for (const { wanted, way } of drawn) {
    const items: RungItem[] = [];
    way.nodes.forEach((node, at) => {
      for (const point of pointsOf(node)) {
        if (shown.has(point) || APART.includes(point) || (hasPlace(point) && !isBeside(point, way, at))) continue;
        shown.add(point);
        items.push({ kind: 'terminal', point });
      }
      const edge = way.edges[at];
      if (edge !== undefined) items.push(...partOf(edge, unit, shown, notSaid));
    });
    const railAt = (node: NodeName | undefined) => {
      const [point] = node === undefined ? [] : pointsOf(node);
      return point === undefined || wanted.section !== 'outdoor' ? point : exchanged(point, commonOn);
    };
    sections[wanted.section].push({ rails: [railAt(way.nodes[0]), railAt(way.nodes.at(-1))], items });
  }
  sections.supply.push({
    rails: [undefined, undefined],
    items: NOT_AT_RUNGS.map((point) => ({ kind: 'terminal', point })),
  });
  return { sections, notSaid: [...notSaid] };
}

const knownOf = (branch: BranchName, unit: UnitProfile): Known => LADDER_ELEMENTS[branch]?.known?.(unit) ?? 'there';

/** Beside a part of its own place, left or right. */
function isBeside(point: PointId, { edges }: Way, at: number): boolean {
  const place: string | undefined = POINTS_BY_ID[point].place;
  return [edges[at - 1], edges[at]].some((edge) => edge?.element.place === place && place !== undefined);
}

function partOf(
  { branch, element }: Edge,
  unit: UnitProfile,
  shown: Set<PointId>,
  notSaid: Set<BranchName>,
): readonly RungItem[] {
  const known = knownOf(branch, unit);
  if (known === 'not-there') return [];
  if (known === 'not-said') notSaid.add(branch);
  const part: RungItem = { kind: 'part', branch, sign: element.sign, known };
  const [first, last] = element.ends ?? [];
  const end = (point: PointId | undefined): readonly RungItem[] => {
    if (point === undefined || shown.has(point)) return [];
    shown.add(point);
    return [{ kind: 'terminal', point }];
  };
  return [...end(first), part, ...end(last)];
}

/** The circuit is kept with its commons on T2: where they hang on T1, all loads hang the other way round. */
function exchanged(point: PointId, commonOn: 1 | 2): PointId {
  if (commonOn === 2) return point;
  return ({ T1: 'T2', T2: 'T1' } as const)[point as 'T1'] ?? point;
}
