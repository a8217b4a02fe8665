import type { InputTime } from '../../grammar/visit/inputs.ts';
import type { PointId } from '../../grammar/vocabulary/points.ts';
import type { QuantityId } from '../../grammar/vocabulary/quantities.ts';
import type { UnitProfile } from '../../grammar/vocabulary/unit-profile.ts';
import { ZONES, type ZoneId } from '../../grammar/vocabulary/zones.ts';

/** The rules of conduct, by the letter they have on paper. */
export type Letter =
  | 'a'
  | 'b'
  | 'c'
  | 'd'
  | 'e'
  | 'f'
  | 'g'
  | 'h'
  | 'j'
  | 'k'
  | 'l'
  | 'm'
  | 'n'
  | 'o'
  | 'p'
  | 'q'
  | 'r'
  | 'w';

/** Why a zone may not be called proven dead. */
export interface Objection {
  readonly rule: Letter;
  readonly reason: string;
}

/** What had to be said, or had to stay out of the record, when this was said. */
export interface Warning {
  readonly rule: Letter;
  readonly kind: string;
  /**
   * `said`: warned of at once; `not-taken`: the reading is not logged; `doubted`: the part is doubted aloud; `aloud`: any
   * word that is no mere echo will do.
   */
  readonly wants: 'said' | 'not-taken' | 'doubted' | 'aloud';
  /** The zones whose proof it ended. */
  readonly ends?: readonly ZoneId[];
  /** The zone that is not proven dead, where that is why. */
  readonly zone?: ZoneId;
  /** The place of the reading that is not to be taken. */
  readonly at?: readonly PointId[];
  readonly quantity?: QuantityId;
}

/** Something said that may be taken back: `said` numbers the sentence it came from. */
export interface Said {
  readonly said: number;
}

/** Meter, pairs, meter: what of it was said so far. */
export interface Proof extends Said {
  readonly began: number;
  /** The devices that were locked when it began: it holds behind them, and behind none that was told of later. */
  readonly locks: readonly string[];
  /** Pairs that read dead, each under its two tips in alphabetical order. */
  pairs: Record<string, number>;
  /** The sentence in which the meter was proven again, once it was. */
  whole?: number;
}

export interface Device extends Said {
  readonly state: 'open' | 'closed' | 'locked' | 'unlocked';
}

/** What a correction can mean: a reading, or the values of a proof said in one breath. */
export type Latest =
  | (Said & {
      readonly of: 'reading';
      readonly quantity: QuantityId;
      readonly at: readonly PointId[];
      /** Whether its zone was reported off when it was read. */
      readonly off: boolean;
    })
  | (Said & { readonly of: 'breath'; readonly zone: ZoneId })
  /** The meter on its source: the number of the proof that was said last. */
  | (Said & { readonly of: 'meter' });

/** Something that must not be there when power returns, and the zone it is in. */
export interface OpenItem extends Said {
  readonly zones: readonly ZoneId[];
}

/** All that the oracle knows of a visit. Plain data; a step copies it. */
export interface Facts {
  unit: UnitProfile;
  role: 'technician' | 'trainee';
  supervised: boolean;
  /** How many sentences were said, and which of them can be taken back, the latest last. */
  sentences: number;
  takeable: number[];
  /** Understood, but asked about, one after another: the first is answered first. */
  pending: { readonly meanings: unknown[]; readonly mayCount: boolean; readonly since: number }[];
  /** Where a reading was taken on the bench, while nothing else was told since: a number that sets it right is of the bench too. */
  bench: string | null;
  /** Every place read on the bench so far: a question about one of them is answered by a number alone. */
  benches: string[];
  /** Whether what is being taken was a number and nothing else. */
  numberAlone: boolean;
  last: InputTime | null;
  /** When the latest accepted words were said. */
  present: InputTime | null;
  reloaded: boolean;
  devices: Record<string, Device>;
  call: ({ readonly on: boolean } & Said) | null;
  proofs: Partial<Record<ZoneId, Proof>>;
  /** What ended the latest proof of a zone. */
  ended: Partial<Record<ZoneId, Objection>>;
  /** Zones in which power may be back since a switch of theirs was told of: what was locked is not believed. */
  doubted: ZoneId[];
  /** Places whose ground read a full leg while live. */
  grounds: { indoors: number[]; outdoors: number[] };
  /** Charged sections that read dead, by their name. */
  discharged: Record<string, number>;
  latest: Latest | null;
  /** Every reading taken, the latest last: a correction that names its place is of the one read there. */
  readings: (Said & { readonly quantity: QuantityId; readonly at: string })[];
  startCapacitor: boolean;
  /** What stands open when power returns: jumpers, wires, covers. */
  jumpers: OpenItem[];
  wiresOff: OpenItem[];
  coversOff: OpenItem[];
  /** `said`: the sentence that told of the trip. */
  /** `breaker`: it was seen tripped and not closed since: no live leg is behind it (v). */
  fault: {
    tripped: boolean;
    breaker?: boolean;
    said?: number;
    resets: number;
    windingRead: boolean;
    grounded: boolean;
  };
  maxOvercurrent: number | null;
  rla: number | null;
  /** `openedBy`: the sentence that told of it, and what was known of it before. */
  circuit: {
    opened: boolean;
    recovered: boolean;
    nitrogen: boolean;
    vacuum: boolean;
    openedBy?: Said & { readonly before: Facts['circuit'] };
    weighedIn?: Said & { readonly before: Facts['circuit']; readonly inVacuum: boolean };
  };
  inVacuum: boolean;
}

export function newFacts(unit: UnitProfile, role: Facts['role']): Facts {
  return {
    unit,
    role,
    supervised: false,
    sentences: 0,
    takeable: [],
    pending: [],
    bench: null,
    benches: [],
    numberAlone: false,
    last: null,
    present: null,
    reloaded: false,
    devices: {},
    call: null,
    proofs: {},
    ended: {},
    doubted: [],
    grounds: { indoors: [], outdoors: [] },
    discharged: {},
    latest: null,
    readings: [],
    startCapacitor: unit.hardStart === true,
    jumpers: [],
    wiresOff: [],
    coversOff: [],
    fault: { tripped: false, resets: 0, windingRead: false, grounded: false },
    maxOvercurrent: null,
    rla: unit.compressor?.rla ?? null,
    circuit: { opened: false, recovered: false, nitrogen: false, vacuum: false },
    inVacuum: false,
  };
}

/** Zones with conductors; the capacitor sections hang on the outdoor unit. */
export const WIRED_ZONES = ZONES.filter((zone) => !zone.startsWith('capacitor'));
