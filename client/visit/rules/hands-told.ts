import type { Meaning } from '../../../grammar/phrases/meaning.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { deedWords } from '../../words/things/deed-words.ts';
import { workWords } from '../../words/things/job-words.ts';
import { partWords } from '../../words/things/part-words.ts';
import { wireWords } from '../../words/things/wire-words.ts';
import type { VisitContext } from '../chart/context.ts';
import { handsAtDeed, handsAtPart, handsAtWire, handsAtWork } from './hands-at.ts';

/** What was told done by hand, and the zones in which hands were by it. */
export interface HandsTold {
  readonly what: string;
  readonly zones: readonly ZoneId[];
}

/** Where hands were by what was understood, also where it is only asked about: each part of a sentence by itself. */
export function handsToldBy(meaning: Meaning, context: VisitContext): readonly HandsTold[] {
  switch (meaning.kind) {
    case 'several':
      return meaning.parts.flatMap((part) => handsToldBy(part, context));
    case 'wire':
      return [{ what: wireWords(meaning.wire), zones: handsAtWire(meaning.wire, context) }];
    case 'part':
      return [{ what: partWords(meaning.part, meaning.ratings), zones: handsAtPart(meaning.part, [], context) }];
    case 'work':
      return [{ what: workWords(meaning.work), zones: handsAtWork(meaning.work, [], context) }];
    case 'report': {
      const { report } = meaning;
      const isDeed = report.type === 'part-moved' || report.type === 'cover' || report.type === 'deed';
      return isDeed ? [{ what: deedWords(report), zones: handsAtDeed(report) }] : [];
    }
    default:
      return [];
  }
}
