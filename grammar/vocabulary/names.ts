/** Names used inside the phrases of other tables as `$name`. */
export const NAMES = {
  fan: '[the] ([outdoor | condenser | outside] fan [motor])',
  stat: '(thermostat | stat | tstat)',
} as const;
