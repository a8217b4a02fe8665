import { COMMANDS } from '../../../../vocabulary/commands.ts';
import { MEASURANDS } from '../../../../vocabulary/measurands.ts';
import { NAMEPLATE_FIELDS } from '../../../../vocabulary/nameplate.ts';
import { OBSERVATIONS } from '../../../../vocabulary/observations.ts';
import { POINTS_BY_ID, type PointId } from '../../../../vocabulary/points.ts';
import { sentencesOf } from '../../../sentences.ts';

const nameOf = (point: PointId): string => POINTS_BY_ID[point].name.replaceAll(',', '');

/** One sentence of each kind that can be said, with "…" where a value belongs. */
export const SENTENCES = sentencesOf([
  ...new Set([
    ...MEASURANDS.map((row) =>
      row.at.length === 2 && !row.onlyByName
        ? `${nameOf(row.at[0]!)} to ${nameOf(row.at[1]!)} …`
        : `${row.say?.split(' | ')[0]?.replace(/[[\]()]/g, '') ?? nameOf(row.at[0]!)} …`,
    ),
    ...COMMANDS.map((row) => row.name),
    ...OBSERVATIONS.map((row) => row.name),
    ...NAMEPLATE_FIELDS.map((row) => `nameplate ${row.name} …`),
    'outdoor disconnect is pulled',
    'outdoor disconnect is back in',
    'meter two forty, zero, zero, zero, meter two forty',
    'fitted a …',
  ]),
]);
