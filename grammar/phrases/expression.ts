import type { Tag } from './tag.ts';

/** What can be said, as plain data: apart from how it is written down, matched, exported or spoken. */
export type Expression =
  /** One spoken word, in small letters. */
  | { readonly kind: 'word'; readonly word: string }
  | { readonly kind: 'sequence'; readonly items: readonly Expression[] }
  /** One of several. `weights` (default 1 each, as in SRGS) make some dearer. */
  | { readonly kind: 'alternative'; readonly items: readonly Expression[]; readonly weights?: readonly number[] }
  | { readonly kind: 'optional'; readonly item: Expression }
  /** `most` undefined: without end. */
  | { readonly kind: 'repeat'; readonly item: Expression; readonly least: number; readonly most?: number }
  | { readonly kind: 'rule'; readonly name: string }
  /** Matches nothing; says what was meant when the path goes through here. */
  | { readonly kind: 'tag'; readonly tag: Tag }
  /** One or more words of any kind: dictation. */
  | { readonly kind: 'dictation' };

/** Named expressions. A rule never leads back to itself: the whole is a finite network. */
export type Rules = Readonly<Record<string, Expression>>;

export const word = (text: string): Expression => ({ kind: 'word', word: text });
export const sequence = (...items: readonly Expression[]): Expression =>
  items.length === 1 ? items[0]! : { kind: 'sequence', items };
export const alternative = (...items: readonly Expression[]): Expression =>
  items.length === 1 ? items[0]! : { kind: 'alternative', items };
export const optional = (item: Expression): Expression => ({ kind: 'optional', item });
export const repeat = (item: Expression, least: number, most?: number): Expression =>
  most === undefined ? { kind: 'repeat', item, least } : { kind: 'repeat', item, least, most };
export const rule = (name: string): Expression => ({ kind: 'rule', name });
export const tag = (meant: Tag): Expression => ({ kind: 'tag', tag: meant });
