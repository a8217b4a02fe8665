/** Names used inside the phrases of other tables as `$name`. */
export const NAMES = {
  fan: '[the] ([outdoor | condenser | outside] fan [motor | blade])',
  stat: '(thermostat | stat | tstat)',
  cleaned: '(cleaned | washed | rinsed | hosed) [off | out | down]',
  tightened: '(tightened | torqued | snugged) [down | up]',
  leg: '(leg | line | l)',
} as const;
