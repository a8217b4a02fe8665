import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseSync } from 'vite';
import { TOP } from './import-graph.ts';

/** A piece of the syntax tree, in the ESTree form that the parser gives; JSX and TypeScript nodes among them. */
interface Node {
  readonly type: string;
  readonly start: number;
  readonly [field: string]: unknown;
}

/** Text that a source file holds itself, with the place it stands in. */
export interface Literal {
  readonly text: string;
  /** How a person gets it: by ear, on a page, or whatever way a sentence may take. */
  readonly as: 'spoken' | 'shown' | 'sentence';
  /** FILE:LINE */
  readonly at: string;
}

/** Attributes and properties of components that people read. */
const SHOWN_ATTRIBUTES: readonly string[] = [
  'aria-label',
  'aria-valuetext',
  'aria-description',
  'title',
  'label',
  'placeholder',
  'alt',
];

/** Properties whose value people hear or read, here or in the record. */
const SHOWN_PROPERTIES: readonly string[] = ['words', 'why', 'sentence', 'title', 'label'];

/** Calls that hand words on to people or to the record, and which argument holds them. */
const TOLD: ReadonlyMap<unknown, 0 | -1> = new Map([
  ['say', -1],
  ['onEnter', -1],
  ['commandKey', 0],
  ['reportKey', 0],
  ['padKey', 0],
  ['writeKey', 0],
]);

/** Text of a file that is given to a mouth, written into a page, or reads as a sentence. */
export function literalsOf(file: string): readonly Literal[] {
  return literalsIn(file, readFileSync(join(TOP, file), 'utf8'));
}

export function literalsIn(file: string, source: string): readonly Literal[] {
  const { program, errors } = parseSync(file, source);
  if (errors.length > 0) throw new Error(`${file}: ${errors[0]?.message}`);
  const found: Literal[] = [];
  const add = (as: Literal['as'], node: Node, text: string) => {
    if (!found.some((one) => one.text === text && one.at === at(node))) found.push({ text, as, at: at(node) });
  };
  const at = (node: Node) => `${file}:${source.slice(0, node.start).split('\n').length}`;
  const visit = (node: Node): void => {
    for (const [as, part] of givenToPeople(node)) {
      for (const [literal, text] of textsIn(part)) if (HAS_WORD.test(text)) add(as, literal, text.trim());
    }
    if (isCitationOrError(node)) return;
    const text = textOf(node);
    if (text !== undefined && isSentence(text)) add('sentence', node, text.trim());
    for (const child of childrenOf(node)) visit(child);
  };
  visit(program as unknown as Node);
  return found;
}

/** Every text of a file's own, citations and names of properties apart. */
export function textsOf(file: string): readonly string[] {
  const { program } = parseSync(file, readFileSync(join(TOP, file), 'utf8'));
  const texts: string[] = [];
  const visit = (node: Node): void => {
    if (isCitationOrError(node)) return;
    const text = textOf(node);
    if (text !== undefined) texts.push(text);
    for (const child of childrenOf(node)) if (child !== node['key']) visit(child);
  };
  visit(program as unknown as Node);
  return texts;
}

const HAS_WORD = /\p{L}{2}/u;

/** What of a node reaches people as it is: the words of a call such as `say(kind, words)`, text and labels of a page. */
function* givenToPeople(node: Node): Generator<readonly [Literal['as'], Node]> {
  const told = node.type === 'CallExpression' ? TOLD.get(calledName(node)) : undefined;
  if (told !== undefined) {
    const words = (node['arguments'] as readonly Node[]).at(told);
    if (words !== undefined) yield ['spoken', words];
  }
  if (node.type === 'Property' && SHOWN_PROPERTIES.includes(String((node['key'] as Node)['name']))) {
    yield ['shown', node['value'] as Node];
  }
  if (node.type === 'JSXText') yield ['shown', node];
  if (node.type === 'JSXElement' || node.type === 'JSXFragment') {
    for (const child of node['children'] as readonly Node[])
      if (child.type === 'JSXExpressionContainer') yield ['shown', child];
  }
  if (node.type === 'JSXAttribute' && SHOWN_ATTRIBUTES.includes(String((node['name'] as Node)['name']))) {
    const value = node['value'] as Node | null;
    if (value !== null) yield ['shown', value];
  }
}

function calledName(node: Node): unknown {
  const callee = node['callee'] as Node;
  return callee.type === 'MemberExpression' ? (callee['property'] as Node)['name'] : callee['name'];
}

/** Every text that an expression may come to: not what it compares with, looks up by, or hands to something else. */
function* textsIn(node: Node): Generator<readonly [Node, string]> {
  const text = textOf(node);
  if (text !== undefined) yield [node, text];
  switch (node.type) {
    case 'ConditionalExpression':
      yield* textsIn(node['consequent'] as Node);
      yield* textsIn(node['alternate'] as Node);
      return;
    case 'LogicalExpression':
    case 'BinaryExpression':
      if (node.type === 'BinaryExpression' && node['operator'] !== '+') return;
      yield* textsIn(node['left'] as Node);
      yield* textsIn(node['right'] as Node);
      return;
    case 'TemplateLiteral':
    case 'ArrayExpression':
      for (const part of (node['expressions'] ?? node['elements']) as readonly Node[]) yield* textsIn(part);
      return;
    case 'CallExpression': {
      // ['Not closed:', why].join(' ') says what it joins.
      const callee = node['callee'] as Node;
      if (callee.type === 'MemberExpression') yield* textsIn(callee['object'] as Node);
      return;
    }
    case 'JSXExpressionContainer':
    case 'ParenthesizedExpression':
    case 'TSAsExpression':
      yield* textsIn(node['expression'] as Node);
  }
}

/** The text of a string, of the fixed parts of a template, of a page. */
function textOf(node: Node): string | undefined {
  if (node.type === 'Literal' && typeof node['value'] === 'string') return node['value'];
  if (node.type === 'JSXText') return String(node['value']);
  if (node.type !== 'TemplateLiteral') return undefined;
  return (node['quasis'] as readonly Node[])
    .map((part) => (part['value'] as { readonly cooked: string }).cooked)
    .join('…');
}

/** Prose: words with a stop, a colon or a question among or behind them, or a line of several that begins with a capital. */
function isSentence(text: string): boolean {
  const words = text.match(/\p{L}{2,}/gu) ?? [];
  if (words.length < 2 || !/\p{L} +\p{L}/u.test(text)) return false;
  return /\p{L}[.?!:;,](\s|$)/u.test(text) || /^\s*\p{Lu}\p{Ll}+ \p{Ll}/u.test(text);
}

/** Where a standard is cited for the record, or where a programmer is told of his own mistake. */
function isCitationOrError(node: Node): boolean {
  if (node.type === 'NewExpression') return /Error$/.test(String((node['callee'] as Node)['name']));
  if (node.type === 'ImportDeclaration' || node.type === 'TSLiteralType') return true;
  if (node.type === 'VariableDeclarator') return /(^|_)SOURCE$/.test(String((node['id'] as Node)['name']));
  if (node.type === 'Property') return (node['key'] as Node)['name'] === 'source';
  return node.type === 'CallExpression' && calledName(node) === 'warn' && isConsole(node['callee'] as Node);
}

function isConsole(callee: Node): boolean {
  return callee.type === 'MemberExpression' && (callee['object'] as Node)['name'] === 'console';
}

function* childrenOf(node: Node): Generator<Node> {
  for (const value of Object.values(node)) {
    for (const one of Array.isArray(value) ? value : [value]) if (isNode(one)) yield one;
  }
}

function isNode(value: unknown): value is Node {
  return typeof value === 'object' && value !== null && typeof (value as { readonly type?: unknown }).type === 'string';
}
