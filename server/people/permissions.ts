import type { Role } from '../../grammar/visit/roles.ts';

/** What roles may do in their own company. Who may not is refused, wherever it is asked. */
const PERMISSIONS = {
  /** Write visits from their own device. */
  'write-visits': ['trainee', 'technician', 'keeper'],
  /** Read visits that a device of theirs wrote in. */
  'read-own-visits': ['trainee', 'technician', 'supervisor', 'keeper'],
  /** Read every visit. */
  'read-visits': ['technician', 'supervisor', 'keeper'],
  /** Write a remark beside a visit: it never moves the visit. */
  'write-remarks': ['technician', 'supervisor', 'keeper'],
  /** Hear and see what is kept beside events (sounds, photos) of every visit, not of their own devices' alone. */
  'open-attachments': ['supervisor', 'keeper'],
  /** Erase what is personal of a visit, for good. */
  'erase-visits': ['keeper'],
  /** Answer for a trainee's live steps, from their own device. */
  'acknowledge-live-steps': ['supervisor', 'keeper'],
  /** Read what the server signed of all records. */
  'read-heads': ['keeper'],
  /** Add, change and remove people and devices. */
  'manage-people': ['keeper'],
  /** Read who did what, and who was refused. */
  'read-audit': ['keeper'],
} as const satisfies Readonly<Record<string, readonly Role[]>>;

export type Permission = keyof typeof PERMISSIONS;

/** What a route asks of its caller. */
export type Need =
  /** Nothing: it is public, or looks for itself. */
  | 'anyone'
  /** Some role in some company. */
  | 'signed-in'
  | Permission;

export function may(role: Role, permission: Permission): boolean {
  return (PERMISSIONS[permission] as readonly Role[]).includes(role);
}
