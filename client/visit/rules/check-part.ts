import type { PartId } from '../../../grammar/vocabulary/parts.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import { DOUBTED, PART_DOUBTS } from '../../words/talk/doubt-words.ts';

export type Ratings = Readonly<Record<string, number | string>>;

/** What is held against a part: `refuse` names a part that must not stay in; `warn` what has to be looked at. */
export interface PartDoubt {
  readonly weight: 'refuse' | 'warn';
  readonly why: string;
  readonly source: string;
}

type Check = (ratings: Ratings, unit: UnitProfile, plate: Ratings) => readonly PartDoubt[];

/** A part of which nothing is known that could speak against it. */
const FITS: Check = () => [];

/** What each part's ratings are held against. */
const CHECKS: Readonly<Record<PartId, Check>> = {
  'dual-capacitor': (ratings, unit, plate) => checkCapacitor('dual-capacitor', ratings, unit, plate),
  capacitor: (ratings, unit, plate) => checkCapacitor('capacitor', ratings, unit, plate),
  'hard-start': FITS,
  contactor: (ratings, unit) => checkContactor(ratings, unit),
  'fan-motor': (ratings, unit) => checkFanMotor(ratings, unit),
  'blower-motor': FITS,
  fuse: (ratings, unit, plate) => checkOvercurrent('fuse', ratings, unit, plate),
  'control-fuse': FITS,
  breaker: (ratings, unit, plate) => checkOvercurrent('breaker', ratings, unit, plate),
  transformer: (ratings) => missing(ratings, ['va'], DOUBTED.transformer),
  thermostat: FITS,
  'float-switch': FITS,
  'pressure-switch': FITS,
  disconnect: FITS,
  filter: FITS,
  'filter-drier': FITS,
  compressor: FITS,
  'defrost-board': FITS,
  'control-board': FITS,
  'blower-relay': FITS,
  'reversing-valve': FITS,
  'unloader-solenoid': FITS,
  'crankcase-heater': FITS,
  'door-switch': FITS,
  'expansion-valve': FITS,
  'valve-core': FITS,
};

/**
 * Holds a fitted part's ratings against the nameplate. An empty list means only that nothing known speaks against it:
 * ratings that were not said, or that the nameplate does not give, are warned of and never assumed.
 */
export function checkPart(part: PartId, ratings: Ratings, unit: UnitProfile, plate: Ratings): readonly PartDoubt[] {
  return CHECKS[part](ratings, unit, plate);
}

const CAPACITOR_SOURCE = 'same microfarads, same or higher volts: common practice';

function checkCapacitor(part: PartId, ratings: Ratings, unit: UnitProfile, plate: Ratings): readonly PartDoubt[] {
  const volts = numberOf(plate, 'capacitor-volts');
  const wanted =
    part === 'dual-capacitor'
      ? ([
          ['herm-uF', unit.capacitor?.herm, DOUBTED.herm],
          ['fan-uF', unit.capacitor?.fan, DOUBTED.fan],
        ] as const)
      : ([] as const);
  const differing = wanted.flatMap(([id, plated, name]): PartDoubt[] => {
    const fitted = numberOf(ratings, id);
    if (fitted === undefined) return [warn(PART_DOUBTS.sectionNotSaid(name), CAPACITOR_SOURCE)];
    if (plated === undefined || fitted === plated) return [];
    return [refuse(PART_DOUBTS.otherMicrofarads(name, fitted, plated), CAPACITOR_SOURCE)];
  });
  const fittedVolts = numberOf(ratings, 'volts');
  if (fittedVolts === undefined) return [...differing, warn(PART_DOUBTS.voltsNotSaid, CAPACITOR_SOURCE)];
  if (volts !== undefined && fittedVolts < volts) {
    return [...differing, refuse(PART_DOUBTS.fewerVolts(fittedVolts, volts), CAPACITOR_SOURCE)];
  }
  return differing;
}

/** Of the control circuit, and so of a contactor's coil. */
const CONTROL_VOLTS = 24;
const CONTACTOR_SOURCE =
  'NEC 440.41 (2008 text): rated for the greater of RLA and branch-circuit current; same coil volts';

function checkContactor(ratings: Ratings, unit: UnitProfile): readonly PartDoubt[] {
  const amps = numberOf(ratings, 'amps');
  const poles = numberOf(ratings, 'poles');
  const coil = numberOf(ratings, 'coil-volts');
  const duty = unit.compressor === undefined ? undefined : unit.compressor.rla + (unit.fanMotor?.fla ?? 0);
  return [
    ...missing(ratings, ['amps', 'poles', 'coil-volts'], DOUBTED.contactor),
    ...(amps !== undefined && duty !== undefined && amps < duty
      ? [refuse(PART_DOUBTS.fewerAmps(amps, round(duty)), CONTACTOR_SOURCE)]
      : []),
    ...(coil !== undefined && coil !== CONTROL_VOLTS
      ? [refuse(PART_DOUBTS.otherCoil(coil, CONTROL_VOLTS), CONTACTOR_SOURCE)]
      : []),
    ...(poles !== undefined && unit.contactorPoles !== undefined && poles < unit.contactorPoles
      ? [warn(PART_DOUBTS.fewerPoles(unit.contactorPoles), 'common practice')]
      : []),
  ];
}

const OVERCURRENT_SOURCE = 'NEC 440.4(B): at most the nameplate maximum overcurrent protection';
const LARGEST_SOURCE = 'NEC 440.22(A) and (B): at most 225 percent of the compressor, plus the other loads';
/** NEC 440.22(A): the most that a motor-compressor may be protected with where less does not let it start. */
const LARGEST_SHARE = 2.25;
/** NEC 440.22(A), exception: a device need not be smaller than this. */
const SMALLEST_AMPS = 15;

function checkOvercurrent(part: PartId, ratings: Ratings, unit: UnitProfile, plate: Ratings): readonly PartDoubt[] {
  const amps = numberOf(ratings, 'amps');
  const most = numberOf(plate, 'max-overcurrent');
  if (amps === undefined) return [warn(PART_DOUBTS.ampsNotSaid(part), OVERCURRENT_SOURCE)];
  if (most !== undefined) return amps > most ? [refuse(PART_DOUBTS.tooManyAmps(amps, most), OVERCURRENT_SOURCE)] : [];
  const rla = numberOf(plate, 'rla') ?? unit.compressor?.rla;
  const unread = warn(PART_DOUBTS.mostAmpsUnknown, OVERCURRENT_SOURCE);
  if (rla === undefined) return [unread];
  const others = unit.fanMotor?.fla ?? 0;
  const largest = Math.max(SMALLEST_AMPS, round(LARGEST_SHARE * rla + others));
  return amps > largest ? [refuse(PART_DOUBTS.overLargest(amps, largest, rla, others), LARGEST_SOURCE)] : [unread];
}

const MOTOR_SOURCE = 'same volts, horsepower and rotation, full load amps not over the old: common practice';

function checkFanMotor(ratings: Ratings, unit: UnitProfile): readonly PartDoubt[] {
  const amps = numberOf(ratings, 'amps');
  const fla = unit.fanMotor?.fla;
  return [
    ...missing(ratings, ['hp', 'volts', 'amps'], DOUBTED.fanMotor),
    warn(PART_DOUBTS.rotation, MOTOR_SOURCE),
    ...(amps !== undefined && fla !== undefined && amps > fla * 1.1
      ? [refuse(PART_DOUBTS.drawsMore(amps, fla), MOTOR_SOURCE)]
      : []),
  ];
}

const RATINGS_SOURCE = 'common practice: ratings are compared, not assumed';

function missing(ratings: Ratings, ids: readonly string[], part: string): readonly PartDoubt[] {
  const absent = ids.filter((id) => ratings[id] === undefined);
  return absent.length === 0 ? [] : [warn(PART_DOUBTS.notSaid(part, absent), RATINGS_SOURCE)];
}

function numberOf(ratings: Ratings, id: string): number | undefined {
  const value = ratings[id];
  return typeof value === 'number' ? value : undefined;
}

function refuse(why: string, source: string): PartDoubt {
  return { weight: 'refuse', why, source };
}

function warn(why: string, source: string): PartDoubt {
  return { weight: 'warn', why, source };
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
