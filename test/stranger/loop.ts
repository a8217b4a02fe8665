/** Saturation of a blend's vapour: psia at 0, 60 and 120 °F, and how much higher its liquid boils off (psi at 120 °F). */
const POINTS = {
  'R-22': [38.73, 116.33, 274.65, 1],
  'R-32': [63.95, 188.74, 444.04, 1],
  'R-407C': [34.13, 111.51, 280.47, 1.117],
  'R-410A': [62.91, 184.82, 432.99, 1.0026],
  'R-454B': [57.6, 169.98, 400.23, 1.033],
} as const;
export type Fluid = keyof typeof POINTS;
export const FLUIDS = Object.keys(POINTS) as Fluid[];

/** Antoine's line through the three points: ln p = a − b/(t + c), t in °F. */
function antoine(fluid: Fluid): readonly [a: number, b: number, c: number] {
  const [p0, p1, p2] = POINTS[fluid].slice(0, 3).map(Math.log) as [number, number, number];
  const ratio = (p1 - p0) / (p2 - p1);
  const c = 120 / (ratio - 1);
  const b = ((p1 - p0) * c * (c + 60)) / 60;
  return [p0 + b / c, b, c];
}

/** @returns psia of vapour or liquid at saturation, t in °F */
export function boilingPsi(fluid: Fluid, t: number, of: 'vapour' | 'liquid' = 'vapour'): number {
  const [a, b, c] = antoine(fluid);
  return Math.exp(a - b / (t + c)) * (of === 'liquid' ? POINTS[fluid][3] : 1);
}

/** @returns °F at which it boils at a gauge pressure */
export function boilingAt(fluid: Fluid, psig: number, of: 'vapour' | 'liquid' = 'vapour'): number {
  const [a, b, c] = antoine(fluid);
  const psia = (psig + 14.7) / (of === 'liquid' ? POINTS[fluid][3] : 1);
  return b / (a - Math.log(psia)) - c;
}

/** What the loop is made of and what is wrong with it; shares of what it should be are 1. */
export interface Loop {
  fluid: Fluid;
  valve: boolean;
  charge: number;
  /** Share of gas that does not condense, in psi at 100 °F. */
  foreignPsi: number;
  indoorAir: number;
  /** Share of indoor surface that ice or dirt leaves. */
  indoorSurface: number;
  outdoorAir: number;
  outdoorSurface: number;
  /** Share of the way that the liquid finds open; below a half it chokes. */
  liquidWay: number;
  /** Opening that the valve can reach: 1 whole, less where it starves; above 1.5 it cannot close. */
  valveReach: number;
  valveStuckOpen: boolean;
  pumping: number;
  /** Share that a bypass sends back before it is compressed; none where nothing is said. */
  spills?: number;
  reversed: boolean;
  /** °F above outdoors of the air that the condenser breathes. */
  breathesAgain: number;
}

export interface Weather {
  outdoors: number;
  return: number;
  wetBulb: number;
}

/** What gauges and thermometers would show, in psig and °F; capacity and head load in shares of rated. */
export interface Running {
  suctionPsi: number;
  liquidPsi: number;
  boils: number;
  condenses: number;
  superheat: number;
  subcooling: number;
  suctionLine: number;
  liquidLine: number;
  discharge: number;
  supply: number;
  condenserOut: number;
  capacity: number;
  load: number;
}

const clamp = (x: number, low: number, high: number) => Math.min(high, Math.max(low, x));

/**
 * The loop at rest with itself by stock and flow: each minute moves liquid between the coils, each coil warms or cools
 * by what is carried away, until nothing moves any more. No equation is solved; what stands after the last minute is
 * read. Sizes are chosen so that a sound loop boils 38 °F under its return air and condenses 20 °F over outdoors
 * (common practice).
 */
export function runLoop(loop: Loop, weather: Weather): Running {
  const air = weather.outdoors + loop.breathesAgain;
  const wet = clamp(1 + 0.018 * (weather.wetBulb - 64), 0.75, 1.2);
  let boils = weather.return - 38;
  let condenses = air + 20;
  /** Shares of the whole charge that lie as liquid in the indoor and the outdoor coil. */
  let indoors = 0.3;
  let opening = 0.7;
  let [flow, feed, capacity] = [1, 1, 1];
  const { charge: stock, spills = 0 } = loop;
  for (let minute = 0; minute < 1500; minute += 1) {
    const ratio = boilingPsi(loop.fluid, condenses) / boilingPsi(loop.fluid, boils);
    // Swept gas is denser the warmer it boils; clearance and leaks eat more of it the higher the ratio.
    flow =
      Math.exp(0.0165 * (boils - 40)) * clamp(1.12 - 0.045 * (ratio - 0.3), 0.2, 1.2) * loop.pumping * (1 - spills);
    const outdoors = clamp(stock - indoors, 0, 2);
    // Liquid stands in the last tubes; without it gas goes down the liquid line.
    const sealed = clamp((outdoors - 0.38) / 0.24, 0, 1);
    const head = Math.max(0, boilingPsi(loop.fluid, condenses) - boilingPsi(loop.fluid, boils)) / 210;
    const way = loop.valve ? opening : 0.86;
    const backed = Math.max(0, outdoors - 0.62);
    feed = way * Math.sqrt(head) * Math.min(1, 1.18 * loop.liquidWay ** 1.2) * (0.4 + 0.62 * sealed + 1.1 * backed);
    const filled = clamp(indoors / 0.3, 0.05, 1.4);
    // Wet gas is heavier than dry, and what is carried over as liquid has cooled nothing.
    const wetness = 1 + 0.9 * Math.max(0, filled - 1);
    const superheat = superheatOf(filled, weather.return - boils);
    if (loop.valve) {
      const wants = loop.valveStuckOpen ? 1.35 : clamp(opening + 0.0035 * (superheat - 10), 0.18, 1.25);
      opening = Math.min(wants, 1.25 * loop.valveReach);
    }
    indoors = clamp(indoors + 0.02 * (feed - flow * wetness), 0.02, stock);
    // An empty coil is sucked down until no more is taken than comes.
    if (indoors <= 0.02) boils -= 3 * Math.max(0, flow - feed);
    const surface = loop.indoorSurface * Math.min(1, 0.35 + 0.65 * filled) * loop.indoorAir ** 0.55;
    const taken = (surface * wet * (weather.return - boils)) / 38;
    const carried = flow * (0.86 + 0.14 * Math.min(1.2, sealed + 0.2));
    capacity = carried;
    boils += 0.35 * (taken - carried);
    const given = capacity * 0.78 + 0.22 * (1 + 0.012 * (condenses - boils - 75)) * (1 - 0.85 * spills);
    const flooded = clamp(1.04 - 0.32 * Math.max(0, outdoors - 0.62), 0.4, 1.05);
    const leaves = loop.outdoorSurface * loop.outdoorAir ** 0.7 * flooded;
    condenses += 0.35 * (given - (leaves * (condenses - air)) / 20);
    boils = clamp(boils, -45, weather.return);
    condenses = clamp(condenses, air - 5, 175);
  }
  const filled = clamp(indoors / 0.3, 0.05, 1.4);
  const superheat = superheatOf(filled, weather.return - boils);
  const outdoors = clamp(stock - indoors, 0, 2);
  const sealed = clamp((outdoors - 0.38) / 0.24, 0, 1);
  const subcooling = clamp(sealed * 9 + 26 * Math.max(0, outdoors - 0.62), 0, 0.9 * (condenses - air + 2));
  const foreign = loop.foreignPsi * (1 + (condenses - 100) / 560);
  const liquidPsi = boilingPsi(loop.fluid, condenses, 'liquid') - 14.7 + foreign;
  const suctionPsi = boilingPsi(loop.fluid, boils) - 14.7;
  const ratio = (liquidPsi + 14.7) / (suctionPsi + 14.7);
  const choked = loop.liquidWay < 0.5 ? 14 * (0.5 - loop.liquidWay) : 0;
  return {
    suctionPsi,
    liquidPsi,
    boils,
    condenses,
    superheat,
    subcooling,
    suctionLine: boils + superheat,
    liquidLine: condenses - subcooling - choked,
    discharge: condenses + 38 + 17 * (ratio - 2.9) + 0.8 * (superheat - 10) + 30 * Math.max(0, 1 - loop.pumping),
    supply: weather.return - (20 * capacity * (1.35 - 0.35 * wet)) / Math.max(0.25, loop.indoorAir) ** 0.75,
    condenserOut: air + (condenses - air) * clamp(0.62 / loop.outdoorAir ** 0.25, 0.4, 0.9),
    capacity,
    load: 0.62 + 0.38 * (((liquidPsi - suctionPsi) / 210) * clamp(0.5 + 0.5 * flow, 0.3, 1.3)),
  };
}

/** °F by which the gas leaves warmer than it boils: what the dry tubes add, at most the way up to the air. */
function superheatOf(filled: number, driving: number): number {
  const dry = clamp(1.28 - filled, 0, 1);
  return clamp(driving * (1 - Math.exp(-1.25 * dry)), 0, 0.95 * Math.max(0, driving));
}
