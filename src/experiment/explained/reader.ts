import { predictUnread } from '../../line/prediction/predict-reading.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { StationSpec } from '../../scenario/stations.ts';
import type { Compared } from '../judge.ts';
import type { Comparing } from './comparing.ts';

export interface ExplainedReader {
  readonly station: string;
  readonly unread: Compared;
}

export function explainReader(spec: StationSpec, scenario: Scenario, compare: Comparing): ExplainedReader[] {
  if (!('reader' in spec) || !spec.reader) return [];
  const unread = compare.share(predictUnread(spec.reader, scenario), (run) => {
    const { attempts, unread } = run.readers.get(spec.name)!;
    return { hits: unread, of: attempts };
  });
  return [{ station: spec.name, unread }];
}
