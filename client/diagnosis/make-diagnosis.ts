import type { TestId } from '../../grammar/vocabulary/tests.ts';
import type { UnitProfile } from '../../grammar/vocabulary/unit-profile.ts';
import type { Assessment, Diagnosis, Evidence, NextTest, Suspect } from './diagnosis.ts';
import { bitsOfTest } from './explain/bits-of-test.ts';
import { explainTest, type Known } from './explain/explain-test.ts';
import { HAZARD_SIGNS } from './hazards/hazard-signs.ts';
import { hazardsOf, plausibleSigns } from './hazards/plausible-hazards.ts';
import { TEST_MODELS } from './measuring/test-models.ts';
import { chooseNext, type Ranked } from './planner/choose-next.ts';
import { leftToProve } from './planner/left-to-prove.ts';
import { decidedByNothing, readAgainAtLast, readAgainBeforeLeaving } from './planner/read-again.ts';
import { minutesSpent, ON_ARRIVAL, stanceAfter } from './planner/test-cost.ts';
import { isNotWorthMore, isOutOfPatience, WORTH_PROVING } from './planner/when-to-stop.ts';
import { influence } from './posterior/influence.ts';
import { findTest, indexTests, type Standing, standingReadings, type Taken } from './posterior/take-readings.ts';
import { type Posterior, weighParticles } from './posterior/weigh-particles.ts';
import {
  doubtExclusion,
  doubtUnproved,
  doubtWithoutRow,
  holdToProof,
  isExcluded,
  isNamed,
  isShownOutright,
  nearlyProved,
  provedBeside,
  raise,
  sayShown,
} from './proof/hold-to-proof.ts';
import {
  denialsToTakeAgain,
  nextOfProof,
  proofToTakeAgain,
  proveTwice,
  strangeToTakeAgain,
  waitBefore,
} from './proof/next-proof.ts';
import { isNoneOfTheList, sayNone } from './proof/none-of-the-list.ts';
import { PROOF_ROWS } from './proof/proof-rows.ts';
import { type BuildOptions, buildTable } from './table/build-table.ts';
import type { FaultTable } from './table/fault-table.ts';

/** A suspect stands out from this probability on, once no single unrepeated reading carries it. */
const STANDS_OUT = 0.95;
/** Everything of the list is excluded from here on, once none of it is left with so much (ours). */
const EXCLUDED = 0.9;
const STILL_LEFT = 0.003;
/** A leader that a single reading denies is asked about again from this probability on (ours). */
const DOUBTED = 0.5;
/** A leader below this that is shown outright has one reading of its proof taken twice (ours). */
const SURE = 0.9;
/** From this probability on the leader's row is read before anything that would tell more of the others (ours). */
const READ_FIRST = 0.5;
/** From this probability on a search that is over waits for what may end by itself (ours). */
const WAITED_FOR = 0.6;
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
  const standingOf = (evidence: readonly Evidence[]) => standingReadings(table.tests, index, evidence, fallsWith);
  // Every visit begins with nothing read: that answer weighs every draw of every fault, and is worked out once.
  const atTheDoor = assess(table, [], [], index, fallsWith);
  return {
    assess: (evidence, parked) =>
      evidence.length === 0 && parked.length === 0 ? atTheDoor : assess(table, evidence, parked, index, fallsWith),
    testFor: (reading) => findTest(index, reading),
    explain: (test, suspects, evidence) =>
      explainTest(table, test, suspects, evidence && knownBy(table, standingOf(evidence))),
    tells: (test, evidence) => bitsOfTest(table, test, standingOf(evidence)),
  };
}

function knownBy(table: FaultTable, standing: Standing): Known {
  const numbers = [...standing.taken].map(([test, { value }]) => [test, value] as const);
  return { weight: weighParticles(table, standing).weight, readings: new Map(numbers) };
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
  const canBeDone = (test: TestId) => table.tests.includes(test) && !parked.includes(test);
  const doubted = likeliest(table, posterior);
  const isThere = (test: TestId) => table.tests.includes(test);
  const read = { standing, profile: table.profile, canBeDone, isThere };
  const rows = holdToProof(table, posterior, read);
  let stance = ON_ARRIVAL;
  for (const { test } of standing.all) stance = stanceAfter(stance, test);
  const signs = plausibleSigns(table, posterior);
  const toProve = leftToProve(
    ranking(table, posterior).flatMap(({ fault, probability }) => {
      const proof = isNamed(fault) ? rows.get(fault) : undefined;
      return proof ? [{ fault, probability, proof }] : [];
    }),
  );
  const worths = chooseNext(table, posterior, stance, standing, new Set(parked), toProve);
  const ranked = worths.map(({ test }) => test);
  const beside =
    likeliest(table, posterior).fault === 'something-else' ? provedBeside(table, posterior, read) : undefined;
  if (beside) raise(table, posterior, beside);
  const before = ranking(table, posterior);
  const top = before[0]!;
  const left = before.filter(({ fault }) => fault === top.fault || !isExcluded(rows.get(fault), standing));
  const proof = isNamed(top.fault) ? rows.get(top.fault) : undefined;
  const place = table.faults.indexOf(top.fault);
  const isStrange = (reading: Taken, chance: number) =>
    chance > CONTRADICTS || (isNamed(top.fault) && posterior.strayUnder(reading, place) > CONTRADICTS);
  const strange = [...posterior.stray].filter(([reading, chance]) => isStrange(reading, chance)).map(([one]) => one);
  const shown = proof !== undefined && isShownOutright(top, proof, strange.length);
  const standsOut = shown || isFound(left, worths[0]);
  const isLate = isOutOfPatience(minutesSpent(standing) + (worths[0]?.cost ?? 0), top);
  const isSearched = standsOut || !worths[0] || isLate;
  const lacks = proof && isSearched && top.probability >= WORTH_PROVING ? nextOfProof(stance, proof) : [];
  const proved = lacks.length === 0;
  const settled = isSearched && proved;
  const look = { posterior, standing, stance, leader: top, place };
  const again = settled ? readAgainAtLast(look, proof) : readAgainBeforeLeaving(look, lacks[0] ?? ranked[0]);
  const isCostly = PROOF_ROWS[top.fault].twice === true || strange.length > 0 || (shown && top.probability < SURE);
  if (settled && proof && again.length === 0 && (shown || top.probability >= SURE))
    again.push(...decidedByNothing(look, proof, Math.max(top.probability, SURE)));
  if (settled && proof && again.length === 0) again.push(...proveTwice(stance, isCostly, proof, standing));
  if (settled && proof) again.push(...proofToTakeAgain(proof, standing));
  const isToWait = !settled || top.probability >= WAITED_FOR;
  const wait = proof && isToWait ? waitBefore(PROOF_ROWS[top.fault], read) : undefined;
  if (settled && wait) again.push(wait.test);
  const denial = doubted.probability >= DOUBTED ? rows.get(doubted.fault) : undefined;
  const confirm = [...(denial ? denialsToTakeAgain(denial, standing) : []), ...again].filter(canBeDone);
  // What is shown directly holds, however strangely the rest behaves.
  const isOpen = !proof || proof.lacking.length + proof.unproved.length + proof.denied.length > 0;
  const isMet = top.fault === beside || !isOpen;
  const isLed = isNamed(top.fault) && (standsOut || top.probability >= READ_FIRST);
  if (isSearched && !isMet && !isLed && confirm.length === 0)
    confirm.push(...strangeToTakeAgain(stance, strange, standing).filter(canBeDone));
  if (shown) sayShown(table, posterior, top.fault);
  const second = before[1]!.probability;
  if (proof && proof.lacking.length > 0) doubtUnproved(table, posterior, top.fault, second);
  else if (proof && proof.unproved.length > 0) doubtExclusion(table, posterior, top.fault, second);
  // Nothing of the list is left: the readings that say so stand, and no test tells the rest apart.
  const isLost = top.fault === 'something-else' && isSearched && confirm.length === 0;
  const near = isLost ? nearlyProved(table, posterior, read, isLate && !standsOut) : undefined;
  const tried = near ? nextOfProof(stance, near).filter(canBeDone) : [];
  const isEnd = tried.length === 0 && confirm.length === 0 && (isLost || (settled && !standsOut));
  const isNone = isEnd && !standsOut && isNoneOfTheList(table, posterior, top.fault, proof);
  if (isNone) sayNone(table, posterior);
  else if (!isNamed(top.fault) && !(isLost && standsOut && isEnd)) doubtWithoutRow(table, posterior, top.fault);
  // Where nothing else tells, waiting does.
  const last = wait && canBeDone(wait.test) ? [wait.test] : [];
  const early = proof && top.probability >= READ_FIRST ? nextOfProof(stance, proof) : [];
  const next = isEnd ? [] : [...new Set([...confirm, ...lacks, ...tried, ...early, ...ranked, ...last])];
  const excluded = [...rows.keys()].filter((fault) => isExcluded(rows.get(fault), standing));
  return {
    version: table.version,
    forSeq: evidence.at(-1)?.seq ?? 0,
    suspects: ranking(table, posterior),
    next: next.map((test) =>
      nextTest(test, hazardsOf(TEST_MODELS[test], signs, table.profile), test === wait?.test ? wait.minutes : 0),
    ),
    hazards: signs.map((s) => HAZARD_SIGNS[s]!.id),
    ...(strange.length > 0 ? { contradiction: strange.map(({ seq }) => seq) } : {}),
    done: standsOut && proved && tried.length === 0,
    ...(confirm[0] ? { confirm: confirm[0] } : {}),
    ...(proof && !isNone ? { proof: { readings: proof.shown.map(({ seq }) => seq), unproved: proof.unproved } } : {}),
    ...(next[0] ? { expects: explainTest(table, next[0], leadingOf(before)) } : {}),
    ...((isNone || top.fault === 'something-else') && next.length === 0 ? { excluded } : {}),
  };
}

/** Suspects that are worth a prediction: so many, from so much on. */
const LEADING = 4;
const WORTH_A_WORD = 0.005;
const leadingOf = (suspects: readonly Suspect[]): readonly Suspect[] =>
  suspects.slice(0, LEADING).filter(({ probability }) => probability >= WORTH_A_WORD);

/** All faults of the table, the likeliest first. */
function ranking(table: FaultTable, posterior: Posterior): Suspect[] {
  return table.faults
    .map((fault, f) => ({ fault, probability: posterior.fault[f]! }))
    .sort((a, b) => b.probability - a.probability);
}

const likeliest = (table: FaultTable, posterior: Posterior): Suspect => ranking(table, posterior)[0]!;

/** Whether the leader stands out enough to be proved; "something else" does once nobody of the list is left. */
function isFound(suspects: readonly Suspect[], best: Ranked | undefined): boolean {
  const [top, second] = suspects;
  if (top!.fault === 'something-else') return top!.probability >= EXCLUDED && (second?.probability ?? 0) < STILL_LEFT;
  return top!.probability >= STANDS_OUT || (isNamed(top!.fault) && isNotWorthMore(suspects, best));
}

function nextTest(id: TestId, hazards: NextTest['hazards'], wait: number): NextTest {
  const model = TEST_MODELS[id];
  return {
    id,
    function: model.function,
    quantity: model.quantity,
    at: model.at,
    ...(model.measure.kind === 'look' ? { answers: model.measure.answers } : {}),
    needs: model.needs,
    minutes: model.minutes + wait,
    ...(wait > 0 ? { wait } : {}),
    hazards,
  };
}
