/**
 * Physical quantities that a visit records, each with its UCUM unit code.
 * UCUM codes: The Unified Code for Units of Measure (ucum.org). `gauge` marks a pressure that is read against the
 * atmosphere: UCUM has no code for gauge pressure, so it is a field of its own.
 */
export type QuantityId =
  | 'voltage'
  | 'voltage-dc'
  | 'current'
  | 'resistance'
  | 'capacitance'
  | 'temperature'
  /** A difference of two temperatures: superheat, subcooling, split. Degrees, without the offset of the scale. */
  | 'difference'
  | 'wet-bulb'
  | 'pressure'
  | 'vacuum'
  | 'static-pressure'
  | 'airflow'
  | 'frequency'
  | 'humidity'
  | 'insulation'
  | 'mass'
  | 'time';

/** UCUM unit codes in use. */
export type UnitCode =
  | 'V'
  | 'mV'
  | 'A'
  | 'mA'
  | 'Ohm'
  | 'mOhm'
  | 'kOhm'
  | 'MOhm'
  | 'GOhm'
  | 'uF'
  | '[degF]'
  | 'Cel'
  | 'K'
  | '[psi]'
  | 'kPa'
  | 'MPa'
  | 'Pa'
  | 'bar'
  | "[in_i'Hg]"
  | "[in_i'H2O]"
  | 'um[Hg]'
  | 'mm[Hg]'
  | '[cft_i]/min'
  | 'Hz'
  | '%'
  | 'min'
  | '[lb_av]'
  | '[oz_av]'
  | 'kg'
  | 'g';

declare const unitBrand: unique symbol;
/** A number that carries its unit in the type: a volt is never an ohm. */
export type In<U extends UnitCode> = number & { readonly [unitBrand]: U };
export type Volts = In<'V'>;
export type Amps = In<'A'>;
export type Microfarads = In<'uF'>;

/** A measured value: a number in the reading's unit, or an open circuit (over limit on ohms and continuity). */
export type Value = number | 'open';
