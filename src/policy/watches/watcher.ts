/** What a watch asks before it heeds what it is told, and calls when it is time to act; it starts anew then. */
export interface Watcher {
  readonly deaf: () => boolean;
  readonly act: () => void;
}
