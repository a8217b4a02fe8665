import type { Meaning } from '../../grammar/phrases/meaning.ts';
import type { FaultId } from '../../grammar/vocabulary/faults.ts';
import type { PartId } from '../../grammar/vocabulary/parts.ts';
import type { UnitProfile } from '../../grammar/vocabulary/unit-profile.ts';
import { CHARGE, mendingsOf } from '../visit/rules/repairs.ts';
import { TOLD } from '../words/practice/performed-words.ts';
import { workWords } from '../words/things/job-words.ts';
import { partWords } from '../words/things/part-words.ts';

type Ratings = Readonly<Record<string, number | string>>;

/** The usual repair of a fault, as it is told when it is done; undefined where none is known. */
export function repairOfFinding(
  fault: FaultId | undefined,
  unit: UnitProfile,
): { readonly meaning: Meaning; readonly words: string } | undefined {
  if (fault === undefined) return undefined;
  const { parts, works } = mendingsOf(fault);
  const part = parts.find((one): one is PartId => one !== CHARGE && one !== 'valve-core');
  // What sits before the proven zone is mended without taking it out, where that can be.
  const isUpstream = part === 'breaker' || part === 'disconnect';
  if (part !== undefined && !(isUpstream && works.length > 0)) {
    const ratings = ratingsOf(part, fault, unit);
    return { meaning: { kind: 'part', part, ratings }, words: TOLD.fitted(partWords(part, ratings)) };
  }
  const [work] = parts.includes(CHARGE) ? (['leak-repaired'] as const) : works;
  return work === undefined ? undefined : { meaning: { kind: 'work', work }, words: workWords(work) };
}

/** Ratings by the plate; an overcurrent device under 175 % of the compressor's amps and the fan's (NEC 440.22, from memory). */
function ratingsOf(part: PartId, fault: FaultId, unit: UnitProfile): Ratings {
  const { capacitor, compressor, fanMotor, contactorPoles } = unit;
  switch (part) {
    case 'dual-capacitor':
      return { 'herm-uF': capacitor?.herm ?? 40, 'fan-uF': capacitor?.fan ?? 5, volts: 440 };
    case 'capacitor':
      return {
        uF: fault === 'blower-capacitor-weak' ? (unit.blowerCapacitor ?? 7.5) : (capacitor?.herm ?? 40),
        volts: 440,
      };
    case 'contactor':
      return { poles: contactorPoles ?? 2, amps: 40, 'coil-volts': 24 };
    case 'fuse':
    case 'breaker':
      return { amps: Math.max(15, Math.floor((1.75 * (compressor?.rla ?? 10) + (fanMotor?.fla ?? 1)) / 5) * 5) };
    case 'fan-motor':
      return { hp: 0.25, volts: 230 };
    default:
      return {};
  }
}
