import { fetchModelAhead } from '../../listening/worker/model-cache.ts';
import { visitsBeingWritten } from '../../record/browser/one-writer.ts';
import { readSoundSettings } from './sound-settings.ts';

/** How far this device is with keeping what a start without the server needs, and whether a newer version waits. */
export interface Keeping {
  /** Bytes that are here, and all that are wanted; undefined until both are known. */
  readonly bytes?: { readonly kept: number; readonly of: number };
  /** A newer version is here and starts when every page of this one is closed. */
  readonly waits: boolean;
}

/** How often the page looks how much has come, and how seldom it asks for a newer version. Milliseconds; our choice. */
const LOOK_MS = 400;
const ASK_AGAIN_MS = 10 * 60_000;

let state: Keeping = { waits: false };
let registration: ServiceWorkerRegistration | undefined;
const listeners = new Set<() => void>();

export const keeping = {
  state: (): Keeping => state,
  subscribe: (listener: () => void): (() => void) => {
    listeners.add(listener);
    return () => listeners.delete(listener);
  },
};

/**
 * Keeps the program and the recogniser's models on the device, so that from the second load on a visit needs no server.
 * A new version is fetched in the background and takes over when every page of the old one is closed, or when somebody
 * starts it while no visit runs: a page never loads itself anew.
 */
export function keepForOffline(): void {
  if (!('serviceWorker' in navigator) || !import.meta.env.PROD) return;
  const keep = async () => {
    registration = await navigator.serviceWorker.register('/service-worker.js');
    watchVersions(registration);
    const done = new AbortController();
    void watchBytes(done.signal).catch(() => undefined);
    try {
      await fetchModelAhead(readSoundSettings().models);
      await navigator.serviceWorker.ready;
    } finally {
      done.abort();
    }
  };
  addEventListener('load', () => {
    keep().catch((error: unknown) => console.warn('Not everything could be kept for use without the server:', error));
  });
}

/**
 * Lets the newer version take over and loads this page anew. Only where no visit runs in any page of this browser: its
 * parts would be taken from under it.
 *
 * @returns whether it was begun
 */
export async function startNewerVersion(): Promise<boolean> {
  const { waiting } = registration ?? {};
  if (!waiting || (await visitsBeingWritten()).size > 0) return false;
  navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
  waiting.postMessage({ type: 'SKIP_WAITING' });
  return true;
}

function watchVersions(of: ServiceWorkerRegistration): void {
  const look = () => change({ waits: of.waiting !== null && navigator.serviceWorker.controller !== null });
  of.addEventListener('updatefound', () => of.installing?.addEventListener('statechange', look));
  look();
  let asked = Date.now();
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState !== 'visible' || Date.now() - asked < ASK_AGAIN_MS) return;
    asked = Date.now();
    of.update().catch(() => undefined);
  });
}

interface OfflineFiles {
  readonly pages: Readonly<Record<string, number>>;
  readonly bundled: Readonly<Record<string, number>>;
  readonly wideband: Readonly<Record<string, number>>;
}

/** Tells how much of what is wanted lies in the browser's caches, until all does or nobody fetches any more. */
async function watchBytes(done: AbortSignal): Promise<void> {
  const answer = await fetch('/offline-files.json').catch(() => undefined);
  if (answer?.ok !== true) return;
  const { pages, bundled, wideband } = (await answer.json()) as OfflineFiles;
  const files = { ...pages, ...bundled, ...(readSoundSettings().models === 'bundled' ? {} : wideband) };
  const of = Object.values(files).reduce((sum, size) => sum + size, 0);
  for (;;) {
    const isLast = done.aborted;
    const here = await keptPaths();
    const kept = Object.entries(files).reduce((sum, [path, size]) => sum + (here.has(path) ? size : 0), 0);
    change({ bytes: { kept, of } });
    if (kept === of || isLast) return;
    await new Promise((resolve) => setTimeout(resolve, LOOK_MS));
  }
}

async function keptPaths(): Promise<ReadonlySet<string>> {
  const paths = new Set<string>();
  for (const name of await caches.keys())
    for (const { url } of await (await caches.open(name)).keys()) paths.add(new URL(url).pathname);
  return paths;
}

function change(changed: Partial<Keeping>): void {
  state = { ...state, ...changed };
  for (const listener of listeners) listener();
}
