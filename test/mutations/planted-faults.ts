/** A fault planted in the sources, and the files of the short run of which at least one must fail by it. */
export interface PlantedFault {
  readonly id: string;
  /** What would go wrong on a visit. */
  readonly harm: string;
  readonly file: string;
  /** Stands exactly once in the file. */
  readonly from: string;
  readonly to: string;
  readonly noticedBy: readonly string[];
  /** The pages are built anew: the test opens them in a browser. */
  readonly pages?: true;
}

/**
 * One in each place where the short run tries less than the long one, and in the interlocks. A fault that nothing
 * notices is a hole in the short run: give it a test there, not a row less here.
 */
export const PLANTED_FAULTS: readonly PlantedFault[] = [
  {
    id: 'twin-not-asked',
    harm: '"one fifteen" is logged as 115 where 150 was said',
    file: 'grammar/phrases/languages/english/numbers/twins.ts',
    from: 'if (twin !== undefined) return twin.value;',
    to: 'if (twin !== undefined && twin.value > 9_999) return twin.value;',
    noticedBy: ['test/grammar/phrases/numbers.test.ts', 'test/grammar/phrases/utterances.test.ts'],
  },
  {
    id: 'unit-not-chosen',
    harm: 'a bare 20 under Celsius is recorded as 20 degrees Fahrenheit',
    file: 'grammar/phrases/compose/reading.ts',
    from: 'said.units[0] ?? bareUnitOf(row, choice)',
    to: 'said.units[0] ?? bareUnitOf(row)',
    noticedBy: ['test/grammar/phrases/chosen-units.test.ts', 'test/client/visit/chosen-units.test.ts'],
  },
  {
    id: 'unit-said-lost',
    harm: 'fahrenheit said aloud under Celsius is recorded as Celsius',
    file: 'grammar/phrases/compose/said-value.ts',
    from: 'item.asChosen ? choice.temperature : item.unit',
    to: "item.asChosen || item.unit === '[degF]' ? choice.temperature : item.unit",
    noticedBy: ['test/grammar/phrases/chosen-units.test.ts', 'test/client/visit/chosen-units.test.ts'],
  },
  {
    id: 'repair-not-asked',
    harm: 'a word that had to be repaired is logged as if it had been said',
    file: 'grammar/phrases/judge.ts',
    from: "repaired.length > 0 ? 'needed-repair'",
    to: "repaired.length > 99 ? 'needed-repair'",
    noticedBy: ['test/grammar/phrases/generated.test.ts', 'test/grammar/phrases/numbers.test.ts'],
  },
  {
    id: 'value-changed',
    harm: 'a value of three digits loses its last one',
    file: 'grammar/phrases/languages/english/numbers/read-number.ts',
    from: 'export function readNumber(',
    to: `export function readNumber(words: readonly string[]): ReturnType<typeof readRight> {
  const read = readRight(words);
  return read !== undefined && read.value > 300 && read.value < 330 ? { ...read, value: 300 } : read;
}
function readRight(`,
    noticedBy: ['test/grammar/phrases/generated.test.ts', 'test/grammar/phrases/numbers.test.ts'],
  },
  {
    id: 'number-cut-short',
    harm: 'of "leg one one twenty two leg two" 120 and 2 volts are logged',
    file: 'grammar/phrases/weigh.ts',
    from: 'return runs === undefined ||',
    to: 'return runs === undefined || runs.length > 0 ||',
    noticedBy: ['test/grammar/phrases/families.test.ts'],
  },
  {
    id: 'unit-dropped',
    harm: '"suction eight torr" is asked as 8 psi, and a yes logs it',
    file: 'grammar/phrases/languages/english/words/common-words.ts',
    from: '...UNREAL_WORDS, ...UNIT_NAMES]',
    to: '...UNREAL_WORDS]',
    noticedBy: ['test/grammar/phrases/units.test.ts'],
  },
  {
    id: 'nothing-corrects',
    harm: '"no amps on the fan" corrects the place of another reading',
    file: 'grammar/phrases/compose/correction.ts',
    from: "item.by === 'denial'",
    to: "item.by === 'mark'",
    noticedBy: ['test/grammar/phrases/families.test.ts'],
  },
  {
    id: 'no-caution',
    harm: 'a live step is asked without its caution',
    file: 'client/visit/steps/hold-back.ts',
    from: 'if (dueCautions(step, context).length > 0)',
    to: 'if (dueCautions(step, context).length > 9)',
    noticedBy: ['test/client/visit/safety.test.ts', 'test/client/visit/visit.test.ts'],
  },
  {
    id: 'hands-on-live',
    harm: 'hands are sent to what is not proven dead',
    file: 'client/visit/steps/choose-step.ts',
    from: "return together.every((one) => context.energy[one] === 'proven-dead');",
    to: "return together.every((one) => context.energy[one] !== 'live');",
    noticedBy: ['test/client/visit/safety.test.ts', 'test/client/visit/visit.test.ts'],
  },
  {
    id: 'dead-at-thirty-volts',
    harm: 'a back-fed conductor at 20 volts counts as dead',
    file: 'client/visit/rules/dead-threshold.ts',
    from: 'DEAD_BELOW_VOLTS = 3',
    to: 'DEAD_BELOW_VOLTS = 30',
    noticedBy: ['test/client/visit/bad-input.test.ts', 'test/client/visit/visit.test.ts'],
  },
  {
    id: 'torn-batch-left',
    harm: 'after a crash the last thing said stands in the record, but nothing comes of it and nobody is told',
    file: 'client/visit/run/visit-run.ts',
    from: 'if (there >= (last.outcomes ?? 0)) return { facts };',
    to: 'if (there >= 0) return { facts };',
    noticedBy: ['test/client/visit/restore.test.ts'],
  },
  {
    id: 'acknowledged-before-kept',
    harm: 'the phone is told that the server holds what it could not keep',
    file: 'server/sync/group-commit.ts',
    from: 'for (const submitter of parts.keys()) submitter.failed(error);\n      return;',
    to: "outcomes = batch.map(() => ({ kind: 'stored' }) as CommitOutcome);",
    noticedBy: ['test/server/full-disk.test.ts', 'test/server/sync-faults.test.ts'],
  },
  {
    id: 'altered-event-passes',
    harm: 'an event changed in the record is not seen',
    file: 'grammar/visit/verify-chain.ts',
    from: 'if (link?.hash !== entry.hash) {',
    to: 'if (link === undefined) {',
    noticedBy: ['test/grammar/visit/envelope.test.ts'],
  },
  {
    id: 'gate-open',
    harm: "other people's talk and noise are taken for readings",
    file: 'client/listening/recogniser/gate.ts',
    from: 'gate.reject + gate.short',
    to: 'gate.reject - 1_000 + gate.short',
    noticedBy: ['test/client/listening/gate.test.ts', 'test/client/listening/in-noise.test.ts'],
  },
  {
    id: 'denoiser-misaligned',
    harm: 'what is denoised and what is not are added out of step: words are heard in noise that were never said',
    file: 'client/listening/sound/clean-sound.ts',
    from: 'const WET = 0.8;',
    to: 'const WET = 0;',
    noticedBy: ['test/client/listening/in-noise.test.ts', 'test/client/listening/hearing.test.ts'],
  },
  {
    id: 'worst-test-first',
    harm: 'the diagnosis asks first for what tells least',
    file: 'client/diagnosis/planner/choose-next.ts',
    from: 'sort((a, b) => b.worth - a.worth)',
    to: 'sort((a, b) => a.worth - b.worth)',
    noticedBy: ['test/simulator/quality.test.ts', 'test/client/diagnosis/demo-visits.test.ts'],
  },
  {
    id: 'wrong-solution',
    harm: 'back-feed through a winding is computed with the wrong sign',
    file: 'client/diagnosis/circuit/phasor-solver.ts',
    from: 'this.stamp(p, q, s, t, -n * yr, -n * yi);',
    to: 'this.stamp(p, q, s, t, n * yr, n * yi);',
    noticedBy: ['test/standards/ngspice.test.ts'],
  },
  {
    id: 'stage-never-missed',
    harm: 'a compressor counts as loaded although its second stage has no volts',
    file: 'client/diagnosis/circuit/settle.ts',
    from: 'return pulls && !unit.stuckUnloaded;',
    to: 'return pulls || !unit.stuckUnloaded;',
    noticedBy: ['test/client/diagnosis/second-stage.test.ts'],
  },
  {
    id: 'pad-drops-point',
    harm: 'one point one on the pad becomes eleven',
    file: 'client/screens/technician/number-pad.tsx',
    from: 'const value = Number(text);',
    to: "const value = Number(text.replace('.', ''));",
    noticedBy: ['test/browser/touch-visit.test.ts'],
    pages: true,
  },
  {
    id: 'replay-late',
    harm: 'the replay shows a moment without what had just happened',
    file: 'client/screens/review/replay-times.ts',
    from: 'return countUpTo(this.moments, moment);',
    to: 'return Math.max(0, countUpTo(this.moments, moment) - 1);',
    noticedBy: ['test/client/screens/replay-times.test.ts', 'test/browser/review.test.ts'],
    pages: true,
  },
  {
    id: 'page-may-ask-anywhere',
    harm: 'a page of ours may send what it holds to any address',
    file: 'server/security-headers.ts',
    from: 'connectSrc: [SELF],',
    to: "connectSrc: [SELF, 'https:'],",
    noticedBy: ['test/browser/own-origin.test.ts'],
  },
  {
    id: 'stream-of-another',
    harm: 'a paired device writes into the visit of another one',
    file: 'server/people/gate.ts',
    from: 'if (hello.stream.device !== device.device)',
    to: "if (hello.stream.device === '')",
    noticedBy: ['test/server/who-may.test.ts'],
  },
  {
    id: 'company-of-another',
    harm: 'a supervisor of one company watches the visits of another',
    file: 'server/people/gate.ts',
    from: 'if (company !== caller.company)',
    to: "if (company === '')",
    noticedBy: ['test/server/who-may.test.ts'],
  },
  {
    id: 'role-not-asked',
    harm: 'a trainee adds keepers',
    file: 'server/people/guard.ts',
    from: "if (needs !== 'signed-in' && !may(caller.role, needs))",
    to: "if (needs !== 'signed-in' && needs === 'read-heads' && !may(caller.role, needs))",
    noticedBy: ['test/server/who-may.test.ts'],
  },
  {
    id: 'code-taken-twice',
    harm: 'a pairing code that somebody saw pairs a second device',
    file: 'server/people/sql-people-store.ts',
    from: ".where('used', '=', 0)",
    to: ".where('used', '>=', 0)",
    noticedBy: ['test/contract/people.test.ts', 'test/server/sign-in.test.ts'],
  },
  {
    id: 'guesses-not-counted',
    harm: 'passwords are guessed without end',
    file: 'server/people/sign-in.ts',
    from: 'const tries = await store.countAttempt(key, clock(), SIGN_IN_TRIES.windowMs);\n    if (tries > SIGN_IN_TRIES.most)',
    to: 'const tries = await store.countAttempt(key, clock(), SIGN_IN_TRIES.windowMs);\n    if (tries > 1e9)',
    noticedBy: ['test/server/sign-in.test.ts'],
  },
  {
    id: 'erased-comes-back',
    harm: 'a device brings a sound of a customer who was erased',
    file: 'server/personal/personal.ts',
    from: "if (await this.store.isErased(company, visit)) throw new ServerError('visit-erased', visit);\n    const streams",
    to: 'const streams',
    noticedBy: ['test/server/personal-routes.test.ts'],
  },
  {
    id: 'erased-key-left',
    harm: 'the key of a visit that was erased stands in the database’s file',
    file: 'server/personal/postgres-personal-store.ts',
    from: "'VACUUM (FULL, VERBOSE) visit_key'",
    to: "'VACUUM (VERBOSE) visit_key'",
    noticedBy: ['test/contract/postgres.test.ts'],
  },
  {
    id: 'open-not-counted',
    harm: 'a keeper erases a visit and is not told that its words stand in the open',
    file: 'grammar/visit/personal.ts',
    from: "if (text !== '' && !WHOLLY_SEALED.test(text) &&",
    to: "if (text !== '' && WHOLLY_SEALED.test(text) &&",
    noticedBy: ['test/grammar/visit/personal.test.ts', 'test/server/personal-routes.test.ts'],
  },
];
