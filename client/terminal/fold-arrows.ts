export interface Arrow {
  /** Undefined: from wherever one is inside. */
  readonly from: string | undefined;
  readonly to: string;
  /** Empty for one that is taken at once. */
  readonly event: string;
  readonly guard: string | undefined;
}

interface Folded {
  /** Boxes that stand for several states. */
  readonly boxes: readonly { readonly id: string; readonly label: string }[];
  readonly arrows: readonly { readonly from: string; readonly to: string; readonly label: string }[];
}

/** So many states with the same arrow are drawn as one. */
const MANY = 3;

/**
 * Draws arrows that many states have in common once, from a box that stands for these states, and joins the guards of
 * one event between the same two. `block` names the state they are in, `states` those that can be left.
 */
export function foldArrows(block: string, states: readonly string[], arrows: readonly Arrow[]): Folded {
  const boxes = new Map<string, string>();
  const boxFor = (label: string): string => {
    const known = [...boxes].find(([, text]) => text === label)?.[0];
    const id = known ?? `${block}_${label.startsWith('any') ? label.replace(' ', '_') : `some${boxes.size}`}`;
    boxes.set(id, label);
    return id;
  };
  const folded = groupBy(arrows, ({ to, event, guard }) => JSON.stringify([to, event, guard])).flatMap((same) => {
    const [{ to, event, guard }] = same as [Arrow];
    const sources = same.flatMap(({ from }) => (from === undefined ? states : [from]));
    const label = sources.length < MANY ? undefined : sharedLabel(sources, states, to);
    return (label === undefined ? sources : [boxFor(label)]).map((from) => ({ from, to, event, guard }));
  });
  const joined = groupBy(folded, ({ from, to, event }) => JSON.stringify([from, to, event])).map((same) => {
    const [{ from, to, event }] = same as [(typeof folded)[number]];
    const guards = same.flatMap(({ guard }) => (guard === undefined ? [] : [guard]));
    const condition = guards.length === 0 ? [] : [`[${guards.join(' or ')}]`];
    return { from, to, label: [...(event === '' ? [] : [event]), ...condition].join(' ') };
  });
  return { boxes: [...boxes].map(([id, label]) => ({ id, label })), arrows: joined };
}

function sharedLabel(sources: readonly string[], states: readonly string[], to: string): string {
  const rest = states.filter((state) => !sources.includes(state));
  if (sources.every((source) => states.includes(source))) {
    if (rest.length === 0) return 'any';
    if (rest.length === 1 && rest[0] === to) return 'any other';
  }
  return `${sources.slice(0, -1).join(', ')} or ${sources.at(-1)}`;
}

function groupBy<T>(items: readonly T[], keyOf: (item: T) => string): readonly (readonly T[])[] {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const key = keyOf(item);
    groups.set(key, [...(groups.get(key) ?? []), item]);
  }
  return [...groups.values()];
}
