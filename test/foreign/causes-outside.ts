import { type Cause, decades, failing } from './causes.ts';
import { OPEN } from './plant.ts';

const legs = [1, 2] as const;
const ELSE = 'something-else' as const;

/**
 * Single faults that had no name in the list when this was written; each with what repairs it all the same, where the
 * list has such a name.
 */
export const CAUSES_OUTSIDE: readonly Cause[] = [
  {
    id: 'thermostat-makes-G-not-Y',
    called: [ELSE, 'thermostat-not-calling'],
    put: (p) => {
      p.contacts.thermostatY = OPEN;
    },
  },
  {
    id: 'thermostat-makes-Y-not-G',
    called: [ELSE],
    put: (p) => {
      p.contacts.thermostatG = OPEN;
    },
  },
  ...legs.map(
    (n): Cause => ({
      id: `disconnect-blade-${n}-burnt`,
      called: [ELSE],
      put: (p, s) => {
        p.contacts[`blade${n}`] = failing(s);
      },
    }),
  ),
  ...(['compressorLeadC', 'compressorLeadR', 'compressorLeadS', 'capacitorLead', 'hermLead'] as const).map(
    (lead): Cause => ({
      id: `${lead}-burnt-off`,
      called: [ELSE],
      put: (p, s) => {
        p.contacts[lead] = failing(s);
      },
    }),
  ),
  ...(['fanLeadC', 'fanLeadR', 'fanLeadS'] as const).map(
    (lead): Cause => ({
      id: `${lead}-off`,
      called: [ELSE],
      put: (p) => {
        p.contacts[lead] = OPEN;
      },
    }),
  ),
  {
    id: 'delay-timer-never-ends',
    called: [ELSE],
    put: (p) => {
      p.contacts.delayTimer = OPEN;
    },
  },
  {
    id: 'fan-blade-loose-on-shaft',
    called: [ELSE],
    put: (p) => {
      p.cycle.outdoorAir = 0.05;
      p.seen.add('blade-slips');
    },
  },
  {
    id: 'blower-wheel-loose-on-shaft',
    called: [ELSE, 'low-indoor-air'],
    put: (p, s) => {
      p.cycle.indoorAir = 0.25 - 0.2 * s;
    },
  },
  {
    id: 'cable-cut-R-to-C',
    called: [ELSE],
    put: (p, s) => {
      p.shorts.RToC = decades(2, 0.1, s);
    },
  },
  {
    id: 'transformer-tired',
    called: [ELSE, 'transformer-dead'],
    put: (p, s) => {
      p.transformerHealth = 0.62 - 0.3 * s;
    },
  },
  {
    id: 'wireO-broken',
    called: [ELSE],
    fits: (b) => b.heatPump,
    put: (p) => {
      p.contacts.wireO = OPEN;
      p.cycle.reversed = true;
    },
  },
];
