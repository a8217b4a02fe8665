import { ListeningError } from '../listening-error.ts';

/** A rule's right side as a tree; weights and tags are dropped, they steer nothing here. */
export type JsgfNode =
  | { readonly kind: 'word'; readonly word: string }
  | { readonly kind: 'rule'; readonly name: string }
  | { readonly kind: 'sequence' | 'choice'; readonly items: readonly JsgfNode[] }
  /** `least` 0 or 1 times, then as often as one likes where `many`. */
  | { readonly kind: 'repeat'; readonly item: JsgfNode; readonly least: 0 | 1; readonly many: boolean }
  /** Never spoken. */
  | { readonly kind: 'void' };

export interface Jsgf {
  readonly rules: ReadonlyMap<string, JsgfNode>;
  /** The first public rule. */
  readonly root: string;
}

const TOKEN =
  /\s+|\/\/[^\n]*|\/\*[\s\S]*?\*\/|(?<weight>\/\s*[\d.eE+-]+\s*\/)|(?<tag>\{(?:\\.|[^}\\])*\})|(?<rule><[^<>\s]+>)|(?<quoted>"(?:\\.|[^"\\])*")|(?<mark>[=|()[\]*+;])|(?<word>[^\s=|()[\]*+;<>{}"/]+)/y;

type Token = { readonly kind: 'rule' | 'word' | 'mark'; readonly text: string };

/**
 * Reads a grammar in JSGF (W3C Note, 5 June 2000): one grammar without imports.
 * @throws ListeningError `grammar-broken` saying where
 */
export function parseJsgf(text: string): Jsgf {
  const header = /^\s*#JSGF[^;]*;\s*(?:\/\/[^\n]*\s*|\/\*[\s\S]*?\*\/\s*)*grammar\s+[\w.$-]+\s*;/.exec(text);
  if (header === null) throw broken('it does not begin with "#JSGF V1.0; grammar NAME;"');
  const reader = new Reader(tokens(text, header[0].length));
  const rules = new Map<string, JsgfNode>();
  let root: string | undefined;
  while (!reader.done) {
    const open = reader.take('word', 'public');
    const name = reader.need('rule');
    reader.need('mark', '=');
    rules.set(name, reader.choice());
    reader.need('mark', ';');
    if (open) root ??= name;
  }
  if (root === undefined) throw broken('no rule is public');
  return { rules, root };
}

const broken = (detail: string): ListeningError => new ListeningError('grammar-broken', { detail });

function tokens(text: string, from: number): Token[] {
  const found: Token[] = [];
  TOKEN.lastIndex = from;
  while (TOKEN.lastIndex < text.length) {
    const at = TOKEN.lastIndex;
    const match = TOKEN.exec(text);
    if (match === null) throw broken(`line ${text.slice(0, at).split('\n').length} has a character out of place`);
    const { rule, quoted, mark, word } = match.groups ?? {};
    if (rule !== undefined) found.push({ kind: 'rule', text: rule.slice(1, -1) });
    else if (mark !== undefined) found.push({ kind: 'mark', text: mark });
    else if (word !== undefined) found.push({ kind: 'word', text: word });
    else if (quoted !== undefined) found.push({ kind: 'word', text: quoted.slice(1, -1) });
  }
  return found;
}

class Reader {
  readonly #tokens: readonly Token[];
  #at = 0;

  constructor(list: readonly Token[]) {
    this.#tokens = list;
  }

  get done(): boolean {
    return this.#at >= this.#tokens.length;
  }

  take(kind: Token['kind'], text: string): boolean {
    const token = this.#tokens[this.#at];
    if (token?.kind !== kind || token.text !== text) return false;
    this.#at += 1;
    return true;
  }

  need(kind: Token['kind'], text?: string): string {
    const token = this.#tokens[this.#at];
    if (token?.kind !== kind || (text !== undefined && token.text !== text)) {
      throw broken(`"${token?.text ?? 'the end'}" stands where ${text ?? `a ${kind}`} should`);
    }
    this.#at += 1;
    return token.text;
  }

  choice(): JsgfNode {
    const items = [this.#sequence()];
    while (this.take('mark', '|')) items.push(this.#sequence());
    return items.length === 1 ? items[0]! : { kind: 'choice', items };
  }

  #sequence(): JsgfNode {
    const items: JsgfNode[] = [];
    for (let item = this.#item(); item !== undefined; item = this.#item()) {
      for (;;) {
        if (this.take('mark', '*')) item = { kind: 'repeat', item, least: 0, many: true };
        else if (this.take('mark', '+')) item = { kind: 'repeat', item, least: 1, many: true };
        else break;
      }
      items.push(item);
    }
    if (items.length === 0) throw broken('an alternative is empty');
    return items.length === 1 ? items[0]! : { kind: 'sequence', items };
  }

  #item(): JsgfNode | undefined {
    const token = this.#tokens[this.#at];
    if (token === undefined) return undefined;
    if (token.kind === 'mark' && token.text !== '(' && token.text !== '[') return undefined;
    this.#at += 1;
    if (token.kind === 'word') return { kind: 'word', word: token.text };
    if (token.kind === 'rule') return ruleOf(token.text);
    const inner = this.choice();
    this.need('mark', token.text === '(' ? ')' : ']');
    return token.text === '(' ? inner : { kind: 'repeat', item: inner, least: 0, many: false };
  }
}

function ruleOf(name: string): JsgfNode {
  if (name === 'NULL') return { kind: 'sequence', items: [] };
  return name === 'VOID' ? { kind: 'void' } : { kind: 'rule', name };
}
