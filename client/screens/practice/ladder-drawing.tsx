import type { KeyboardEvent } from 'react';
import type { PointId } from '../../../grammar/vocabulary/points.ts';
import type { Rung, RungItem } from '../../practice/ladder/draw-ladder.ts';
import type { Sign } from '../../practice/ladder/ladder-elements.ts';
import { branchWords, terminalMark } from '../../words/practice/ladder-words.ts';
import { PRACTICE } from '../../words/practice/practice-page-words.ts';
import { pointWords } from '../../words/things/place-words.ts';
import type { ShownLadder } from './ladder-table.tsx';

/** A glove meets each terminal: 20 mm, as everywhere (see theme.css). CSS pixels. */
const GLOVE = 121;
const PART = 132;
const RAIL = 104;
const HIGH = 150;
const LINE_AT = 84;

/** The rungs of one part of the diagram, in our own signs; each terminal takes a probe by touch or key. */
export function LadderDrawing({ rungs, name, probes, onPut }: ShownLadder) {
  const wide = Math.max(...rungs.map(widthOf));
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by the keyboard
    <section className="ladder-scroll" tabIndex={0} aria-label={name}>
      <svg width={wide} height={rungs.length * HIGH} className="ladder-drawing">
        <title>{name}</title>
        {rungs.map((rung, row) => (
          <g key={keyOf(rung)} transform={`translate(0 ${row * HIGH})`}>
            <RungDrawn rung={rung} wide={wide} probes={probes} onPut={onPut} />
          </g>
        ))}
      </svg>
    </section>
  );
}

const keyOf = ({ items }: Rung): string =>
  items.map((item) => (item.kind === 'part' ? item.branch : item.point)).join();
const slotOf = (item: RungItem): number => (item.kind === 'terminal' ? GLOVE : PART);
const widthOf = ({ items }: Rung): number => 2 * RAIL + items.reduce((sum, item) => sum + slotOf(item), 0);

interface RungDrawnProps extends Pick<ShownLadder, 'probes' | 'onPut'> {
  readonly rung: Rung;
  readonly wide: number;
}

function RungDrawn({ rung, wide, probes, onPut }: RungDrawnProps) {
  const { items, rails } = rung;
  const isLoose = rails[0] === undefined && rails[1] === undefined;
  let x = RAIL;
  const placed = items.map((item) => {
    const at = x;
    x += slotOf(item);
    return { item, at };
  });
  const end = isLoose ? x : wide - RAIL;
  return (
    <>
      {isLoose ? null : (
        <>
          <line className="ladder-rail" x1={RAIL} x2={RAIL} y1={0} y2={HIGH} />
          <line className="ladder-rail" x1={end} x2={end} y1={0} y2={HIGH} />
          <RailMark point={rails[0]} x={RAIL - 8} anchor="end" />
          <RailMark point={rails[1]} x={end + 8} anchor="start" />
          <line className="ladder-wire" x1={x} x2={end} y1={LINE_AT} y2={LINE_AT} />
        </>
      )}
      {placed.map(({ item, at }) =>
        item.kind === 'terminal' ? (
          <Terminal
            key={item.point}
            point={item.point}
            at={at}
            loose={isLoose}
            probe={probes.indexOf(item.point)}
            onPut={onPut}
          />
        ) : (
          <PartDrawn key={item.branch} item={item} at={at} />
        ),
      )}
    </>
  );
}

function RailMark({
  point,
  x,
  anchor,
}: {
  readonly point: PointId | undefined;
  readonly x: number;
  readonly anchor: 'start' | 'end';
}) {
  return point === undefined ? null : (
    <text x={x} y={LINE_AT - 10} textAnchor={anchor} className="ladder-mark">
      {terminalMark(point)}
    </text>
  );
}

interface TerminalProps {
  readonly point: PointId;
  readonly at: number;
  readonly loose: boolean;
  /** Which probe stands there: 0, 1, or -1. */
  readonly probe: number;
  readonly onPut: (point: PointId) => void;
}

function Terminal({ point, at, loose, probe, onPut }: TerminalProps) {
  const middle = at + GLOVE / 2;
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== 'Enter' && event.key !== ' ') return;
    event.preventDefault();
    onPut(point);
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a terminal of the drawing; the table has buttons
    <g
      role="button"
      tabIndex={0}
      className="ladder-terminal"
      aria-pressed={probe >= 0}
      aria-label={PRACTICE.placeAt(pointWords(point), terminalMark(point))}
      data-point={point}
      onClick={() => onPut(point)}
      onKeyDown={onKeyDown}
    >
      <rect x={at} y={LINE_AT - GLOVE / 2} width={GLOVE} height={GLOVE} className="ladder-target" rx={10} />
      {loose ? null : <line className="ladder-wire" x1={at} x2={at + GLOVE} y1={LINE_AT} y2={LINE_AT} />}
      <circle cx={middle} cy={LINE_AT} r={11} className="ladder-dot" />
      {probe >= 0 ? <path className="ladder-probe" d={`M${middle} ${LINE_AT} l${probe === 0 ? -26 : 26} -44`} /> : null}
      <text x={middle} y={LINE_AT + 34} textAnchor="middle" className="ladder-mark">
        {terminalMark(point)}
      </text>
    </g>
  );
}

/** Signs of our own, within 60 by 40 pixels around the middle of a wire. */
const SIGNS: Readonly<Record<Sign, string>> = {
  wire: 'M-30 0 h60',
  switch: 'M-30 0 h12 m36 0 h12 M-18 0 l34 -18 M-18 -4 v8 M18 -4 v8',
  contact: 'M-30 0 h20 m20 0 h20 M-10 -16 v32 M10 -16 v32',
  fuse: 'M-30 0 h60 M-20 -9 h40 v18 h-40 z',
  winding: 'M-30 0 a7.5 9 0 0 1 15 0 a7.5 9 0 0 1 15 0 a7.5 9 0 0 1 15 0 a7.5 9 0 0 1 15 0',
  coil: 'M-30 0 h10 m40 0 h10 M0 -20 a20 20 0 1 0 0.1 0',
  capacitor: 'M-30 0 h25 m10 0 h25 M-5 -16 v32 M5 -16 q8 16 0 32',
  heater: 'M-30 0 h6 l6 -12 l12 24 l12 -24 l12 24 l6 -12 h6',
  supply: 'M-30 0 h8 m44 0 h8 M-22 -16 h44 v32 h-44 z',
};

function PartDrawn({ item, at }: { readonly item: Extract<RungItem, { kind: 'part' }>; readonly at: number }) {
  const middle = at + PART / 2;
  const isOpen = item.known === 'not-said';
  const words = branchWords(item.branch).split(' ');
  const half = Math.ceil(words.length / 2);
  const lines = words.length > 1 ? [words.slice(0, half).join(' '), words.slice(half).join(' ')] : words;
  return (
    <g className={isOpen ? 'ladder-part not-said' : 'ladder-part'} data-part={item.branch}>
      <line className="ladder-wire" x1={at} x2={middle - 30} y1={LINE_AT} y2={LINE_AT} />
      <line className="ladder-wire" x1={middle + 30} x2={at + PART} y1={LINE_AT} y2={LINE_AT} />
      <path d={SIGNS[item.sign]} transform={`translate(${middle} ${LINE_AT})`} />
      {lines.map((line, row) => (
        <text key={line} x={middle} y={24 + row * 19} textAnchor="middle" className="ladder-name">
          {row === 0 && isOpen ? `? ${line}` : line}
        </text>
      ))}
    </g>
  );
}
