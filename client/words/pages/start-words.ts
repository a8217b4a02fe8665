import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';

/** The page before a visit runs: the visits here, and the form that opens one. */
export const START = {
  looking: 'Looking for open visits…',
  sayWhat: 'Say what the meter shows; both hands stay on the probes.',
  review: 'Review of visits',
  practice: 'Practice at a simulated unit',
  goOnWith: 'Go on with',
  openVisit: (site: string, complaint: string) => `${site}: ${complaint}`,
  newVisit: 'New visit',
  liveWork:
    'Live work is for qualified people. Readback says what was measured, never that something is safe. Local codes, the maker’s instructions and licensed practice govern.',
  visit: 'Visit',
  otherTab: 'Another tab writes this visit. It is shown here as it grows; close the other tab to go on in this one.',
} as const;

const megabytes = (bytes: number): string => (bytes / 1e6).toFixed(1);

/** What is kept on the device for a start without the server, and newer versions. Bytes. */
export const KEEPING = {
  label: 'Kept on this device',
  comes: (kept: number, of: number) => `Keeping Readback on this device: ${megabytes(kept)} of ${megabytes(of)} MB.`,
  here: (bytes: number) => `All ${megabytes(bytes)} MB are on this device: a visit needs no network.`,
  waits: 'A newer version is here. It starts when every page of Readback is closed, or now.',
  waitsForVisit: 'A newer version is here. It waits until the visit is over and every page of Readback is closed.',
  visitRuns: 'A visit runs in another page of this browser: the newer version waits for it.',
  start: 'Start the newer version',
} as const;

/** Closed visits on the device, and how far they were sent. */
export const KEPT = {
  title: 'Closed visits on this device',
  visit: (site: string, complaint: string) => `${site}: ${complaint}`,
  sent: 'the server has all of it',
  unsent: (events: number) => (events === 1 ? '1 entry not sent yet' : `${events} entries not sent yet`),
  notSent: 'Not sent yet, to save as files',
  handOver:
    'What is here is sent by itself. Where this device was revoked, a keeper takes the files under People and devices.',
  save: (site: string) => `Save ${site}`,
  back: 'Back to the start',
  open: 'Left open',
} as const;

/** Visits that other devices hold, and visits of this one that another carries on. */
export const TAKE_OVER = {
  title: 'Visits on other devices',
  look: 'Look for visits on other devices',
  looking: 'Asking the server…',
  none: 'No open visit of another device is at the server.',
  take: (site: string) => `Carry on here: ${site}`,
  takeAgain: 'Carry on here again',
  held: (device: string, time: string) => `on ${device}, last heard of at ${time}`,
  explain:
    'The other device stops taking anything. What it has not sent yet is not known here, and what was proven dead is proven again.',
  notThere: 'The server holds nothing of this visit: it stays on the device that wrote it.',
  closed: 'This visit is closed: nothing more is taken.',
  elsewhere: (name: string, device: string, time: string) =>
    `${name === '' ? 'Another device' : `${name}, on another device,`} carries this visit on (${device}, ${time}). What is written here since then does not count, and what was proven here has ended.`,
  elsewhereTitle: 'Carried on by other devices',
  back: 'To the visits',
} as const;

export const OPENING = {
  form: 'Open a visit',
  site: 'Site',
  complaint: 'Complaint',
  youAre: 'You are',
  technician: 'technician, short talk',
  trainee: 'trainee, full talk',
  atThisSite: 'The unit at this site',
  readAnew: 'another, or not looked at: its plate is read',
  stillThis: (unit: UnitProfile, seen: string) => `I looked: still this plate. ${plateShown(unit)} (read ${seen})`,
  unit: 'Unit',
  nameplate: 'Nameplate',
  plate: {
    model: 'Model',
    serial: 'Serial',
    supply: 'Supply, V',
    herm: 'Capacitor HERM, µF',
    fan: 'Capacitor FAN, µF',
    rla: 'Compressor RLA, A',
    lra: 'Compressor LRA, A',
    fla: 'Fan FLA, A',
    tons: 'Tons',
    made: 'Year made',
  },
  refrigerant: 'Refrigerant',
  notKnown: 'not known',
  inverter: 'inverter driven',
  open: 'Open the visit',
} as const;

/** What tells a unit from others, as its plate says it. */
function plateShown({ model, serial, supply, compressor, capacitor, refrigerant, tons }: UnitProfile): string {
  return [
    model === undefined ? '' : `model ${model}`,
    serial === undefined ? '' : `serial ${serial}`,
    tons === undefined ? '' : `${tons} ton`,
    supply === undefined ? '' : `${supply.nominal} V`,
    compressor === undefined ? '' : `RLA ${compressor.rla} A`,
    capacitor === undefined ? '' : `${capacitor.herm}/${capacitor.fan} µF`,
    refrigerant ?? '',
  ]
    .filter((one) => one !== '')
    .join(', ');
}

/** The invented units to begin from. */
export const STOCK_NAMES = {
  heatPump3Ton: '3 ton split heat pump, 240 V, R-410A, 45/5 µF',
  cooling2HalfTon: '2½ ton split cooling, 240 V, R-410A, 35/5 µF',
  heatPump4Ton: '4 ton split heat pump, 208 V, R-454B, 55/7.5 µF',
  twoStage3Ton: '3 ton split cooling, two stages, 240 V, R-410A, 45/5 µF',
  unknown: 'not known: asked from its nameplate',
} as const;
