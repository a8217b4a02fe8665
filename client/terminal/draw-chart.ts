import type { AnyStateMachine, AnyStateNode, AnyTransitionDefinition } from 'xstate';
import { type Arrow, foldArrows } from './fold-arrows.ts';

/** Words that Mermaid keeps for itself. */
const RESERVED = new Set([
  'state',
  'note',
  'end',
  'class',
  'style',
  'default',
  'direction',
  'click',
  'as',
  'fork',
  'join',
]);

/**
 * Machines' charts as one Mermaid stateDiagram-v2, from their own definitions, one behind the other: parallel states as concurrent
 * parts, `event [guard]` on the arrows. Parallel states that are alike but for their name are drawn once; arrows that
 * many states of a part have in common start at one box, "any", "any other" (than where it leads) or their names.
 * What is taken without moving stands in a note.
 * @throws Error where a guard has no name, or an arrow leads from one part into another that is drawn for several
 */
export function drawChart(...machines: readonly AnyStateMachine[]): string {
  const roots = machines.map(({ root }) => root);
  const nameOf = namer(roots);
  const drawn = roots.flatMap((root) => [...block(root, root.key, nameOf), ...staysNote(root, nameOf)]);
  return `${['stateDiagram-v2', ...drawn].join('\n')}\n`;
}

type Namer = (node: AnyStateNode) => string;

/** Names that Mermaid takes: the key, with the parent's name before it where that is taken already. */
function namer(roots: readonly AnyStateNode[]): Namer {
  const ids = new Map<AnyStateNode, string>();
  const taken = new Set<string>(RESERVED);
  const visit = (node: AnyStateNode, key: string): void => {
    const plain = key.replace(/\W/g, '_');
    const id = taken.has(plain) ? `${node.parent === undefined ? '' : ids.get(node.parent)}_${plain}` : plain;
    taken.add(id);
    ids.set(node, id);
    for (const part of alikeParts(node)) visit(part.node, part.keys.length === 1 ? part.node.key : 'each');
  };
  for (const root of roots) visit(root, root.key);
  return (node) => {
    const id = ids.get(node);
    if (id === undefined) throw new Error(`an arrow leads to ${node.id}, which is not drawn`);
    return id;
  };
}

/** A state with all that is in it, as a block; a state without inner states as its name. */
function block(node: AnyStateNode, label: string, nameOf: Namer): readonly string[] {
  const id = nameOf(node);
  const named = label === id ? [] : [`state "${label}" as ${id}`];
  if (node.type !== 'compound' && node.type !== 'parallel') return named;
  // The parts of a parallel state are not set in: the whole would be.
  const inside =
    node.type === 'parallel' ? concurrent(node, nameOf) : sequential(node, nameOf).map((line) => `  ${line}`);
  return [...named, `state ${id} {`, ...inside, '}'];
}

function concurrent(node: AnyStateNode, nameOf: Namer): readonly string[] {
  return alikeParts(node).flatMap(({ node: part, keys }, at) => [
    ...(at === 0 ? [] : ['--']),
    ...block(part, keys.length === 1 ? part.key : `each of ${keys.length}`, nameOf),
    ...(keys.length === 1 ? [] : [`note right of ${nameOf(part)} : ${keys.join(', ')}`]),
  ]);
}

function sequential(node: AnyStateNode, nameOf: Namer): readonly string[] {
  const children = Object.values(node.states);
  const initial = node.initial.target?.[0];
  const names = children.filter(({ type }) => type !== 'final').map(nameOf);
  const { boxes, arrows } = foldArrows(nameOf(node), names, arrowsIn(node, nameOf));
  return [
    ...(initial === undefined ? [] : [`[*] --> ${nameOf(initial)}`]),
    ...boxes.map(({ id, label }) => `state "${label}" as ${id}`),
    // Before the inner blocks: a name belongs to the block that mentions it last.
    ...arrows.map(({ from, to, label }) => `${from} --> ${to}${label === '' ? '' : ` : ${label}`}`),
    ...children.flatMap((child) => block(child, child.key, nameOf)),
    ...children.filter(({ type }) => type === 'final').map((child) => `${nameOf(child)} --> [*]`),
    ...children.flatMap((child) => staysNote(child, nameOf)),
  ];
}

/** Events that are taken without leaving the state. */
function staysNote(node: AnyStateNode, nameOf: Namer): readonly string[] {
  const events = [...node.transitions].filter(([, taken]) => taken.every(({ target }) => target === undefined));
  if (events.length === 0) return [];
  return [`note right of ${nameOf(node)} : takes ${events.map(([event]) => event).join(', ')} and stays`];
}

/** The arrows that stand in a state's block: those of its children, of what is in them, and its own into itself. */
function arrowsIn(scope: AnyStateNode, nameOf: Namer): readonly Arrow[] {
  return [scope, ...within(scope)].flatMap((source) =>
    transitionsOf(source).flatMap(({ event, transition, otherwise }) =>
      (transition.target ?? [])
        .filter((target) => scopeOf(source, target) === scope)
        .map((target) => ({
          from: source === scope ? undefined : nameOf(source),
          to: nameOf(target),
          event,
          guard: guardLabel(transition, scope) ?? (otherwise ? 'else' : undefined),
        })),
    ),
  );
}

const within = (node: AnyStateNode): readonly AnyStateNode[] =>
  Object.values(node.states).flatMap((child: AnyStateNode) => [child, ...within(child)]);

interface Taken {
  readonly event: string;
  readonly transition: AnyTransitionDefinition;
  /** It comes after guarded ones of the same event. */
  readonly otherwise: boolean;
}

function transitionsOf(node: AnyStateNode): readonly Taken[] {
  const all: [string, readonly AnyTransitionDefinition[]][] = [...node.transitions];
  return [...all, ['', node.always ?? []] as const].flatMap(([event, list]) =>
    list.map((transition, at) => ({ event, transition, otherwise: at > 0 && transition.guard === undefined })),
  );
}

/** The innermost state that holds both ends; the state itself where it leads into itself. */
function scopeOf(source: AnyStateNode, target: AnyStateNode): AnyStateNode | undefined {
  const holders = new Set<AnyStateNode>();
  for (let node = target.parent; node !== undefined; node = node.parent) holders.add(node);
  let node: AnyStateNode | undefined = source;
  while (node !== undefined && !holders.has(node)) node = node.parent;
  return node;
}

/** The guard's name, with its parameters but those that only name the part of the chart it stands in. */
function guardLabel({ guard }: AnyTransitionDefinition, scope: AnyStateNode): string | undefined {
  if (guard === undefined) return undefined;
  if (typeof guard === 'string') return guard;
  if (typeof guard === 'function') throw new Error('a guard of the chart has no name: give it one in the setup');
  const values = Object.values(guard.params ?? {}).filter((value) => value !== scope.key);
  return [guard.type, ...values].join(' ');
}

interface Part {
  readonly node: AnyStateNode;
  /** Its key, and those of the parallel states that are alike. */
  readonly keys: readonly string[];
}

/** The children of a state; of parallel ones that are alike only the first, with the keys of all. */
function alikeParts(node: AnyStateNode): readonly Part[] {
  const children: readonly AnyStateNode[] = Object.values(node.states);
  if (node.type !== 'parallel') return children.map((child) => ({ node: child, keys: [child.key] }));
  const groups = new Map<string, { node: AnyStateNode; keys: string[] }>();
  for (const child of children) {
    const shape = shapeOf(child);
    const group = groups.get(shape) ?? { node: child, keys: [] };
    group.keys.push(child.key);
    groups.set(shape, group);
  }
  return [...groups.values()];
}

/** What a state consists of, without its own name. */
function shapeOf(part: AnyStateNode): string {
  const relative = (node: AnyStateNode) => node.path.slice(part.path.length).join('.');
  const shape = [part, ...within(part)].map((node) => [
    relative(node),
    node.type,
    node.initial?.target?.map((target: AnyStateNode) => relative(target)),
    transitionsOf(node).map(({ event, transition }) => [
      event,
      guardLabel(transition, part),
      transition.target?.map((target) => (within(part).includes(target) ? relative(target) : target.id)),
    ]),
  ]);
  return JSON.stringify(shape);
}
