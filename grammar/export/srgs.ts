import type { Expression, Rules } from '../phrases/expression.ts';
import { RULES } from '../phrases/languages/english/rules/utterance-rules.ts';
import { plain } from './plain.ts';
import { reachedRules } from './reached-rules.ts';

/** SRGS forbids ".", ":" and "-" in a rule's name. */
const ruleName = (name: string): string => name.replaceAll('-', '_');
const escaped = (word: string): string => word.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
const weightOf = (weight: number): string => weight.toFixed(2);

/** The words of every rule: what is said, without what it means. */
export const SPOKEN_RULES: Rules = Object.fromEntries(
  Object.entries(RULES).map(([name, expression]) => [name, plain(expression, 'keep')]),
);

/**
 * The grammar in the XML form of SRGS (W3C Recommendation, Speech Recognition Grammar Specification 1.0, 16 March
 * 2004). Dictation is the special rule GARBAGE.
 *
 * @param rules named expressions without tags; the whole language where left out
 * @param root the rule that is a whole utterance
 */
export function toSrgsXml(rules: Rules = SPOKEN_RULES, root = 'utterance'): string {
  const lines = reachedRules(rules, root).map(([name, expression]) => {
    const scope = name === root ? ' scope="public"' : '';
    return `  <rule id="${ruleName(name)}"${scope}>${xml(expression)}</rule>`;
  });
  return `<?xml version="1.0" encoding="UTF-8"?>
<grammar version="1.0" xmlns="http://www.w3.org/2001/06/grammar" xml:lang="en-US" mode="voice" root="${ruleName(root)}">
${lines.join('\n')}
</grammar>
`;
}

function xml(expression: Expression): string {
  switch (expression.kind) {
    case 'word':
      return escaped(expression.word);
    case 'sequence':
      return expression.items.map(xml).join(' ');
    case 'alternative': {
      const items = expression.items.map((item, index) => {
        const weight = expression.weights?.[index] ?? 1;
        return `<item${weight === 1 ? '' : ` weight="${weightOf(weight)}"`}>${xml(item)}</item>`;
      });
      return `<one-of>${items.join('')}</one-of>`;
    }
    case 'optional':
      return `<item repeat="0-1">${xml(expression.item)}</item>`;
    case 'repeat':
      return `<item repeat="${expression.least}-${expression.most ?? ''}">${xml(expression.item)}</item>`;
    case 'rule':
      return `<ruleref uri="#${ruleName(expression.name)}"/>`;
    case 'dictation':
      return '<ruleref special="GARBAGE"/>';
    case 'tag':
      return '';
  }
}

/** The same grammar in the ABNF form of SRGS. */
export function toSrgsAbnf(rules: Rules = SPOKEN_RULES, root = 'utterance'): string {
  const lines = reachedRules(rules, root).map(([name, expression]) => {
    const scope = name === root ? 'public ' : '';
    return `${scope}$${ruleName(name)} = ${abnf(expression)};`;
  });
  return `#ABNF 1.0 UTF-8;

language en-US;
mode voice;
root $${ruleName(root)};

${lines.join('\n')}
`;
}

function abnf(expression: Expression): string {
  switch (expression.kind) {
    case 'word':
      return expression.word;
    case 'sequence':
      return expression.items.length === 0 ? '$NULL' : expression.items.map(grouped).join(' ');
    case 'alternative':
      return expression.items
        .map((item, index) => {
          const weight = expression.weights?.[index] ?? 1;
          return `${weight === 1 ? '' : `/${weightOf(weight)}/ `}${item.kind === 'alternative' ? grouped(item) : abnf(item)}`;
        })
        .join(' | ');
    case 'optional':
      return `[${abnf(expression.item)}]`;
    case 'repeat':
      return `(${abnf(expression.item)}) <${expression.least}-${expression.most ?? ''}>`;
    case 'rule':
      return `$${ruleName(expression.name)}`;
    case 'dictation':
      return '$GARBAGE';
    case 'tag':
      return '$NULL';
  }
}

const grouped = (expression: Expression): string =>
  expression.kind === 'alternative' ? `(${abnf(expression)})` : abnf(expression);
