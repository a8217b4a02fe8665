import type { FoldedVisit } from '../../../grammar/visit/fold-visit.ts';
import type { RankedSuspects } from '../../../grammar/visit/inputs.ts';
import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { UnitCode, Value } from '../../../grammar/vocabulary/quantities.ts';
import { TESTS_BY_ID } from '../../../grammar/vocabulary/tests.ts';
import type { UnitChoice } from '../../../grammar/vocabulary/unit-choice.ts';
import { WHY_PANEL } from '../../words/pages/visit-words.ts';
import { showPercent } from '../../words/shown/show-likely.ts';
import { showPlace, showValue } from '../../words/shown/show-reading.ts';
import { showObservation } from '../../words/shown/show-understanding.ts';
import { inChosenUnit } from '../../words/things/chosen-words.ts';
import { exclusionWords } from '../../words/things/exclusion-words.ts';
import { faultWords } from '../../words/things/fault-words.ts';

/** A heading with what stands under it, each with its figure. */
export interface WhyPart {
  readonly title: string;
  readonly lines: readonly { readonly what: string; readonly figure: string }[];
}

/** A suspect that was talked of, one that no longer is, and a change that is worth a line (our choices). */
const TALKED_OF = 0.05;
const FALLEN_TO = 0.2;
const MOVED = 0.03;
const MOST_LINES = 6;

type Suspects = FoldedVisit['suspects'][number]['suspects'];

const probabilityOf = (suspects: Suspects, fault: FaultId): number =>
  suspects.find((suspect) => suspect.fault === fault)?.probability ?? 0;

/**
 * Why the diagnosis asks and thinks what it does: what the next test would show under each leading suspect, the readings
 * that show the leader, whom the readings have taken out, and what the last answer moved. Parts without lines are left out.
 */
export function whyLines(
  { readings, observations, suspects, units }: Pick<FoldedVisit, 'readings' | 'observations' | 'suspects' | 'units'>,
  assessment: RankedSuspects | undefined,
): readonly WhyPart[] {
  if (assessment === undefined || assessment.suspects.length === 0) return [];
  const now = assessment.suspects;
  const leader = now[0]!.fault;
  return [nextPart(assessment, units), shownPart(), exclusionPart(), excludedPart(), movedPart()].filter(
    ({ lines }) => lines.length > 0,
  );

  function shownPart(): WhyPart {
    const lines = (assessment!.proof?.readings ?? []).flatMap((number) => {
      const read = readings.find((line) => line.number === number && !line.withdrawn);
      if (read) return [{ what: showPlace(read.reading.at), figure: showValue(read.reading.value, read.reading.unit) }];
      const seen = observations.find((line) => line.number === number);
      return seen ? [{ what: showObservation(seen.observation), figure: '' }] : [];
    });
    return { title: `${faultWords(leader)}: ${WHY_PANEL.proved}`, lines };
  }

  function exclusionPart(): WhyPart {
    const { done, proof } = assessment!;
    const words = done && proof && proof.unproved.length > 0 ? [exclusionWords(leader, proof.unproved)] : [];
    return { title: WHY_PANEL.unproved, lines: words.map((what) => ({ what, figure: '' })) };
  }

  function excludedPart(): WhyPart {
    const most = new Map<FaultId, number>();
    for (const ranked of suspects)
      for (const { fault, probability } of ranked.suspects)
        most.set(fault, Math.max(most.get(fault) ?? 0, probability));
    const fallen = [...most]
      .filter(([fault, was]) => was >= TALKED_OF && probabilityOf(now, fault) <= FALLEN_TO * was)
      .sort(([, a], [, b]) => b - a);
    return {
      title: WHY_PANEL.excluded,
      lines: fallen.slice(0, MOST_LINES).map(([fault, was]) => ({
        what: faultWords(fault),
        figure: WHY_PANEL.fromTo(showPercent(was), showPercent(probabilityOf(now, fault))),
      })),
    };
  }

  function movedPart(): WhyPart {
    const before = suspects.at(-2)?.suspects;
    const moved =
      before === undefined
        ? []
        : now.filter(({ fault, probability }) => {
            return Math.abs(probability - probabilityOf(before, fault)) >= MOVED;
          });
    return {
      title: WHY_PANEL.moved,
      lines: moved.slice(0, MOST_LINES).map(({ fault, probability }) => ({
        what: faultWords(fault),
        figure: WHY_PANEL.fromTo(showPercent(probabilityOf(before!, fault)), showPercent(probability)),
      })),
    };
  }
}

function nextPart({ next, expects = [] }: RankedSuspects, units: UnitChoice): WhyPart {
  const test = next[0];
  return {
    title: test ? WHY_PANEL.next(TESTS_BY_ID[test.id].name) : '',
    lines: expects.map((shown) => ({
      what: faultWords(shown.fault),
      figure:
        shown.unit === 'observation'
          ? showObservation(shown.expected)
          : showExpected(shown.expected, shown.unit, test?.quantity === 'difference', units),
    })),
  };
}

function showExpected(value: Value, unit: UnitCode, isDifference: boolean, units: UnitChoice): string {
  if (value === 'open') return showValue(value, unit);
  const chosen = inChosenUnit(value, unit, isDifference, units);
  return showValue(rounded(chosen.value), chosen.unit);
}

const rounded = (value: Value): Value => (value === 'open' ? value : ((Math.round(value * 10) / 10) as Value));
