/** A rule of conduct broken in one place, by its letter on paper. */
export interface ConductFault {
  readonly rule: string;
  readonly harm: string;
  readonly file: string;
  /** Stands exactly once in the file. */
  readonly from: string;
  readonly to: string;
}

/** At least one a rule, a to w. Each must be noticed by one of the three ways of testing, and how many each notices is told. */
export const CONDUCT_FAULTS: readonly ConductFault[] = [
  {
    rule: 'a',
    harm: 'hands in a live unit are not told of',
    file: 'client/visit/intake/tell-unproven.ts',
    from: 'if (open.length === 0) return;',
    to: 'if (open.length >= 0) return;',
  },
  {
    rule: 'b',
    harm: 'what is said third in one breath is lost',
    file: 'client/visit/intake/take-utterance.ts',
    from: "turn.raise({ type: 'meanings.left', meanings: others, readings });",
    to: "turn.raise({ type: 'meanings.left', meanings: others.slice(0, 1), readings });",
  },
  {
    rule: 'b',
    harm: 'what is said next in one breath is judged by the energy as it was before',
    file: 'client/visit/chart/turn.ts',
    from: 'this.context = evolve(this.context, { ...event, time: this.context.now });',
    to: "this.context = event.type === 'energy.changed' && event.to === 'live' ? this.context : evolve(this.context, { ...event, time: this.context.now });",
  },
  {
    rule: 'c',
    harm: 'the load side of a contactor is never read to itself',
    file: 'client/visit/rules/proof-plan.ts',
    from: "    ['T1', 'T2'],\n",
    to: '',
  },
  {
    rule: 'd',
    harm: 'a proof of an hour counts',
    file: 'client/visit/intake/take-proof.ts',
    from: 'now.mono - proof.began <= PROOF_MINUTES',
    to: 'now.mono - proof.began <= 60 * PROOF_MINUTES',
  },
  {
    rule: 'e',
    harm: 'clocks that went apart are trusted',
    file: 'client/visit/intake/heed-clock.ts',
    from: 'const APART_MINUTES = 2;',
    to: 'const APART_MINUTES = 2_000;',
  },
  {
    rule: 'e',
    harm: 'a gap in the record is nothing',
    file: 'client/visit/intake/heed-clock.ts',
    from: 'const AWAY_MINUTES = 2;',
    to: 'const AWAY_MINUTES = 2_000;',
  },
  {
    rule: 'f',
    harm: 'words that power is back end nothing',
    file: 'client/visit/intake/heed-power.ts',
    from: '  endReached(turn, reached, BECAUSE.maybeBack(heard), locksTold(heard));\n',
    to: '',
  },
  {
    rule: 'f',
    harm: 'words that nobody understood leave a proof as it was',
    file: 'client/visit/intake/ask-still-off.ts',
    from: "  for (const zone of ZONES) turn.move(zone, 'asked', why);\n",
    to: '',
  },
  {
    rule: 'g',
    harm: 'a voltage where it was reported off is read back as any other',
    file: 'client/visit/intake/take-reading.ts',
    from: 'if (isWhereOff(turn, zone) && !isSought(zone, turn.context)) {',
    to: 'if (isWhereOff(turn, zone) && isSought(zone, turn.context)) {',
  },
  {
    rule: 'h',
    harm: 'd.c. of what is live is taken for a charge',
    file: 'client/visit/intake/follow-charge.ts',
    from: 'if (READ_DEAD.includes(energy)) return false;',
    to: 'if (READ_DEAD.length > 0) return false;',
  },
  {
    rule: 'i',
    harm: 'a pull-out is asked for under load',
    file: 'client/visit/rules/holds-without-call.ts',
    from: "says === 'holds';",
    to: "says === 'nothing';",
  },
  {
    rule: 'j',
    harm: 'power goes back after a trip on windings that were read before it',
    file: 'client/visit/rules/after-trip.ts',
    from: 'every(({ seq }) => seq < since)',
    to: 'every(({ seq }) => seq < since && seq < 0)',
  },
  {
    rule: 'k',
    harm: 'a breaker of any size is taken',
    file: 'client/visit/intake/take-work.ts',
    from: "function isOvercurrent(part: string): part is 'fuse' | 'breaker' {\n",
    to: "function isOvercurrent(part: string): part is 'fuse' | 'breaker' {\n  if (part !== '') return false;\n",
  },
  {
    rule: 'l',
    harm: 'power on an opened circuit is not warned of',
    file: 'client/visit/intake/heed-circuit.ts',
    from: 'if (lacks === undefined) return;',
    to: 'if (lacks !== undefined) return;',
  },
  {
    rule: 'm',
    harm: 'a flammable refrigerant is not said as such',
    file: 'client/visit/rules/flammable.ts',
    from: "['A2L', 'A3']",
    to: '[]',
  },
  {
    rule: 'n',
    harm: 'the charge of a start capacitor is never read',
    file: 'client/visit/rules/charged-sections.ts',
    from: 'return unit.hardStart === true || startCapacitor;',
    to: 'return unit.hardStart === true && startCapacitor;',
  },
  {
    rule: 'o',
    harm: 'a compressor is measured "on the bench"',
    file: 'client/visit/intake/take-reading.ts',
    from: "point.startsWith('comp')",
    to: "point.startsWith('x')",
  },
  {
    rule: 'p',
    harm: "a trainee's live readings are taken alone",
    file: 'client/visit/intake/wait-for-supervisor.ts',
    from: "return role === 'trainee' && supervisor === undefined;",
    to: "return role !== 'trainee' && supervisor !== undefined;",
  },
  {
    rule: 'q',
    harm: 'power returns on a jumper in silence',
    file: 'client/visit/intake/heed-return.ts',
    from: 'if (met.length > 0) turn.warn(',
    to: 'if (met.length > 99) turn.warn(',
  },
  {
    rule: 'r',
    harm: 'a contactor pressed by hand is not warned of',
    file: 'client/visit/intake/take-deed.ts',
    from: "'contactor-pressed': { words: SAY.armature, whileFed: false },",
    to: "'contactor-pressed': 'nothing',",
  },
  {
    rule: 's',
    harm: 'clamps are asked for when the unit is live',
    file: 'client/visit/steps/choose-step.ts',
    from: "return context.phase === 'prove' && amps && !placed",
    to: "return context.phase === 'close' && amps && !placed",
  },
  {
    rule: 't',
    harm: 'a caution that was cut counts as given',
    file: 'client/visit/intake/take-input.ts',
    from: "if (outcome !== 'spoken') turn.raise({ type: 'caution.cut' });",
    to: "if (outcome !== 'spoken' && outcome !== 'cut') turn.raise({ type: 'caution.cut' });",
  },
  {
    rule: 'u',
    harm: 'a test without a call is asked with the call on',
    file: 'client/visit/steps/choose-step.ts',
    from: "if (call === 'any' || call === context.call",
    to: "if (call !== 'cooling' || call === context.call",
  },
  {
    rule: 'u',
    harm: 'a fan is turned by hand while it is fed',
    file: 'client/visit/steps/looks.ts',
    from: "'look-fan-by-hand': OUTDOORS,",
    to: "'look-fan-by-hand': { focus: 'line-circuit', zone: 'none' },",
  },
  {
    rule: 'v',
    harm: 'what was answered is asked again',
    file: 'client/visit/steps/choose-step.ts',
    from: 'id === test.id && isIn',
    to: 'id !== test.id && isIn',
  },
  {
    rule: 'w',
    harm: 'a breaker closed above a locked disconnect ends the proof of the load side',
    file: 'client/visit/rules/isolation.ts',
    from: "other !== place && context.isolation[other] === 'locked' &&",
    to: 'other !== place && context.isolation[other] === undefined &&',
  },
  {
    rule: 'w',
    harm: 'a breaker that was locked only after it keeps a proof whose own switch is closed',
    file: 'client/visit/rules/isolation.ts',
    from: ' && provedBehind?.includes(other) !== false',
    to: '',
  },
];
