import { useState } from 'react';
import { POINTS, POINTS_BY_ID, type PointId } from '../../../grammar/vocabulary/points.ts';
import type { QuantityId } from '../../../grammar/vocabulary/quantities.ts';
import { FUNCTION_NAMES, showPoint } from '../show/show-reading.ts';
import { PickSheet } from './pick-sheet.tsx';
import type { PadRequest } from './touch-key.ts';

interface ReadingPickerProps {
  readonly onPicked: (request: PadRequest) => void;
  readonly onClose: () => void;
}

const FUNCTIONS: readonly QuantityId[] = [
  'voltage',
  'voltage-dc',
  'current',
  'resistance',
  'capacitance',
  'temperature',
  'pressure',
];
/** Places that are one thing, without two probe tips. */
const SINGLE: Partial<Record<QuantityId, readonly PointId[]>> = {
  current: ['compressor', 'fan-motor', 'blower-motor', 'crankcase-heater'],
  temperature: [
    'outdoor-air',
    'return-air',
    'supply-air',
    'condenser-air-out',
    'suction-line',
    'liquid-line',
    'discharge-line',
  ],
  pressure: ['suction-port', 'liquid-port'],
};

/** Any reading at any time: meter function, then one place or two probe tips. */
export function ReadingPicker({ onPicked, onClose }: ReadingPickerProps) {
  const [quantity, setQuantity] = useState<QuantityId>();
  const [first, setFirst] = useState<PointId>();
  if (quantity === undefined) {
    const picks = FUNCTIONS.map((value) => ({ label: FUNCTION_NAMES[value], value }));
    return <PickSheet title="Meter function" picks={picks} onPick={setQuantity} onClose={onClose} />;
  }
  const single = SINGLE[quantity];
  const picked = (at: readonly PointId[]) => onPicked({ kind: 'reading', quantity, at, bench: false });
  if (single !== undefined) {
    return <PickSheet title="Where" picks={single.map(pickOf)} onPick={(at) => picked([at])} onClose={onClose} />;
  }
  if (first === undefined) {
    return <PickSheet key="first" title="One probe on" picks={tips(undefined)} onPick={setFirst} onClose={onClose} />;
  }
  return (
    <PickSheet
      key="second"
      title={`${showPoint(first)} to`}
      picks={tips(first)}
      onPick={(second) => picked(inTableOrder(first, second))}
      onClose={onClose}
    />
  );
}

function pickOf(value: PointId) {
  return { label: showPoint(value), value };
}

/** Probe tips; for the second, those at the same place first, and ground. */
function tips(first: PointId | undefined): readonly { readonly label: string; readonly value: PointId }[] {
  const ones = Object.values(SINGLE).flat();
  const all = POINTS.filter(({ id }) => !ones.includes(id) && id !== first);
  if (first === undefined) return all.map(({ id }) => pickOf(id));
  const place = placeOf(first);
  const near = (id: PointId) => Number(placeOf(id) === place || id === 'ground');
  return all.toSorted((a, b) => near(b.id) - near(a.id)).map(({ id }) => pickOf(id));
}

function placeOf(id: PointId): string | undefined {
  return POINTS_BY_ID[id].place;
}

/** The two tips in the order of the points table, as every reading has them. */
function inTableOrder(one: PointId, other: PointId): readonly PointId[] {
  const at = (id: PointId) => POINTS.findIndex((point) => point.id === id);
  return at(one) < at(other) ? [one, other] : [other, one];
}
