import { isPoint, POINTS, POINTS_BY_ID } from '../../../grammar/vocabulary/points.ts';
import type { LandingRow } from '../../visit/rules/landings.ts';

export interface DrawnTerminal {
  readonly id: string;
  readonly label: string;
  /** Wires and jumpers at this terminal: those landed on it, and those that came off it and are off still. */
  readonly hanging: readonly LandingRow[];
}

export interface DrawnDevice {
  readonly place: string;
  readonly terminals: readonly DrawnTerminal[];
}

const MOST_TERMINALS = 8;

/** The devices that any wire belongs to, whole, so that a neighbour terminal is seen too. Points stand in table order. */
export function devicesOf(rows: readonly LandingRow[]): readonly DrawnDevice[] {
  const places = [...new Set(rows.flatMap((row) => [row.from, row.to]).flatMap((id) => placeOf(id) ?? []))];
  return places.map((place) => ({
    place,
    terminals: POINTS.filter((point) => placeOf(point.id) === place)
      .slice(0, MOST_TERMINALS)
      .map(({ id }) => ({ id, label: shortLabel(id), hanging: rows.filter((row) => hangsAt(row, id)) })),
  }));
}

function hangsAt(row: LandingRow, id: string): boolean {
  if (row.state === 'jumper') return row.from === id || row.to === id;
  return (row.state === 'off' ? row.from : row.to) === id;
}

function placeOf(id: string | undefined): string | undefined {
  return isPoint(id) ? POINTS_BY_ID[id].place : undefined;
}

/** The mark on the terminal itself: "cap-FAN" is FAN, "R@thermostat" is R. */
function shortLabel(id: string): string {
  return id.replace(/@.*/, '').replace(/^(cap|comp|fan|disconnect|breaker|service|handler)-/, '');
}
