/** Gauge pressures at sea level for dew temperatures, psi for °F, as pocket charts print them (from memory). */
const CHARTS = {
  'R-410A': [
    [-20, 26.3],
    [0, 48.6],
    [20, 78.7],
    [30, 97.2],
    [40, 118.5],
    [50, 142.7],
    [60, 170.1],
    [70, 201.0],
    [80, 235.6],
    [90, 274.3],
    [100, 317.4],
    [110, 365.2],
    [120, 418.0],
    [130, 476.5],
    [140, 541.0],
    [150, 612.0],
  ],
  'R-22': [
    [-20, 10.2],
    [0, 24.0],
    [20, 43.1],
    [30, 55.0],
    [40, 68.6],
    [50, 84.1],
    [60, 101.6],
    [70, 121.4],
    [80, 143.6],
    [90, 168.4],
    [100, 195.9],
    [110, 226.4],
    [120, 260.0],
    [130, 296.9],
    [140, 337.4],
    [150, 381.7],
  ],
} as const;
export type Fluid = keyof typeof CHARTS;

const ATMOSPHERE = 14.7;
const rankine = (f: number): number => f + 459.67;

/** Between two lines of the chart the logarithm of absolute pressure runs straight over the reciprocal of temperature. */
function rows(fluid: Fluid) {
  return CHARTS[fluid].map(([f, psi]) => ({ x: 1 / rankine(f), y: Math.log(psi + ATMOSPHERE) }));
}

/** Gauge psi of the saturated fluid at °F. */
export function gaugeAt(fluid: Fluid, f: number): number {
  const chart = rows(fluid);
  const x = 1 / rankine(f);
  let i = chart.findIndex((row) => row.x <= x);
  i = i < 1 ? (i === 0 ? 1 : chart.length - 1) : i;
  const [a, b] = [chart[i - 1]!, chart[i]!];
  return Math.exp(a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x)) - ATMOSPHERE;
}

/** °F at which the fluid boils under a gauge pressure in psi. */
export function boilsAt(fluid: Fluid, psi: number): number {
  const chart = rows(fluid);
  const y = Math.log(Math.max(psi + ATMOSPHERE, 3));
  let i = chart.findIndex((row) => row.y >= y);
  i = i < 1 ? (i === 0 ? 1 : chart.length - 1) : i;
  const [a, b] = [chart[i - 1]!, chart[i]!];
  return 1 / (a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y)) - 459.67;
}
