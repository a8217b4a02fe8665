/** Names used inside the phrases of other tables as `$name`. */
export const NAMES = {
  fan: '[the] ([outdoor | condenser | outside] fan [motor | blade])',
  stat: '(thermostat | stat | tstat)',
  cleaned: '(cleaned | washed | rinsed | hosed) [off | out | down]',
  tightened: '(tightened | torqued | snugged) [down | up]',
  leg: '(leg | line | l)',
  plate: '(nameplate | name plate | data plate | model plate | rating plate | plate | tag)',
  unreadable:
    '(unreadable | illegible | worn [off | out | away] | faded | painted over | rusted [off | over | away] | blank)',
  legible: '(legible | readable)',
  cannot: "(can't | cannot | can not | couldn't | could not)",
} as const;
