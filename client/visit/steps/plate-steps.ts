import type { VisitFacts } from '../../../grammar/visit/facts.ts';
import { PLATE_LINES, type PlateField } from '../../../grammar/vocabulary/nameplate.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import type { Step } from '../chart/context.ts';

/** The first of them, and what a plate that cannot be read is known by. */
export const PLATE = 'arrive.nameplate';

/** The nameplate, field by field: what is known of the unit is not asked, and a line is asked in one breath. */
export const PLATE_PLAN: readonly Step[] = PLATE_LINES.flatMap((line: readonly PlateField[]) =>
  line.map(
    (field, index): Step => ({
      id: plateStep(field),
      source: 'arrive',
      ask: { kind: 'action', done: 'nameplate-read' },
      plate: line.slice(index),
      needs: { power: 'any', call: 'any', bench: false },
      hazards: [],
      zone: 'none',
      optional: true,
    }),
  ),
);
export const PLATE_STEPS: readonly string[] = PLATE_PLAN.map(({ id }) => id);

export function plateStep(field: PlateField): string {
  return field === 'model' ? PLATE : `arrive.plate-${field}`;
}

/** Fields of a step that are still to be read: the first of them is what it stands for. */
export function unreadFields(
  { plate = [] }: Step,
  facts: Pick<VisitFacts, 'unit' | 'plate' | 'settled'>,
): readonly PlateField[] {
  return plate.filter((field) => !isRead(field, facts) && !facts.settled.includes(plateStep(field)));
}

/** All fields that are still to be read, those of the step first. */
export function openPlate(step: Step, facts: Pick<VisitFacts, 'unit' | 'plate' | 'settled'>): readonly PlateField[] {
  const asked = unreadFields(step, facts);
  return [...new Set([...asked, ...PLATE_LINES.flat().filter((field) => !isRead(field, facts))])];
}

/** Whether a field is known, from this visit's plate or from what the unit was listed with. */
export function isRead(field: PlateField, { unit, plate }: Pick<VisitFacts, 'unit' | 'plate'>): boolean {
  return plate[field] !== undefined || LISTED[field](unit) !== undefined;
}

const LISTED: Readonly<Record<PlateField, (unit: UnitProfile) => unknown>> = {
  model: (unit) => unit.model,
  serial: (unit) => unit.serial,
  'supply-volts': (unit) => unit.supply,
  rla: (unit) => unit.compressor,
  lra: (unit) => unit.compressor,
  'fan-fla': (unit) => unit.fanMotor,
  'capacitor-herm': (unit) => unit.capacitor,
  'capacitor-fan': (unit) => unit.capacitor,
  refrigerant: (unit) => unit.refrigerant,
};
