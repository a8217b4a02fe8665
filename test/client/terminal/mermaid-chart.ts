/** A state diagram read back from its text: what an own reader makes of it, not the drawer. */
export interface ReadChart {
  /** Names of states, each with the text of its box, by the block they stand in. */
  readonly blocks: readonly ReadBlock[];
}

export interface ReadBlock {
  readonly id: string;
  readonly parent: string | undefined;
  readonly concurrent: boolean;
  readonly initial: string | undefined;
  readonly finals: readonly string[];
  /** Arrows as they are written. */
  readonly arrows: readonly { readonly from: string; readonly to: string; readonly label: string }[];
  /** Texts of boxes that are not their name. */
  readonly labels: ReadonlyMap<string, string>;
  readonly notes: readonly { readonly of: string; readonly text: string }[];
}

const NAME = '[A-Za-z]\\w*';
const LINES = {
  open: new RegExp(`^state (${NAME}) \\{$`),
  label: new RegExp(`^state "([^"]+)" as (${NAME})$`),
  initial: new RegExp(`^\\[\\*\\] --> (${NAME})$`),
  final: new RegExp(`^(${NAME}) --> \\[\\*\\]$`),
  arrow: new RegExp(`^(${NAME}) --> (${NAME})(?: : ([^:;#{}"]+))?$`),
  note: new RegExp(`^note right of (${NAME}) : ([^:;#{}"]+)$`),
};

type Writable = {
  -readonly [K in keyof ReadBlock]: ReadBlock[K] extends readonly (infer T)[]
    ? T[]
    : ReadBlock[K] extends ReadonlyMap<infer A, infer B>
      ? Map<A, B>
      : ReadBlock[K];
};

const newBlock = (id: string, parent: string | undefined): Writable => ({
  id,
  parent,
  concurrent: false,
  initial: undefined,
  finals: [],
  arrows: [],
  labels: new Map(),
  notes: [],
});

/** Reads the part of Mermaid's state diagrams that we write. @throws Error at any other line. */
export function readChart(text: string): ReadChart {
  const [head, ...lines] = text.trimEnd().split('\n');
  if (head !== 'stateDiagram-v2') throw new Error(`no state diagram: ${head}`);
  const top = newBlock('', undefined);
  const blocks: Writable[] = [top];
  const open: Writable[] = [top];
  for (const line of lines.map((one) => one.trim())) readLine(line, open, blocks);
  if (open.length !== 1) throw new Error(`${open.length - 1} blocks stay open`);
  return { blocks };
}

function readLine(line: string, open: Writable[], blocks: Writable[]): void {
  const block = open.at(-1) as Writable;
  const [opens, label, initial, final, arrow, note] = Object.values(LINES).map((form) => form.exec(line));
  if (opens) {
    const inner = newBlock(opens[1] ?? '', block.id);
    open.push(inner);
    blocks.push(inner);
  } else if (line === '}') {
    if (open.length === 1) throw new Error('a block is closed that was never opened');
    open.pop();
  } else if (line === '--') block.concurrent = true;
  else if (label) block.labels.set(label[2] ?? '', label[1] ?? '');
  else if (initial) {
    if (block.initial !== undefined) throw new Error(`two beginnings in ${block.id}`);
    block.initial = initial[1];
  } else if (final) block.finals.push(final[1] ?? '');
  else if (arrow) block.arrows.push({ from: arrow[1] ?? '', to: arrow[2] ?? '', label: arrow[3] ?? '' });
  else if (note) block.notes.push({ of: note[1] ?? '', text: note[2] ?? '' });
  else throw new Error(`no line of a state diagram: ${line}`);
}
