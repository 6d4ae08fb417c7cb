import type { Scenario } from '../../scenario/scenario.ts';
import type { SpecOf } from '../../scenario/stations.ts';
import { evenPoints } from '../../statistics/even-points.ts';

/** One independent normal part of a deviation, and its standard deviation. */
interface Part {
  readonly name: string;
  readonly sd: number;
}

/** How far something that features follow lies from its design value: a setting in its unit, or the thickness in mm. */
export interface Deviation {
  readonly name: string;
  readonly parts: readonly Part[];
  /** What is always there, and what each second of the run adds. */
  readonly offset: number;
  readonly perSecond: number;
}

export type Form = SpecOf<'form'> & { readonly name: string };

/** The stations that form. */
export const formingOf = ({ stations }: Scenario): Form[] =>
  stations.flatMap((station) => (station.does === 'form' ? [station] : []));

/**
 * All that the features of a forming station follow. A wandering setting is taken as it is in the long run, which it is
 * from the start; a machine counts as warm.
 */
export function deviationsOf({ takes, settings = [] }: Form, { stocks }: Scenario): Deviation[] {
  const thickness = stocks.find(({ name }) => name === takes)?.thickness;
  const parts = (given: Part[]) => given.filter(({ sd }) => sd > 0);
  return [
    ...(thickness
      ? [
          {
            name: 'thickness',
            parts: parts([
              { name: 'thickness by lot', sd: thickness.lotSd },
              { name: 'thickness by sheet', sd: thickness.ownSd },
            ]),
            offset: 0,
            perSecond: 0,
          },
        ]
      : []),
    ...settings.map(({ name, cycleSd, wander, sensorBias, drift }) => ({
      name,
      parts: parts([
        { name: `${name} by cycle`, sd: cycleSd?.value ?? 0 },
        { name: `${name} wandering`, sd: wander?.sd.value ?? 0 },
      ]),
      // The setting is as much too low as its sensor reads too high.
      offset: -(sensorBias?.value ?? 0),
      perSecond: drift?.value ?? 0,
    })),
  ];
}

/** Standard deviation of a deviation at any one time. */
export const sdOf = ({ parts }: Deviation): number => Math.hypot(...parts.map(({ sd }) => sd));

/** Points that stand for the counted time of a run. */
const TIMES = 9;

/** Times that stand for all that is counted, s: parts are taken as made evenly over it. */
export const driftTimes = ({ run: { warmUp, length } }: Scenario): number[] =>
  evenPoints(warmUp + length / 2, length / Math.sqrt(12), TIMES);
