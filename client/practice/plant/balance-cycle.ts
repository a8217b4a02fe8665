import type { Build, Refrigerating } from './plant.ts';
import { boilsAt, gaugeAt } from './pressure-chart.ts';

/** What thermometers and gauges see on a unit that has run a quarter of an hour: °F and gauge psi. */
export interface CycleState {
  readonly suctionPsi: number;
  readonly liquidPsi: number;
  readonly suctionF: number;
  readonly liquidF: number;
  readonly dischargeF: number;
  readonly condenserOutF: number;
  readonly supplyF: number;
  /** Against the design: heat moved indoors, and work of the compressor. */
  readonly capacity: number;
  readonly work: number;
  readonly superheat: number;
  readonly subcooling: number;
  readonly evaporatorF: number;
  readonly condenserF: number;
}

/** The design point: 95 °F outdoors, 80 °F and 67 °F wet bulb indoors (rating condition A of AHRI 210/240). */
const DESIGN = { outdoorF: 95, wetBulbF: 67, evaporatorF: 45, condenserF: 116, superheat: 10, workShare: 0.27 };
/** °F of superheat that a valve holds at its bulb. */
const VALVE_HOLDS = 10;
/** Share of the charge in a degree of subcooling, and missing in a degree of superheat (our figures). */
const IN_SUBCOOLING = 0.011;
const IN_SUPERHEAT = 0.007;

/** °F below which a wet coil gives ice, not colder air. */
const FROST = 33;

const clamp = (x: number, low: number, high: number): number => Math.min(high, Math.max(low, x));

/**
 * Balances compressor, coils, metering and charge against each other by relaxation: heat in the evaporator is what the
 * compressor draws, heat in the condenser that and the work, the flow through the metering is what is pumped, and the
 * charge stands in the flooded ends of both coils.
 */
export function balanceCycle(build: Build, r: Refrigerating): CycleState {
  const fluid = build.refrigerant;
  const evaporator0 = gaugeAt(fluid, DESIGN.evaporatorF) + 14.7;
  const condenser0 = gaugeAt(fluid, DESIGN.condenserF) + 14.7;
  const subcooling0 = build.plate.subcooling;
  const air = { indoor: Math.max(r.indoorAir, 0.03), outdoor: Math.max(r.outdoorAir, 0.03) };
  const { stroke = 1 } = r;
  const drive = r.wetBulbF + 3;
  let evaporatorF = DESIGN.evaporatorF;
  let condenserF = r.outdoorF + 21;
  let superheat = DESIGN.superheat;
  let subcooling: number = subcooling0;
  let capacity = 1;
  let work = 1;
  let starved = 0;
  for (let step = 0; step < 900; step += 1) {
    const low = Math.max(gaugeAt(fluid, evaporatorF) + 14.7, 5);
    const high = gaugeAt(fluid, condenserF) + 14.7 + r.foreignGas;
    const pumped =
      stroke * (1 - r.leak) * (low / evaporator0) * clamp(1 - 0.05 * (high / low - condenser0 / evaporator0), 0.2, 1.2);
    capacity = pumped * (1 - 0.0045 * (condenserF - subcooling - (DESIGN.condenserF - subcooling0)));
    // Ports that stand open spare most of the work; what drags stays.
    work = (0.12 + 0.88 * stroke) * (1 - 0.5 * r.leak) * (low / evaporator0) ** 0.45 * (high / condenser0) ** 0.65;
    const wetted = clamp(
      1 - (0.75 * Math.max(superheat - DESIGN.superheat, 0)) / Math.max(drive - evaporatorF, 8),
      0.12,
      1,
    );
    const conductance = air.indoor ** 0.7 * wetted;
    // A coil that is dry to its end gives no more vapour than is let in: the pressure falls until less is pumped.
    const dry = superheat >= drive - evaporatorF ? starved : 0;
    const wanted = drive - (capacity * 25) / conductance - 60 * dry;
    const rejected = (capacity + DESIGN.workShare * work) / (1 + DESIGN.workShare);
    const free = clamp(1 - 0.01 * (subcooling - subcooling0), 0.5, 1.1);
    const wantedHead = r.outdoorF + (21 * rejected) / (air.outdoor ** 0.75 * free);
    evaporatorF += 0.06 * clamp(wanted - evaporatorF, -15, 15);
    // Above that a relief valve inside the shell opens, or the motor stalls.
    condenserF = Math.min(condenserF + 0.06 * clamp(wantedHead - condenserF, -25, 25), 151);
    // Liquid that has begun to boil passes the orifice with less mass.
    const solid = subcooling > 1.5 ? 1 + 0.008 * (subcooling - subcooling0) : 0.94 - 0.5 * (1.5 - subcooling) * 0.3;
    const passes =
      Math.sqrt(clamp(high - low, 1, 900) / (condenser0 - evaporator0)) * r.opening * clamp(solid, 0.12, 1.3);
    const opens = build.valve ? clamp(pumped / passes + 0.03 * (superheat - VALVE_HOLDS), 0.3, 1.55) : 1;
    starved = Math.max(0, pumped - passes * opens);
    superheat = clamp(superheat + 1.2 * (pumped - passes * opens), 0, Math.max(3, drive - evaporatorF + 6));
    const liquid = (r.charge - 1 + IN_SUPERHEAT * (superheat - DESIGN.superheat)) / IN_SUBCOOLING;
    subcooling += 0.05 * (clamp(subcooling0 + liquid, -4, 45) - subcooling);
  }
  const suctionPsi = gaugeAt(fluid, evaporatorF);
  const liquidPsi = gaugeAt(fluid, condenserF) + r.foreignGas;
  const ratio = Math.log((liquidPsi + 14.7) / (suctionPsi + 14.7)) / Math.log(condenser0 / evaporator0);
  const suctionF = evaporatorF + superheat + 1;
  const sensible = clamp(0.74 + 0.02 * (r.returnF - r.wetBulbF - 13), 0.6, 1);
  const rise = (19 * (capacity + DESIGN.workShare * work)) / (1 + DESIGN.workShare) / air.outdoor ** 0.8;
  const liquidF = Math.max(condenserF - Math.max(subcooling, 0), r.outdoorF + 1);
  return {
    suctionPsi,
    liquidPsi,
    suctionF,
    liquidF,
    dischargeF: suctionF + 120 * ratio * (1 + 0.15 * r.leak),
    // Air leaves no warmer than what it cools.
    condenserOutF: Math.min(condenserF - 2, r.outdoorF + rise),
    supplyF: Math.max(r.returnF - (20 * capacity * (sensible / 0.74)) / air.indoor ** 0.85, evaporatorF + 2, FROST),
    capacity,
    work,
    superheat,
    subcooling: boilsAt(fluid, liquidPsi) - liquidF,
    evaporatorF,
    condenserF,
  };
}
