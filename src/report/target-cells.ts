import { LEVEL } from '../experiment/comparison.ts';
import type { TargetFound } from '../experiment/targets.ts';
import { percentLevel } from './cells.ts';
import { fixed, formatOf } from './format.ts';
import { counted, listed } from './words.ts';

/** How often each policy met one target, as it is written. */
interface TargetCells {
  readonly key: string;
  /** `throughput at least 480 good /h`. */
  readonly name: string;
  /** Share in %; a dash and no interval where no run gives a value, no interval where there is one run. */
  readonly rows: readonly {
    readonly policy: string;
    readonly met: string;
    readonly share: string;
    readonly interval: string;
  }[];
  readonly notes: readonly string[];
}

const SHARE = { shown: { unit: '%', factor: 100 } };

/** A limit with the digits it was given. */
function limitText({ measure, limit }: TargetFound): string {
  const { unit, factor } = measure.shown;
  const written = Number((limit * factor).toPrecision(9));
  const decimals = /\.(\d+)/.exec(String(written))?.[1]?.length ?? 0;
  return `${measure.better === 'higher' ? 'at least' : 'at most'} ${fixed(written, decimals)} ${unit}`;
}

export function targetCells(targets: readonly TargetFound[], policies: readonly string[]): TargetCells[] {
  return targets.map((target, i) => {
    const { measure, rows } = target;
    const format = formatOf({ measure: SHARE, rows: rows.map(({ share }) => ({ estimate: share })) });
    const without = rows.filter((row) => row.without > 0).map((row) => `${row.policy} ${row.without}`);
    return {
      key: `target-${i + 1}`,
      name: `${measure.name} ${limitText(target)}`,
      rows: policies.map((policy) => {
        const row = rows.find((one) => one.policy === policy);
        if (!row) return { policy, met: '\u2013', share: '\u2013', interval: '' };
        const { met, share } = row;
        const interval = share.lower === null ? '' : format.interval(share);
        return { policy, met: `${met} of ${share.runs}`, share: format.value(share.value), interval };
      }),
      notes:
        without.length > 0 ? [`Runs that gave no value count as not meeting it: ${listed(without)}.`] : [],
    };
  });
}

/** What the intervals of the shares hold for. */
export function targetNote(targets: readonly TargetFound[]): string {
  const runs = Math.max(0, ...targets.flatMap(({ rows }) => rows.map(({ share }) => share.runs)));
  return runs > 1
    ? `Share of ${counted(runs, 'run')}. Intervals: ${percentLevel(LEVEL)} %, each by itself, by Wilson's score.`
    : 'One run of each policy gives no interval.';
}
