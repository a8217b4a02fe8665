import type { TestId } from '../../grammar/vocabulary/tests.ts';
import type { UnitProfile } from '../../grammar/vocabulary/unit-profile.ts';
import type { Assessment, Diagnosis, Evidence, NextTest } from './diagnosis.ts';
import { explainTest } from './explain/explain-test.ts';
import { HAZARD_SIGNS } from './hazards/hazard-signs.ts';
import { hazardsOf, plausibleSigns } from './hazards/plausible-hazards.ts';
import { TEST_MODELS } from './measuring/test-models.ts';
import { chooseNext } from './planner/choose-next.ts';
import { readAgainAtLast, readAgainBeforeLeaving } from './planner/read-again.ts';
import { ON_ARRIVAL, stanceAfter } from './planner/test-cost.ts';
import { isNotWorthMore } from './planner/when-to-stop.ts';
import { influence } from './posterior/influence.ts';
import { findTest, indexTests, standingReadings } from './posterior/take-readings.ts';
import { weighParticles } from './posterior/weigh-particles.ts';
import { type BuildOptions, buildTable } from './table/build-table.ts';
import type { FaultTable } from './table/fault-table.ts';

/** A suspect stands out from this probability on, once no single unrepeated reading carries it. */
const STANDS_OUT = 0.95;
/** A reading that is this probably a stray one contradicts the rest. */
const CONTRADICTS = 0.8;

/**
 * A diagnosis for one unit profile. Builds its table, about a second: in a worker, with `onProgress` told how far it
 * is; `diagnosisFrom` takes one that is ready.
 * Errors (DiagnosisError): `bad-profile`; from `assess`: `bad-reading`, `wrong-unit`, `saturation-out-of-range`.
 */
export function makeDiagnosis(profile: UnitProfile, options: BuildOptions = {}): Diagnosis {
  return diagnosisFrom(buildTable(profile, options));
}

/** A diagnosis over a table that was built before, in a worker or at build time. */
export function diagnosisFrom(table: FaultTable): Diagnosis {
  const index = indexTests(table.tests);
  const fallsWith = influence(table);
  // Every visit begins with nothing read: that answer weighs every draw of every fault, and is worked out once.
  const atTheDoor = assess(table, [], [], index, fallsWith);
  return {
    assess: (evidence, parked) =>
      evidence.length === 0 && parked.length === 0 ? atTheDoor : assess(table, evidence, parked, index, fallsWith),
    testFor: (reading) => findTest(index, reading),
    explain: (test, suspects) => explainTest(table, test, suspects),
  };
}

function assess(
  table: FaultTable,
  evidence: readonly Evidence[],
  parked: readonly TestId[],
  index: ReturnType<typeof indexTests>,
  fallsWith: ReturnType<typeof influence>,
): Assessment {
  const standing = standingReadings(table.tests, index, evidence, fallsWith);
  const posterior = weighParticles(table, standing);
  const answered = new Set(standing.taken.keys());
  let stance = ON_ARRIVAL;
  for (const test of answered) stance = stanceAfter(stance, test);
  const signs = plausibleSigns(table, posterior);
  const suspects = table.faults
    .map((fault, f) => ({ fault, probability: posterior.fault[f]! }))
    .sort((a, b) => b.probability - a.probability);
  const top = suspects[0]!;
  const worths = chooseNext(table, posterior, stance, standing, new Set(parked));
  const ranked = worths.map(({ test }) => test);
  const named = top.fault !== 'something-else' && top.fault !== 'nothing-wrong';
  const standsOut =
    (top.probability >= STANDS_OUT && top.fault !== 'something-else') || (named && isNotWorthMore(suspects, worths[0]));
  const settled = standsOut || ranked.length === 0;
  const again = (settled ? readAgainAtLast : readAgainBeforeLeaving)(
    { posterior, standing, stance, leader: top, place: table.faults.indexOf(top.fault) },
    ranked[0],
  ).filter((test) => !parked.includes(test));
  const next = [...new Set([...again, ...ranked])].map((test) =>
    nextTest(test, hazardsOf(TEST_MODELS[test], signs, table.profile)),
  );
  const strange = [...posterior.stray].filter(([, chance]) => chance > CONTRADICTS).map(([{ seq }]) => seq);
  return {
    version: table.version,
    forSeq: evidence.at(-1)?.seq ?? 0,
    suspects,
    next,
    hazards: signs.map((s) => HAZARD_SIGNS[s]!.id),
    ...(strange.length > 0 ? { contradiction: strange } : {}),
    done: standsOut,
    ...(again[0] ? { confirm: again[0] } : {}),
  };
}

function nextTest(id: TestId, hazards: NextTest['hazards']): NextTest {
  const model = TEST_MODELS[id];
  return {
    id,
    function: model.function,
    quantity: model.quantity,
    at: model.at,
    ...(model.measure.kind === 'look' ? { answers: model.measure.answers } : {}),
    needs: model.needs,
    minutes: model.minutes,
    hazards,
  };
}
