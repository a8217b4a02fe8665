import { sayNumber } from '../../../grammar/phrases/languages/english/numbers/say-number.ts';
import type { ChargeFigure, JudgedWord, NoVerdict } from '../../../grammar/visit/events.ts';
import type { UnitChoice } from '../../../grammar/vocabulary/unit-choice.ts';
import { degreesChosen } from '../things/chosen-words.ts';

const FIGURES: Readonly<Record<ChargeFigure, string>> = {
  superheat: 'Superheat',
  subcooling: 'Subcooling',
  'condensing-over-ambient': 'Condensing over ambient',
};

/** Of the limits of what can be judged, in Fahrenheit: 55 degrees outdoors, a target of 5 degrees. */
const COLD = { '[degF]': 'fifty-five degrees', Cel: 'thirteen degrees Celsius' };
const LEAST_TARGET = { '[degF]': 'five degrees', Cel: 'two point eight degrees Celsius' };

const notJudged = ({ temperature }: UnitChoice): Readonly<Record<NoVerdict, string>> => ({
  'not-running': 'not judged: the unit was not seen running',
  'running-too-short': 'early',
  'outdoors-too-cold': `not judged below ${COLD[temperature]} outdoors`,
  'outdoor-unknown': 'not judged without the outdoor temperature',
  'outside-the-chart': 'not judged: wet bulb and outdoor air are outside the chart',
  'no-valid-test': `not judged: the target is under ${LEAST_TARGET[temperature]}`,
  'mixed-line': 'not judged: there is vapor in the liquid line',
  'no-target': 'not judged without its target',
});

const NOT_WORKED_OUT = {
  'refrigerant-unknown': 'say the refrigerant on the nameplate first',
  'out-of-range': "that pressure is outside this refrigerant's table. Read the gauge again",
} as const;

/** A figure of the charge in the degrees that are chosen with its verdict, or why there is none; what is only early and judges by itself is not said. */
export function chargeWords(
  figure: ChargeFigure,
  fahrenheit: number,
  verdict: JudgedWord | NoVerdict,
  units: UnitChoice,
): string {
  if (figure === 'condensing-over-ambient' && verdict === 'running-too-short') return '';
  const withheld: Readonly<Record<string, string | undefined>> = notJudged(units);
  return `${FIGURES[figure]} ${sayNumber(degreesChosen(fahrenheit, units))}, ${withheld[verdict] ?? verdict}.`;
}

/** Why a figure of the charge cannot be worked out. */
export function noChargeWords(figure: ChargeFigure, why: keyof typeof NOT_WORKED_OUT): string {
  return `${FIGURES[figure]}: ${NOT_WORKED_OUT[why]}.`;
}
