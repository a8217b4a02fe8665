import type { PointId } from './points.ts';
import type { QuantityId, UnitCode } from './quantities.ts';

/** How large and how fine the numbers of a measurand are: it narrows the recogniser's number words. */
export type NumberShape = 'to-99' | 'to-299' | 'to-699' | 'to-9999';

/**
 * What can be measured where. One row is one quantity at one place or between two probe tips; a row makes it sayable
 * by the names of its tips ("leg one to ground") and by the names of its own in `say` ("coil").
 *
 * `low`…`high` is what can be true at all in the row's unit: outside it the reading is asked again. `likely` are the
 * bands a reading normally falls into, working or faulty; they decide between two meanings of the same words and
 * between the two readings of a teen/ty doubt. Bands are common practice for split systems of 2–5 tons; they judge
 * what was heard, never the unit (the rules that judge a reading stand elsewhere).
 */
export interface Measurand {
  readonly quantity: QuantityId;
  readonly at: readonly PointId[];
  readonly unit: UnitCode;
  readonly low: number;
  readonly high: number;
  readonly likely: readonly (readonly [number, number])[];
  readonly shape: NumberShape;
  /**
   * Values at which the trade decides otherwise, where it decides by a few: between two values with none of them between
   * there is nothing to ask. Common practice.
   */
  readonly turns?: readonly number[];
  /** Names of its own, besides the names of its tips. */
  readonly say?: string;
  /** Not what is meant by names it shares with others ("C to R", "herm section"), unless expected or a unit says so. */
  /** Of two that a name fits as well, the other is guessed first. */
  readonly lessOften?: true;
  readonly rare?: true;
  /** Reached only by its own names, not by naming its tips. */
  readonly onlyByName?: true;
  readonly gauge?: true;
  /** An open circuit is a natural reading here. */
  readonly open?: true;
}

type Bands = Pick<Measurand, 'quantity' | 'unit' | 'low' | 'high' | 'likely' | 'shape' | 'open' | 'gauge' | 'turns'>;

/** A leg to ground of a 120/240 V service: dead, back-fed ghost, or within 10 % of nominal. */
const LEG: Bands = {
  quantity: 'voltage',
  unit: 'V',
  low: 0,
  high: 160,
  likely: [
    [0, 6],
    [108, 132],
  ],
  shape: 'to-299',
};
/** Leg to leg: dead, one leg lost, 240 V within 10 %, or 208 V within 5 %. */
const PAIR: Bands = {
  quantity: 'voltage',
  unit: 'V',
  low: 0,
  high: 280,
  likely: [
    [0, 6],
    [198, 210],
    [216, 264],
  ],
  shape: 'to-299',
};
/** Across something that should be closed: a good one drops almost nothing, an open one shows the supply. */
const ACROSS: Bands = {
  quantity: 'voltage',
  unit: 'V',
  low: 0,
  high: 280,
  likely: [
    [0, 6],
    [108, 132],
    [216, 264],
  ],
  turns: [0.2, 0.5, 1, 2, 6, 20, 50, 90, 108, 120, 132, 180, 216, 240, 264],
  shape: 'to-299',
};
/** A pair of 24 V control conductors. */
const CONTROL: Bands = {
  quantity: 'voltage',
  unit: 'V',
  low: 0,
  high: 42,
  likely: [
    [0, 0.3],
    [18, 31],
  ],
  shape: 'to-99',
};
/** Across a running capacitor or a start winding: above the supply. */
const RAISED: Bands = {
  quantity: 'voltage',
  unit: 'V',
  low: 0,
  high: 520,
  likely: [
    [0, 6],
    [320, 460],
  ],
  shape: 'to-699',
};
const winding = (low: number, high: number): Bands => ({
  quantity: 'resistance',
  unit: 'Ohm',
  low: 0,
  high: 2000,
  likely: [[low, high]],
  shape: 'to-299',
  open: true,
});
/** Winding to shell: over limit, or a fault of any size. */
const TO_SHELL: Bands = {
  quantity: 'resistance',
  unit: 'Ohm',
  low: 0,
  high: 2e9,
  likely: [
    [0, 50],
    [1e5, 2e9],
  ],
  turns: [1, 10, 100, 1e3, 1e4, 1e5, 1e6, 2e6, 5e6, 2e7, 5e7, 1e8],
  shape: 'to-9999',
  open: true,
};
const INSULATION: Bands = {
  quantity: 'insulation',
  unit: 'MOhm',
  low: 0,
  high: 5000,
  likely: [[0, 5000]],
  turns: [1, 2, 5, 20, 50, 100],
  shape: 'to-9999',
  open: true,
};
/** Across a capacitor's section on ohms: it climbs from nothing to over limit; shorted stays low. */
const SECTION: Bands = {
  quantity: 'resistance',
  unit: 'Ohm',
  low: 0,
  high: 1e8,
  likely: [
    [0, 5],
    [1e5, 1e8],
  ],
  shape: 'to-9999',
  open: true,
};
/** A conductor end to end, or two with their ends free. */
const WIRE: Bands = {
  quantity: 'resistance',
  unit: 'Ohm',
  low: 0,
  high: 1e8,
  likely: [[0, 5]],
  shape: 'to-99',
  open: true,
};
/** Closed contacts, a fuse, a switch: next to nothing or open. */
const CONTACT: Bands = {
  quantity: 'resistance',
  unit: 'Ohm',
  low: 0,
  high: 1e6,
  likely: [[0, 2]],
  shape: 'to-99',
  open: true,
};
const microfarads = (high: number, from: number, likely: number): Bands => ({
  quantity: 'capacitance',
  unit: 'uF',
  low: 0,
  high,
  // Nothing at all, or next to nothing, is as likely a voltage that was meant: what is left in a discharged section.
  likely: [[from, likely]],
  shape: 'to-99',
  open: true,
});
const amps = (high: number, likely: number): Bands => ({
  quantity: 'current',
  unit: 'A',
  low: 0,
  high,
  likely: [[0, likely]],
  shape: 'to-299',
});
const degrees = (low: number, high: number, from: number, to: number): Bands => ({
  quantity: 'temperature',
  unit: '[degF]',
  low,
  high,
  likely: [[from, to]],
  shape: 'to-299',
});
const psi = (high: number, from: number, to: number): Bands => ({
  quantity: 'pressure',
  unit: '[psi]',
  low: -15,
  high,
  // Nothing at all: an empty circuit.
  likely: [
    [0, 0],
    [from, to],
  ],
  shape: 'to-699',
  gauge: true,
});

const ROWS = [
  // supply at the contactor's line side
  {
    ...LEG,
    at: ['L1', 'ground'],
    say: 'leg one | line one | l one | left leg | first leg | leg one volts',
  },
  {
    ...LEG,
    at: ['L2', 'ground'],
    say: 'leg two | line two | l two | right leg | second leg | other leg | leg two volts',
  },
  { ...LEG, at: ['L1', 'neutral'] },
  { ...LEG, at: ['L2', 'neutral'] },
  {
    ...PAIR,
    at: ['L1', 'L2'],
    say: 'leg to leg | between [the] (legs | hots | two legs) | across [the | both] legs | across [the] two legs | line to line | phase to phase | hot to hot | top of [the] contactor | line volts | line voltage | incoming (power | volts | voltage) | (power | voltage) coming in | line side | line side [of the] contactor | contactor line side | supply volts | supply voltage | across the line | across the line side',
  },
  // load side of the contactor
  { ...LEG, at: ['T1', 'ground'], say: 't one' },
  { ...LEG, at: ['T2', 'ground'], say: 't two' },
  {
    ...PAIR,
    at: ['T1', 'T2'],
    say: 'load side | load to load | bottom of [the] contactor | (coming | going) out of [the] contactor | leaving [the] contactor | [out] the bottom of [the] contactor | contactor output | load side [of the] contactor | contactor load side | across the load side | load volts',
  },
  {
    ...ACROSS,
    at: ['L1', 'T1'],
    say: '[across] [the] [contactor] pole one | across pole one | first pole | drop across pole one | pole one drop',
  },
  {
    ...ACROSS,
    at: ['L2', 'T2'],
    say: '[across] [the] [contactor] pole two | across pole two | second pole | drop across pole two | pole two drop',
  },
  { ...PAIR, at: ['L1', 'T2'] },
  { ...PAIR, at: ['L2', 'T1'] },
  { ...CONTACT, at: ['L1', 'T1'], say: '[contactor] pole one | first pole' },
  { ...CONTACT, at: ['L2', 'T2'], say: '[contactor] pole two | second pole' },
  // contactor coil
  {
    ...CONTROL,
    at: ['coil-1', 'coil-2'],
    say: 'coil | coil volts | coil voltage | [contactor] coil terminals | contactor coil | across the [contactor] coil | contactor coil volts',
  },
  {
    ...winding(4, 17),
    at: ['coil-1', 'coil-2'],
    say: 'coil | coil resistance | contactor coil | contactor coil resistance | across the [contactor] coil | coil ohms',
  },
  { ...CONTROL, at: ['coil-1', 'ground'] },
  { ...CONTROL, at: ['coil-2', 'ground'] },
  // disconnect, fuses, breaker
  { ...LEG, at: ['disconnect-line-1', 'ground'], say: 'disconnect line one' },
  { ...LEG, at: ['disconnect-line-2', 'ground'], say: 'disconnect line two' },
  {
    ...PAIR,
    at: ['disconnect-line-1', 'disconnect-line-2'],
    say: 'disconnect line side | disconnect (phase to phase | hot to hot | leg to leg) | line side of the disconnect | top of the disconnect | disconnect line to line',
  },
  { ...LEG, at: ['disconnect-load-1', 'ground'], say: 'disconnect load one | whip one' },
  { ...LEG, at: ['disconnect-load-2', 'ground'], say: 'disconnect load two | whip two' },
  {
    ...PAIR,
    at: ['disconnect-load-1', 'disconnect-load-2'],
    say: 'disconnect load side | load side of the disconnect | bottom of the disconnect | whip side | whip',
  },
  { ...ACROSS, at: ['disconnect-line-1', 'disconnect-load-1'], say: '[across] disconnect (blade | pole) one' },
  { ...ACROSS, at: ['disconnect-line-2', 'disconnect-load-2'], say: '[across] disconnect (blade | pole) two' },
  {
    ...ACROSS,
    at: ['disconnect-load-1', 'L1'],
    say: 'whip conductor one | drop [on | across] (lug | whip conductor) one | lug one drop',
  },
  {
    ...ACROSS,
    at: ['disconnect-load-2', 'L2'],
    say: 'whip conductor two | drop [on | across] (lug | whip conductor) two | lug two drop',
  },
  { ...ACROSS, at: ['fuse-1-line', 'fuse-1-load'], say: '[across] [line] fuse one | [across] [the] first fuse' },
  { ...ACROSS, at: ['fuse-2-line', 'fuse-2-load'], say: '[across] [line] fuse two | [across] [the] second fuse' },
  { ...CONTACT, at: ['fuse-1-line', 'fuse-1-load'], say: '[line] fuse one | [the] first fuse' },
  { ...CONTACT, at: ['fuse-2-line', 'fuse-2-load'], say: '[line] fuse two | [the] second fuse' },
  { ...LEG, at: ['fuse-1-line', 'ground'] },
  { ...LEG, at: ['fuse-1-load', 'ground'] },
  { ...LEG, at: ['fuse-2-line', 'ground'] },
  { ...LEG, at: ['fuse-2-load', 'ground'] },
  {
    ...PAIR,
    at: ['service-1', 'service-2'],
    say: 'service [volts | voltage] | panel bus | service leg to leg | at the panel bus',
  },
  { ...LEG, at: ['service-1', 'ground'], say: 'service leg one' },
  { ...LEG, at: ['service-2', 'ground'], say: 'service leg two' },
  { ...ACROSS, at: ['service-1', 'breaker-1'], say: 'across breaker pole one | breaker pole one drop' },
  { ...ACROSS, at: ['service-2', 'breaker-2'], say: 'across breaker pole two | breaker pole two drop' },
  { ...LEG, at: ['breaker-1', 'ground'], say: 'breaker pole one' },
  { ...LEG, at: ['breaker-2', 'ground'], say: 'breaker pole two' },
  {
    ...PAIR,
    at: ['breaker-1', 'breaker-2'],
    say: 'across the breaker | breaker | breaker pole to pole | at the breaker',
  },
  // capacitor: microfarads
  {
    ...microfarads(120, 4, 90),
    at: ['cap-C', 'cap-HERM'],
    say: '[cap | capacitor] herm [section | side] | herm side of the (cap | capacitor) | compressor (section | side) [of the] [cap | capacitor] | [run] (cap | capacitor) compressor (section | side)',
  },
  {
    ...microfarads(30, 0.9, 20),
    at: ['cap-C', 'cap-FAN'],
    say: '[cap | capacitor] fan (section | side) | fan (cap | capacitor) | (cap | capacitor) fan | fan side of the (cap | capacitor) | fan',
  },
  {
    ...microfarads(40, 1.5, 25),
    at: ['blower-cap-1', 'blower-cap-2'],
    say: 'blower (cap | capacitor) | indoor (cap | capacitor) | blower',
  },
  {
    ...microfarads(700, 20, 400),
    shape: 'to-699',
    at: ['start-cap-1', 'start-cap-2'],
    say: '[hard] start (cap | capacitor)',
  },
  // capacitor: volts while running, and what is left after
  {
    ...RAISED,
    rare: true,
    at: ['cap-C', 'cap-HERM'],
    say: 'herm volts | [across] herm | (cap | capacitor) herm',
  },
  { ...RAISED, rare: true, at: ['cap-C', 'cap-FAN'], say: '(cap | capacitor) fan volts' },
  { ...RAISED, at: ['cap-HERM', 'cap-FAN'] },
  {
    ...RAISED,
    quantity: 'voltage-dc',
    rare: true,
    likely: [[0, 3]],
    // Charged or not: more than that, no number tells.
    turns: [3],
    at: ['cap-C', 'cap-HERM'],
    say: '[cap | capacitor] herm section | herm section (residual | left over) volts | [cap | capacitor] herm',
  },
  {
    ...RAISED,
    quantity: 'voltage-dc',
    rare: true,
    likely: [[0, 3]],
    // Charged or not: more than that, no number tells.
    turns: [3],
    at: ['cap-C', 'cap-FAN'],
    say: '[cap | capacitor] fan section | fan section (residual | left over) volts | [cap | capacitor] fan | fan cap',
  },
  {
    ...RAISED,
    quantity: 'voltage-dc',
    rare: true,
    likely: [[0, 3]],
    // Charged or not: more than that, no number tells.
    turns: [3],
    at: ['blower-cap-1', 'blower-cap-2'],
    say: 'blower (cap | capacitor)',
  },
  {
    ...RAISED,
    quantity: 'voltage-dc',
    rare: true,
    likely: [[0, 3]],
    // Charged or not: more than that, no number tells.
    turns: [3],
    at: ['start-cap-1', 'start-cap-2'],
    say: '[hard] start (cap | capacitor)',
  },
  { ...LEG, at: ['cap-C', 'ground'], onlyByName: true, say: '(cap | capacitor) common to ground' },
  { ...SECTION, rare: true, at: ['cap-C', 'cap-HERM'], say: '[cap | capacitor] herm [section | side]' },
  {
    ...SECTION,
    rare: true,
    at: ['cap-C', 'cap-FAN'],
    say: '[cap | capacitor] fan (section | side) | fan (cap | capacitor)',
  },
  // compressor windings
  { ...winding(0.2, 4), at: ['comp-C', 'comp-R'], say: '[compressor] run winding' },
  { ...winding(1, 12), at: ['comp-C', 'comp-S'], say: '[compressor] start winding' },
  { ...winding(1.2, 15), at: ['comp-R', 'comp-S'] },
  {
    ...TO_SHELL,
    at: ['comp-C', 'shell'],
    say: 'compressor to ground | windings to (shell | ground) | winding to (shell | ground) | compressor windings to (shell | ground) | compressor to shell | [the] compressor [is] shorted to (ground | shell)',
  },
  { ...TO_SHELL, at: ['comp-R', 'shell'] },
  { ...TO_SHELL, at: ['comp-S', 'shell'] },
  {
    ...INSULATION,
    at: ['comp-C', 'shell'],
    rare: true,
    say: "[compressor] insulation [resistance] | [compressor] insulation to (shell | ground) | compressor megger | megger | [i] (meg'd | megged) it",
  },
  // outdoor fan motor: volts at its leads, windings
  {
    ...RAISED,
    // The run lead is fed by the supply, the start lead by the capacitor (common practice).
    likely: [...PAIR.likely, [320, 460]],
    at: ['fan-C', 'fan-R'],
    rare: true,
    say: 'fan motor volts | volts at the fan motor',
  },
  {
    ...winding(8, 90),
    rare: true,
    at: ['fan-C', 'fan-R'],
    say: 'fan [motor] run winding | [condenser | outdoor] fan [motor] windings',
  },
  { ...winding(10, 150), rare: true, at: ['fan-C', 'fan-S'], say: 'fan [motor] start winding' },
  { ...winding(20, 220), rare: true, at: ['fan-R', 'fan-S'] },
  { ...TO_SHELL, rare: true, at: ['fan-C', 'fan-frame'], say: 'fan motor to (ground | frame)' },
  { ...TO_SHELL, rare: true, at: ['fan-R', 'fan-frame'] },
  { ...TO_SHELL, rare: true, at: ['fan-S', 'fan-frame'] },
  // crankcase heater
  {
    ...winding(400, 2000),
    high: 5000,
    shape: 'to-9999',
    at: ['heater-1', 'heater-2'],
    say: '[crankcase] heater | crankcase heater resistance',
  },
  { ...PAIR, at: ['heater-1', 'heater-2'], say: '[crankcase] heater volts' },
  // control circuit, at the thermostat first: that is the place where nothing else is said
  {
    ...CONTROL,
    at: ['R@thermostat', 'C@thermostat'],
    say: 'control volts | control voltage | twenty four volt supply',
  },
  { ...CONTROL, at: ['R@thermostat', 'Y@thermostat'] },
  { ...CONTROL, at: ['C@thermostat', 'Y@thermostat'], say: 'yellow | y' },
  { ...CONTROL, at: ['R@thermostat', 'G@thermostat'] },
  { ...CONTROL, at: ['C@thermostat', 'G@thermostat'], say: 'green | g' },
  { ...CONTROL, at: ['R@thermostat', 'O@thermostat'] },
  { ...CONTROL, at: ['C@thermostat', 'O@thermostat'], say: 'orange' },
  { ...CONTROL, at: ['R@thermostat', 'B@thermostat'] },
  { ...CONTROL, at: ['C@thermostat', 'B@thermostat'] },
  { ...CONTROL, at: ['R@thermostat', 'W@thermostat'] },
  { ...CONTROL, at: ['C@thermostat', 'W@thermostat'], say: 'white' },
  { ...CONTROL, at: ['R@air-handler', 'C@air-handler'] },
  { ...CONTROL, at: ['R@air-handler', 'Y@air-handler'] },
  { ...CONTROL, at: ['C@air-handler', 'Y@air-handler'], say: 'yellow | y' },
  { ...CONTROL, at: ['R@air-handler', 'G@air-handler'] },
  { ...CONTROL, at: ['C@air-handler', 'G@air-handler'], say: 'green | g' },
  { ...CONTROL, at: ['R@air-handler', 'O@air-handler'] },
  { ...CONTROL, at: ['C@air-handler', 'O@air-handler'] },
  { ...CONTROL, at: ['C@air-handler', 'B@air-handler'] },
  { ...CONTROL, at: ['C@air-handler', 'W@air-handler'] },
  { ...CONTROL, at: ['R@air-handler', 'ground'] },
  { ...CONTROL, at: ['C@air-handler', 'ground'] },
  { ...CONTROL, at: ['Y@condenser', 'ground'] },
  // a control wire end to end, with a long lead, or two wires with their ends free
  { ...WIRE, at: ['Y@air-handler', 'Y@condenser'], onlyByName: true, say: 'y wire | yellow wire' },
  { ...WIRE, at: ['C@air-handler', 'C@condenser'], onlyByName: true, say: 'c wire | common wire' },
  { ...WIRE, rare: true, at: ['C@air-handler', 'Y@air-handler'] },
  { ...WIRE, rare: true, at: ['R@air-handler', 'C@air-handler'] },
  { ...CONTROL, at: ['R@condenser', 'C@condenser'] },
  { ...CONTROL, at: ['R@condenser', 'Y@condenser'] },
  { ...CONTROL, at: ['C@condenser', 'Y@condenser'] },
  { ...CONTROL, at: ['C@condenser', 'O@condenser'] },
  // the second stage: its wire, and the solenoid that it feeds
  { ...CONTROL, at: ['R@thermostat', 'Y2@thermostat'] },
  { ...CONTROL, at: ['C@thermostat', 'Y2@thermostat'], say: 'y two' },
  { ...CONTROL, at: ['R@air-handler', 'Y2@air-handler'] },
  { ...CONTROL, at: ['C@air-handler', 'Y2@air-handler'] },
  { ...CONTROL, at: ['C@condenser', 'Y2@condenser'], say: 'second stage' },
  {
    ...CONTROL,
    at: ['unloader-1', 'unloader-2'],
    say: 'unloader [solenoid] | solenoid | (unloader [solenoid] | solenoid) (volts | voltage)',
  },
  {
    ...winding(20, 80),
    at: ['unloader-1', 'unloader-2'],
    say: 'unloader [solenoid] | solenoid | (unloader [solenoid] | solenoid) (ohms | resistance)',
  },
  { ...CONTROL, at: ['float-1', 'float-2'], say: 'float | float switch | across the float [switch]' },
  { ...CONTACT, at: ['float-1', 'float-2'], say: 'float | float switch | across the float [switch]' },
  {
    ...CONTROL,
    at: ['high-switch-1', 'high-switch-2'],
    say: '[across the] high pressure switch | [across the] high switch | [across the] high pressure cutout',
  },
  {
    ...CONTACT,
    at: ['high-switch-1', 'high-switch-2'],
    say: '[across the] high pressure switch | [across the] high switch | [across the] high pressure cutout',
  },
  {
    ...CONTROL,
    at: ['low-switch-1', 'low-switch-2'],
    say: '[across the] low pressure switch | [across the] low switch | [across the] low pressure cutout',
  },
  {
    ...CONTACT,
    at: ['low-switch-1', 'low-switch-2'],
    say: '[across the] low pressure switch | [across the] low switch | [across the] low pressure cutout',
  },
  { ...CONTROL, at: ['control-fuse-1', 'control-fuse-2'], say: '[across the] control fuse | [across the] board fuse' },
  { ...CONTACT, at: ['control-fuse-1', 'control-fuse-2'], say: '[across the] control fuse | [across the] board fuse' },
  // transformer, air handler supply, blower
  {
    ...PAIR,
    likely: [
      [0, 6],
      [108, 132],
      [198, 210],
      [216, 264],
    ],
    at: ['transformer-primary-1', 'transformer-primary-2'],
    say: '[transformer] primary [volts] | primary side [of the] [transformer]',
  },
  {
    ...CONTROL,
    at: ['transformer-secondary-1', 'transformer-secondary-2'],
    say: '[transformer] secondary [volts] | secondary side [of the] [transformer] | transformer [out | output] | out of the transformer',
  },
  {
    ...winding(1, 60),
    at: ['transformer-primary-1', 'transformer-primary-2'],
    say: '[transformer] primary [winding]',
  },
  {
    ...winding(0.1, 5),
    at: ['transformer-secondary-1', 'transformer-secondary-2'],
    say: '[transformer] secondary [winding]',
  },
  { ...LEG, at: ['handler-L1', 'ground'], say: '(air handler | indoor | handler) (leg | line) one' },
  { ...LEG, at: ['handler-L2', 'ground'], say: '(air handler | indoor | handler) (leg | line) two' },
  {
    ...PAIR,
    at: ['handler-L1', 'handler-L2'],
    say: '(air handler | indoor | handler) (supply | supply volts | line volts | leg to leg)',
  },
  { ...ACROSS, at: ['blower-1', 'blower-2'], say: 'blower [motor] volts | blower motor | across the blower [motor]' },
  { ...winding(1, 60), at: ['blower-1', 'blower-2'], say: 'blower [motor] winding | blower motor' },
  { ...ACROSS, at: ['door-switch-1', 'door-switch-2'], say: '[across the] [blower] door switch' },
  { ...CONTACT, at: ['door-switch-1', 'door-switch-2'], say: '[across the] [blower] door switch' },
  // amps: a clamp around one lead
  {
    ...amps(200, 40),
    at: ['compressor'],
    say: 'compressor amps | compressor current | compressor | compressor draw | compressor common [lead | wire] [amps] | amps [on | at] [the] compressor',
  },
  {
    // Fan motors of a sixth to a third of a horsepower (common practice).
    ...amps(15, 3),
    at: ['fan-motor'],
    say: '[outdoor | condenser] fan (amps | current | draw) | [outdoor | condenser] fan motor [amps | current | draw] | outdoor fan | condenser fan | fan | amps [on | at] [the] [outdoor | condenser] fan [motor]',
  },
  {
    ...amps(30, 15),
    at: ['blower-motor'],
    say: '[indoor] blower [motor] (amps | current | draw) | indoor fan [motor] [amps | current | draw] | [indoor] blower | amps [on | at] [the] blower [motor]',
  },
  {
    ...amps(30, 10),
    at: ['comp-S'],
    say: 'start (lead | winding) [amps | current] | compressor start amps | amps on the start lead',
  },
  {
    ...amps(10, 3),
    at: ['fan-S'],
    say: 'fan start lead (amps | current) | fan [motor] start (amps | current) | amps on the fan start lead',
  },
  { ...amps(5, 2), rare: true, at: ['crankcase-heater'], say: '[crankcase] heater [amps]' },
  // temperatures
  {
    ...degrees(20, 160, 35, 95),
    at: ['supply-air'],
    say: '[indoor] supply [air] [temp | temperature | dry bulb] | discharge air',
  },
  {
    ...degrees(20, 130, 55, 100),
    at: ['return-air'],
    say: '[indoor] return [air] [temp | temperature | dry bulb] | indoor dry bulb | inside | indoors | inside (air | temp)',
  },
  {
    ...degrees(-30, 135, 40, 120),
    at: ['outdoor-air'],
    say: 'outside | outdoors | out here | outdoor [air] [temp | temperature | dry bulb] | outside [air] [temp | temperature] | [outdoor | outside] ambient [air] [temp | temperature]',
  },
  {
    ...degrees(0, 190, 60, 150),
    at: ['condenser-air-out'],
    say: 'condenser (leaving air | air out | air off) | condenser leaving air [temp | temperature] | air off the condenser | condenser discharge air',
  },
  {
    ...degrees(-20, 150, 25, 90),
    at: ['suction-line'],
    lessOften: true,
    say: 'suction | suction line [temp | temperature] | suction (temp | temperature) | vapor line [temp | temperature] | big line',
  },
  {
    ...degrees(20, 180, 60, 130),
    at: ['liquid-line'],
    say: 'liquid | liquid line [temp | temperature] | liquid (temp | temperature) | small line | little line',
  },
  {
    ...degrees(40, 300, 100, 240),
    at: ['discharge-line'],
    say: 'discharge line [temp | temperature] | discharge (temp | temperature) | hot gas line [temp | temperature]',
  },
  {
    // Of a house that is not cooled up to 82; a coil is rated from 57 (common practice), below is more often supply air.
    ...degrees(30, 100, 57, 82),
    quantity: 'wet-bulb',
    at: ['return-air'],
    say: '[return | indoor] [air] wet bulb | wet bulb ((in | at) [the] return | indoors)',
  },
  {
    ...degrees(20, 100, 40, 85),
    quantity: 'wet-bulb',
    at: ['outdoor-air'],
    say: 'outdoor wet bulb | outside wet bulb | wet bulb',
    rare: true,
  },
  {
    ...degrees(20, 100, 35, 75),
    quantity: 'wet-bulb',
    at: ['supply-air'],
    say: '[supply] wet bulb',
    rare: true,
  },
  {
    ...degrees(-20, 90, 0, 45),
    quantity: 'difference',
    at: ['suction-line'],
    say: '[suction] (superheat | super heat) [of]',
  },
  {
    ...degrees(-20, 90, 0, 40),
    quantity: 'difference',
    at: ['liquid-line'],
    say: '(subcooling | subcool | sub cooling | sub cool) [of]',
  },
  {
    ...degrees(-20, 70, 0, 30),
    quantity: 'difference',
    at: ['supply-air', 'return-air'],
    onlyByName: true,
    say: '[temperature | temp | air] split [of] | delta [t] [across the coil] [of] | (temperature | temp) drop [across the coil] | [temperature | temp] split across the coil',
  },
  // pressures
  {
    ...psi(450, 20, 260),
    at: ['suction-port'],
    say: 'suction [pressure] | low side [pressure] | vapor pressure | [the] (blue | low side) (gauge | hose) | suction p s i | suction (side | line) pressure | suction side | pressure [on] [the] low [side]',
  },
  {
    ...psi(750, 80, 600),
    at: ['liquid-port'],
    say: 'liquid [pressure] | high side [pressure] | head [pressure] | [the] (red | high side) (gauge | hose) | discharge pressure | liquid p s i | liquid line pressure | pressure [on] [the] high [side]',
  },
  {
    quantity: 'vacuum',
    unit: 'um[Hg]',
    at: ['system'],
    low: 0,
    high: 25000,
    likely: [[0, 2500]],
    turns: [300, 500, 1000, 1500],
    shape: 'to-9999',
    say: '[the] vacuum [pump | gauge] | [the] micron gauge | microns | evacuation',
  },
  {
    quantity: 'vacuum',
    unit: "[in_i'Hg]",
    rare: true,
    at: ['suction-port'],
    low: 0,
    high: 30,
    likely: [[1, 30]],
    shape: 'to-99',
    gauge: true,
    say: 'suction [pressure] | low side [pressure]',
  },
  {
    quantity: 'pressure',
    unit: '[psi]',
    at: ['system'],
    low: 0,
    high: 700,
    likely: [[50, 600]],
    shape: 'to-699',
    gauge: true,
    say: 'pressure test | standing pressure | nitrogen [pressure] | test pressure | system [pressure]',
  },
  // air
  {
    quantity: 'static-pressure',
    unit: "[in_i'H2O]",
    at: ['return-static'],
    low: -3,
    high: 3,
    likely: [[-1, 1]],
    shape: 'to-99',
    gauge: true,
    say: '[return] static [pressure]',
    rare: true,
  },
  {
    quantity: 'static-pressure',
    unit: "[in_i'H2O]",
    at: ['supply-static'],
    low: 0,
    high: 3,
    likely: [[0, 1]],
    shape: 'to-99',
    gauge: true,
    say: '[supply] static [pressure]',
    rare: true,
  },
  {
    quantity: 'static-pressure',
    unit: "[in_i'H2O]",
    at: ['return-static', 'supply-static'],
    low: 0,
    high: 3,
    // Less than 0.4 is more often one side alone (common practice: blowers are rated at 0.5).
    likely: [[0.4, 1.5]],
    shape: 'to-99',
    gauge: true,
    say: 'total [external] static [pressure] | external static [pressure] | static [pressure]',
  },
  {
    quantity: 'airflow',
    unit: '[cft_i]/min',
    at: ['supply-air'],
    low: 0,
    high: 4000,
    likely: [[400, 2400]],
    shape: 'to-9999',
    say: 'airflow | air flow | air volume',
  },
  {
    quantity: 'humidity',
    unit: '%',
    at: ['return-air'],
    low: 0,
    high: 100,
    // Indoors 30 to 60 is usual (common practice).
    likely: [[15, 60]],
    shape: 'to-99',
    say: '[return [air] | indoor [air]] [relative] humidity | [relative] humidity (indoors | inside | in the house) | return [air] r h | r h',
  },
  {
    quantity: 'humidity',
    unit: '%',
    at: ['outdoor-air'],
    low: 0,
    high: 100,
    likely: [[10, 100]],
    shape: 'to-99',
    say: '(outdoor | outside) [air] [relative] humidity | [relative] humidity',
    rare: true,
  },
  {
    quantity: 'frequency',
    unit: 'Hz',
    at: ['L1', 'L2'],
    low: 40,
    high: 70,
    likely: [[59, 61]],
    shape: 'to-99',
    say: '[line] frequency | line hertz',
  },
  {
    quantity: 'time',
    unit: 'min',
    at: ['system'],
    low: 0,
    high: 600,
    likely: [[0, 120]],
    shape: 'to-299',
    say: 'run time | running time | [system] running for | been running for',
  },
] as const satisfies readonly Measurand[];
export const MEASURANDS: readonly Measurand[] = ROWS;

type PairIn<At> = At extends readonly [infer One extends string, infer Other extends string]
  ? `${One} ${Other}`
  : never;

/** Two probe tips of a row, in the order of the points. */
export type PairId = PairIn<(typeof ROWS)[number]['at']>;
