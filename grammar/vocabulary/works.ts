import { rowsBy } from './rows-by.ts';

/** Work that mends something without a part: what was done, and how it is said. `withFlame`: said so, a torch was lit for it too. */
export const WORKS = [
  {
    id: 'outdoor-coil-cleaned',
    name: 'cleaned the outdoor coil',
    say: '$cleaned [the] ((outdoor | condenser | outside) coil | condenser) [off | out | down] | [the] (outdoor | condenser | outside) coil (is | has been) (cleaned | washed)',
  },
  {
    id: 'indoor-coil-cleaned',
    name: 'cleaned the indoor coil',
    say: '$cleaned [the] (indoor | evaporator | evap | inside) coil | [the] (indoor | evaporator | evap) coil (is | has been) (cleaned | washed)',
  },
  { id: 'coil-cleaned', name: 'cleaned the coil', say: '$cleaned [the] coil | [the] coil (is | has been) cleaned' },
  {
    id: 'coil-thawed',
    name: 'thawed the indoor coil',
    say: '(thawed | melted | defrosted) [out | off] [the] [indoor | evaporator | evap] (coil | ice) | [the] [indoor | evaporator | evap] coil is thawed [out]',
  },
  {
    id: 'filter-cleaned',
    name: 'cleaned the filter',
    say: '$cleaned [the] [air] filter | [the] [air] filter (is | has been) (cleaned | washed)',
  },
  {
    id: 'blower-cleaned',
    name: 'cleaned the blower',
    say: '$cleaned [the] (blower [wheel] | squirrel cage)',
  },
  {
    id: 'vents-opened',
    name: 'opened the vents',
    say: '(opened | cleared | unblocked) [up] [the] (vents | registers | supply registers | dampers | return | grille | grilles)',
  },
  {
    id: 'drain-cleared',
    name: 'cleared the drain',
    say: '(cleared | flushed | blew out | vacuumed | unclogged | cleaned) [out] [the] [condensate] (drain [line | pan] | trap) | emptied [the] drain pan',
  },
  {
    id: 'lug-1-tightened',
    name: 'tightened the lug on leg one',
    say: '$tightened [the] (lug | connection | terminal) on $leg one | $tightened [the] $leg one lug',
  },
  {
    id: 'lug-2-tightened',
    name: 'tightened the lug on leg two',
    say: '$tightened [the] (lug | connection | terminal) on $leg two | $tightened [the] $leg two lug',
  },
  {
    id: 'lugs-tightened',
    name: 'tightened the lugs',
    say: '$tightened [all] [of] [the] [loose] (lug | lugs | connection | connections | terminals | screws)',
  },
  {
    id: 'contacts-cleaned',
    name: 'cleaned the contactor',
    say: '(cleaned [out] | freed [up] | unstuck) [the] (contactor | contacts | points) | [cleaned | got | took] [the] (ants | bugs) out of [the] contactor',
  },
  {
    id: 'control-wire-repaired',
    name: 'repaired the control wire',
    say: '(repaired | spliced | fixed) [the] [broken | bad | shorted | chafed] ([thermostat | control | low voltage | stat | red | yellow | blue | green] (wire | wires | cable | wiring | splice)) | ran [a] new [thermostat | control | stat] (wire | cable) | (cleared | found and cleared | fixed) [the] short',
  },
  {
    id: 'switch-reset',
    name: 'reset the pressure switch',
    say: 'reset [the] (high | low) (pressure | head) [switch | control | limit] | reset [the] (pressure switch | high switch | low switch)',
  },
  {
    id: 'door-closed',
    name: 'closed the blower door',
    say: '(closed | shut | reseated | seated) [up] [the] (blower | air handler) (door | panel) | (adjusted | bent) [the] door switch',
  },
  {
    id: 'thermostat-set',
    name: 'set the thermostat right',
    say: '(set the thermostat right | reprogrammed [the] $stat | [put] new batteries in [the] $stat | changed [out] [the] $stat batteries)',
  },
  {
    id: 'fan-freed',
    name: 'freed the outdoor fan',
    say: '(freed | oiled | lubricated) [up] [the] [outdoor | condenser] fan [motor | bearing | bearings | blade | shaft]',
  },
  {
    id: 'leak-repaired',
    name: 'repaired the leak',
    say: '(repaired | fixed | sealed | found and fixed | found and repaired) [up] [the | a] leak [(at | on) [the | a] (flare [nut | fitting] | joint | fitting | valve core | schrader [core] | service valve | coil)] | (tightened | remade) [the] flare [nut | fitting]',
    withFlame: 'brazed [up] [the | a] leak | brazed [the | a | both] (joint | joints)',
  },
  // Said with the breaker's name, as a report of power back: "breaker is reset".
  { id: 'breaker-reset', name: 'reset the breaker' },
  {
    id: 'supply-restored',
    name: 'power company restored the supply',
    say: '[the] (power company | utility) (restored | fixed | repaired) [the] (supply | leg | power | service | drop)',
  },
] as const;
export type WorkId = (typeof WORKS)[number]['id'];
export const WORKS_BY_ID = rowsBy('id', WORKS);
/** Those that are said by themselves; a switch's report says the others. */
export const SAID_WORKS = WORKS.filter((row) => 'say' in row);
