import type { VisitEvent } from '../../grammar/visit/events.ts';
import { joinDevices } from '../../grammar/visit/join-devices.ts';
import { readBodies } from '../../grammar/visit/read-bodies.ts';

/**
 * One visit from what the store holds of it, by arrival. The device that opened the visit holds its lease; of the others
 * remarks are taken.
 */
export function joinStored(
  stored: readonly { readonly device: string; readonly body: string }[],
): readonly VisitEvent[] {
  const byDevice = new Map<string, string[]>();
  for (const { device, body } of stored) {
    const bodies = byDevice.get(device) ?? [];
    byDevice.set(device, bodies);
    bodies.push(body);
  }
  const [technician = [], ...others] = [...byDevice.values()].map((bodies) => readBodies(bodies));
  return joinDevices(technician, others);
}
