import type { SwitchingDevice, SwitchPlace } from '../../../grammar/vocabulary/devices.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import type { Step, VisitContext } from '../../visit/chart/context.ts';
import { looseWires } from '../../visit/rules/landings.ts';
import { commandKey, itemKey, observationKey, padKey, reportKey, type TouchKey, writeKey } from './touch-key.ts';

interface NamedSwitch {
  readonly device: SwitchingDevice;
  readonly place: SwitchPlace;
  readonly name: string;
}

const OUTDOORS: NamedSwitch = { device: 'disconnect', place: 'outdoor', name: 'Outdoor disconnect' };
const INDOORS: NamedSwitch = { device: 'service-switch', place: 'air-handler', name: "Air handler's switch" };

/** The switch that takes a zone off, with its name. */
const SWITCHES: Readonly<Record<Step['zone'], NamedSwitch>> = {
  'disconnect-line': { device: 'breaker', place: 'panel', name: 'Breaker at the panel' },
  'outdoor-load': OUTDOORS,
  'capacitor-herm': OUTDOORS,
  'capacitor-fan': OUTDOORS,
  none: OUTDOORS,
  'air-handler': INDOORS,
  control: INDOORS,
};

function switched(zone: Step['zone'], state: 'locked' | 'closed', words: string): TouchKey {
  const { device, place, name } = SWITCHES[zone];
  return reportKey(`${name} ${words}`, { kind: 'report', report: { type: 'energy', device, place, state } }, 2);
}

/** What answers a step that asks for something to be done. */
export function keysForAction(step: Step, context: VisitContext): readonly TouchKey[] {
  if (step.ask.kind !== 'action') return [];
  const pass = commandKey('Pass', 'pass');
  const zone: ZoneId = step.zone === 'none' ? 'outdoor-load' : step.zone;
  switch (step.ask.done) {
    case 'call-on':
      return [observationKey('thermostat-calling', 2)];
    case 'call-off':
      return [observationKey('thermostat-not-calling', 2)];
    case 'power-off':
      return [switched(step.zone, 'locked', 'is open and locked')];
    case 'absence-proved':
      return [padKey('Enter the numbers', { kind: 'proof', zone }, 2)];
    case 'capacitors-discharged':
      return [
        reportKey('Discharged', { kind: 'report', report: { type: 'discharged', zone } }),
        padKey('Enter volts d.c.', { kind: 'discharge', zone }),
      ];
    case 'part-fitted':
      return [{ label: 'Repair is done', tone: 'first', width: 2, does: { do: 'open', sheet: 'part' } }];
    case 'wires-landed':
      return looseWires(context.wires).map(({ colour, size, from }) =>
        reportKey([colour, size, 'wire landed on', from].filter(Boolean).join(' '), {
          kind: 'wire',
          wire: {
            action: 'landed',
            to: from,
            ...(colour === undefined ? {} : { colour }),
            ...(size === undefined ? {} : { size }),
          },
        }),
      );
    case 'tug-tested':
      return [commandKey('Done: none moves', 'done', 'first', 2)];
    case 'covers-on':
      return [observationKey('covers-on', 2)];
    case 'power-on':
      return [switched(step.zone, 'closed', 'is back on')];
    case 'consent-asked':
      return [itemKey('consent-given'), itemKey('consent-refused')];
    case 'meter-named':
      return [itemKey('meter-category-two'), itemKey('meter-category-three'), itemKey('meter-category-four'), pass];
    case 'nameplate-read':
      return [itemKey('nameplate-unreadable'), pass];
    case 'leak-searched':
      return [itemKey('leak-found'), itemKey('no-leak-found')];
    case 'vacuum-isolated':
      return [itemKey('vacuum-isolated')];
    case 'thermostat-agreed':
      return [itemKey('thermostat-as-agreed'), pass];
    case 'recommended':
      return [itemKey('nothing-to-recommend'), writeKey('Write a recommendation')];
    case 'technician-signed':
      return [writeKey('Write the name'), pass];
    case 'customer-signed':
      return [writeKey('Write the name'), itemKey('customer-not-present')];
    case 'visit-finished':
      return [commandKey('Finish the visit', 'finish', 'first', 2)];
  }
}
