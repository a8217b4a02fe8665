import type { LeaseStep } from '../../grammar/visit/leases.ts';
import type { Role } from '../../grammar/visit/roles.ts';

/** All times are milliseconds since 1970 by the server's clock; all hashes are SHA-256 in hex of a secret nobody keeps. */
export interface Company {
  readonly company: string;
  /** For people. */
  readonly name: string;
  readonly createdAt: number;
}

export interface Person {
  /** Unique on the server. */
  readonly person: string;
  readonly company: string;
  /** What they sign in with; unique on the server among those that are not removed. */
  readonly login: string;
  /** For people. */
  readonly name: string;
  readonly role: Role;
  /** An argon2id hash in PHC form; undefined while none is set. */
  readonly password: string | undefined;
  readonly createdAt: number;
  readonly removedAt: number | undefined;
}

/** What may change of a person. `password` null takes it away. */
export interface PersonChange {
  readonly name?: string;
  readonly role?: Role;
  readonly password?: string | null;
  readonly removedAt?: number;
}

export interface Device {
  /** The name in its streams; unique on the server. */
  readonly device: string;
  readonly company: string;
  /** Whose it is. */
  readonly person: string;
  /** The P-256 public key as SPKI (RFC 5480), in base64url. */
  readonly publicKey: string;
  readonly pairedAt: number;
  readonly revokedAt: number | undefined;
}

export interface Session {
  readonly hash: string;
  readonly company: string;
  readonly person: string;
  /** 'password', 'passkey' or 'link'. */
  readonly by: string;
  readonly createdAt: number;
  readonly lastUsedAt: number;
}

/** What a single-use code is for. */
export type CodeKind = 'set-up' | 'pairing' | 'ticket' | 'passkey';

export interface Code {
  readonly kind: CodeKind;
  readonly hash: string;
  /** Whom it speaks for; empty where anybody asked for it (a challenge at sign-in). */
  readonly company: string;
  readonly person: string;
  /** What belongs to it, as its kind needs it. */
  readonly detail: string;
  readonly expiresAt: number;
}

/** A code can be taken once, and in time. */
export type TakenCode = Code | 'unknown' | 'used' | 'expired';

export interface Passkey {
  /** The credential's id in base64url; unique on the server. */
  readonly id: string;
  readonly company: string;
  readonly person: string;
  /** COSE key in base64url. */
  readonly publicKey: string;
  readonly counter: number;
  readonly createdAt: number;
}

/** One line of the audit trail. */
export interface AuditLine {
  readonly at: number;
  /** Empty where nobody was known. */
  readonly company: string;
  readonly person: string;
  readonly device: string;
  readonly deed: string;
  readonly outcome: 'done' | 'refused';
  /** Never a secret, never what was said. */
  readonly detail: string;
  /** How often the same was refused within the minute that this line speaks of. */
  readonly times: number;
}

export interface KeptAuditLine extends AuditLine {
  /** Grows. */
  readonly id: number;
}

/** The technician's lease of a visit as it was given once: whoever took it over last holds it. */
export interface Lease extends LeaseStep {
  readonly company: string;
  readonly visit: string;
  /** Who took it; empty where nobody signs in. */
  readonly person: string;
  readonly takenAt: number;
}

export type ChangeOutcome =
  | 'changed'
  | 'unknown'
  /** The company would be left without a keeper. */
  | 'last-keeper';

/**
 * Who may come in. Every method about people, devices and the trail takes the company and answers for that alone; secrets,
 * sign-in names and device names are unique on the server, and whoever finds one by them checks its company. One contract
 * suite runs on every implementation.
 */
export interface PeopleStore {
  /** False where there is one of that name. */
  addCompany(company: Company): Promise<boolean>;
  company(company: string): Promise<Company | undefined>;
  countCompanies(): Promise<number>;

  /** Whether there is anybody at all, in any company. */
  hasPeople(): Promise<boolean>;
  /** Whether some company has a keeper. */
  hasKeeper(): Promise<boolean>;
  /** False where somebody signs in by that name. */
  addPerson(person: Person): Promise<boolean>;
  /** Also one who is removed. */
  person(company: string, person: string): Promise<Person | undefined>;
  /** Nobody who is removed. */
  personByLogin(login: string): Promise<Person | undefined>;
  /** By name; nobody who is removed. */
  people(company: string): Promise<readonly Person[]>;
  /** In one transaction: a removed person's devices are revoked, and their sessions and passkeys end. */
  changePerson(company: string, person: string, change: PersonChange): Promise<ChangeOutcome>;

  /** False where a device of that name is there. */
  addDevice(device: Device): Promise<boolean>;
  /** By its name alone: it is unique on the server. */
  device(device: string): Promise<Device | undefined>;
  devices(company: string): Promise<readonly Device[]>;
  /** False where there is none in the company, or it was revoked before. */
  revokeDevice(company: string, device: string, at: number): Promise<boolean>;

  /**
   * By number: 0 is the device that opened the visit, from 1 on stand the leases in the order in which they were given;
   * none where nobody took it over. Below 0 stand those that a restore set aside.
   */
  leases(company: string, visit: string): Promise<readonly Lease[]>;
  /** Keeps that the lease was given; false where one of that number was: of two that take it at once, one has it. */
  giveLease(lease: Lease): Promise<boolean>;
  /** Who had taken the visit over last before all leases were kept; undefined where nobody had. */
  olderLease(company: string, visit: string): Promise<string | undefined>;

  addSession(session: Session): Promise<void>;
  session(hash: string): Promise<Session | undefined>;
  noteUse(hash: string, at: number): Promise<void>;
  endSession(hash: string): Promise<void>;
  /** Ends all of a person's sessions, but one where it is named. */
  endSessionsOf(company: string, person: string, but?: string): Promise<void>;

  addCode(code: Code): Promise<void>;
  /** Takes a code: of two that take it at once, one has it. */
  takeCode(kind: CodeKind, hash: string, now: number): Promise<TakenCode>;

  addPasskey(passkey: Passkey): Promise<void>;
  passkey(id: string): Promise<Passkey | undefined>;
  passkeysOf(company: string, person: string): Promise<readonly Passkey[]>;
  countPasskey(id: string, counter: number): Promise<void>;

  /** Counts one more within a window that begins with its first; resolves to how many there are now. */
  countAttempt(key: string, now: number, windowMs: number): Promise<number>;
  forgetAttempts(key: string): Promise<void>;

  /** Adds to the trail, which only grows. */
  note(line: AuditLine): Promise<void>;
  /**
   * The latest first, those before a number where one is given; with the refusals of whoever is of no company: a wrong
   * code or password, no ticket, a foreign page. Those name nobody and no visit.
   */
  audit(company: string, page: { readonly before?: number; readonly limit: number }): Promise<readonly KeptAuditLine[]>;

  /** Drops codes, sessions and counts that no longer say anything. */
  sweep(now: number, limits: { readonly idleMs: number; readonly longestMs: number }): Promise<void>;
  close(): Promise<void>;
}
