/**
 * Installs the service worker that keeps the pages for use without the server. A new version is fetched in the
 * background and takes over when every page of the old one is closed.
 */
export function keepForOffline(): void {
  if (!('serviceWorker' in navigator) || !import.meta.env.PROD) return;
  addEventListener('load', () => {
    navigator.serviceWorker.register('/service-worker.js').catch((error: unknown) => {
      console.warn('The pages cannot be kept for use without the server:', error);
    });
  });
}
