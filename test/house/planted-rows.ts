/** A new id put into one of the tables or unions that others are keyed by, and the files that must not compile for it. */
export interface PlantedRow {
  readonly what: string;
  /** As compiler errors name it. */
  readonly id: string;
  readonly file: string;
  /** The text that the new row goes in front of; the last place where it stands. */
  readonly before: string;
  readonly row: string;
  readonly mustFill: readonly string[];
}

const rowOf = (id: string, more = '') => `{ id: '${id}', name: '${id}'${more} },\n`;

export const PLANTED_ROWS: readonly PlantedRow[] = [
  {
    what: 'a fault',
    id: 'planted-fault',
    file: 'grammar/vocabulary/faults.ts',
    before: '] as const satisfies readonly FaultName[];',
    row: rowOf('planted-fault'),
    mustFill: [
      'client/diagnosis/proof/proof-rows.ts',
      'client/diagnosis/faults/fault-models.ts',
      'client/visit/rules/repairs.ts',
      'client/words/talk/plain-words.ts',
      'test/simulator/hide-fault.ts',
    ],
  },
  {
    what: 'a test',
    id: 'planted-test',
    file: 'grammar/vocabulary/tests.ts',
    before: '] as const satisfies readonly TestName[];',
    row: rowOf('planted-test'),
    mustFill: ['client/diagnosis/measuring/test-models.ts'],
  },
  {
    what: 'a hazard',
    id: 'planted-hazard',
    file: 'grammar/vocabulary/hazards.ts',
    before: '] as const satisfies readonly HazardName[];',
    row: rowOf('planted-hazard'),
    mustFill: ['client/diagnosis/hazards/hazard-signs.ts', 'client/words/talk/caution-words.ts'],
  },
  {
    what: 'a point',
    id: 'planted-point',
    file: 'grammar/vocabulary/points.ts',
    before: '] as const satisfies readonly Point[];',
    row: rowOf('planted-point', ", zone: 'none'"),
    mustFill: ['client/diagnosis/measuring/point-nodes.ts', 'client/visit/rules/terminals.ts'],
  },
  {
    what: 'a measurand of a new pair',
    id: 'coil-1 neutral',
    file: 'grammar/vocabulary/measurands.ts',
    before: '] as const satisfies readonly Measurand[];',
    row: "{ ...LEG, at: ['coil-1', 'neutral'] },\n",
    mustFill: ['grammar/vocabulary/pairs.ts'],
  },
  {
    what: 'a quantity',
    id: 'planted-quantity',
    file: 'grammar/vocabulary/quantities.ts',
    before: "  | 'voltage'\n",
    row: "  | 'planted-quantity'\n",
    mustFill: [
      'client/words/talk/answer-words.ts',
      'client/diagnosis/posterior/take-readings.ts',
      'client/screens/technician/reading-picker.tsx',
      'client/visit/steps/focus-of.ts',
      'client/words/shown/show-reading.ts',
      'client/words/talk/step-words.ts',
      'client/words/things/reading-words.ts',
      'client/words/things/value-words.ts',
      'grammar/visit/judge-reading.ts',
      'grammar/vocabulary/units.ts',
    ],
  },
  {
    what: 'a unit',
    id: 'planted-unit',
    file: 'grammar/vocabulary/quantities.ts',
    before: "  | 'V'\n",
    row: "  | 'planted-unit'\n",
    mustFill: ['client/words/things/value-words.ts', 'grammar/vocabulary/units.ts'],
  },
  {
    what: 'a zone',
    id: 'planted-zone',
    file: 'grammar/vocabulary/zones.ts',
    before: '] as const;\nexport type ZoneId',
    row: "'planted-zone',\n",
    mustFill: [
      'client/words/talk/prompts.ts',
      'grammar/visit/facts.ts',
      'test/client/visit/conduct-looks-by-hand.test.ts',
      'client/screens/technician/action-keys.ts',
      'client/visit/rules/isolation.ts',
      'client/visit/rules/proof-ground.ts',
      'client/visit/rules/proof-plan.ts',
      'client/visit/rules/source-search.ts',
      'client/words/shown/energy-names.ts',
      'client/words/talk/action-words.ts',
      'grammar/vocabulary/zones.ts',
    ],
  },
  {
    what: 'an observation',
    id: 'planted-observation',
    file: 'grammar/vocabulary/observations.ts',
    before: '] as const;\nexport type ObservationId',
    row: rowOf('planted-observation', ", say: 'planted'"),
    mustFill: [
      'client/visit/steps/short-answers.ts',
      'client/diagnosis/measuring/look-tests.ts',
      'client/visit/rules/shown-by-look.ts',
    ],
  },
  {
    what: 'a part',
    id: 'planted-part',
    file: 'grammar/vocabulary/parts.ts',
    before: '] as const;\nexport type PartId',
    row: rowOf('planted-part', ", say: 'planted', ratings: []"),
    mustFill: [
      'grammar/vocabulary/moved-parts.ts',
      'client/visit/rules/check-part.ts',
      'client/visit/rules/hands-at.ts',
      'grammar/visit/opens-refrigerant.ts',
      'client/visit/rules/repairs.ts',
    ],
  },
  {
    what: 'work without a part',
    id: 'planted-work',
    file: 'grammar/vocabulary/works.ts',
    before: '] as const;\nexport type WorkId',
    row: rowOf('planted-work', ", say: 'planted'"),
    mustFill: ['client/visit/rules/hands-at.ts', 'grammar/visit/opens-refrigerant.ts', 'client/visit/rules/repairs.ts'],
  },
  {
    what: 'an order',
    id: 'planted-command',
    file: 'grammar/vocabulary/commands.ts',
    before: '] as const;\n\n/** Around a place whose reading',
    row: rowOf('planted-command', ", say: 'planted'"),
    mustFill: ['client/screens/technician/more-sheet.tsx', 'client/visit/intake/take-command.ts'],
  },
  {
    what: 'a job item',
    id: 'planted-item',
    file: 'grammar/vocabulary/job-items.ts',
    before: '] as const;\nexport type JobItemId',
    row: rowOf('planted-item', ", say: 'planted'"),
    mustFill: ['client/visit/intake/take-job.ts'],
  },
  {
    what: 'an action that a step asks for',
    id: 'planted-action',
    file: 'client/visit/chart/context.ts',
    before: "  | 'call-on'\n",
    row: "  | 'planted-action'\n",
    mustFill: [
      'client/visit/steps/short-answers.ts',
      'test/talk/obeying-technician.ts',
      'client/screens/technician/action-keys.ts',
      'client/visit/intake/settle-turn.ts',
      'client/visit/rules/cautions-due.ts',
      'client/visit/steps/ask-step.ts',
    ],
  },
  {
    what: 'an event',
    id: 'planted.happened',
    file: 'grammar/visit/events.ts',
    before: "  | { readonly type: 'visit.held' }\n",
    row: "  | { readonly type: 'planted.happened' }\n",
    mustFill: [
      'client/terminal/print-played.ts',
      'client/words/shown/entry-words.ts',
      'grammar/visit/evolve.ts',
      'grammar/visit/fold-visit.ts',
      'grammar/visit/is-whole.ts',
    ],
  },
  {
    what: 'a list of the folded visit',
    id: 'plantedLines',
    file: 'grammar/visit/fold-visit.ts',
    before: '  readonly injuries: readonly Moment[];\n',
    row: '  readonly plantedLines: readonly Moment[];\n',
    mustFill: ['grammar/export/visit-record.ts', 'grammar/visit/fold-visit.ts'],
  },
  {
    what: 'an input',
    id: 'planted.taken',
    file: 'grammar/visit/inputs.ts',
    before: "  | { readonly type: 'heard.utterance'",
    row: "  | { readonly type: 'planted.taken'; readonly time: InputTime }\n",
    mustFill: [
      'client/visit/chart/machine.ts',
      'client/visit/intake/take-input.ts',
      'client/words/shown/entry-words.ts',
    ],
  },
];
