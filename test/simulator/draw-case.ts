import { Dice } from '../../client/practice/plant/dice.ts';
import { FAULTS, type FaultId } from '../../grammar/vocabulary/faults.ts';
import type { Amps, Microfarads, Volts } from '../../grammar/vocabulary/quantities.ts';
import type { UnitProfile } from '../../grammar/vocabulary/unit-profile.ts';
import { drawHiddenUnit, type HiddenUnit, type Ratings } from './hidden-unit.ts';
import { canHave, hideFault, howOften } from './hide-fault.ts';
import { letSettle } from './let-settle.ts';

/** In which way the profile given to the diagnosis is not the truth. */
export type Wrong = 'matched' | 'spread' | 'supply' | 'poles' | 'heater' | 'metering' | 'sparse';

/** The profile as a nameplate and a look at the wiring give it, bent when the case says so. */
export function profileFor(r: Ratings, id: string, wrong: Wrong): UnitProfile {
  const full: UnitProfile = {
    id,
    supply: { nominal: (wrong === 'supply' ? (r.volts === 240 ? 208 : 240) : r.volts) as Volts },
    contactorPoles: wrong === 'poles' ? (r.poles === 1 ? 2 : 1) : r.poles,
    capacitor: { herm: r.herm as Microfarads, fan: r.fanMicrofarads as Microfarads },
    compressor: { rla: r.rla as Amps, lra: r.lra as Amps },
    fanMotor: { fla: r.fla as Amps },
    blowerCapacitor: r.blowerMicrofarads as Microfarads,
    crankcaseHeater: wrong === 'heater' ? !r.heater : r.heater,
    metering: (wrong === 'metering') !== r.valve ? 'thermostatic-valve' : 'fixed-orifice',
    refrigerant: r.fluid,
    heatPump: r.heatPump,
    tons: r.tons,
    fusedDisconnect: true,
    floatSwitch: r.floatIn === 'none' ? 'none' : `breaks-${r.floatIn}`,
    pressureSwitches: r.switches,
    hardStart: r.kicker,
    ...(r.stages === 2 ? { twoStage: true } : {}),
    plateSubcooling: r.subcool,
    ...(r.tap === 240 ? {} : { transformerTap: 208 as Volts }),
  };
  if (wrong !== 'sparse') return full;
  const { id: name, capacitor, refrigerant, tons } = full;
  return { id: name, capacitor, refrigerant, tons } as UnitProfile;
}

/** Faults that a nameplate given wrongly would deny cannot be found, and would only test the table's own omissions. */
function listed(fault: FaultId, wrong: Wrong, r: Ratings): boolean {
  if (wrong === 'poles') return canHave(fault, { ...r, poles: 1 });
  if (wrong === 'heater') return fault !== 'crankcase-heater-open';
  return true;
}

/** A hidden unit with its faults, ready to be asked. */
export interface Case {
  readonly seed: number;
  readonly faults: readonly FaultId[];
  readonly unit: HiddenUnit;
  /** The unit as it was before a fault was hidden, to repair it by. */
  readonly rebuild: (left: readonly FaultId[]) => HiddenUnit;
  readonly dice: Dice;
}

const GROUPS: readonly RegExp[] = [
  /leg|supply|breaker|disconnect|fuse-[12]|lug/,
  /contactor/,
  /herm|hard-start|^compressor/,
  /fan/,
  /transformer|control|wire|thermostat|float|switch|handler-no/,
  /blower|filter|indoor|coil/,
  /charge|restriction|condens|valves|reversing|unload/,
];
const groupOf = (fault: FaultId) => GROUPS.findIndex((g) => g.test(fault));

/** A unit that works as it should is seldom called out for; one that cools badly or stands still always is. */
function isCalledOut(unit: HiddenUnit, healthy: HiddenUnit, dice: Dice): boolean {
  const now = letSettle(unit, true);
  const usual = letSettle(healthy, true);
  const stands = !now.compressorTurns || !now.fanTurns || !now.blowerTurns;
  if (stands || unit.reversed || unit.iced || letSettle(unit, false, now.fuse24Out).compressorTurns) return true;
  const off = (figure: 'supplyF' | 'suctionLineF' | 'condensingF') => Math.abs(now.cycle[figure] - usual.cycle[figure]);
  return off('supplyF') > 3 || off('suctionLineF') > 6 || off('condensingF') > 8 || dice.yes(0.2);
}

/** A unit drawn far from the usual may be one whose motors never start: that is a fault that nobody hid. */
function runs(healthy: HiddenUnit): boolean {
  const { compressorTurns, fanTurns, blowerTurns } = letSettle(healthy, true);
  return compressorTurns && fanTurns && blowerTurns;
}

/** Draws a case for these ratings: one fault, or two of different kinds. */
export function drawCase(r: Ratings, seed: number, wrong: Wrong, count: 1 | 2): Case {
  for (let attempt = 0; ; attempt += 1) {
    const drawn = drawOnce(r, seed + attempt * 7_368_787, wrong, count);
    // Each of two faults must be one that somebody would call for by itself.
    const healthy = drawn.rebuild([]);
    if (!runs(healthy)) continue;
    const alone = drawn.faults.map((fault) => drawn.rebuild([fault]));
    if (alone.every((unit) => isCalledOut(unit, healthy, new Dice(seed + attempt)))) return drawn;
  }
}

function drawOnce(r: Ratings, seed: number, wrong: Wrong, count: 1 | 2): Case {
  const dice = new Dice(seed);
  const able = FAULTS.map((f) => f.id).filter((f) => canHave(f, r) && listed(f, wrong, r));
  const draw = () => dice.weighted(able.map((f) => [f, howOften(f)] as const));
  const faults: FaultId[] = [draw()];
  while (faults.length < count) {
    const more = draw();
    if (groupOf(more) !== groupOf(faults[0]!)) faults.push(more);
  }
  // The same die for the healthy unit and for each fault: a repair takes one fault out and changes nothing else.
  const rebuild = (left: readonly FaultId[]) => {
    const unit = drawHiddenUnit(r, new Dice(seed * 31 + 7), wrong === 'spread' ? 2 : 1);
    for (const fault of left) hideFault(unit, fault, new Dice(seed * 131 + fault.length * 17 + faults.indexOf(fault)));
    return unit;
  };
  return { seed, faults, unit: rebuild(faults), rebuild, dice };
}
