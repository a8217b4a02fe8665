import { describe, expect, it } from 'vitest';
import { mayBeNothing } from '../../../client/diagnosis/proof/weigh-proof.ts';
import { isProved, proofOf, reading } from './held-readings.ts';

/** What made a false finding sure on simulators that are not ours, kind by kind; what is right is common practice. */
describe('what is no proof', () => {
  it('one open pair of a fan winding: an open winding shows at two', () => {
    const one = [reading('ohms-fan-C-S', 'open', 2), reading('ohms-fan-C-R', 33)];
    expect(proofOf('fan-start-winding-open', one).lacking.flat(2)).toEqual(['ohms-fan-R-S']);
    expect(proofOf('fan-start-winding-open', [...one, reading('ohms-fan-R-S', 51)]).denied).not.toEqual([]);
    expect(isProved(proofOf('fan-start-winding-open', [...one, reading('ohms-fan-R-S', 'open')]))).toBe(true);
    const run = [reading('ohms-fan-C-R', 'open'), reading('ohms-fan-R-S', 'open')];
    expect(isProved(proofOf('fan-run-winding-open', run))).toBe(true);
  });

  it('few volts under a compressor that cannot start: a sound supply sags as well', () => {
    const legs = [reading('volts-L1-ground', 95), reading('volts-L2-ground', 96)];
    const low = [reading('volts-L1-L2', 191), ...legs];
    const starting = [...low, reading('look-compressor', 'compressor-hums-and-trips')];
    expect(isProved(proofOf('supply-low', starting))).toBe(false);
    expect(proofOf('supply-low', starting).lacking.flat(2)).toContain('volts-L1-L2-no-call');
    expect(isProved(proofOf('supply-low', [...starting, reading('volts-L1-L2-no-call', 192)]))).toBe(true);
    expect(proofOf('supply-low', [...starting, reading('volts-L1-L2-no-call', 238)]).denied).not.toEqual([]);
    expect(isProved(proofOf('supply-low', [...low, reading('look-compressor', 'compressor-running')]))).toBe(true);
    const standing = [...low, reading('look-compressor', 'compressor-not-running')];
    expect(isProved(proofOf('supply-low', standing))).toBe(false);
    expect(isProved(proofOf('supply-low', [...standing, reading('amps-compressor', 0)]))).toBe(true);
    expect(isProved(proofOf('supply-low', [...standing, reading('amps-compressor', 130)]))).toBe(false);
  });

  it('a switch that is open, for its being the cause: what opened it may be', () => {
    for (const [fault, looks] of [
      ['high-switch-open', reading('look-outdoor-coil', 'outdoor-coil-clean')],
      ['low-switch-open', reading('look-blower', 'blower-running')],
    ] as const) {
      const test = fault === 'high-switch-open' ? 'volts-high-switch' : 'volts-low-switch';
      const proof = proofOf(fault, [reading(test, 26, 2), looks]);
      expect(proof, fault).toMatchObject({ lacking: [], denied: [], unproved: ['pressure-standing'] });
    }
  });

  it('no volts behind a delay: a lead that is off in between reads the same', () => {
    const proof = proofOf('delay-stays-open', [
      reading('volts-Y-C-condenser', 26),
      reading('volts-coil', 0, 2),
      reading('ohms-coil', 12),
      reading('volts-high-switch', 0),
      reading('volts-low-switch', 0),
    ]);
    expect(proof).toMatchObject({ lacking: [], denied: [] });
    expect(proof.unproved).not.toEqual([]);
  });

  it('few ohms from Y to C, for a short in the cable: a coil with shorted turns reads the same', () => {
    const loop = reading('ohms-Y-C', 5.4);
    const sound = [loop, reading('ohms-coil', 13)];
    const shorted = [loop, reading('ohms-coil', 5.2)];
    expect(proofOf('control-short-Y-C', [loop])).toMatchObject({ lacking: [[['ohms-coil']]], denied: [] });
    expect(isProved(proofOf('control-short-Y-C', sound))).toBe(true);
    expect(proofOf('contactor-coil-shorted', sound).denied).not.toEqual([]);
    expect(proofOf('control-short-Y-C', shorted).denied).not.toEqual([]);
    expect(isProved(proofOf('contactor-coil-shorted', shorted))).toBe(true);
    expect(proofOf('contactor-jammed-open', shorted).denied).not.toEqual([]);
  });

  it('locked-rotor amps of a hot compressor, or of one without indoor air: it may start once it is cold', () => {
    const tries = [
      reading('look-outdoor-fan', 'fan-turning'),
      reading('volts-T1-T2', 238),
      reading('microfarads-herm', 40),
      reading('ohms-compressor-R-S', 3.5),
      reading('amps-compressor', 72),
      reading('amps-compressor-start', 4),
    ];
    const hot = [...tries, reading('look-compressor-heat', 'compressor-very-hot')];
    const blows = reading('look-blower', 'blower-running');
    expect(proofOf('compressor-seized', [...hot, blows])).toMatchObject({ lacking: [], denied: [] });
    expect(proofOf('compressor-seized', [...hot, blows]).unproved).toContain('look-compressor-heat');
    expect(proofOf('compressor-seized', [...hot, reading('look-blower', 'blower-not-running')]).denied).not.toEqual([]);
  });

  it('no charge at the start lead of one motor, for the lead of both: its own may be off', () => {
    const whole = [
      reading('microfarads-herm', 40),
      reading('volts-T1-T2', 240),
      reading('ohms-fan-R-S', 80),
      reading('amps-fan-start', 0),
    ];
    expect(isProved(proofOf('capacitor-lead-off', whole))).toBe(false);
    expect(isProved(proofOf('capacitor-lead-off', [...whole, reading('amps-compressor-start', 0)]))).toBe(true);
  });

  it('a winding that once read to its shell, however often the probe then reads open', () => {
    const blown = [
      reading('volts-fuse-2', 224),
      reading('ohms-cap-HERM', 'open'),
      reading('ohms-fan-frame', 'open'),
      reading('ohms-compressor-R-shell', 1.1),
      reading('ohms-compressor-R-shell', 'open', 2),
    ];
    expect(isProved(proofOf('line-fuse-2-open', blown, ['ohms-compressor-shell']))).toBe(false);
    // The other way of reading it.
    expect(isProved(proofOf('line-fuse-2-open', [...blown, reading('ohms-compressor-shell', 'open')]))).toBe(true);
    const sound = blown.filter(({ value }) => value !== 1.1);
    expect(isProved(proofOf('line-fuse-2-open', sound))).toBe(true);
  });
});

describe('a reading that may be nothing', () => {
  it('is what a probe beside its metal gives, or an eye that did not look', () => {
    expect(mayBeNothing(reading('ohms-coil', 'open'))).toBe(true);
    expect(mayBeNothing(reading('volts-coil', 0.2))).toBe(true);
    expect(mayBeNothing(reading('amps-fan', 0))).toBe(true);
    expect(mayBeNothing(reading('microfarads-fan', 0.4))).toBe(true);
    expect(mayBeNothing(reading('look-breaker', 'breaker-tripped'))).toBe(true);
    expect(mayBeNothing(reading('volts-coil', 24))).toBe(false);
    expect(mayBeNothing(reading('ohms-coil', 12))).toBe(false);
    expect(mayBeNothing(reading('pressure-suction', 0))).toBe(false);
  });
});
