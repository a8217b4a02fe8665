import { type Cause, decades, failing } from './causes.ts';
import { OPEN } from './plant.ts';
import { onBench } from './split-phase-motor.ts';

/** Capacitors, compressor and outdoor fan. */
export const CAUSES_OF_MOTORS: readonly Cause[] = [
  ...(['herm', 'fan'] as const).flatMap((section): Cause[] => [
    {
      id: `${section}-section-weak`,
      called: [`${section}-capacitor-weak`],
      weight: 3,
      put: (p, s, dice) => {
        p.microfarads[section] *= 0.86 - 0.66 * s;
        if (dice.yes(0.35 + 0.3 * s)) p.seen.add('capacitor-swollen');
      },
    },
    {
      id: `${section}-section-open`,
      called: [`${section}-capacitor-open`],
      put: (p, s, dice) => {
        p.microfarads[section] = 0.02 * (1 - s) * p.build.plate[section];
        if (dice.yes(0.6)) p.seen.add('capacitor-swollen');
      },
    },
    {
      id: `${section}-section-shorted`,
      called: [`${section}-capacitor-shorted`],
      put: (p, s, dice) => {
        p.shorts[`${section}Section`] = decades(25, 0.3, s);
        if (dice.yes(0.7)) p.seen.add('capacitor-swollen');
      },
    },
  ]),
  {
    id: 'start-part-failed',
    called: ['hard-start-failed'],
    fits: (b) => b.hardStart,
    put: (p, _s, dice) => {
      // It was fitted because this compressor needs it.
      const { compressor } = p.drives;
      compressor.breakaway = 1.3 * onBench(compressor.motor, 235, p.microfarads.herm, 1).torque;
      if (dice.yes(0.5)) p.contacts.startCapacitor = OPEN;
      else p.microfarads.start *= dice.span(0, 0.12);
    },
  },
  {
    id: 'start-relay-sticks',
    called: ['hard-start-relay-welded'],
    // Of the round of two-stage units alone: an exercise keeps the fault that its number had.
    fits: (b) => b.hardStart && b.twoStage,
    weight: 0.5,
    put: (p) => {
      p.startRelaySticks = true;
    },
  },
  ...(['compressorLeadC', 'compressorLeadR', 'compressorLeadS', 'capacitorLead', 'hermLead'] as const).map(
    (lead): Cause => ({
      id: `${lead}-burnt-off`,
      called: [lead === 'capacitorLead' ? 'capacitor-lead-off' : 'compressor-lead-burnt'],
      weight: 0.5,
      put: (p, s) => {
        p.contacts[lead] = failing(s);
      },
    }),
  ),
  ...(['fanLeadC', 'fanLeadR', 'fanLeadS'] as const).map(
    (lead): Cause => ({
      id: `${lead}-off`,
      called: ['fan-lead-off'],
      weight: 0.5,
      put: (p) => {
        p.contacts[lead] = OPEN;
      },
    }),
  ),
  {
    id: 'run-winding-open',
    called: ['compressor-run-winding-open'],
    put: (p) => {
      p.contacts.compressorMain = OPEN;
    },
  },
  {
    id: 'start-winding-open',
    called: ['compressor-start-winding-open'],
    put: (p) => {
      p.contacts.compressorAuxiliary = OPEN;
    },
  },
  {
    id: 'compressor-to-shell',
    called: ['compressor-grounded'],
    put: (p, s) => {
      p.shorts.compressorToShell = decades(3e4, 0.2, s);
    },
  },
  {
    id: 'overload-failed-open',
    called: ['compressor-overload-open'],
    put: (p, s) => {
      p.contacts.compressorOverload = OPEN;
      if (s > 0.6) p.seen.add('compressor-hot');
    },
  },
  {
    id: 'rotor-stuck',
    called: ['compressor-seized'],
    put: (p) => {
      p.drives.compressor.seized = true;
    },
  },
  {
    id: 'oil-heater-open',
    called: ['crankcase-heater-open'],
    fits: (b) => b.heater,
    quiet: true,
    weight: 0.4,
    put: (p) => {
      p.contacts.heater = OPEN;
    },
  },
  {
    id: 'fan-run-open',
    called: ['fan-run-winding-open'],
    put: (p) => {
      p.contacts.fanMain = OPEN;
    },
  },
  {
    id: 'fan-start-open',
    called: ['fan-start-winding-open'],
    put: (p) => {
      p.contacts.fanAuxiliary = OPEN;
    },
  },
  {
    id: 'fan-to-frame',
    called: ['fan-motor-grounded'],
    put: (p, s) => {
      p.shorts.fanToFrame = decades(2e4, 0.3, s);
    },
  },
  {
    id: 'fan-dry',
    called: ['fan-bearings-seized'],
    put: (p) => {
      p.drives.fan.seized = true;
    },
  },
  {
    id: 'defrost-relay',
    called: ['defrost-fan-relay-open'],
    fits: (b) => b.heatPump,
    put: (p) => {
      p.contacts.defrostRelay = OPEN;
    },
  },
];
