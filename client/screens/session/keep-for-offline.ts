import { fetchModelAhead } from '../../listening/worker/model-cache.ts';
import { readSoundSettings } from './sound-settings.ts';

/**
 * Keeps the program and the recogniser's models on the device, so that from the second load on a visit needs no server.
 * A new version is fetched in the background and takes over when every page of the old one is closed.
 */
export function keepForOffline(): void {
  if (!('serviceWorker' in navigator) || !import.meta.env.PROD) return;
  const keep = async () => {
    await navigator.serviceWorker.register('/service-worker.js');
    await fetchModelAhead(readSoundSettings().models);
  };
  addEventListener('load', () => {
    keep().catch((error: unknown) => console.warn('Not everything could be kept for use without the server:', error));
  });
}
