import { sayNumber } from '../../../grammar/phrases/languages/english/numbers/say-number.ts';
import type { ChargeFigure, JudgedWord, NoVerdict } from '../../../grammar/visit/events.ts';

const FIGURES: Readonly<Record<ChargeFigure, string>> = {
  superheat: 'Superheat',
  subcooling: 'Subcooling',
  'condensing-over-ambient': 'Condensing over ambient',
};

const NOT_JUDGED: Readonly<Record<NoVerdict, string>> = {
  'not-running': 'not judged: the unit was not seen running',
  'running-too-short': 'early',
  'outdoors-too-cold': 'not judged below fifty-five degrees outdoors',
  'outdoor-unknown': 'not judged without the outdoor temperature',
  'outside-the-chart': 'not judged: wet bulb and outdoor air are outside the chart',
  'no-valid-test': 'not judged: the target is under five degrees',
  'mixed-line': 'not judged: there is vapor in the liquid line',
  'no-target': 'not judged without its target',
};

const NOT_WORKED_OUT = {
  'refrigerant-unknown': 'say the refrigerant on the nameplate first',
  'out-of-range': "that pressure is outside this refrigerant's table. Read the gauge again",
} as const;

/** A figure of the charge in degrees with its verdict, or why there is none; what is only early and judges by itself is not said. */
export function chargeWords(figure: ChargeFigure, degrees: number, verdict: JudgedWord | NoVerdict): string {
  if (figure === 'condensing-over-ambient' && verdict === 'running-too-short') return '';
  const words = verdict in NOT_JUDGED ? NOT_JUDGED[verdict as NoVerdict] : verdict;
  return `${FIGURES[figure]} ${sayNumber(degrees)}, ${words}.`;
}

/** Why a figure of the charge cannot be worked out. */
export function noChargeWords(figure: ChargeFigure, why: keyof typeof NOT_WORKED_OUT): string {
  return `${FIGURES[figure]}: ${NOT_WORKED_OUT[why]}.`;
}
