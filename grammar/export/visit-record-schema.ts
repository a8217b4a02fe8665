import Type, { type Static } from 'typebox';
import { PHASES } from '../visit/events.ts';
import { FOCUSES } from '../vocabulary/focuses.ts';
import { ISOLATION_PLACES } from '../vocabulary/isolation-places.ts';
import { NOTE_SUBJECTS } from '../vocabulary/job-items.ts';
import { PRESSURE_UNITS, TEMPERATURE_UNITS } from '../vocabulary/unit-choice.ts';
import { ENERGY_STATES, type EnergyState, ZONES, type ZoneId } from '../vocabulary/zones.ts';

/** Nothing that is not named is let through. */
const closed = { additionalProperties: false };
const oneOf = <const T extends readonly string[]>(words: T) =>
  Type.Unsafe<T[number]>({ type: 'string', enum: [...words] });

/** RFC 3339, UTC, as the clock of the device gave it. */
const Time = Type.String({ pattern: '^\\d{4}-\\d{2}-\\d{2}T\\d{2}:\\d{2}:\\d{2}(\\.\\d+)?Z$' });
const Words = Type.String({ minLength: 1 });
const OfOpening = Type.String({ description: 'empty where no opening of the visit could be read' });
/** A number in `unit`, or the meter's word for an open circuit. */
const Value = Type.Union([Type.Number(), Type.Literal('open')]);
/** UCUM code. */
const Unit = Type.String({ minLength: 1 });
const Zone = oneOf(ZONES);
const Probability = Type.Number({ minimum: 0, maximum: 1 });
const Numbers = Type.Array(Type.Integer({ minimum: 1 }));

/** Beside the words of a dictation. The sound itself stays on the device that heard it, under its hash. */
const DICTATION = {
  /** The words are a recogniser's guess: nobody has read them over. */
  guessed: Type.Optional(Type.Literal(true)),
  /** What was heard, where other words were written over it. */
  heard: Type.Optional(Type.String()),
  sound: Type.Optional(
    Type.Object({ sha256: Type.String({ pattern: '^[0-9a-f]{64}$' }), ms: Type.Number({ minimum: 0 }) }, closed),
  ),
};

const MeasuredSchema = Type.Object(
  {
    quantity: Words,
    at: Type.Array(Words, { minItems: 1 }),
    value: Value,
    unit: Unit,
    bench: Type.Optional(Type.Literal(true)),
  },
  closed,
);

const JudgedSchema = Type.Object(
  {
    word: oneOf(['fits', 'marginal', 'does not fit', 'impossible']),
    rule: Words,
    low: Type.Optional(Type.Number()),
    high: Type.Optional(Type.Number()),
    source: Words,
    tag: oneOf(['published', 'memory', 'practice', 'derived', 'nameplate']),
  },
  closed,
);

const ReadingSchema = Type.Object(
  {
    number: Type.Integer({ minimum: 1 }),
    /** Which entry of the record it is. */
    entry: Type.Integer({ minimum: 1 }),
    at: Time,
    reading: MeasuredSchema,
    power: oneOf(['on', 'off', 'unknown']),
    call: oneOf(['cooling', 'none', 'unknown']),
    phase: oneOf(PHASES),
    judged: Type.Optional(JudgedSchema),
    /** What it read before it was set right, the oldest first. */
    corrected: Type.Array(MeasuredSchema),
    withdrawn: Type.Boolean(),
  },
  closed,
);

const WireSchema = Type.Object(
  {
    at: Time,
    action: oneOf(['lifted', 'landed', 'jumper-on', 'jumper-off']),
    colour: Type.Optional(Words),
    size: Type.Optional(Words),
    from: Type.Optional(Words),
    to: Type.Optional(Words),
  },
  closed,
);

const SummarySchema = Type.Object(
  { finding: Words, technical: Type.Array(Words), plain: Words, openItems: Type.Array(Words) },
  closed,
);

/** The whole visit as one document: JSON Schema, draft 2020-12. Times are UTC, units UCUM, points and zones as in the vocabulary. */
export const VisitRecordSchema = Type.Object(
  {
    format: Type.Literal('readback-visit'),
    version: Type.Literal(1),
    visit: OfOpening,
    site: Type.String(),
    complaint: Type.String(),
    role: oneOf(['technician', 'trainee']),
    software: OfOpening,
    /** Of the device that opened the visit, by its IANA name; times in this document are UTC all the same. */
    zone: Type.Optional(Words),
    /** UCUM codes in which a number without a unit was, at the end of the visit; absent where °F and psi. Each reading has its own. */
    units: Type.Optional(
      Type.Object({ temperature: oneOf(TEMPERATURE_UNITS), pressure: oneOf(PRESSURE_UNITS) }, closed),
    ),
    unit: Type.Object({ id: Words }, { additionalProperties: true }),
    opened: Time,
    lastEvent: Time,
    events: Type.Integer({ minimum: 1 }),
    phase: oneOf(PHASES),
    phases: Type.Array(Type.Object({ at: Time, phase: oneOf(PHASES) }, closed)),
    focuses: Type.Array(Type.Object({ at: Time, focus: oneOf(FOCUSES.map(({ id }) => id)) }, closed)),
    /** `said`: the technician's own words, where they tell more, such as where a leak is. */
    items: Type.Array(Type.Object({ at: Time, item: Words, words: Words, said: Type.Optional(Words) }, closed)),
    nameplate: Type.Array(
      Type.Object(
        { at: Time, field: Words, value: Type.Union([Type.Number(), Type.String()]), unit: Type.Optional(Unit) },
        closed,
      ),
    ),
    readings: Type.Array(ReadingSchema),
    /** Readings that contradict each other, by their numbers. */
    contradictions: Type.Array(Type.Object({ at: Time, numbers: Numbers }, closed)),
    refused: Type.Array(Type.Object({ at: Time, reading: MeasuredSchema, reason: Words }, closed)),
    observations: Type.Array(Type.Object({ at: Time, observation: Words, words: Words }, closed)),
    energy: Type.Unsafe<Record<ZoneId, EnergyState>>(
      Type.Object(Object.fromEntries(ZONES.map((zone) => [zone, oneOf(ENERGY_STATES)])), closed),
    ),
    energyChanges: Type.Array(
      Type.Object({ at: Time, zone: Zone, from: oneOf(ENERGY_STATES), to: oneOf(ENERGY_STATES), why: Words }, closed),
    ),
    /** Reports of the switches that isolate; `withdrawn`: taken back, it counts for nothing. */
    switches: Type.Array(
      Type.Object(
        {
          at: Time,
          place: oneOf(ISOLATION_PLACES),
          state: oneOf(['unknown', 'closed', 'open', 'locked']),
          device: Type.Optional(Words),
          withdrawn: Type.Boolean(),
        },
        closed,
      ),
    ),
    /** Volts, in the order they were read. */
    proofs: Type.Array(
      Type.Object(
        {
          at: Time,
          zone: Zone,
          before: Type.Number(),
          values: Type.Array(Type.Number()),
          /** The pair of each value; empty for a value that belongs to none. */
          places: Type.Optional(Type.Array(Type.Array(Type.String()))),
          after: Type.Number(),
          result: oneOf(['reads dead', 'voltage present', 'meter not proven']),
        },
        closed,
      ),
    ),
    cautions: Type.Array(
      Type.Object(
        {
          at: Time,
          caution: Words,
          words: Words,
          source: Words,
          zone: Type.Optional(Zone),
          late: Type.Boolean(),
          why: Type.Optional(Words),
          /** No voice spoke it: it stood on the screen for as long as it takes to read. */
          shown: Type.Optional(Type.Literal(true)),
          acknowledged: Type.Optional(Time),
        },
        closed,
      ),
    ),
    warnings: Type.Array(Type.Object({ at: Time, words: Words }, closed)),
    finding: Type.Optional(
      Type.Object(
        { fault: Words, probability: Probability, evidence: Numbers, unproved: Type.Optional(Type.Array(Words)) },
        closed,
      ),
    ),
    parts: Type.Array(
      Type.Object(
        {
          at: Time,
          part: Words,
          ratings: Type.Record(Type.String(), Type.Union([Type.Number(), Type.String()])),
          repairs: Type.Array(Words),
          /** What was held against it, and the reason for which it was kept. */
          doubts: Type.Array(Words),
        },
        closed,
      ),
    ),
    /** Fuses and breakers that were refused as too large and not told out. */
    refusedParts: Type.Array(Type.Object({ at: Time, part: Words, words: Words }, closed)),
    works: Type.Array(Type.Object({ at: Time, work: Words, words: Words, repairs: Type.Array(Words) }, closed)),
    wires: Type.Array(WireSchema),
    /** Parts out and in, covers off and on, what was done by hand. */
    deeds: Type.Array(
      Type.Object(
        { at: Time, deed: oneOf(['part-moved', 'cover', 'deed']), of: Words, to: Type.Optional(Words) },
        closed,
      ),
    ),
    /** Hands in a zone that was not proven dead, and how it stood then. */
    unproven: Type.Array(Type.Object({ at: Time, what: Words, zone: Zone, state: oneOf(ENERGY_STATES) }, closed)),
    notes: Type.Array(
      Type.Object(
        {
          at: Time,
          text: Type.String(),
          from: Type.Optional(Type.Literal('customer')),
          /** The words tell with what certificate refrigerant was handled, or into what cylinder it went. */
          about: Type.Optional(oneOf(NOTE_SUBJECTS)),
          ...DICTATION,
        },
        closed,
      ),
    ),
    recommendations: Type.Array(Type.Object({ at: Time, text: Words, ...DICTATION }, closed)),
    signatures: Type.Array(
      Type.Object({ at: Time, who: oneOf(['technician', 'customer']), name: Words, ...DICTATION }, closed),
    ),
    /** Pressure test, vacuum and standing vacuum of an opened refrigerant circuit: psi lost beyond temperature, or microns. */
    refrigerant: Type.Array(
      Type.Object(
        {
          at: Time,
          check: oneOf(['pressure-test', 'evacuation', 'decay']),
          value: Type.Number(),
          minutes: Type.Integer({ minimum: 0 }),
          judged: JudgedSchema,
        },
        closed,
      ),
    ),
    /** Return less supply air after the repair, in Fahrenheit degrees. */
    split: Type.Optional(
      Type.Object(
        {
          at: Time,
          value: Type.Number(),
          minutes: Type.Number({ minimum: 0 }),
          word: oneOf(['fits', 'marginal', 'does not fit', 'impossible']),
          low: Type.Number(),
          high: Type.Number(),
          source: Words,
        },
        closed,
      ),
    ),
    /** Superheat, subcooling, condensing over ambient, in Fahrenheit degrees, from two readings each. */
    charge: Type.Array(
      Type.Object(
        {
          at: Time,
          figure: oneOf(['superheat', 'subcooling', 'condensing-over-ambient']),
          value: Type.Number(),
          refrigerant: Words,
          readings: Numbers,
          minutes: Type.Number({ minimum: 0 }),
          judged: Type.Optional(JudgedSchema),
          noVerdict: Type.Optional(Words),
        },
        closed,
      ),
    ),
    /** Who acknowledged a trainee's live steps, and whether from a device of their own. */
    acknowledgements: Type.Array(
      Type.Object(
        { at: Time, supervisor: Words, from: Type.Optional(oneOf(['own-device', 'this-device', 'unproven'])) },
        closed,
      ),
    ),
    /** Each time another device carried the visit on, behind the last entry that counts of the one before. */
    takeOvers: Type.Array(
      Type.Object(
        {
          at: Time,
          device: Words,
          role: oneOf(['technician', 'trainee']),
          person: Type.Optional(Words),
          from: Type.Object(
            {
              device: Words,
              epoch: Type.Integer({ minimum: 1 }),
              seq: Type.Integer({ minimum: 1 }),
              hash: Type.String({ pattern: '^[0-9a-f]{64}$' }),
            },
            closed,
          ),
          /** Entries of the device before that it told of and that had not come. */
          missing: Type.Optional(Type.Integer({ minimum: 1 })),
        },
        closed,
      ),
    ),
    /** What a trainee alone said of something live: kept, and not taken. */
    waited: Type.Array(Type.Object({ at: Time, words: Words }, closed)),
    remarks: Type.Array(
      Type.Object({ at: Time, author: Words, text: Words, from: Type.Optional(oneOf(['this-device'])) }, closed),
    ),
    injuries: Type.Array(Type.Object({ at: Time }, closed)),
    /** Checks on a lone worker that nobody answered. */
    unanswered: Type.Array(Type.Object({ at: Time, times: Type.Integer({ minimum: 1 }) }, closed)),
    /** Closed with something left: what, and the reason that was spoken. */
    overrides: Type.Array(Type.Object({ at: Time, why: Type.Array(Words), reason: Type.String() }, closed)),
    /** Entries that are left out of this document, each with its type where it bears one, and why. */
    notRead: Type.Array(
      Type.Object(
        {
          at: Time,
          entry: Type.Integer({ minimum: 1 }),
          why: oneOf(['unreadable', 'damaged', 'unknown kind']),
          type: Type.Optional(Type.String()),
        },
        closed,
      ),
    ),
    summary: Type.Optional(SummarySchema),
  },
  {
    ...closed,
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    $id: 'urn:readback:visit-record:1',
    title: 'A visit, whole',
  },
);

export type VisitRecord = Static<typeof VisitRecordSchema>;
