import type { EnergyState, ZoneId } from '../../../../grammar/vocabulary/zones.ts';
import { isEnergyMessage } from '../messages.ts';
import { act, visitSetup } from '../setup.ts';
import type { Turn } from '../turn.ts';

/** Writes the mirror in the context and the event in the record: the one place where a zone's energy changes. */
function enter(zone: ZoneId, to: EnergyState) {
  return act((turn: Turn, event) => {
    const from = turn.context.energy[zone];
    // The first entry, when the visit is opened, changes nothing.
    if (!isEnergyMessage(event)) return;
    turn.set({ energy: { ...turn.context.energy, [zone]: to } });
    turn.record({ type: 'energy.changed', zone, from, to, why: event.why });
  });
}

/**
 * The energy of one zone. `unknown` counts as live everywhere. A word alone leads only to `reported-off`; numbers lead
 * to `reads-dead`; released charge to `proven-dead`. Live evidence ends a proof from wherever it stood.
 */
function zoneRegion(zone: ZoneId) {
  const mine = { type: 'concerns zone', params: { zone } } as const;
  const live = { guard: mine, target: 'live' } as const;
  const doubted = { guard: mine, target: 'unknown' } as const;
  return visitSetup.createStateConfig({
    initial: 'unknown',
    states: {
      unknown: {
        entry: enter(zone, 'unknown'),
        on: { 'energy.live': live, 'energy.reported-off': { guard: mine, target: 'reported-off' } },
      },
      live: {
        entry: enter(zone, 'live'),
        on: { 'energy.reported-off': { guard: mine, target: 'reported-off' }, 'energy.doubted': doubted },
      },
      'reported-off': {
        entry: enter(zone, 'reported-off'),
        on: {
          'energy.live': live,
          'energy.doubted': doubted,
          'energy.proof-began': { guard: mine, target: 'proving' },
        },
      },
      proving: {
        entry: enter(zone, 'proving'),
        on: {
          'energy.live': live,
          'energy.doubted': doubted,
          'energy.read-dead': { guard: mine, target: 'reads-dead' },
        },
      },
      'reads-dead': {
        entry: enter(zone, 'reads-dead'),
        on: {
          'energy.live': live,
          'energy.doubted': doubted,
          'energy.proven-dead': { guard: mine, target: 'proven-dead' },
        },
      },
      'proven-dead': {
        entry: enter(zone, 'proven-dead'),
        on: { 'energy.live': live, 'energy.doubted': doubted },
      },
    },
  });
}

export const energyRegion = visitSetup.createStateConfig({
  type: 'parallel',
  states: {
    'disconnect-line': zoneRegion('disconnect-line'),
    'outdoor-load': zoneRegion('outdoor-load'),
    control: zoneRegion('control'),
    'capacitor-herm': zoneRegion('capacitor-herm'),
    'capacitor-fan': zoneRegion('capacitor-fan'),
    'air-handler': zoneRegion('air-handler'),
  } satisfies Readonly<Record<ZoneId, unknown>>,
});
