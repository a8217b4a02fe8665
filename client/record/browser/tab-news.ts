/** Tells the other tabs of this browser that a visit's record has grown; what is new they read themselves. */
export interface TabNews {
  tellGrown(): void;
  close(): void;
}

export function openTabNews(visit: string, grown: () => void): TabNews {
  const channel = new BroadcastChannel(`readback-visit-${visit}`);
  channel.addEventListener('message', grown);
  return { tellGrown: () => channel.postMessage('grown'), close: () => channel.close() };
}
