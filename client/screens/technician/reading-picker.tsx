import { useState } from 'react';
import { MEASURANDS } from '../../../grammar/vocabulary/measurands.ts';
import { POINTS, POINTS_BY_ID, type PointId } from '../../../grammar/vocabulary/points.ts';
import type { QuantityId } from '../../../grammar/vocabulary/quantities.ts';
import { READING_PICKER } from '../../words/pages/key-words.ts';
import { FUNCTION_NAMES, showPoint } from '../../words/shown/show-reading.ts';
import type { PadRequest } from '../glance/touch-key.ts';
import { PickSheet } from './pick-sheet.tsx';

interface ReadingPickerProps {
  readonly onPicked: (request: PadRequest) => void;
  readonly onClose: () => void;
}

/** Whether a meter function is offered by touch; the others are said, or asked by the visit and entered there. */
const BY_TOUCH: Readonly<Record<QuantityId, boolean>> = {
  voltage: true,
  'voltage-dc': true,
  current: true,
  resistance: true,
  capacitance: true,
  temperature: true,
  pressure: true,
  'wet-bulb': false,
  difference: false,
  vacuum: false,
  'static-pressure': false,
  airflow: false,
  frequency: false,
  humidity: false,
  insulation: false,
  mass: false,
  time: false,
};
const FUNCTIONS = (Object.keys(BY_TOUCH) as QuantityId[]).filter((quantity) => BY_TOUCH[quantity]);

/** Places where a quantity is read that are one thing, without two probe tips. */
function singlePlaces(quantity: QuantityId): readonly PointId[] {
  return MEASURANDS.filter((row) => row.quantity === quantity).flatMap(({ at: [one, other] }) =>
    one !== undefined && other === undefined ? [one] : [],
  );
}

/** Points that a probe tip goes on. */
const TIPS: ReadonlySet<PointId> = new Set(MEASURANDS.flatMap(({ at }) => (at.length === 2 ? at : [])));

/** Any reading at any time: meter function, then one place or two probe tips. */
export function ReadingPicker({ onPicked, onClose }: ReadingPickerProps) {
  const [quantity, setQuantity] = useState<QuantityId>();
  const [first, setFirst] = useState<PointId>();
  if (quantity === undefined) {
    const picks = FUNCTIONS.map((value) => ({ label: FUNCTION_NAMES[value], value }));
    return <PickSheet title={READING_PICKER.meterFunction} picks={picks} onPick={setQuantity} onClose={onClose} />;
  }
  const single = singlePlaces(quantity);
  const picked = (at: readonly PointId[]) => onPicked({ kind: 'reading', quantity, at, bench: false });
  if (single.length > 0) {
    return (
      <PickSheet
        title={READING_PICKER.where}
        picks={single.map(pickOf)}
        onPick={(at) => picked([at])}
        onClose={onClose}
      />
    );
  }
  if (first === undefined) {
    return (
      <PickSheet
        key="first"
        title={READING_PICKER.firstProbe}
        picks={tips(undefined)}
        onPick={setFirst}
        onClose={onClose}
      />
    );
  }
  return (
    <PickSheet
      key="second"
      title={READING_PICKER.secondProbe(first)}
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
  const all = POINTS.filter(({ id }) => TIPS.has(id) && id !== first);
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
