import { URGENT_WORDS } from '../../../grammar/vocabulary/urgent-words.ts';

/** What no prompt holds: the words that are listened for while the mouth speaks, and that anything is safe. */
export const NEVER_SAID = new RegExp(`\\b(${[...URGENT_WORDS, 'safe'].join('|')})\\b`, 'i');
