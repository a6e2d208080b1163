/** What the service worker keeps: addresses relative to its own folder, and the version of the whole. */
export interface OfflineFiles {
  readonly version: string;
  readonly files: readonly string[];
}
