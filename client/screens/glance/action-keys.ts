import { wireMoves } from '../../../grammar/visit/standing.ts';
import type { SwitchPlace } from '../../../grammar/vocabulary/devices.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import type { Step, VisitContext } from '../../visit/chart/context.ts';
import { unreadSections } from '../../visit/rules/charged-sections.ts';
import { looseWires } from '../../visit/rules/landings.ts';
import { KEY, SWITCH } from '../../words/pages/key-words.ts';
import {
  commandKey,
  itemKey,
  observationKey,
  padKey,
  plateKey,
  proofPad,
  reportKey,
  type TouchKey,
  writeKey,
} from './touch-key.ts';

interface Switch {
  readonly device: keyof typeof SWITCH.names;
  readonly place: SwitchPlace;
}

const OUTDOORS: Switch = { device: 'disconnect', place: 'outdoor' };
const INDOORS: Switch = { device: 'service-switch', place: 'air-handler' };

/** The switch that takes a zone off. */
const SWITCHES: Readonly<Record<Step['zone'], Switch>> = {
  'disconnect-line': { device: 'breaker', place: 'panel' },
  'outdoor-load': OUTDOORS,
  'capacitor-herm': OUTDOORS,
  'capacitor-fan': OUTDOORS,
  'capacitor-start': OUTDOORS,
  none: OUTDOORS,
  'air-handler': INDOORS,
  control: INDOORS,
};

function switched(zone: Step['zone'], state: 'locked' | 'closed'): TouchKey {
  const { device, place } = SWITCHES[zone];
  const label = (state === 'locked' ? SWITCH.locked : SWITCH.backOn)(SWITCH.names[device]);
  return reportKey(label, { kind: 'report', report: { type: 'energy', device, place, state } }, 2);
}

/** What answers a step that asks for something to be done. */
export function keysForAction(step: Step, context: VisitContext): readonly TouchKey[] {
  if (step.ask.kind !== 'action') return [];
  const pass = commandKey(KEY.pass, 'pass');
  const zone: ZoneId = step.zone === 'none' ? 'outdoor-load' : step.zone;
  switch (step.ask.done) {
    case 'call-on':
      return [observationKey('thermostat-calling', 2)];
    case 'call-off':
      return [observationKey('thermostat-not-calling', 2)];
    case 'power-off':
      return [switched(step.zone, 'locked')];
    case 'disconnect-locked':
      return [switched('outdoor-load', 'locked')];
    case 'source-opened':
      return [switched(step.zone, 'locked'), pass];
    case 'absence-proved':
      return [padKey(KEY.enterNumbers, proofPad(zone), 2)];
    case 'meter-again':
      return [padKey(KEY.enterMeter, { kind: 'meter' }, 2)];
    case 'charge-left':
      return [commandKey(KEY.timePassed, 'done', 'first', 2)];
    case 'capacitors-discharged':
      return [
        reportKey(KEY.discharged, { kind: 'report', report: { type: 'discharged', zone } }),
        padKey(KEY.enterVoltsDc, { kind: 'discharge', sections: unreadSections(zone, context).map(({ at }) => at) }),
      ];
    case 'part-fitted':
      return [{ label: KEY.repairDone, tone: 'first', width: 2, does: { do: 'open', sheet: 'part' } }];
    case 'wires-landed':
      return looseWires(wireMoves(context)).map(({ from, ...named }) =>
        reportKey(KEY.wireLanded({ from, ...named }), { kind: 'wire', wire: { action: 'landed', to: from, ...named } }),
      );
    case 'breaker-off':
      return [switched('disconnect-line', 'locked')];
    case 'clamps-placed':
      return [commandKey(KEY.clampsOn, 'done', 'first'), pass];
    case 'tug-tested':
      return [commandKey(KEY.noneMoves, 'done', 'first', 2)];
    case 'covers-on':
      return [observationKey('covers-on', 2)];
    case 'power-on':
      return [switched(step.zone, 'closed')];
    case 'consent-asked':
      return [itemKey('consent-given'), itemKey('consent-refused')];
    case 'sound-agreed':
      return [itemKey('sound-kept'), itemKey('sound-not-kept')];
    case 'meter-named':
      return [itemKey('meter-category-two'), itemKey('meter-category-three'), itemKey('meter-category-four'), pass];
    case 'nameplate-read':
      return [plateKey(KEY.writePlate), itemKey('plate-line-unreadable')];
    case 'leak-searched':
      return [itemKey('leak-found'), itemKey('no-leak-found')];
    case 'vacuum-isolated':
      return [itemKey('vacuum-isolated')];
    case 'thermostat-agreed':
      return [itemKey('thermostat-as-agreed'), pass];
    case 'recommended':
      return [itemKey('nothing-to-recommend'), writeKey(KEY.writeRecommendation)];
    case 'technician-signed':
      return [writeKey(KEY.writeName), pass];
    case 'customer-signed':
      return [writeKey(KEY.writeName), itemKey('customer-not-present')];
    case 'visit-finished':
      return [commandKey(KEY.finish, 'finish', 'first', 2)];
  }
}
