import type { Role } from '../../../grammar/visit/roles.ts';

/** What roles are called. */
export const ROLE_NAMES: Readonly<Record<Role, string>> = {
  trainee: 'trainee',
  technician: 'technician',
  supervisor: 'supervisor',
  keeper: 'keeper',
};

/** Coming in. */
export const SIGN_IN = {
  title: 'Sign in',
  byPasskey: 'Sign in with a passkey',
  byPassword: 'With a password',
  name: 'Name to sign in by',
  password: 'Password',
  signIn: 'Sign in',
  openHere: 'Nobody needs to sign in on this machine.',
  toStart: 'To the visits of this device',
  toReview: 'Review of visits',
  toPeople: 'People and devices',
  signedInAs: (name: string, role: Role, company: string) => `Signed in as ${name}, ${ROLE_NAMES[role]} of ${company}.`,
  signOut: 'Sign out',
  wayIn: 'Your way in',
  choosePasskey: 'Make a passkey on this device',
  passkeyMade: 'The passkey is made: sign in with it from now on.',
  noPasskeyHere: 'This browser makes no passkey for this address: choose a password.',
  passkeyFailed: 'No passkey was made or used: try again, or use a password.',
  newPassword: 'New password, at least 12 letters',
  oldPassword: 'Password until now',
  setPassword: 'Set the password',
  passwordSet: 'The password is set. Other browsers were signed out.',
  noServer: 'The server does not answer: try again when there is a network.',
  first: 'Sign in first',
} as const;

/** Pairing the device that the page is on. */
export const PAIR = {
  title: 'Pair this device',
  why: 'A paired device sends its visits to the server. Its key stays in this browser; it is shown to nobody.',
  code: 'Code from a keeper, good once, for five minutes',
  pair: 'Pair this device',
  done: (device: string, company: string) => `This device is paired as ${device} of ${company}.`,
  already: (device: string, company: string) =>
    `This device is paired as ${device} of ${company}. Pair it again only where it was revoked.`,
  notPaired: 'This device is not paired: visits stay on it until it is.',
  toStart: 'To the visits of this device',
} as const;

/** What a keeper sees. */
export const PEOPLE = {
  title: 'People and devices',
  of: (company: string) => `Company ${company}`,
  people: 'People',
  name: 'Name',
  login: 'Name to sign in by',
  role: 'Role',
  roleOf: (name: string) => `Role of ${name}`,
  notYetIn: 'has not come in yet',
  newLink: 'New link',
  newLinkFor: (name: string) => `New link for ${name}`,
  pair: 'Pair a device',
  pairFor: (name: string) => `Pair a device of ${name}`,
  remove: 'Remove',
  removeOne: (name: string) => `Remove ${name}`,
  sureRemove: (name: string) => `Remove ${name}? Their sessions end and their devices are revoked; their visits stay.`,
  add: 'Add a person',
  addNow: 'Add',
  link: (name: string) => `Link for ${name}: good once, for a day. Give it to nobody else.`,
  code: (name: string) => `Scan this with a device of ${name}, or open the address on it. Good once, until`,
  qr: 'Code to scan',
  codeAlone: 'Code',
  devices: 'Devices',
  noDevices: 'No device is paired yet.',
  device: 'Device',
  whose: 'Whose',
  pairedAt: 'Paired',
  state: 'State',
  inUse: 'in use',
  revokedAt: (at: string) => `revoked ${at}`,
  revoke: 'Revoke',
  revokeOne: (device: string) => `Revoke ${device}`,
  sureRevoke: (device: string) => `Revoke ${device}? It sends nothing more; what it sent stays.`,
  handOver: 'Hand over a file',
  handOverOf: (device: string) => `Hand over a file of ${device}`,
  handedOver: (visit: string, stored: number, held: number, refused: number) =>
    `${visit}: ${stored} entries taken, ${held} were here already${refused === 0 ? '' : `, ${refused} do not follow and were not taken`}.`,
  trail: 'What was done and refused',
  at: 'When',
  who: 'Who',
  what: 'What',
  refused: 'refused',
  done: 'done',
  times: (count: number) => (count === 1 ? '' : ` (${count} times)`),
  nobody: 'not known',
  firstKeeper:
    'Nobody is known here yet: everybody at this machine is let in. The first person you add is a keeper, and everybody signs in from then on.',
  close: 'Close',
  loading: 'Looking…',
} as const;
