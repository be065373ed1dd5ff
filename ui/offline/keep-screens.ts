/** Lets the browser keep the built screens for when the hub is away. Without one that can, a station works until it is loaded anew. */
export function keepScreens(): void {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  navigator.serviceWorker.register('/service-worker.js').catch(() => undefined);
}
