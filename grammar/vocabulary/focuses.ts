/**
 * What a test is about, by function: where in the unit the search stands. `say`: how a technician names where to go on;
 * `name` is said back.
 */
export const FOCUSES = [
  {
    id: 'air-side',
    name: 'air side',
    say: '[the] (air side | airflow | air | blower | indoor (side | unit) | air handler | filter | duct work)',
  },
  {
    id: 'control-circuit',
    name: 'control circuit',
    say: '[the] (controls | control (circuit | side | voltage | volts) | low voltage [side] | twenty four volts | thermostat [wiring])',
  },
  {
    id: 'line-circuit',
    name: 'line circuit',
    say: '[the] (line (circuit | side | voltage) | high voltage [side] | contactor | disconnect | power | supply | voltages)',
  },
  {
    id: 'loads',
    name: 'motors and capacitor',
    say: '[the] (loads | motors | capacitor | capacitors | cap | windings | compressor | fan motor | ohms)',
  },
  {
    id: 'refrigerant',
    name: 'refrigerant side',
    say: '[the] [my] (gauges | refrigerant [side | circuit] | pressures | charge | superheat | subcooling)',
  },
] as const;
export type Focus = (typeof FOCUSES)[number]['id'];

/** Before where to go on. */
export const SKIP_TO =
  "[can we | can i | let's | let us | i want to | i'd like to | just] (skip | go | jump | move | get) [ahead | on | over | straight | right] to";
