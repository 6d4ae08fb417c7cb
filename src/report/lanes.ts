import * as Plot from '@observablehq/plot';
import { drawn, INK, type Options, WIDTH } from './charts.ts';
import { cut } from './columns.ts';

/** Height of a lane, the name above its curve, px, and the share of it that the curve may fill. */
const LANE = 54;
const FILLED = 0.56;
const PAPER = 'var(--paper, #fff)';

interface Point {
  readonly x: number;
  readonly height: number;
}

export interface Lanes {
  /** Class of the picture, and what it tells who cannot see it. */
  readonly kind: string;
  readonly told: string;
  readonly label: string;
  readonly domain: readonly [number, number];
  /** The height that fills a lane. */
  readonly top: number;
  readonly lanes: readonly { readonly name: string; readonly points: readonly Point[] }[];
  /** How points are joined. */
  readonly curve: 'linear' | 'step';
  /** Upright rules through all lanes. */
  readonly rules?: readonly number[];
}

/** A lane a policy, one above the other by the same scales, so that none needs a colour: what is filled is below the curve. */
export function lanesChart({ kind, told, label, domain, top, lanes, curve, rules = [] }: Lanes): string {
  const points = lanes.flatMap(({ points }, lane) =>
    points.map(({ x, height }) => ({
      ...{ lane, x, floor: lane + 1 },
      // No rounding of sums may carry a curve beyond its lane.
      at: lane + 1 - Math.min(1, height / top) * FILLED,
    })),
  );
  const names = lanes.map(({ name }, lane) => ({ y: lane + 1 - FILLED, name: cut(name, 42) }));
  const floors = lanes.map((_, lane) => lane + 1);
  const options: Options = {
    width: WIDTH,
    height: lanes.length * LANE + 48,
    ...{ marginLeft: 12, marginRight: 12, marginTop: 2, marginBottom: 44 },
    x: { domain: [...domain], label, labelAnchor: 'center', labelArrow: 'none', ticks: 5 },
    y: { domain: [lanes.length + 0.04, 0], axis: null },
    marks: [
      Plot.areaY(points, { x: 'x', y1: 'floor', y2: 'at', z: 'lane', fill: INK, fillOpacity: 0.22, curve }),
      Plot.lineY(points, { x: 'x', y: 'at', z: 'lane', stroke: INK, strokeWidth: 1.2, curve }),
      Plot.ruleY(floors, { stroke: INK, strokeWidth: 0.8 }),
      Plot.ruleX(rules, { stroke: INK, strokeWidth: 1, strokeDasharray: '3 3' }),
      Plot.text(names, {
        ...{ y: 'y', text: 'name', dy: -9, frameAnchor: 'left', fontWeight: 600 },
        ...{ fill: INK, stroke: PAPER, strokeWidth: 4 },
      }),
    ],
  };
  return drawn(options, kind, told);
}
