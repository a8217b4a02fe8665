import { alternative, type Expression, optional, repeat, rule, sequence, word } from '../phrases/expression.ts';
import { LEAST_SIGNS, MOST_SIGNS } from '../phrases/languages/english/rules/plate-rules.ts';
import { pattern } from '../phrases/pattern.ts';
import { JOB_ITEMS_BY_ID } from '../vocabulary/job-items.ts';
import { NAMEPLATE_FIELDS_BY_ID, type NameplateFieldId } from '../vocabulary/nameplate.ts';

/**
 * What answers the question for a line of the nameplate, as the recogniser takes it over. Letters are listened for only
 * behind "model" and "serial": alone they would be heard in any noise.
 */
export function plateAnswers(fields: readonly NameplateFieldId[]): Expression {
  return alternative(
    ...(fields.includes('refrigerant') ? REFRIGERANTS : []),
    ...(['model', 'serial'] as const).flatMap((field) => (fields.includes(field) ? [markOf(field)] : [])),
    // Where a refrigerant is asked for, its number alone is its name and no other number means anything.
    ...(fields[0] === 'refrigerant' ? [] : NUMBERS),
    ...(['plate-line-unreadable', 'nameplate-unreadable'] as const).map((id) => pattern(JOB_ITEMS_BY_ID[id].say)),
  );
}

const NUMBERS: readonly Expression[] = [
  sequence(rule('n-plate'), optional(rule('unit-name'))),
  pattern('$n-plate over $n-plate [microfarads]'),
];

function markOf(field: 'model' | 'serial'): Expression {
  const { say } = NAMEPLATE_FIELDS_BY_ID[field];
  // A dash at the edge is none of the mark: as many signs as it needs stand beside it.
  const least = Array.from({ length: LEAST_SIGNS }, () => [optional(word('dash')), rule('mark-letter')]).flat();
  return sequence(pattern(say), ...least.slice(1), repeat(rule('mark-sign'), 0, MOST_SIGNS - LEAST_SIGNS));
}

const REFRIGERANTS = (NAMEPLATE_FIELDS_BY_ID.refrigerant.choices ?? []).map(({ say }) => pattern(say));
