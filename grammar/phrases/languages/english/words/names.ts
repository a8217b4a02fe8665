/** Names used inside the phrases of other tables as `$name`. */
export const NAMES = {
  it: "(it's | it is | that's | that is | they're | they are | it)",
  ay: '(yes | yeah | yep | yup | sure)',
  'leak-place':
    '((at | on | in | by | near | from) [the | a | one of the] [suction | liquid | indoor | outdoor | evaporator | evap | condenser | service | low side | high side] (flare [nut | fitting] | (valve | schrader) [core] | service valve | joint | fitting | coil | line | line set | braze joint | solder joint | u bend | distributor | cap))',
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
