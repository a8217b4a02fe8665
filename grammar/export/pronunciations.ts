/**
 * Words of the grammar that the CMU Pronouncing Dictionary lacks, in ARPAbet without stress, as its recognisers use it.
 * Each is put together from CMU entries of its parts ("milli-" of millimeter + amp). A word may have several.
 * A test looks up every other word of the grammar in the recogniser's own dictionary.
 */
export const PRONUNCIATIONS: Readonly<Record<string, readonly string[]>> = {
  ampacity: ['AE M P AE S AH T IY'],
  amps: ['AE M P S'],
  braze: ['B R EY Z'],
  contactor: ['K AA N T AE K T ER', 'K AH N T AE K T ER'],
  crankcase: ['K R AE NG K K EY S'],
  evap: ['IY V AE P', 'IH V AE P'],
  farads: ['F EH R AH D Z', 'F AE R AE D Z'],
  fower: ['F OW ER'],
  inverter: ['IH N V ER T ER'],
  jumpered: ['JH AH M P ER D'],
  kilohm: ['K IH L OW M'],
  kilohms: ['K IH L OW M Z'],
  matted: ['M AE T AH D', 'M AE T IH D'],
  megger: ['M EH G ER'],
  megohm: ['M EH G OW M'],
  megohms: ['M EH G OW M Z'],
  megs: ['M EH G Z'],
  microfarad: ['M AY K R OW F EH R AH D', 'M AY K R OW F AE R AE D'],
  microfarads: ['M AY K R OW F EH R AH D Z', 'M AY K R OW F AE R AE D Z'],
  mics: ['M AY K S'],
  milliamp: ['M IH L IY AE M P'],
  milliamps: ['M IH L IY AE M P S'],
  millivolt: ['M IH L AH V OW L T', 'M IH L IY V OW L T'],
  millivolts: ['M IH L AH V OW L T S', 'M IH L IY V OW L T S'],
  nought: ['N AO T'],
  overcurrent: ['OW V ER K ER AH N T'],
  subcool: ['S AH B K UW L'],
  subcooling: ['S AH B K UW L IH NG'],
  superheat: ['S UW P ER HH IY T'],
  thermostatic: ['TH ER M AH S T AE T IH K'],
  tstat: ['T IY S T AE T'],
  windings: ['W AY N D IH NG Z'],
};
