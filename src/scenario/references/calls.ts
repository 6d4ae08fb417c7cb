import type { Path } from '../problem.ts';
import type { StationSpec } from '../stations.ts';

/** Something at a station that may need a crew. */
interface Call {
  readonly path: Path;
  /** The key under which the crew stands. */
  readonly key: 'by' | 'crew';
  /** Undefined where the station does it itself. */
  readonly crew: string | undefined;
}

/** All that a station may call a crew for. */
export function callsOf({ name, handling, setUps, maintenance, breakdowns }: StationSpec): Call[] {
  const path = ['stations', name];
  const called = (section: string, entries: readonly { name: string; crew?: string | undefined }[]) =>
    entries.map(({ name, crew }): Call => ({ path: [...path, section, name], key: 'crew', crew }));
  return [
    ...(handling ? [{ path: [...path, 'handling'], key: 'by', crew: handling.by } as const] : []),
    ...called('set-ups', setUps),
    ...called('maintenance', maintenance),
    ...called('breakdowns', breakdowns),
  ];
}
