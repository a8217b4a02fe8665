import { NodalNetwork } from './nodal-network.ts';
import { over, type Phasor, scaled } from './phasor.ts';
import { OPEN, type Plant, type Standing } from './plant.ts';
import { admittances } from './split-phase-motor.ts';

const TURN = 2 * Math.PI * 60;

/** Parts that a bench measurement takes out of the circuit. */
export type Part =
  | 'supply'
  | 'contactor'
  | 'coil'
  | 'unloader'
  | 'compressor'
  | 'capacitor'
  | 'fan'
  | 'heater'
  | 'start'
  | 'transformer'
  | 'fuse'
  | 'field'
  | 'float'
  | 'switches'
  | 'door'
  | 'blower'
  | 'house'
  | 'thermostat';

/**
 * Puts elements into a network: at 60 hertz with the sources, or at no frequency without them, as an ohmmeter meets it.
 * Of a part alone where `only` names one.
 */
export class Wirer {
  readonly net = new NodalNetwork();
  readonly plant: Plant;
  readonly at: Standing;
  readonly dc: boolean;
  private readonly only: Part | undefined;

  constructor(plant: Plant, at: Standing, dc: boolean, only?: Part) {
    this.plant = plant;
    this.at = at;
    this.dc = dc;
    this.only = only;
  }

  takes(part: Part): boolean {
    return this.only === undefined || this.only === part;
  }

  resistance(part: Part, a: string, b: string, ohms: number): void {
    if (this.takes(part)) this.net.admittance(a, b, [1 / Math.max(ohms, 1e-3), 0]);
  }

  impedance(part: Part, a: string, b: string, ohms: number, reactance: number): void {
    if (this.takes(part)) this.net.admittance(a, b, over([1, 0], [ohms, this.dc ? 0 : reactance]));
  }

  /** Two insulated wires in one cable, or a capacitor's section; `leak` ohms beside it. */
  capacitance(part: Part, a: string, b: string, microfarads: number, leak = 1e10): void {
    if (!this.takes(part)) return;
    this.net.admittance(a, b, [1 / leak, this.dc ? 0 : TURN * microfarads * 1e-6]);
  }

  source(a: string, b: string, volts: Phasor, ohms: number): void {
    if (this.dc || !this.takes('supply')) return;
    this.net.admittance(a, b, [1 / ohms, 0]);
    this.net.inject(a, b, scaled(volts, 1 / ohms));
  }

  /** A transformer of `ratio` primary turns to one, its copper brought to the secondary side. */
  transformer(p: readonly [string, string], s: readonly [string, string], ratio: number, ohms: Phasor): void {
    const part = 'transformer';
    if (!this.takes(part)) return;
    if (this.dc) {
      this.resistance(part, ...p, ohms[0] * 0.5 * ratio * ratio);
      this.resistance(part, ...s, ohms[0] * 0.5);
      return;
    }
    const y = over([1, 0], ohms);
    this.net.transfer(s[0], s[1], s[0], s[1], y);
    this.net.transfer(s[0], s[1], p[0], p[1], scaled(y, -1 / ratio));
    this.net.transfer(p[0], p[1], p[0], p[1], scaled(y, 1 / ratio ** 2));
    this.net.transfer(p[0], p[1], s[0], s[1], scaled(y, -1 / ratio));
    this.net.admittance(p[0], p[1], [1 / 9000, -1 / 3500]);
  }

  /** The two windings of a motor from their common end to their others; breaks stand in series. */
  motor(
    part: 'compressor' | 'fan' | 'blower',
    star: string,
    run: string,
    start: string,
    breaks: readonly [number, number],
  ) {
    if (!this.takes(part)) return;
    const m = this.plant.drives[part].motor;
    const [main, auxiliary] = [`${part}-main-end`, `${part}-auxiliary-end`];
    this.resistance(part, main, run, breaks[0]);
    this.resistance(part, auxiliary, start, breaks[1]);
    if (this.dc) {
      this.resistance(part, star, main, m.mainOhms);
      this.resistance(part, star, auxiliary, m.auxiliaryOhms);
      return;
    }
    const [mm, ma, am, aa] = admittances(m, this.at.slip[part]);
    this.net.transfer(star, main, star, main, mm);
    this.net.transfer(star, main, star, auxiliary, ma);
    this.net.transfer(star, auxiliary, star, main, am);
    this.net.transfer(star, auxiliary, star, auxiliary, aa);
  }
}

/** The whole unit. @param dc dead, as an ohmmeter meets it: disconnect and the air handler's breaker out */
export function wirePlant(plant: Plant, at: Standing, dc: boolean, only?: Part, pressed = false): NodalNetwork {
  const w = new Wirer(plant, at, dc, only);
  wireSupply(w);
  wireContactor(w, pressed);
  wireOutdoorLoads(w);
  wireAirHandler(w);
  wireControl(w);
  return w.net;
}

function wireSupply(w: Wirer): void {
  const { contacts: c, build } = w.plant;
  const leg = build.legVolts * w.plant.supplyShare;
  const second: Phasor = build.supply === 240 ? [-leg, 0] : [-leg / 2, (leg * Math.sqrt(3)) / 2];
  w.source('neutral', 'utility-1', [leg, 0], 0.02);
  w.source('neutral', 'utility-2', second, 0.02);
  w.resistance('supply', 'neutral', 'ground', 0.05);
  w.resistance('supply', 'utility-1', 'service-1', c.utility1);
  w.resistance('supply', 'utility-2', 'service-2', c.utility2);
  // The rest of the house: what hangs on one leg and what on both.
  w.resistance('house', 'service-1', 'neutral', 35);
  w.resistance('house', 'service-2', 'neutral', 45);
  w.resistance('house', 'service-1', 'service-2', 60);
  for (const n of [1, 2] as const) {
    w.resistance('supply', `service-${n}`, `breaker-${n}`, dcOpen(w, c[`breaker${n}`]));
    w.resistance('supply', `breaker-${n}`, `disconnect-line-${n}`, 0.04);
    w.resistance(
      'supply',
      `disconnect-line-${n}`,
      `fuse-${n}-line`,
      dcOpen(w, w.plant.disconnectOut ? OPEN : c[`blade${n}`]),
    );
    w.resistance('supply', `fuse-${n}-line`, `fuse-${n}-load`, build.fused ? c[`fuse${n}`] : 0.002);
    w.resistance('supply', `fuse-${n}-load`, `disconnect-load-${n}`, 0.002);
    w.resistance('supply', `disconnect-load-${n}`, `L${n}`, c[`lug${n}`]);
  }
}

/** Work on dead parts is done with breaker and disconnect out. */
const dcOpen = (w: Wirer, ohms: number): number => (w.dc ? OPEN : ohms);

function wireContactor(w: Wirer, pressed: boolean): void {
  const { contacts: c, shorts, build, armature } = w.plant;
  const closed = pressed ? armature !== 'jammed' : w.at.contactorIn && !w.dc;
  for (const n of [1, 2] as const) {
    const barred = build.poles === 1 && build.switchedPole !== n;
    const made = barred || closed;
    w.resistance(
      'contactor',
      `L${n}`,
      `T${n}`,
      barred ? 0.003 : made ? Math.min(c[`pole${n}`], shorts[`pole${n}`]) : shorts[`pole${n}`],
    );
  }
}

function wireOutdoorLoads(w: Wirer): void {
  const { contacts: c, shorts, build, microfarads: uf } = w.plant;
  const [common, other] = build.commonOn === 1 ? ['T1', 'T2'] : ['T2', 'T1'];
  w.resistance('field', common!, 'comp-C', c.compressorLeadC);
  w.resistance('field', other!, 'comp-R', c.compressorLeadR);
  w.resistance('field', 'cap-HERM', 'herm-wire', c.hermLead);
  w.resistance('field', 'herm-wire', 'comp-S', c.compressorLeadS);
  w.resistance('field', other!, 'cap-C', c.capacitorLead);
  w.resistance('compressor', 'comp-C', 'comp-star', w.at.overloadOut ? OPEN : c.compressorOverload);
  w.motor('compressor', 'comp-star', 'comp-R', 'comp-S', [c.compressorMain, c.compressorAuxiliary]);
  w.resistance('compressor', 'comp-star', 'shell', shorts.compressorToShell);
  // Windings lie in their slots like the plates of a capacitor: some nanofarads to the iron (common practice).
  w.capacitance('compressor', 'comp-star', 'shell', 0.003);
  w.resistance('compressor', 'shell', 'ground', 0.05);
  w.capacitance('capacitor', 'cap-C', 'cap-HERM', uf.herm, shorts.hermSection);
  w.capacitance('capacitor', 'cap-C', 'cap-FAN', uf.fan, shorts.fanSection);
  if (build.hardStart) {
    w.capacitance('start', 'start-cap-1', 'start-cap-2', uf.start);
    w.resistance('field', 'cap-C', 'start-cap-1', w.at.slip.compressor > 0.25 ? 0.05 + c.startCapacitor : OPEN);
    w.resistance('field', 'start-cap-2', 'cap-HERM', 0.01);
  }
  w.resistance('field', common!, 'fan-C', c.fanLeadC + (build.heatPump ? c.defrostRelay : 0));
  w.resistance('field', 'cap-C', 'fan-R', c.fanLeadR);
  w.resistance('field', 'cap-FAN', 'fan-S', c.fanLeadS);
  w.motor('fan', 'fan-C', 'fan-R', 'fan-S', [c.fanMain, c.fanAuxiliary]);
  w.resistance('fan', 'fan-C', 'fan-frame', shorts.fanToFrame);
  w.capacitance('fan', 'fan-C', 'fan-frame', 0.0008);
  w.resistance('fan', 'fan-frame', 'ground', 0.05);
  if (build.heater) {
    const switched = build.switchedPole;
    const [a, b] = build.heaterAcrossPole ? [`L${switched}`, `T${switched}`] : ['L1', 'L2'];
    w.resistance('field', a!, 'heater-1', 0.01);
    w.resistance('heater', 'heater-1', 'heater-2', 900 + c.heater);
    w.resistance('field', 'heater-2', b!, 0.01);
  }
}

function wireAirHandler(w: Wirer): void {
  const { contacts: c, build, transformerHealth } = w.plant;
  w.resistance('house', 'service-1', 'handler-L1', dcOpen(w, c.handlerBreaker1 + 0.05));
  w.resistance(
    'house',
    build.handlerAt120 ? 'neutral' : 'service-2',
    'handler-L2',
    dcOpen(w, c.handlerBreaker2 + 0.05),
  );
  w.resistance('field', 'handler-L1', 'door-switch-1', 0.01);
  w.resistance('door', 'door-switch-1', 'door-switch-2', c.door);
  w.resistance('field', 'door-switch-2', 'transformer-primary-1', 0.01);
  w.resistance('field', 'handler-L2', 'transformer-primary-2', 0.01);
  wireBlower(w);
  const tap = build.handlerAt120 ? 120 : build.tap;
  const ratio = tap / 26.2 / transformerHealth;
  w.resistance('transformer', 'transformer-primary-1', 'primary-inside', c.transformerPrimary);
  w.resistance('transformer', 'secondary-inside', 'transformer-secondary-1', c.transformerSecondary);
  w.transformer(
    ['primary-inside', 'transformer-primary-2'],
    ['secondary-inside', 'transformer-secondary-2'],
    ratio,
    [1.6, 0.5],
  );
}

/** What a motor with a drive of its own draws, as ohms. */
export function electronicBlowerOhms({ contacts, build }: Plant, runs: boolean): number {
  if (!runs) return contacts.blowerMain + 4000;
  return contacts.blowerMain + (build.handlerAt120 ? 22 : 85);
}

function wireBlower(w: Wirer): void {
  const { contacts: c, build } = w.plant;
  const runs = w.at.blowerRelayIn && !w.dc;
  w.resistance('field', 'handler-L2', 'blower-2', 0.01);
  if (build.electronicBlower) {
    // A motor with a drive of its own stands under line volts all the time; the call is a signal to it.
    w.resistance('field', 'door-switch-2', 'blower-1', 0.01);
    w.resistance('blower', 'blower-1', 'blower-2', electronicBlowerOhms(w.plant, runs));
    return;
  }
  w.resistance('field', 'door-switch-2', 'blower-1', runs ? c.blowerRelay : OPEN);
  w.motor('blower', 'blower-1', 'blower-2', 'blower-cap-1', [c.blowerMain, 0.01]);
  w.resistance('blower', 'blower-2', 'blower-cap-2', 0.01);
  w.capacitance('blower', 'blower-cap-1', 'blower-cap-2', w.plant.microfarads.blower);
}

function wireControl(w: Wirer): void {
  const { contacts: c, shorts, build } = w.plant;
  const call = w.at.call && !w.dc;
  w.resistance('field', 'transformer-secondary-1', 'control-fuse-1', 0.01);
  w.resistance('fuse', 'control-fuse-1', 'control-fuse-2', c.controlFuse);
  if (build.float === 'breaks-R') {
    w.resistance('field', 'control-fuse-2', 'float-1', 0.01);
    w.resistance('float', 'float-1', 'float-2', c.float);
    w.resistance('field', 'float-2', 'R@air-handler', 0.01);
  } else w.resistance('field', 'control-fuse-2', 'R@air-handler', 0.01);
  w.resistance('field', 'transformer-secondary-2', 'C@air-handler', 0.01);
  w.resistance('field', 'C@air-handler', 'ground', build.commonGrounded ? 0.05 : 1e7);
  w.resistance('field', 'R@air-handler', 'R@thermostat', c.wireR);
  w.resistance('field', 'Y@thermostat', 'Y@air-handler', c.wireYIndoors);
  w.resistance('field', 'G@thermostat', 'G@air-handler', c.wireG);
  if (build.thermostatHasC) {
    w.resistance('field', 'C@air-handler', 'C@thermostat', 0.3);
    w.resistance('thermostat', 'R@thermostat', 'C@thermostat', 900);
  }
  // A thermostat that takes its power through the load when it has no C of its own.
  else w.resistance('thermostat', 'R@thermostat', 'Y@thermostat', 12000);
  w.resistance('thermostat', 'R@thermostat', 'Y@thermostat', call ? c.thermostatY : OPEN);
  w.resistance('thermostat', 'R@thermostat', 'G@thermostat', call ? c.thermostatG : OPEN);
  w.impedance('field', 'G@air-handler', 'C@air-handler', 120, 150);
  wireOutdoorControl(w, call);
  // Wires of one cable: some 20 metres at 90 picofarads each (common practice).
  for (const [a, b] of [
    ['R@thermostat', 'Y@thermostat'],
    ['R@thermostat', 'G@thermostat'],
    ['Y@condenser', 'C@condenser'],
    ['Y@air-handler', 'C@air-handler'],
  ] as const)
    w.capacitance('house', a, b, 0.0018);
  w.resistance('field', 'Y@air-handler', 'C@air-handler', shorts.YToC);
  w.resistance('field', 'R@air-handler', 'C@air-handler', shorts.RToC);
}

function wireOutdoorControl(w: Wirer, call: boolean): void {
  const { contacts: c, shorts, build } = w.plant;
  if (build.float === 'breaks-Y') {
    w.resistance('field', 'Y@air-handler', 'float-1', 0.01);
    w.resistance('float', 'float-1', 'float-2', c.float);
    w.resistance('field', 'float-2', 'Y@condenser', c.wireYOutdoors);
  } else w.resistance('field', 'Y@air-handler', 'Y@condenser', c.wireYOutdoors);
  w.resistance('field', 'C@air-handler', 'C@condenser', c.wireC);
  if (build.heatPump) {
    w.resistance('field', 'R@air-handler', 'R@condenser', 0.4);
    w.resistance('thermostat', 'R@thermostat', 'O@thermostat', call ? c.thermostatO : OPEN);
    w.resistance('field', 'O@thermostat', 'O@air-handler', 0.3);
    w.resistance('field', 'O@air-handler', 'O@condenser', c.wireO);
    w.impedance('field', 'O@condenser', 'C@condenser', 30, 60);
    w.resistance('field', 'R@condenser', 'C@condenser', 700);
  }
  if (build.twoStage) wireSecondStage(w, call);
  const afterTimer = 'coil-feed';
  if (build.pressureSwitches) {
    w.resistance('field', 'Y@condenser', 'high-switch-1', 0.01);
    w.resistance('switches', 'high-switch-1', 'high-switch-2', w.at.highOut ? OPEN : c.highSwitch);
    w.resistance('field', 'high-switch-2', 'low-switch-1', 0.01);
    w.resistance('switches', 'low-switch-1', 'low-switch-2', w.at.lowOut ? OPEN : c.lowSwitch);
    w.resistance('field', 'low-switch-2', afterTimer, 0.01);
  } else w.resistance('field', 'Y@condenser', afterTimer, 0.01);
  w.resistance('field', afterTimer, 'coil-1', c.delayTimer);
  const healthy = shorts.coilTurns > 1e6;
  const reactance = healthy ? build.coilReactance * (w.at.contactorIn ? 1 : 0.45) : 0.2;
  w.resistance('coil', 'coil-1', 'coil-inside', c.coil);
  w.impedance('coil', 'coil-inside', 'coil-2', healthy ? build.coilOhms : shorts.coilTurns, reactance);
  w.resistance('field', 'coil-2', 'C@condenser', 0.01);
}

/** Two more ends in the cable; the coil hangs between the wire and the common of the strip outdoors. */
function wireSecondStage(w: Wirer, call: boolean): void {
  const { stage } = w.plant;
  w.resistance('thermostat', 'R@thermostat', 'Y2@thermostat', call ? stage.thermostat : OPEN);
  w.resistance('field', 'Y2@thermostat', 'Y2@air-handler', stage.wireIndoors);
  w.resistance('field', 'Y2@air-handler', 'Y2@condenser', stage.wireOutdoors);
  w.resistance('field', 'Y2@condenser', 'unloader-1', 0.02);
  w.resistance('unloader', 'unloader-1', 'unloader-inside', stage.coil);
  // Two of four diodes are always in the way: some ohms more at these currents.
  w.impedance(
    'unloader',
    'unloader-inside',
    'unloader-2',
    stage.coilOhms + (stage.rectified && !w.dc ? 2 : 0),
    stage.coilReactance,
  );
  w.resistance('field', 'unloader-2', 'C@condenser', 0.02);
  w.capacitance('house', 'Y2@condenser', 'C@condenser', 0.0018);
}
