/** An option of a tool; one that takes a value says by what name the help calls it. */
interface ToolOption {
  readonly value?: string;
  /** What it does, as the help says it. */
  readonly says: string;
}

/** What a terminal tool is: its help is printed from this, and its options are read by it. */
export interface Tool {
  /** The name of its script in package.json. */
  readonly name: string;
  /** What it does, in one line. */
  readonly purpose: string;
  /** What may follow the command, one line a form. */
  readonly usage: readonly string[];
  readonly options: Readonly<Record<string, ToolOption>>;
  /** True where words that are no options may be given, such as files. */
  readonly words?: boolean;
  /** Whatever else one must know to use it, one line each. */
  readonly notes?: readonly string[];
  /** Whole command lines. */
  readonly examples: readonly string[];
  /** What the exit code says. */
  readonly exits: string;
}

/** What was given on the command line of a tool. */
export interface Given<T extends Tool> {
  readonly options: {
    readonly [Name in keyof T['options']]?: T['options'][Name] extends { readonly value: string } ? string : boolean;
  };
  readonly words: readonly string[];
}

const COMMON: Tool['options'] = {
  help: { says: 'prints this' },
  version: { says: 'prints the version of Readback' },
};

/** The options of a tool with those that every tool has. */
export function optionsOf(tool: Tool): Tool['options'] {
  return { ...tool.options, ...COMMON };
}

/** How the tool's help is called up. */
export function helpCommand(tool: Tool): string {
  return `npm run -s ${tool.name} -- --help`;
}

/** The help of a tool: what it does, how it is used, its options, examples, exit codes. */
export function helpText(tool: Tool): string {
  const rows = Object.entries(optionsOf(tool)).map(
    ([name, { value, says }]) => [`--${name}${value === undefined ? '' : ` ${value}`}`, says] as const,
  );
  const column = Math.max(...rows.map(([left]) => left.length)) + 3;
  return [
    `${tool.name}: ${tool.purpose}`,
    '',
    ...tool.usage.map(
      (form, at) => `${at === 0 ? 'Usage:' : '      '} npm run -s ${tool.name}${form === '' ? '' : ` ${form}`}`,
    ),
    '',
    'Options:',
    ...rows.map(([left, says]) => `  ${left.padEnd(column)}${says}`),
    '',
    ...(tool.notes === undefined ? [] : [...tool.notes, '']),
    'Examples:',
    ...tool.examples.map((example) => `  ${example}`),
    '',
    `Exits ${tool.exits}`,
    '',
  ].join('\n');
}
