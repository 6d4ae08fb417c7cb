import * as Plot from '@observablehq/plot';
import type { ScrapRates } from '../experiment/cause-rates.ts';
import { drawn, INK, type Options, WIDTH } from './charts.ts';
import { cut } from './columns.ts';
import { fixed } from './format.ts';
import { CAUSES } from './trace/event-words.ts';

/** Height of the row of a cause, its name above its bar, px. */
const ROW = 36;
/** Room right of the longest bar for its number, as a share of the scale. */
const AIR = 1.16;
const PAPER = 'var(--paper, #fff)';

/** Parts scrapped for each 1000 started under one policy, a bar a station and cause; `most` is the end of the scale. */
function panel(causes: readonly ScrapRates[], place: number, most: number): string {
  const { policy } = causes[0]!.rows[place]!;
  const bars = causes.map(({ station, cause, rows }, row) => {
    const value = rows[place]!.perThousand;
    return { row, value, name: cut(`${station}: ${CAUSES[cause]}`, 44), text: fixed(value, 1) };
  });
  const told = bars.map(({ name, text }) => `${name} ${text}`);
  const options: Options = {
    width: WIDTH,
    height: bars.length * ROW + 44,
    ...{ marginLeft: 12, marginRight: 12, marginTop: 4, marginBottom: 40 },
    x: {
      domain: [0, most * AIR],
      ...{ label: 'parts of 1000 started', labelAnchor: 'center', labelArrow: 'none', ticks: 4, grid: true },
    },
    y: {
      ...{ domain: bars.map(({ row }) => row), type: 'band', axis: null },
      ...{ paddingInner: 0.72, paddingOuter: 0.5 },
    },
    marks: [
      Plot.barX(bars, { y: 'row', x: 'value', fill: INK, fillOpacity: 0.72 }),
      Plot.ruleX([0], { stroke: INK }),
      Plot.text(bars, {
        ...{ y: 'row', x: 'value', text: 'text', textAnchor: 'start', dx: 5 },
        ...{ fill: INK, stroke: PAPER, strokeWidth: 4 },
      }),
      Plot.text(bars, {
        ...{ y: 'row', text: 'name', dy: -13, dx: 3, frameAnchor: 'left' },
        ...{ fill: INK, stroke: PAPER, strokeWidth: 4 },
      }),
    ],
  };
  return drawn(options, 'causes', `Scrapped of 1000 parts started under ${policy}: ${told.join('; ')}.`);
}

/** One panel a policy, all by the same scale and with the same rows. */
export function causeCharts(causes: readonly ScrapRates[]): { policy: string; svg: string }[] {
  const most = Math.max(...causes.flatMap(({ rows }) => rows.map(({ perThousand }) => perThousand)));
  return causes[0]!.rows.map(({ policy }, place) => ({ policy, svg: panel(causes, place, most) }));
}
