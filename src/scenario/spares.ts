import type { StationSpec } from './stations.ts';

type Needing = Pick<StationSpec, 'breakdowns' | 'setUps' | 'maintenance'>;

/** The stocks that repairs, set-ups and maintenance of a station take pieces of; one that several take more than once. */
export const sparesOf = ({ breakdowns, setUps, maintenance }: Needing): string[] =>
  [...breakdowns, ...setUps, ...maintenance].flatMap(({ spare }) => spare ?? []);
