import type { StationSpec } from './stations.ts';

/** Where a station sends parts to be marked anew, if it does. */
export function reMarkOf(
  spec: StationSpec,
): { readonly station: string; readonly limit: number } | undefined {
  return ('reader' in spec && spec.reader?.unread.reMark) || undefined;
}
