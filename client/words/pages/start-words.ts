/** The page before a visit runs: the visits here, and the form that opens one. */
export const START = {
  looking: 'Looking for open visits…',
  sayWhat: 'Say what the meter shows; both hands stay on the probes.',
  review: 'Review of visits',
  goOnWith: 'Go on with',
  openVisit: (site: string, complaint: string) => `${site}: ${complaint}`,
  newVisit: 'New visit',
  liveWork:
    'Live work is for qualified people. Readback says what was measured, never that something is safe. Local codes, the maker’s instructions and licensed practice govern.',
  visit: 'Visit',
  otherTab: 'Another tab writes this visit. It is shown here as it grows; close the other tab to go on in this one.',
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

export const OPENING = {
  form: 'Open a visit',
  site: 'Site',
  complaint: 'Complaint',
  youAre: 'You are',
  technician: 'technician, short talk',
  trainee: 'trainee, full talk',
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

/** The invented units to begin from. */
export const STOCK_NAMES = {
  heatPump3Ton: '3 ton split heat pump, 240 V, R-410A, 45/5 µF',
  cooling2HalfTon: '2½ ton split cooling, 240 V, R-410A, 35/5 µF',
  heatPump4Ton: '4 ton split heat pump, 208 V, R-454B, 55/7.5 µF',
  unknown: 'not known: asked from its nameplate',
} as const;
