export interface RoomForRecord {
  /** The browser promised not to throw the record away by itself. */
  readonly kept: boolean;
  /** Bytes still free for this site, as the browser estimates; undefined where it does not say. */
  readonly freeBytes?: number;
}

/** Asks the browser to keep what this site stores, and how much room is left. Not every browser grants or tells it. */
export async function askRoomForRecord(storage: StorageManager = navigator.storage): Promise<RoomForRecord> {
  const kept = (await storage.persist?.().catch(() => false)) ?? false;
  const { quota, usage } = await storage.estimate();
  return quota === undefined || usage === undefined ? { kept } : { kept, freeBytes: Math.max(0, quota - usage) };
}
