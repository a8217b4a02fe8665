import type { CoverId } from './covers.ts';
import type { DeedId } from './deeds.ts';
import type { PartId } from './parts.ts';

const OFF = '(?:took|taken|take|taking|pulled|pulling|removed|removing|yanked)';

/**
 * What hands do where they may be hurt, by the words alone: for a sentence that was not understood as a whole. Tried on
 * words in small letters; the plain ways to say it, as the deeds, covers and parts have them.
 */
export const HAND_SIGNS: readonly {
  readonly words: RegExp;
  readonly tells:
    | { readonly type: 'deed'; readonly deed: DeedId }
    | { readonly type: 'cover'; readonly cover: CoverId; readonly state: 'off' }
    | { readonly type: 'part-moved'; readonly part: PartId; readonly to: 'out' };
}[] = [
  {
    words:
      /\b(?:compressor|shell)\b(?:(?! not | isn't )[^,;.])*\b(?:hot|burning|scalding)\b|\bhands? on the (?:compressor|shell)\b/,
    tells: { type: 'deed', deed: 'shell-touched' },
  },
  {
    words: /\b(?:press|push|held|hold|forc)(?:ed|ing|e)? (?:in |down )?(?:the )?(?:contactor|armature)\b/,
    tells: { type: 'deed', deed: 'contactor-pressed' },
  },
  {
    words: /\b(?:bypass|defeat)(?:ed|ing)? (?:the |a )?(?:\w+ ){0,2}switch\b/,
    tells: { type: 'deed', deed: 'switch-bypassed' },
  },
  {
    words: new RegExp(`\\bterminal cover(?: is|'s)? off\\b|\\b${OFF} (?:off )?the terminal cover\\b`),
    tells: { type: 'cover', cover: 'compressor-terminals', state: 'off' },
  },
  ...(
    [
      ['contactor', 'contactor'],
      ['capacitor|cap', 'capacitor'],
      ['fan motor', 'fan-motor'],
      ['compressor', 'compressor'],
      ['transformer', 'transformer'],
    ] as const
  ).map(([name, part]) => ({
    words: new RegExp(`\\b${OFF} (?:out )?the (?:old )?(?:${name})\\b`),
    tells: { type: 'part-moved', part, to: 'out' } as const,
  })),
];
