import type { LandingRow } from '../../visit/rules/landings.ts';
import { nowOn, shortWireName, terminalName, WIRE_BOARD, wireName } from '../../words/shown/table-words.ts';
import { devicesOf } from './wire-places.ts';

/** The wires that moved: a table, and a small drawing of the terminals they belong to. */
export function WireBoard({ rows }: { readonly rows: readonly LandingRow[] }) {
  if (rows.length === 0) return <p className="quiet">{WIRE_BOARD.none}</p>;
  return (
    <div className="wires">
      <table>
        <thead>
          <tr>
            <th scope="col">{WIRE_BOARD.wire}</th>
            <th scope="col">{WIRE_BOARD.cameOff}</th>
            <th scope="col">{WIRE_BOARD.nowOn}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.number} data-wire={row.state}>
              <td>{wireName(row)}</td>
              <td>{terminalName(row.from) || WIRE_BOARD.nowhere}</td>
              <td>{row.state === 'off' ? <strong>{WIRE_BOARD.notLanded}</strong> : nowOn(row)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <TerminalDrawing rows={rows} />
    </div>
  );
}

const WIDTH = 340;
/** From a device's top to its terminals, and from there to the first word under it. */
const TERMINAL_AT = 30;
const WORD_AT = 62;
const WORD_HEIGHT = 17;
const RADIUS = 8;

/** Each device a box with its terminals in a row; what hangs on a terminal stands under it, a wire that is off dashed. */
function TerminalDrawing({ rows }: { readonly rows: readonly LandingRow[] }) {
  let top = 0;
  const devices = devicesOf(rows).map((device) => {
    const most = Math.max(1, ...device.terminals.map(({ hanging }) => hanging.length));
    const placed = { ...device, top, height: WORD_AT + most * WORD_HEIGHT };
    top += placed.height + 8;
    return placed;
  });
  const words = rows.map((row) =>
    row.state === 'off' ? WIRE_BOARD.drawnOff(wireName(row)) : WIRE_BOARD.drawnOn(wireName(row), nowOn(row)),
  );
  return (
    <svg className="terminals" viewBox={`0 0 ${WIDTH} ${top}`} role="img" aria-label={WIRE_BOARD.drawing(words)}>
      {devices.map((device) => (
        <g key={device.place} transform={`translate(0 ${device.top})`}>
          <rect x={1} y={1} width={WIDTH - 2} height={TERMINAL_AT + RADIUS + 6} rx={6} className="device" />
          <text x={8} y={15} className="device-name">
            {device.place.replaceAll('-', ' ')}
          </text>
          {device.terminals.map(({ id, label, hanging }, index) => {
            const x = ((index + 0.5) * WIDTH) / device.terminals.length;
            return (
              <g key={id}>
                <circle cx={x} cy={TERMINAL_AT} r={RADIUS} className="terminal" />
                <text x={x + RADIUS + 3} y={TERMINAL_AT + 5}>
                  {label}
                </text>
                {hanging.length === 0 ? null : (
                  <line
                    x1={x}
                    x2={x}
                    y1={TERMINAL_AT + RADIUS}
                    y2={WORD_AT - 10}
                    className={hanging.every((row) => row.state === 'off') ? 'wire off' : 'wire'}
                  />
                )}
                {hanging.map((row, line) => (
                  <text key={row.number} x={x} y={WORD_AT + 3 + line * WORD_HEIGHT} textAnchor="middle">
                    {row.state === 'off' ? WIRE_BOARD.offHere(shortWireName(row)) : shortWireName(row)}
                  </text>
                ))}
              </g>
            );
          })}
        </g>
      ))}
    </svg>
  );
}
