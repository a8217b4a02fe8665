/** What is typed by whoever does an exercise by rule: the shortest words that answer what is asked to be done. */

export type SwitchAt = 'outdoor' | 'panel' | 'handler';

const LOCKED_AT_PANEL = 'breaker at the panel is off and locked';
export const SWITCHED: Readonly<Partial<Record<string, Readonly<Record<SwitchAt, string>>>>> = {
  'power-off': {
    outdoor: 'outdoor disconnect is pulled and locked',
    panel: LOCKED_AT_PANEL,
    handler: 'air handler switch is off and locked',
  },
  'power-on': {
    outdoor: 'outdoor disconnect is back in',
    panel: 'breaker at the panel is back on',
    handler: 'air handler switch is back on',
  },
};

export const PERFORMED: Readonly<Partial<Record<string, string>>> = {
  'call-on': 'thermostat is calling',
  'call-off': 'thermostat is not calling',
  'breaker-off': LOCKED_AT_PANEL,
  'source-opened': LOCKED_AT_PANEL,
  'disconnect-locked': 'outdoor disconnect is pulled and locked',
  'wires-landed': 'all wires are landed',
  'covers-on': 'covers are on',
  'consent-asked': 'customer agrees',
  'meter-named': 'meter is cat three',
  'nameplate-read': 'nameplate is unreadable',
  'leak-searched': 'leak search found nothing',
  'vacuum-isolated': 'pump is valved off',
  'thermostat-agreed': 'thermostat is set as agreed',
  recommended: 'nothing to recommend',
  'technician-signed': 'technician signs',
  'customer-signed': 'customer not present',
};

export const TOLD = {
  isCalling: 'thermostat is calling',
  discharged: 'capacitor is discharged',
  sameSize: 'note that it is the size that stood there before',
  noTime: 'note that it could not be done today for want of time',
  recovered: 'recovered 5 pounds 10 ounces',
  added: 'added 6 pounds 4 ounces',
  fitted: (part: string) => `fitted: ${part}`,
  coversOn: 'covers are on',
  yes: 'yes',
  done: 'done',
} as const;
