import { alternative, type Expression, optional, repeat, rule, sequence } from '../phrases/expression.ts';
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
    sequence(rule('n-plate'), optional(rule('unit-name'))),
    pattern('$n-plate over $n-plate [microfarads]'),
    ...(['plate-line-unreadable', 'nameplate-unreadable'] as const).map((id) => pattern(JOB_ITEMS_BY_ID[id].say)),
  );
}

function markOf(field: 'model' | 'serial'): Expression {
  return sequence(pattern(NAMEPLATE_FIELDS_BY_ID[field].say), repeat(rule('mark-sign'), LEAST_SIGNS, MOST_SIGNS));
}

const REFRIGERANTS = (NAMEPLATE_FIELDS_BY_ID.refrigerant.choices ?? []).map(({ say }) => pattern(say));
