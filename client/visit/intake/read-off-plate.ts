import type { Meaning } from '../../../grammar/phrases/meaning.ts';
import type { PlateField } from '../../../grammar/vocabulary/nameplate.ts';
import type { Turn } from '../chart/turn.ts';
import { openPlate } from '../steps/plate-steps.ts';

/** Readings that look like a line of the plate, by quantity and place. */
const LINE_OF: Readonly<Record<string, PlateField>> = {
  'current compressor': 'rla',
  'current fan-motor': 'fan-fla',
  'capacitance cap-C,cap-HERM': 'capacitor-herm',
  'capacitance cap-C,cap-FAN': 'capacitor-fan',
};

/**
 * "Fan's point nine amps" while the plate is asked: the same words would be a reading. All of it as lines of the plate
 * that are still to be read, to be asked; undefined where any of it can be none.
 */
export function readOffPlate({ context }: Turn, meaning: Meaning): Meaning | undefined {
  const { step } = context;
  if (step?.plate === undefined) return undefined;
  const open = openPlate(step, context);
  const parts = meaning.kind === 'several' ? meaning.parts : [meaning];
  const lines = parts.flatMap((part): Meaning[] => {
    const field = part.kind === 'reading' ? LINE_OF[`${part.reading.quantity} ${part.reading.at.join()}`] : undefined;
    if (field === undefined || !open.includes(field) || part.kind !== 'reading') return [];
    return [{ kind: 'nameplate', field, value: part.reading.value, unit: part.reading.unit }];
  });
  const [only] = lines;
  if (only === undefined || lines.length < parts.length) return undefined;
  return lines.length === 1 ? only : { kind: 'several', parts: lines };
}
