import type { Chance } from './chance.ts';
import { cx } from './mesh.ts';
import type { Stood } from './run-yard.ts';
import type { Yard } from './yard.ts';

/** What eye, ear and a hand near a part tell of a yard, with a call or, where the look asks for it, without. */
export function lookAt(id: string, yard: Yard, stood: Stood, idle: Stood, chance: Chance): string {
  const { state, trips, loop } = stood;
  const errs = (yes: string, no: string, is: boolean, often = 0.02) => ((chance.yes(often) ? !is : is) ? yes : no);
  const fanFed = cx.size(stood.mesh.through('fan-main')) > 0.4 * yard.fan.sheet.heldAmps;
  switch (id) {
    case 'look-outdoor-fan':
      return state.fan ? 'fan-turning' : fanFed && chance.yes(0.6) ? 'fan-hums' : 'fan-not-turning';
    case 'look-compressor':
      if (trips === 'cannot start') return chance.yes(0.8) ? 'compressor-hums-and-trips' : 'compressor-not-running';
      if (trips !== 'no')
        return chance.yes(0.65)
          ? 'compressor-runs-then-trips'
          : state.compressor
            ? 'compressor-running'
            : 'compressor-not-running';
      return state.compressor ? 'compressor-running' : 'compressor-not-running';
    case 'look-contactor':
      return state.contactor && !yard.jammed ? 'contactor-pulled-in' : 'contactor-not-pulled-in';
    case 'look-no-call':
      return idle.state.compressor ? 'compressor-running' : 'compressor-not-running';
    case 'look-contactor-no-call':
      return errs(
        'contactor-pulled-in',
        'contactor-not-pulled-in',
        yard.welded[0] && (yard.design.poles === 1 || yard.welded[1]),
      );
    case 'look-contacts': {
      const stuck = yard.welded[0] || (yard.design.poles === 2 && yard.welded[1]);
      if (stuck) return errs('contacts-stuck', 'contacts-clean', true, 0.2);
      return errs('contacts-burnt', 'contacts-clean', yard.contact[0] > 0.15 || yard.contact[1] > 0.15, 0.08);
    }
    case 'look-capacitor':
      return errs(
        'capacitor-swollen',
        'capacitor-not-swollen',
        Math.min(yard.herm / yard.design.herm, yard.fanCap / yard.design.fanMicrofarads) < 0.5,
        0.3,
      );
    case 'look-blower':
      return state.blower ? 'blower-running' : 'blower-not-running';
    case 'look-filter':
      return errs('filter-dirty', 'filter-clean', yard.look.filter, 0.04);
    case 'look-indoor-coil':
      return errs('coil-iced', 'coil-clear', yard.look.ice || (loop?.boils ?? 40) < 18, 0.04);
    case 'look-outdoor-coil':
      return errs('outdoor-coil-dirty', 'outdoor-coil-clean', yard.look.outdoorCoil, 0.05);
    case 'look-drain-pan':
      return errs('drain-pan-full', 'drain-pan-dry', yard.look.pan, 0.04);
    case 'look-oil':
      return yard.look.oil ? 'oil-stain' : 'no-oil-stain';
    case 'look-thermostat': {
      const common = yard.design.wiredCommon ? 'C@thermostat' : 'C@air-handler';
      const lit =
        yard.design.batteries ||
        cx.size(cx.less(stood.mesh.at('R@thermostat') ?? [0, 0], stood.mesh.at(common) ?? [0, 0])) > 16;
      return !lit ? 'thermostat-blank' : yard.thermostatOff ? 'thermostat-not-calling' : 'thermostat-calling';
    }
    case 'look-breaker':
      return yard.breakerTripped ? 'breaker-tripped' : 'breaker-on';
    case 'look-disconnect':
      return yard.disconnectOut ? 'disconnect-out' : 'disconnect-in';
    case 'look-second-stage':
      // Lifting Y2 changes what is drawn where it was in.
      return errs('second-stage-loads', 'second-stage-no-change', !!state.compressor && state.spills === 0, 0.03);
    case 'look-fan-by-hand':
      return errs('fan-stiff', 'fan-spins-freely', yard.fan.load > 2.5);
    case 'look-blower-by-hand':
      return errs('blower-stiff', 'blower-spins-freely', yard.blower.load > 2.5);
    default:
      return errs(
        'compressor-very-hot',
        'compressor-not-hot',
        trips !== 'no' || yard.ohms.overload > 1000 || (loop?.discharge ?? 0) > 235,
        0.06,
      );
  }
}
