import { scaleLinear } from 'd3-scale';
import { useEffect, useRef, useState } from 'react';

interface BarChartProps {
  readonly title: string;
  readonly unit: string;
  readonly rows: readonly { readonly name: string; readonly value: number; readonly shown: string }[];
}

const ROW = 26;
const AXIS = 34;
const GAP = 8;
/** Of the width: for the names left of the bars, and most for them in CSS pixels. */
const NAMES = { share: 0.4, most: 300 } as const;
/** Of a sign of a name, in CSS pixels. */
const SIGN_WIDE = 8;

/** A bar a row, with an axis of round numbers. The table beside it holds the same. */
export function BarChart({ title, unit, rows }: BarChartProps) {
  const place = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(340);
  useEffect(() => {
    if (place.current === null) return;
    const observer = new ResizeObserver(
      ([entry]) => entry !== undefined && setWidth(Math.max(260, entry.contentRect.width)),
    );
    observer.observe(place.current);
    return () => observer.disconnect();
  }, []);
  const left = Math.min(NAMES.most, width * NAMES.share);
  const valueRoom = Math.max(...rows.map(({ shown }) => shown.length)) * SIGN_WIDE + GAP;
  const across = scaleLinear()
    .domain([0, Math.max(1e-9, ...rows.map(({ value }) => value))])
    .nice(4)
    .range([left, width - valueRoom]);
  const most = Math.floor((left - GAP) / SIGN_WIDE);
  const isWhole = rows.every(({ value }) => Number.isInteger(value));
  const ticks = across
    .ticks(Math.max(1, Math.floor((width - left) / 90)))
    .filter((tick) => !isWhole || Number.isInteger(tick));
  return (
    <div className="bar-chart" ref={place}>
      <svg width={width} height={rows.length * ROW + AXIS} role="img" aria-label={title}>
        {ticks.map((tick) => (
          <g key={tick} className="track-tick">
            <line x1={across(tick)} x2={across(tick)} y1={0} y2={rows.length * ROW} />
            <text x={across(tick)} y={rows.length * ROW + 15} textAnchor="middle">
              {tick.toLocaleString('en')}
            </text>
          </g>
        ))}
        <text className="bar-unit" x={left} y={rows.length * ROW + 31}>
          {unit}
        </text>
        {rows.map(({ name, value, shown }, index) => (
          <g key={name}>
            <title>{name}</title>
            <text x={left - GAP} y={index * ROW + 18} textAnchor="end">
              {name.length <= most ? name : `${name.slice(0, most - 1)}…`}
            </text>
            <rect x={left} y={index * ROW + 4} width={Math.max(1, across(value) - left)} height={ROW - 8} />
            <text x={across(value) + 5} y={index * ROW + 18}>
              {shown}
            </text>
          </g>
        ))}
      </svg>
    </div>
  );
}
