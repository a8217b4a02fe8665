/** What a file beside an event is. */
export type AttachmentKind = 'sound' | 'photo';

/** By which one device sealed what is personal in its part of a visit. */
export interface VisitKey {
  readonly company: string;
  readonly visit: string;
  readonly device: string;
  /** 32 bytes (AES-256); undefined once it was erased, or where it was erased before it ever came. */
  readonly key: Uint8Array | undefined;
  /** Milliseconds since 1970, by the server's clock; so are all times here. */
  readonly createdAt: number;
  readonly erasedAt: number | undefined;
}

/** A sealed file that an event names by its SHA-256. */
export interface Attachment {
  readonly company: string;
  readonly visit: string;
  /** Of the bytes as they are kept: sealed. Hexadecimal. */
  readonly sha256: string;
  readonly device: string;
  readonly kind: AttachmentKind;
  /** What it is when it is opened, such as audio/wav. */
  readonly media: string;
  readonly bytes: number;
  /** How many bytes are here, from the first on. */
  readonly held: number;
  /** When it was here whole and its hash was found right. */
  readonly receivedAt: number | undefined;
  readonly erasedAt: number | undefined;
}

/** Of two devices of a visit that send the same, each has its own: neither stands in the other's way. */
export type AttachmentName = Pick<Attachment, 'company' | 'visit' | 'sha256' | 'device'>;

/** How many keys and files of a visit were erased. */
export interface Erased {
  readonly keys: number;
  readonly files: number;
}

/**
 * Where keys of visits and sealed files are kept, apart from the record: it can forget, the record cannot. Every method
 * that reads for an answer takes the company. One contract suite runs on every implementation. Whatever adds to it
 * throws {ServerError} data-full where nothing more may be kept.
 */
export interface PersonalStore {
  /** `other`: another key is kept for that device and visit; `erased`: it was erased, and none is taken any more. */
  addKey(key: VisitKey & { readonly key: Uint8Array }): Promise<'added' | 'same' | 'other' | 'erased'>;
  /** Whether what is personal of the visit was erased, of any of its devices: it stays so, whichever of them comes later. */
  isErased(company: string, visit: string): Promise<boolean>;
  /** By device. */
  keys(company: string, visit: string): Promise<readonly VisitKey[]>;
  /** Of all companies: keys that are kept, and were made before the time. For the server's own deletion. */
  keysBefore(time: number): Promise<readonly Omit<VisitKey, 'key'>[]>;
  /** Every visit of which something was erased, of all companies: for who verifies the folder, never for an answer. */
  erasures(): Promise<readonly Pick<VisitKey, 'company' | 'visit' | 'device' | 'erasedAt'>[]>;
  /**
   * Takes away the keys of the devices in a visit, and all its files; a key of theirs that comes later is not taken.
   * What was erased before stays as it was.
   */
  eraseVisit(company: string, visit: string, devices: readonly string[], at: number): Promise<Erased>;
  /** Undefined where no byte of it came. */
  attachment(name: AttachmentName): Promise<Attachment | undefined>;
  /** By the time they were here whole, those last of which a part is here. */
  attachments(company: string, visit: string): Promise<readonly Attachment[]>;
  /** Says that a file is to come; does nothing where that was said. */
  beginAttachment(attachment: Omit<Attachment, 'held' | 'receivedAt' | 'erasedAt'>): Promise<void>;
  /** Keeps bytes that carry on where those that are held end; false where they do not. */
  addPart(name: AttachmentName, at: number, data: Uint8Array): Promise<boolean>;
  /** All bytes that are held. */
  data(name: AttachmentName): Promise<Uint8Array>;
  /** It is whole, and as its hash says. */
  endAttachment(name: AttachmentName, receivedAt: number): Promise<void>;
  /** Takes all its bytes away, so that it can be sent again from the first. */
  dropParts(name: AttachmentName): Promise<void>;
  /** Of all companies: files of a kind that were whole before the time, their bytes erased now. */
  eraseBefore(kind: AttachmentKind, time: number, at: number): Promise<readonly Attachment[]>;
  /**
   * Overwrites what was erased before, where the tables' files still hold it.
   * @returns what it could not reach, a sentence each
   */
  overwriteErased(): Promise<readonly string[]>;
  close(): Promise<void>;
}
