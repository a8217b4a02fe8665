import { DOMParser, type Element, type Node } from '@xmldom/xmldom';
import type { Expression, Rules } from '../../../grammar/phrases/expression.ts';

/** A grammar read back from a text that a speech engine would read. */
export interface ReadGrammar {
  readonly rules: Rules;
  readonly root: string;
}

const choiceOf = (items: Expression[], weights: number[]): Expression =>
  items.length === 1 ? items[0]! : { kind: 'alternative', items, weights };
const sequenceOf = (items: Expression[]): Expression => (items.length === 1 ? items[0]! : { kind: 'sequence', items });

/** What differs between the two text notations. */
interface Notation {
  readonly token: RegExp;
  readonly ruleOf: (token: string) => string | undefined;
}
const JSGF: Notation = {
  token: /<[^>]+>|\/[\d.]+\/|[()[\]|;=*+]|[^\s()[\]|;=*+<>/]+/g,
  ruleOf: (token) => /^<(.+)>$/.exec(token)?.[1],
};
const ABNF: Notation = {
  token: /\$[\w]+|<\d+-\d*>|\/[\d.]+\/|[()[\]|;=]|[^\s()[\]|;=<>/$]+/g,
  ruleOf: (token) => /^\$(\w+)$/.exec(token)?.[1],
};

/** Reads JSGF 1.0 (W3C Note, 5 June 2000): alternatives, weights, groups, optionals, `*` and `+`, public rules. */
export function readJsgf(text: string): ReadGrammar {
  if (!text.startsWith('#JSGF V1.0;\n')) throw new Error('no JSGF header');
  const body = text.slice(text.indexOf('\n') + 1);
  if (!/^grammar \w+;\n/.test(body)) throw new Error('no grammar name');
  return readRules(body.slice(body.indexOf('\n') + 1), JSGF, undefined);
}

/** Reads the ABNF form of SRGS 1.0 (W3C Recommendation, 16 March 2004). */
export function readAbnf(text: string): ReadGrammar {
  if (!text.startsWith('#ABNF 1.0 UTF-8;\n')) throw new Error('no ABNF header');
  const root = /^root \$(\w+);$/m.exec(text)?.[1];
  if (root === undefined || !/^mode voice;$/m.test(text) || !/^language en-US;$/m.test(text)) {
    throw new Error('a declaration is missing');
  }
  const body = text.replace(/^#.*$/m, '').replace(/^(language|mode|root) .*;$/gm, '');
  return readRules(body, ABNF, root);
}

function readRules(body: string, notation: Notation, declared: string | undefined): ReadGrammar {
  const tokens = body.match(notation.token) ?? [];
  const rules: Record<string, Expression> = {};
  let root = declared;
  let at = 0;
  const take = (wanted?: string): string => {
    const token = tokens[at];
    if (token === undefined || (wanted !== undefined && token !== wanted)) {
      throw new Error(`"${wanted ?? 'something'}" missing before "${tokens.slice(at, at + 5).join(' ')}"`);
    }
    at += 1;
    return token;
  };

  function choice(): Expression {
    const items: Expression[] = [];
    const weights: number[] = [];
    do {
      if (items.length > 0) take('|');
      const weight = /^\/([\d.]+)\/$/.exec(tokens[at] ?? '')?.[1];
      if (weight !== undefined) at += 1;
      weights.push(Number(weight ?? 1));
      items.push(run());
    } while (tokens[at] === '|');
    return choiceOf(items, weights);
  }

  function run(): Expression {
    const items: Expression[] = [];
    while (tokens[at] !== undefined && !['|', ')', ']', ';'].includes(tokens[at]!)) items.push(repeated(single()));
    if (items.length === 0) throw new Error('an empty run');
    return sequenceOf(items);
  }

  function repeated(item: Expression): Expression {
    const token = tokens[at] ?? '';
    const bounds = /^<(\d+)-(\d*)>$/.exec(token);
    if (token !== '*' && token !== '+' && bounds === null) return item;
    at += 1;
    if (bounds === null) return { kind: 'repeat', item, least: token === '*' ? 0 : 1 };
    const least = Number(bounds[1]);
    return bounds[2] === ''
      ? { kind: 'repeat', item, least }
      : { kind: 'repeat', item, least, most: Number(bounds[2]) };
  }

  function single(): Expression {
    const token = take();
    if (token === '(' || token === '[') {
      const inner = choice();
      take(token === '(' ? ')' : ']');
      return token === '(' ? inner : { kind: 'optional', item: inner };
    }
    const name = notation.ruleOf(token);
    if (name === 'GARBAGE') return { kind: 'dictation' };
    if (name === 'NULL') return { kind: 'sequence', items: [] };
    return name === undefined ? { kind: 'word', word: token } : { kind: 'rule', name };
  }

  while (at < tokens.length) {
    const isPublic = tokens[at] === 'public';
    if (isPublic) at += 1;
    const name = notation.ruleOf(take());
    if (name === undefined) throw new Error('a rule has no name');
    if (isPublic) root ??= name;
    take('=');
    rules[name] = choice();
    take(';');
  }
  if (root === undefined) throw new Error('no public rule');
  return { rules, root };
}

/** Reads the XML form of SRGS 1.0 with an XML parser of its own. @throws for anything that is not well-formed. */
export function readSrgsXml(text: string): ReadGrammar {
  const onError = (_level: string, message: string): never => {
    throw new Error(message);
  };
  const document = new DOMParser({ onError }).parseFromString(text, 'text/xml');
  const grammar = document.documentElement!;
  if (grammar.namespaceURI !== 'http://www.w3.org/2001/06/grammar') throw new Error('not an SRGS grammar');
  const rules: Record<string, Expression> = {};
  for (const node of elementsOf(grammar)) {
    if (node.tagName !== 'rule') throw new Error(`<${node.tagName}> in a grammar`);
    rules[node.getAttribute('id')!] = contentOf(node);
  }
  return { rules, root: grammar.getAttribute('root')! };
}

const elementsOf = (parent: Node): Element[] =>
  [...parent.childNodes].filter((node): node is Element => node.nodeType === node.ELEMENT_NODE);

function contentOf(parent: Element): Expression {
  const items = [...parent.childNodes].flatMap((node): Expression[] => {
    if (node.nodeType === node.TEXT_NODE) {
      const words = (node.nodeValue ?? '').split(/\s+/).filter((word) => word !== '');
      return words.map((word) => ({ kind: 'word', word }));
    }
    return [elementOf(node as Element)];
  });
  return sequenceOf(items);
}

function elementOf(node: Element): Expression {
  if (node.tagName === 'ruleref') {
    if (node.getAttribute('special') === 'GARBAGE') return { kind: 'dictation' };
    return { kind: 'rule', name: node.getAttribute('uri')!.replace(/^#/, '') };
  }
  if (node.tagName === 'one-of') {
    const items = elementsOf(node);
    return choiceOf(
      items.map(elementOf),
      items.map((item) => Number(item.getAttribute('weight') ?? 1)),
    );
  }
  if (node.tagName !== 'item') throw new Error(`<${node.tagName}> unexpected`);
  const repeat = node.getAttribute('repeat');
  if (repeat === null) return contentOf(node);
  const [least, most] = repeat.split('-');
  if (repeat === '0-1') return { kind: 'optional', item: contentOf(node) };
  return most === ''
    ? { kind: 'repeat', item: contentOf(node), least: Number(least) }
    : { kind: 'repeat', item: contentOf(node), least: Number(least), most: Number(most) };
}
