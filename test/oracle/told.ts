import { understand } from '../../grammar/phrases/understand.ts';
import type { UnitProfile } from '../../grammar/vocabulary/unit-profile.ts';
import { type Opinion, Oracle } from './oracle.ts';

const MS_A_MINUTE = 60_000;
const MS_A_LINE = 2_000;
const START = Date.parse('2026-06-15T14:00:00Z');

/** Tells the oracle a history in typed lines, without any machine; returns its opinion after the last. */
export function told(
  lines: readonly string[],
  { unit = { id: 'told' }, role = 'technician' }: { unit?: UnitProfile; role?: 'technician' | 'trainee' } = {},
): Opinion {
  const oracle = new Oracle(unit, role);
  let mono = 0;
  let ahead = 0;
  const now = () => ({ at: new Date(START + mono + ahead).toISOString(), mono });
  let opinion = oracle.after({
    type: 'opened.visit',
    time: now(),
    visit: 'told',
    site: 'reading room',
    complaint: 'does not cool',
    role,
    unit,
    software: 'test',
  });
  lines.forEach((line, index) => {
    mono += MS_A_LINE;
    const [order, amount] = line.split(' ');
    if (order === '@wait') mono += Number(amount) * MS_A_MINUTE;
    else if (order === '@clock') ahead += Number(amount) * MS_A_MINUTE;
    else if (order === '@reload') opinion = oracle.after({ type: 'reloaded' });
    else if (order === '@timer') opinion = oracle.after({ type: 'timer.elapsed', time: now(), timer: 'quiet' });
    else if (order === '@supervisor')
      opinion = oracle.after({ type: 'supervisor.acknowledged', time: now(), supervisor: 'the supervisor' });
    else {
      const accepted = order !== '@noise';
      const understanding = understand(accepted ? line : 'mumble', { readings: [] }, { typed: true });
      const utterance = { id: `o${index}`, ear: 'typed' as const, accepted, confidence: 1, understanding };
      opinion = oracle.after({ type: 'heard.utterance', time: now(), utterance });
    }
  });
  return opinion;
}
