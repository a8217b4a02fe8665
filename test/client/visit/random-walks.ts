import fc from 'fast-check';
import { LINES, type Move, RANKED } from './walk.ts';

const move: fc.Arbitrary<Move> = fc.oneof(
  { weight: 12, arbitrary: fc.record({ do: fc.constant('say' as const), line: fc.nat(LINES.length - 1) }) },
  {
    weight: 4,
    arbitrary: fc.record({
      do: fc.constant('mouth' as const),
      outcome: fc.constantFrom('spoken' as const, 'spoken' as const, 'cut' as const),
    }),
  },
  {
    weight: 4,
    arbitrary: fc.record({ do: fc.constant('rank' as const), first: fc.nat(RANKED.length - 1), done: fc.boolean() }),
  },
  {
    weight: 1,
    arbitrary: fc.record({ do: fc.constant('minutes' as const), minutes: fc.integer({ min: 1, max: 40 }) }),
  },
  { weight: 1, arbitrary: fc.constant({ do: 'supervise' as const }) },
);

/** A technician who follows the prompts now and then, so that walks get deep: the road to proven dead and the repair. */
export const ROAD_LINES = [
  'leg one to ground one eighteen',
  'thermostat is not calling',
  'outdoor disconnect is pulled and locked',
  'meter two forty zero zero zero zero zero zero meter two forty',
  'herm section zero volts d c',
  'fan section zero volts d c',
] as const;
export const ARRIVAL_LINES = [
  'outdoor air ninety four degrees',
  'return air eighty degrees',
  'thermostat is calling',
  'outdoor fan is not turning',
] as const;
const PROOF_LINES = [
  'fitted a forty five over five dual capacitor four forty volt',
  'outdoor disconnect is back in',
  'thermostat is calling',
  'outdoor fan is turning',
  'compressor amps eleven point two',
  'fan amps point nine',
] as const;
export const INDOOR_ROAD_LINES = [
  'thermostat is not calling',
  'air handler leg one to ground one nineteen',
  'air handler switch is off and locked',
  'meter proves two forty',
  'control circuit meter twenty five zero meter twenty five',
  'meter proves two forty',
  'meter two forty zero zero zero meter two forty at the air handler',
  'blower capacitor zero volts d c',
  'disconnect line one to ground one nineteen',
  'breaker at the panel is off and locked',
  'meter proves two forty',
  'meter two forty zero zero zero meter two forty at the disconnect line side',
] as const;
/** A start capacitor that was put in holds a charge of its own. */
const HARD_START_ROAD = ['fitted a hard start kit', ...ROAD_LINES, 'start cap zero volts d c'] as const;
const asMoves = (lines: readonly string[]): Move[] =>
  lines.map((line): Move => ({ do: 'say', line: LINES.indexOf(line as (typeof LINES)[number]) }));

const ROADS: readonly (readonly Move[])[] = [
  asMoves(ARRIVAL_LINES),
  asMoves(ARRIVAL_LINES),
  asMoves(ROAD_LINES),
  asMoves(HARD_START_ROAD),
  asMoves(INDOOR_ROAD_LINES),
  [
    ...asMoves(PROOF_LINES),
    { do: 'minutes', minutes: 16 },
    ...asMoves(['return air eighty degrees', 'supply air sixty one degrees']),
  ],
];

/** A ranking, the mouth's outcome, the technician's word: the way through a caution. */
const cautioned = fc
  .tuple(fc.nat(RANKED.length - 1), fc.constantFrom('spoken' as const, 'cut' as const))
  .map(([first, outcome]): Move[] => [
    { do: 'rank', first, done: false },
    { do: 'mouth', outcome },
    { do: 'say', line: LINES.indexOf('live') },
  ]);

/** Random walks, each by one of both roles: single moves, whole roads, and ways through a caution. */
export const walks = fc.tuple(
  fc.constantFrom('technician' as const, 'trainee' as const),
  fc.array(
    fc.oneof(
      { weight: 6, arbitrary: move.map((one) => [one]) },
      { weight: 2, arbitrary: fc.constantFrom(...ROADS) },
      { weight: 2, arbitrary: cautioned },
    ),
    {
      minLength: 20,
      maxLength: 60,
    },
  ),
);
